// The tool for who writes content: what it draws and exports is held to the content itself, read here another way.

import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv, type ValidateFunction } from 'ajv';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { readNumber } from '../../src/content/schema/words.ts';
import { AMOUNT } from '../tools/content/json-schema.ts';
import { HELP, run } from '../tools/content/content.ts';
import { mapSvg } from '../tools/content/map-svg.ts';

const ROOT = new URL('../..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'quarterturn-content-'));
const to = join(folder, 'made');
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

const shipped = new Map<string, unknown>();
/** Each file is parsed once: it is the most of the time that these tests take. */
function yaml(name: string): unknown {
  if (!shipped.has(name)) shipped.set(name, parse(readFileSync(join(ROOT, 'content', name), 'utf8')));
  return shipped.get(name);
}
const text = (name: string): string => readFileSync(join(to, name), 'utf8');

interface Plan { readonly chapters: readonly { readonly id: string; readonly title: string; readonly blocks: readonly { readonly title: string; readonly steps: readonly string[] }[] }[] }
const plan = yaml('procedure.yaml') as Plan;
const chapterFiles = readdirSync(join(ROOT, 'content', 'chapters'));
const allSteps: string[] = chapterFiles.flatMap((file) => Object.keys((yaml(`chapters/${file}`) as { steps: object }).steps));

let told: ReturnType<typeof run>;
beforeAll(() => { told = run(['--to', to]); });

test('sound content ends with 0, prints the map and says what was written', () => {
  expect(told).toMatchObject({ code: 0, err: '' });
  expect(told.out).toContain(text('map.txt'));
  for (const name of ['map.txt', 'map.svg', ...readdirSync(join(to, 'schemas')).map((one) => `schemas/${one}`)]) expect(told.out).toContain(`made/${name}`);
  expect(told.out.split('\n').filter((line) => line.includes('made/'))).toHaveLength(13);
});

describe('spoiled content', () => {
  const spoilt = join(folder, 'spoilt');
  cpSync(join(ROOT, 'content'), join(spoilt, 'content'), { recursive: true });
  const spoil = (name: string, from: string, to: string): void => {
    const path = join(spoilt, 'content', name);
    const before = readFileSync(path, 'utf8');
    expect(before).toContain(from);
    writeFileSync(path, before.replace(from, () => to));
  };
  test('ends with 1, tells every mistake with its place, and writes nothing', () => {
    spoil('rechecks.yaml', 'clash: [arrow-check]', 'clash: [arrow-check, arrow-chek]');
    spoil('practice.yaml', 'lessons:', 'lesons:');
    const { code, out, err } = run(['--from', spoilt, '--to', join(folder, 'none')]);
    expect([code, out]).toEqual([1, '']);
    expect(err.split('\n')).toEqual([
      expect.stringMatching(/^content\/rechecks\.yaml:\d+:22: no step is called "arrow-chek" in content\/chapters; did you mean "arrow-check"\?$/),
      expect.stringMatching(/^content\/practice\.yaml:\d+:\d+: /), expect.stringMatching(/^content\/practice\.yaml:\d+:\d+: /),
      '3 mistakes; nothing was written',
    ]);
    expect(existsSync(join(folder, 'none'))).toBe(false);
  });
  test('content that cannot be read ends with 1 too', () => {
    writeFileSync(join(spoilt, 'content', 'knobs.yaml'), 'a: [\n');
    expect(run(['--from', spoilt, '--to', join(folder, 'none')])).toMatchObject({ code: 1, out: '', err: expect.stringContaining('content/knobs.yaml:') as string });
  });
});

describe('the command line', () => {
  test('help is one screen', () => {
    expect(run(['--help'])).toEqual({ code: 0, out: HELP, err: '' });
    expect(HELP.split('\n').length).toBeLessThanOrEqual(24);
    expect(Math.max(...HELP.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });
  test.each([
    [['--bogus'], /^Unknown option '--bogus'; .*--help$/], [['extra'], /^Unexpected argument 'extra'; .*--help$/], [['--from'], /--from.*--help$/],
    [['--from', '/nowhere'], /^there is no folder content in .*--from FOLDER$/], [['--to', join(ROOT, 'package.json')], /package\.json is a file, .*--to FOLDER$/],
    [['--to', join(ROOT, 'no', 'such')], /^there is no folder .*no to write into.*--to FOLDER$/],
  ])('%j is told in one line', (args, line) => {
    const { code, out, err } = run(args);
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(line);
    expect(err).not.toContain('\n');
  });
});

describe('the map as text', () => {
  const section = (title: string): string => {
    const all = text('map.txt');
    const from = all.indexOf(`${title}\n=`);
    expect(from).toBeGreaterThanOrEqual(0);
    const next = all.slice(from + title.length + 1).search(/\n\n[^\n]+\n==+\n/);
    return next < 0 ? all.slice(from) : all.slice(from, from + title.length + 1 + next);
  };
  /** The steps that have a line of their own, with what stands before them. */
  const homes = (title: string): string[] => section(title).split('\n').flatMap((line) => /^ {4}([a-z0-9-]+) +(?:choice|number|confirm|text|chunk) /.exec(line)?.[1] ?? []);

  test('is no wider than 80 columns', () => {
    expect(Math.max(...text('map.txt').split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });
  test('names the steps of every block, in their order, and nowhere else but once what stands in no block', () => {
    const inBlocks = plan.chapters.flatMap((chapter) => chapter.blocks.flatMap((block) => block.steps));
    expect(homes('The walk')).toEqual(inBlocks);
    expect(homes('Steps in no block').toSorted()).toEqual(allSteps.filter((id) => !inBlocks.includes(id)).toSorted());
  });
  test('names what is asked again after what, as it stands', () => {
    const lists = Object.entries(yaml('rechecks.yaml') as Record<string, string[]>);
    const lines = section('Asked again').split('\n').slice(4).join('\n').replace(/,\n {4}/g, ', ');
    expect(lines.split('\n')).toEqual(lists.flatMap(([name, ids]) => [`  ${name}`, `    ${ids.length > 0 ? ids.join(', ') : 'nothing'}`]));
  });
  test('names what each adjustment needs', () => {
    const knobs = yaml('knobs.yaml') as { id: string; needs: string[] }[];
    expect(knobs.some(({ needs }) => needs.length > 0)).toBe(true);
    for (const { id, needs } of knobs) expect(section('Adjustments')).toContain(`  ${id}\n    needs ${needs.length > 0 ? needs.join(', ') : 'nothing'}\n`);
  });
  test('names the conditions and the checks', () => {
    expect(section('The walk')).toMatch(/ {4}as-recorded +chunk +undrawn +gate +every tune; when known-bow\n/);
    const checks = chapterFiles.flatMap((file) => Object.values((yaml(`chapters/${file}`) as { steps: Record<string, { checks?: { id: string }[] }> }).steps).flatMap((step) => step.checks?.map((one) => one.id) ?? []));
    const words = text('map.txt').split(/[^a-z0-9-]+/);
    expect(checks.filter((id) => !words.includes(id))).toEqual([]);
    expect(checks.length).toBeGreaterThan(100);
  });
  test('names the machine\'s own places', () => {
    expect(section('The machine\'s own places')).toMatch(/\npaper\.asFound\.inspecting +settled > broadheads\.preparing; looked > shooting\n/);
  });
});

interface Tag { readonly name: string; readonly attributes: Readonly<Record<string, string>>; readonly text: string; readonly inside: readonly Tag[] }

/** A strict little reader of XML: one root, tags closed in order, attributes quoted and each once, no bare & or <. */
function readXml(source: string): Tag {
  const open: { name: string; attributes: Record<string, string>; text: string; inside: Tag[] }[] = [{ name: '', attributes: {}, text: '', inside: [] }];
  let at = source.startsWith('<?xml ') ? source.indexOf('?>') + 2 : 0;
  const plain = (words: string): string => {
    if (/&(?!(amp|lt|gt|quot|#\d+);)/.test(words)) throw new Error(`a bare & in ${words}`);
    return words.replace(/&(amp|lt|gt|quot|#(\d+));/g, (_, name: string, code?: string) => (code === undefined ? { amp: '&', lt: '<', gt: '>', quot: '"' }[name] ?? '' : String.fromCodePoint(Number(code))));
  };
  for (const match of source.slice(at).matchAll(/([^<]*)<(\/?)([a-z]+)((?:\s+[a-zA-Z:-]+="[^"<]*")*)\s*(\/?)>/gy)) {
    const [whole, before = '', closes, name = '', given = '', empty] = match;
    at += whole.length;
    const top = open.at(-1);
    if (top === undefined) throw new Error(`after the root: ${whole}`);
    top.text += plain(before);
    if (closes === '/') {
      if (top.name !== name) throw new Error(`</${name}> closes <${top.name}>`);
      open.pop();
      open.at(-1)?.inside.push(top);
      continue;
    }
    const pairs = [...given.matchAll(/([a-zA-Z:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [key, plain(value)] as const);
    if (new Set(pairs.map(([key]) => key)).size !== pairs.length) throw new Error(`an attribute twice in ${whole}`);
    const tag = { name, attributes: Object.fromEntries(pairs), text: '', inside: [] };
    if (empty === '/') top.inside.push(tag);
    else open.push(tag);
  }
  const [root] = open[0]?.inside ?? [];
  if (open.length !== 1 || root === undefined || open[0]?.inside.length !== 1 || source.slice(at).trim() !== '') throw new Error(`not well-formed near ${source.slice(at, at + 60)}`);
  return root;
}

const every = (tag: Tag): Tag[] => [tag, ...tag.inside.flatMap(every)];

test('the reader of XML refuses what is not well-formed', () => {
  for (const bad of ['<a>', '<a></b>', '<a/><b/>', '<a>&</a>', '<a b="1" b="2"/>', '<a b=1/>', '<a><b></a></b>', 'x', '<a>1 < 2</a>']) expect(() => readXml(bad), bad).toThrow(Error);
  expect(readXml('<a b="&lt;"><c/>x &amp; y</a>')).toEqual({ name: 'a', attributes: { b: '<' }, text: 'x & y', inside: [{ name: 'c', attributes: {}, text: '', inside: [] }] });
});

describe('the map as a drawing', () => {
  let svg: Tag;
  let tags: Tag[];
  beforeAll(() => { svg = readXml(text('map.svg')); tags = every(svg); });
  const titled = (name: string): string[] => tags.filter((one) => one.attributes['class'] === name).map((one) => one.inside[0]?.text ?? '');

  test('is well-formed, and says to a screen reader what it is', () => {
    expect(svg).toMatchObject({ name: 'svg', attributes: { 'xmlns': 'http://www.w3.org/2000/svg', 'aria-labelledby': 'map-title map-desc' } });
    expect(svg.inside.slice(0, 2).map((one) => [one.name, one.attributes['id']])).toEqual([['title', 'map-title'], ['desc', 'map-desc']]);
    expect(svg.inside[1]?.text).toContain(plan.chapters.map((one) => one.title).join(', '));
  });
  test('holds every chapter, every block and every step once, in their order', () => {
    expect(titled('chapter')).toEqual(plan.chapters.map((one, index) => `${index + 1}. ${one.title}`));
    expect(titled('block')).toEqual(plan.chapters.flatMap((one) => one.blocks.map((block) => block.title)));
    const drawn = titled('step').map((title) => title.split(':')[0] ?? '');
    const inBlocks = plan.chapters.flatMap((chapter) => chapter.blocks.flatMap((block) => block.steps));
    expect(drawn.slice(0, inBlocks.length)).toEqual(inBlocks);
    expect(drawn.toSorted()).toEqual(allSteps.toSorted());
  });
  test('takes any title as it stands', () => {
    const title = 'Bow & <arrow> "one" \'two\'';
    const drawn = readXml(mapSvg({ chapters: [{ id: 'a', title, blocks: [] }], elsewhere: [], again: [], needs: [], ladders: [], places: [] }));
    expect(every(drawn).filter((one) => one.text === `1. ${title}`).map((one) => one.name)).toEqual(['title', 'text']);
  });
  test('no line of text stands on another or outside the drawing', () => {
    const lines = tags.filter((one) => one.name === 'text').map(({ attributes, text: words }) => ({ words, x: Number(attributes['x']), y: Number(attributes['y']), ends: Number(attributes['x']) + words.length * 7.3 }));
    const [width, height] = [Number(svg.attributes['width']), Number(svg.attributes['height'])];
    expect(lines.length).toBeGreaterThan(500);
    expect(lines.filter(({ x, y, ends }) => x < 0 || y < 12 || y > height - 4 || ends > width).map((one) => one.words)).toEqual([]);
    const sorted = lines.toSorted((a, b) => a.y - b.y);
    const clashes = sorted.flatMap((one, index) => sorted.slice(index + 1, index + 40).filter((other) => other.y - one.y < 13 && other.x < one.ends && one.x < other.ends).map((other) => `${one.words} / ${other.words}`));
    expect(clashes).toEqual([]);
  });
  test('shows in a dark and in a light scheme, on a ground of its own', () => {
    const style = tags.find((one) => one.name === 'style')?.text ?? '';
    const [light = '', dark = ''] = style.split('@media (prefers-color-scheme: dark)');
    for (const name of ['text', '.ground', '.box', '.soft']) for (const part of [light, dark]) expect(part).toMatch(new RegExp(`\\s${name.replace('.', '\\.')} \\{[^}]*fill: #[0-9a-f]{6}`));
    expect(tags.find((one) => one.name === 'rect')?.attributes).toEqual({ width: svg.attributes['width'], height: svg.attributes['height'], class: 'ground' });
  });
});

describe('the schemas', () => {
  const kinds = ['procedure', 'knobs', 'ladders', 'inspections', 'rechecks', 'cautions', 'glossary', 'sources', 'phrases', 'chapter', 'practice'];
  const checks = new Map<string, ValidateFunction>();
  beforeAll(() => {
    const ajv = new Ajv({ strict: true, strictRequired: false, allowUnionTypes: true }); // a record of known keys requires them without listing them;
    for (const kind of kinds) checks.set(kind, ajv.compile(JSON.parse(text(`schemas/${kind}.json`)) as object));
  });
  const filesOf = (kind: string): string[] => (kind === 'chapter' ? chapterFiles.map((file) => `chapters/${file}`) : [`${kind}.yaml`]);
  const takes = (kind: string, value: unknown): boolean => checks.get(kind)?.(value) === true;

  test('there is one for each kind', () => { expect(readdirSync(join(to, 'schemas')).toSorted()).toEqual(kinds.map((kind) => `${kind}.json`).toSorted()); });

  test.each(kinds.flatMap((kind) => filesOf(kind).map((file) => [kind, file] as const)))('%s takes %s as it is shipped', (kind, file) => {
    expect([takes(kind, yaml(file)), checks.get(kind)?.errors ?? null]).toEqual([true, null]);
  });

  test.each([
    ['procedure', 'procedure.yaml', 'blocks:', 'bloks:'], ['procedure', 'procedure.yaml', 'low: "-1/8"', 'low: "a little"'],
    ['knobs', 'knobs.yaml', 'axis: height', 'axis: hight'], ['knobs', 'knobs.yaml', '"1/32"', '"1/0"'], ['knobs', 'knobs.yaml', 'trigger: rest-height', 'trigger: rest-heigth'],
    ['ladders', 'ladders.yaml', '{ knob: yoke }', '{ knob: yolk }'], ['inspections', 'inspections.yaml', 'cause: contact', 'cause: contakt'],
    ['rechecks', 'rechecks.yaml', 'clash:', 'crash:'], ['rechecks', 'rechecks.yaml', '[arrow-check]', '[Arrow Check]'],
    ['cautions', 'cautions.yaml', /^press: /m, 'Press It: '], ['glossary', 'glossary.yaml', /^anchor: .*$/m, 'anchor: 3'], ['sources', 'sources.yaml', '"common practice:', '"hearsay:'],
    ['phrases', 'phrases.yaml', /^check-true: .*$/m, 'check-true: " "'], ['chapter', 'chapters/warm-up.yaml', 'pause: ', 'pause: un'],
    ['practice', 'practice.yaml', 'lessons:', 'lesons:'], ['chapter', 'chapters/warm-up.yaml', 'kind: ', 'kind: x'], ['chapter', 'chapters/warm-up.yaml', 'effect: ', 'effect: no '], ['chapter', 'chapters/warm-up.yaml', 'short:', 'shrot:'],
    ['chapter', 'chapters/arrows.yaml', 'min: ', 'min: some'], ['chapter', 'chapters/arrows.yaml', '{ value: all,', '{ valeu: all,'],
  ] as const)('%s refuses a mistake in %s: %s', (kind, file, from, into) => {
    const before = readFileSync(join(ROOT, 'content', file), 'utf8');
    const after = before.replace(from, () => into);
    expect(after).not.toBe(before);
    // The one mistake is why: without it the file is taken (above).
    expect(takes(kind, parse(after))).toBe(false);
  });

  test('they offer what there is, say what it is for, and take a fraction as the reader does', () => {
    const chapter = text('schemas/chapter.json');
    for (const word of ['press-trained', 'practice-bow', 'dry-fire', 'Asked in every tune, also of a bow that was tuned here before.']) expect(chapter).toContain(`"${word}"`);
    const amount = new RegExp(AMOUNT);
    const samples = ['0.25', '1/32', '-3/16', '1 1/8', '+2', '.5', ' 3 ', '1/0', '1/00', '1/', 'a', '', '1 / 2', '1,5', '--1', '1 1/8 in', '10/04'];
    for (const one of samples) expect([one, amount.test(one)]).toEqual([one, readNumber(one) !== null]);
  });
});
