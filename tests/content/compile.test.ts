import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { compileContent } from '../tools/compile-content.mjs';
import { checkContent } from '../../src/content/lint.ts';
import { NO_BOOK } from './small-book.ts';
import { sound } from './sound.ts';

const folder = mkdtempSync(join(tmpdir(), 'quarterturn-compile-'));
const root = join(folder, 'root');
const outFile = join(folder, 'dist', 'content.json');
cpSync(new URL('../fixtures/bad-content/sound', import.meta.url).pathname, root, { recursive: true });
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

test('the compiled content is the content that was read, nothing lost on the way through JSON', async () => {
  await compileContent({ root, outFile, book: NO_BOOK });
  expect(JSON.parse(readFileSync(outFile, 'utf8'))).toEqual(checkContent(sound()).content);
});

test('with mistakes nothing is written, and all of them are in the message', async () => {
  const bad = join(folder, 'bad.json');
  writeFileSync(join(root, 'content', 'sources.yaml'), 'habit: hearsay\nrumour: 3\n');
  await expect(compileContent({ root, outFile: bad, book: NO_BOOK })).rejects.toThrow([
    'content/sources.yaml:1:8: "habit" does not say where it is from; begin with "read:", "memory:" or "common practice:"',
    'content/sources.yaml:2:9: "rumour" is the number 3; write a text (numbers, dates and text with : in quotes)',
  ].join('\n'));
  expect(existsSync(bad)).toBe(false);
});
