import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { floorProblems, importsOf, readSources } from '../tools/floors.ts';

const house = (files: Record<string, string>) => floorProblems(new Map(Object.entries(files)));

describe('the floors', () => {
  it('are read from every source file', () => {
    const sources = readSources(fileURLToPath(new URL('../../src', import.meta.url)));
    expect([...sources.keys()]).toEqual(expect.arrayContaining(['main.tsx', 'errors.ts', 'machine/types.ts', 'screens/pipe.ts']));
  });

  it('let a file use the floors below it', () => {
    expect(house({
      'maths/a.ts': "import jstat from 'jstat';",
      'archery/b.ts': "import { a } from '../maths/a.ts';",
      'machine/types.ts': "import type { B } from '../archery/b.ts';",
      'screens/c.tsx': "import { Box } from 'ink';\nimport type { V } from '../machine/types.ts';",
    })).toEqual([]);
  });

  it.each([
    ['a floor above', { 'archery/a.ts': "import { m } from '../machine/m.ts';", 'machine/m.ts': '' }, /archery\/a\.ts: it imports machine\/m\.ts/],
    ['a neighbour', { 'screens/a.ts': "import { m } from '../report/m.ts';", 'report/m.ts': '' }, /screens\/a\.ts: it imports report\/m\.ts/],
    ['the content reader from a screen', { 'screens/a.ts': "import { r } from '../content/read.ts';", 'content/read.ts': '' }, /content\/read\.ts/],
    ['files from a screen', { 'screens/a.ts': "import fs from 'node:fs';" }, /node:fs/],
    ['a package of another floor', { 'maths/a.ts': "import { z } from 'zod';" }, /zod, which floor 0 may not use/],
    ['a load at run time', { 'machine/a.ts': "const x = await import('ink');" }, /imports ink/],
    ['a re-export', { 'journal/a.ts': "export { x } from '../machine/loop.ts';", 'machine/loop.ts': '' }, /machine\/loop\.ts/],
    ['a name without its ending', { 'maths/a.ts': "import { b } from './b';", 'maths/b.ts': '' }, /Write the ending/],
    ['a file on no floor', { 'extra/a.ts': '' }, /belongs to no floor/],
    ['the clock below the session', { 'machine/a.ts': 'const t = Date.now();' }, /Date\.now\(\)/],
    ['chance below the session', { 'archery/a.ts': 'const t = Math.random();' }, /Math\.random\(\)/],
    ['a date of now', { 'content/a.ts': 'const t = new Date();' }, /new Date\(\)/],
  ])('refuse %s', (_name, files, message) => {
    const problems = house(files);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(message);
  });

  it('refuse a circle, and name it', () => {
    const problems = house({ 'maths/a.ts': "import { b } from './b.ts';", 'maths/b.ts': "import { a } from './a.ts';" });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toContain('maths/a.ts -> maths/b.ts -> maths/a.ts');
  });

  it('let a date be made of a given time, and let comments speak of clocks', () => {
    expect(house({ 'machine/a.ts': '// never Date.now() here\nexport const at = (ms: number) => new Date(ms);' })).toEqual([]);
  });

  it('see imports over several lines, and types', () => {
    expect(importsOf("import {\n  a,\n  b,\n} from './x.ts';\nimport type { C } from './y.ts';\nimport './z.ts';")).toEqual(['./x.ts', './y.ts', './z.ts']);
  });
});
