// Before any test: dist/ must be what the sources say. A build takes half a second, and is made only where something is newer.

import { execFileSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

function newest(path: string): number {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(stat.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function built(root: string): number {
  try {
    return Math.min(...['quarterturn.js', 'content.json', 'practice.json'].map((name) => statSync(join(root, 'dist', name)).mtimeMs));
  } catch {
    return 0;
  }
}

export default function freshBuild(): void {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const sources = ['src', 'content', 'package.json', 'tests/tools/build.mjs', 'tests/tools/third-party.mjs'].map((name) => newest(join(root, name)));
  if (Math.max(...sources) > built(root)) {
    execFileSync(process.execPath, [join(root, 'tests/tools/build.mjs')], { stdio: ['ignore', 'inherit', 'inherit'] });
  }
}
