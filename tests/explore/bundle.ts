// The explorer in one file, with the program's sources as they are, or with one fault planted in them.

import { mkdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { build, type Plugin } from 'esbuild';
import { ROOT } from '../tools/build.mjs';

export interface Patch {
  /** From the root of the project. */
  readonly file: string;
  /** Stands there exactly once. */
  readonly find: string;
  readonly replace: string;
}

/** Inside node_modules, so that the libraries beside the bundle are found, and are loaded once for all bundles. */
const CACHE = join(ROOT, 'node_modules', '.cache', 'quarterturn-explore');

/** Bundles `entry` with these patches; returns the path. Throws where a patch does not fit its file any more. */
export async function bundle(entry: string, name: string, patches: readonly Patch[] = []): Promise<string> {
  const outfile = join(CACHE, `${name}.mjs`);
  mkdirSync(CACHE, { recursive: true });
  const left = new Set(patches);
  await build({
    absWorkingDir: ROOT, entryPoints: [entry], outfile, bundle: true, packages: 'external', format: 'esm', platform: 'node', target: 'node20',
    logLevel: 'silent', plugins: patches.length === 0 ? [] : [planted(patches, left)],
  });
  const [lost] = left;
  if (lost !== undefined) throw new Error(`${lost.file} is not part of what is explored, so nothing can be planted there`);
  return outfile;
}

function planted(patches: readonly Patch[], left: Set<Patch>): Plugin {
  return {
    name: 'planted',
    setup({ onLoad }) {
      onLoad({ filter: /[\\/]src[\\/].*\.tsx?$/ }, ({ path }) => {
        const own = patches.filter(({ file }) => file === relative(ROOT, path).split(sep).join('/'));
        if (own.length === 0) return undefined;
        for (const patch of own) left.delete(patch);
        return { contents: own.reduce(apply, readFileSync(path, 'utf8')), loader: path.endsWith('x') ? 'tsx' : 'ts' };
      });
    },
  };
}

function apply(text: string, { file, find, replace }: Patch): string {
  const found = text.split(find).length - 1;
  if (found !== 1) throw new Error(`${file}: "${find}" stands there ${found} times; a fault is planted in one place: mend tests/explore/faults.ts`);
  return text.replace(find, () => replace);
}
