// The pages say what the program does today: their made parts are fresh, and the commands, files and limits they name exist.

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { COMMAND, PAGES, PART_NAMES, partsOf, read, remade } from '../tools/pages.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

describe.each(PAGES)('%s', (name) => {
  it('is fresh', async () => {
    const page = read(name);
    expect(page, `${name} is stale. To do: ${COMMAND}, look at what it changed, and commit it.`).toBe(await remade(page));
  });

  it('names only files and scripts that are there', () => {
    const page = read(name).replace(/```[\s\S]*?```/g, '').replace(/<!-- made[\s\S]*?<!-- end -->/g, '');
    const files = [...page.matchAll(/`((?:src|tests|content|dist)\/[a-zA-Z0-9_./-]+\.(?:tsx?|mjs|yaml|jsonl|md))`/g)].map(([, file = '']) => file);
    expect(files.filter((file) => !existsSync(`${ROOT}${file}`))).toEqual([]);
    const { scripts } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')) as { scripts: Record<string, string> };
    const run = [...page.matchAll(/npm run ([a-z-]+)/g)].map(([, script = '']) => script);
    expect(run.filter((script) => scripts[script] === undefined)).toEqual([]);
  });

  it('links only to pages and headings that are there', () => {
    const page = read(name);
    const slug = (heading: string): string => heading.toLowerCase().replace(/[^a-z0-9 -]/g, '').trim().replaceAll(' ', '-');
    const headings = [...page.matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) => `#${slug(heading)}`);
    const links = [...page.matchAll(/\]\(([^)]+)\)/g)].map(([, link = '']) => link);
    expect(links.filter((link) => (link.startsWith('#') ? !headings.includes(link) : !existsSync(`${ROOT}${link.split('#')[0]}`)))).toEqual([]);
  });
});

describe('the made parts', () => {
  it('each stand in one page', () => {
    expect(PAGES.flatMap((name) => partsOf(read(name))).sort()).toEqual([...PART_NAMES].sort());
  });

  it('are noticed when they are stale, and refused when nobody makes them', async () => {
    const page = '# a\n<!-- made: keys -->\n| old |\n<!-- end -->\n';
    expect(await remade(page)).not.toBe(page);
    expect(await remade(page)).toContain('| `?` |');
    await expect(remade(page.replace('keys', 'locks'))).rejects.toThrow(/nothing makes the part "locks"/);
  });
});

describe('the recipes', () => {
  const page = read('DEVELOPERS.md');
  it.each([
    ['KNOBS', 'src/content/types.ts'], ['TRIGGERS', 'src/content/types.ts'], ['CALLED_BY_THE_MACHINE', 'src/content/lint/calling.ts'], ['USUAL', 'tests/tunes/archer.ts'],
    ['KNOB_WORDS', 'src/screens/words.ts'], ['isCableWork', 'src/machine/standing.ts'], ['CURRENT_VERSION', 'src/journal/versions.ts'], ['LIFTS', 'src/journal/versions.ts'],
  ])('send nobody to a %s that is not in %s', (name, file) => {
    expect(page).toContain(`\`${name}\``);
    expect(page).toContain(`\`${file}\``);
    expect(read(file)).toMatch(new RegExp(`\\bconst ${name}\\b`));
  });
});

describe('the README', () => {
  const page = read('README.md');
  it('gives the two commands as they are', () => {
    expect(page).toContain('npm ci && npm start\n');
    expect(page).toContain('npm ci && npm test\n');
  });

  it('says where it must that its example is invented', () => {
    const [before = ''] = page.split('<!-- made: session -->');
    expect(before.slice(-400)).toMatch(/invented/);
  });
});
