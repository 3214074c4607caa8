#!/usr/bin/env node
// The content as one named check: read, checked and compiled, and the result thrown away.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from './build.mjs';

const folder = mkdtempSync(join(tmpdir(), 'quarterturn-content-'));
try {
  const { compileContent, compilePractice } = await import('./compile-content.mjs');
  await compileContent({ root: ROOT, outFile: join(folder, 'content.json') });
  await compilePractice({ root: ROOT, outFile: join(folder, 'practice.json') });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
