import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newHome, run } from './program.ts';

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };

describe('the program', () => {
  it('says what it can do', async () => {
    const { code, stdout, stderr } = await run(['--help']);
    expect([code, stderr]).toEqual([0, '']);
    for (const word of ['new', 'resume', 'list', 'record', '--plain', '--pipe', '--schema', '--home', '--version']) expect(stdout).toContain(word);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThan(80);
  });

  it('says its version, the one of package.json', async () => {
    expect(await run(['--version'])).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
  });

  it.each([[['--colour']], [['tune']], [['--schema']], [['resume', 'a', 'b']]])('teaches on %j in one line and ends with 2', async (args) => {
    const { code, stdout, stderr } = await run(args);
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(/^quarterturn: [^\n]+\n$/);
  });

  it('tells an unknown tune in one line and ends with 3', async () => {
    for (const args of [['resume', '2020-01-01-a'], ['record', '2020-01-01-a'], ['record'], ['resume']]) {
      const { code, stderr } = await run([...args, '--home', newHome()]);
      expect(code).toBe(3);
      expect(stderr).toMatch(/^quarterturn: [^\n]+\n$/);
    }
  });

  it('lists nothing, and says how to begin', async () => {
    const { code, stdout } = await run(['list', '--home', newHome()]);
    expect(code).toBe(0);
    expect(stdout).toMatch(/No tune is kept in .*quarterturn new/);
  });

  it('says so where a file is in the way of its folder', async () => {
    const file = join(newHome(), 'file');
    writeFileSync(file, '');
    const { code, stderr } = await run(['new', '--pipe', '--home', file]);
    expect(code).toBe(6);
    expect(stderr).toMatch(/^quarterturn: [^\n]+\n$/);
  });
});
