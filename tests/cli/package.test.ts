// What is published: the program, its words, the licences of everything in it, and nothing else.

import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { thirdParty } from '../tools/third-party.mjs';
import { newHome } from './program.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

describe('the package', () => {
  it('holds dist and four pages, all of dist and no other file', () => {
    const told = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], { cwd: ROOT, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
    const [{ files }] = JSON.parse(told) as [{ files: { path: string }[] }];
    const dist = readdirSync(`${ROOT}dist`).map((name) => `dist/${name}`);
    expect(files.map(({ path }) => path).sort()).toEqual([...dist, 'CHANGELOG.md', 'LICENSE', 'README.md', 'package.json'].sort());
    expect(dist).toEqual(expect.arrayContaining(['dist/quarterturn.js', 'dist/content.json', 'dist/THIRD-PARTY.txt']));
  });

  it('needs nothing installed beside it', () => {
    const meta = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')) as Record<string, unknown>;
    expect([meta['dependencies'], meta['peerDependencies'], meta['optionalDependencies']]).toEqual([undefined, undefined, undefined]);
    expect(meta['engines']).toEqual({ node: '>=20' });
  });
});

describe('the licences in dist', () => {
  const text = readFileSync(`${ROOT}dist/THIRD-PARTY.txt`, 'utf8');
  const parts = text.split(/^-{80}$/m).slice(1);

  it.each(['ink', 'react', 'react-reconciler', 'xstate', 'zod', 'jstat', 'yoga-layout'])('name %s, its licence, whose it is, and the whole text', (name) => {
    const part = parts.find((one) => one.trimStart().startsWith(`${name} `)) ?? '';
    expect(part).toMatch(/^\n\S+ \d+\.\d+\.\d+, MIT\n/);
    expect(part).toMatch(/Copyright/i);
    expect(part).toContain('Permission is hereby granted');
    expect(part).toMatch(/WITHOUT WARRANTY OF ANY KIND/i);
  });

  it('hold a text for every part', () => {
    expect(parts.length).toBeGreaterThan(20);
    for (const part of parts) expect(part.length, part.slice(0, 60)).toBeGreaterThan(500);
  });

  it('refuse a package whose licence cannot be told', () => {
    const root = newHome();
    const folder = `${root}/node_modules/nobody`;
    mkdirSync(folder, { recursive: true });
    writeFileSync(`${folder}/package.json`, '{"name":"nobody","version":"1.0.0","license":"MIT"}');
    writeFileSync(`${folder}/index.js`, 'export {};');
    const metafile = { outputs: { 'a.js': { inputs: { 'node_modules/nobody/index.js': { bytesInOutput: 1 } } } } };
    expect(() => thirdParty(root, metafile)).toThrow(/nobody 1\.0\.0 ships no licence text/);
  });
});
