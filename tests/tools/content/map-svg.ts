// The walk as a drawing: a column for each chapter, its blocks as boxes, the lists below. Plain layout, by counting lines.
// Text stays text (it can be picked, found and read aloud), and nothing is told by colour alone.

import { broken } from './broken.ts';
import type { BlockPart, ChapterPart, Row, StepLine, Walk } from './walk-of.ts';

const CHARACTERS = 46;
/** A character of the usual fixed-width type at this size is at most this wide. */
const CHARACTER = 7.4;
const LINE = 16;
const PAD = 10;
const WIDTH = Math.ceil(CHARACTERS * CHARACTER) + 4 * PAD;
const GAP = 28;
const TOP = 84;

// Plain colours, no variables: a viewer that knows no dark scheme still shows dark on light, as the ground is drawn too.
const STYLE = `
  text { font: 12px ui-monospace, monospace; fill: #1a1a1a; white-space: pre; }
  .ground { fill: #ffffff; }
  .box { fill: #f2f2f2; stroke: #767676; }
  .frame { fill: none; stroke: #767676; }
  .way { stroke: #1a1a1a; fill: none; stroke-width: 2; }
  .head { font-weight: bold; font-size: 15px; }
  .title { font-weight: bold; font-size: 20px; }
  .id { font-weight: bold; }
  .soft { fill: #4d4d4d; }
  @media (prefers-color-scheme: dark) {
    text { fill: #f0f0f0; }
    .ground { fill: #14171a; }
    .box { fill: #22272b; stroke: #8a8a8a; }
    .frame { stroke: #8a8a8a; }
    .way { stroke: #f0f0f0; }
    .soft { fill: #c4c4c4; }
  }`;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', '\'': '&#39;' };
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (one) => ENTITIES[one] ?? one);

/** A drawn part, from its own top, with the height that it took. */
interface Part { readonly height: number; readonly svg: (x: number, y: number) => string[] }

const textAt = (x: number, y: number, text: string, name = ''): string => `<text x="${x}" y="${y}"${name === '' ? '' : ` class="${name}"`}>${escaped(text)}</text>`;
const rect = (x: number, y: number, width: number, height: number, name: string): string => `<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="6" class="${name}"/>`;
const grouped = (title: string, name: string, inner: readonly string[]): string[] => [`<g class="${name}">`, `<title>${escaped(title)}</title>`, ...inner, '</g>'];

/** One under the other. */
function stacked(parts: readonly Part[], gap: number): Part {
  const height = parts.reduce((sum, one) => sum + one.height, 0) + gap * Math.max(0, parts.length - 1);
  return { height, svg: (x, y) => {
    let at = y;
    return parts.flatMap((one) => { const own = one.svg(x, at); at += one.height + gap; return own; });
  } };
}

const lines = (texts: readonly string[], name: string): Part =>
  ({ height: texts.length * LINE, svg: (x, y) => texts.map((text, index) => textAt(x, y + (index + 1) * LINE - 4, text, name)) });

const wrapped = (text: string, name: string): Part => lines(broken('  ', text, 2, CHARACTERS), name);

function step(one: StepLine): Part {
  const inner = stacked([
    lines([one.id], 'id'),
    wrapped([`${one.kind}, ${one.pause}, ${one.effect}`, ...one.marks].join('; '), 'soft'),
    ...(one.checks.length > 0 ? [wrapped(`checks: ${one.checks.join(', ')}`, 'soft')] : []),
  ], 0);
  return { height: inner.height + 4, svg: (x, y) => grouped(`${one.id}: ${one.short}`, 'step', inner.svg(x, y)) };
}

function boxed(title: string, name: string, inner: Part): Part {
  const height = inner.height + LINE + 2 * PAD;
  return { height, svg: (x, y) => grouped(title, name, [
    rect(x, y, WIDTH - 2 * PAD, height, 'box'), textAt(x + PAD, y + LINE + 2, title), ...inner.svg(x + PAD, y + LINE + PAD),
  ]) };
}

const block = (one: BlockPart): Part => boxed(one.title, 'block', stacked(one.steps.map(step), 2));

/** The parts one under the other in a frame with a name; every column is as wide as any other. */
function column(title: string, name: string, parts: readonly Part[]): Part {
  const inner = stacked(parts, PAD);
  const height = inner.height + 2 * LINE + 2 * PAD;
  return { height, svg: (x, y) => grouped(title, name, [
    rect(x, y, WIDTH, height, 'frame'), textAt(x + PAD, y + LINE + 6, title, 'head'), ...inner.svg(x + PAD, y + 2 * LINE + PAD / 2),
  ]) };
}

const chapter = (one: ChapterPart, index: number): Part => column(`${index + 1}. ${one.title}`, 'chapter', one.blocks.map(block));

const row = (one: Row, between: string, before = ''): Part => stacked([
  lines(broken('', one.name, 2, CHARACTERS), 'id'),
  wrapped(`${before}${one.ids.length > 0 ? one.ids.join(between) : 'nothing'}`, 'soft'),
  ...(one.note === '' ? [] : [wrapped(one.note, 'soft')]),
], 0);

/** Side by side, with the height of the tallest. */
const beside = (parts: readonly Part[]): Part =>
  ({ height: Math.max(...parts.map((one) => one.height)), svg: (x, y) => parts.flatMap((one, index) => one.svg(x + index * (WIDTH + GAP), y)) });

const ways = (count: number): string[] => Array.from({ length: Math.max(0, count - 1) }, (_, index) => {
  const from = GAP + WIDTH + index * (WIDTH + GAP);
  const y = TOP + LINE;
  return `<path d="M ${from + 3} ${y} H ${from + GAP - 4} M ${from + GAP - 10} ${y - 5} L ${from + GAP - 4} ${y} L ${from + GAP - 10} ${y + 5}" class="way"/>`;
});

export function mapSvg(walk: Walk): string {
  const chapters = beside(walk.chapters.map(chapter));
  const half = Math.ceil(walk.again.length / 2);
  const lists = beside([
    column('Asked again', 'list', walk.again.slice(0, half).map((one) => row(one, ', '))),
    column('Asked again, the rest', 'list', walk.again.slice(half).map((one) => row(one, ', '))),
    column('Adjustments, and the steps that they need', 'list', walk.needs.map((one) => row(one, ', ', 'needs '))),
    column('Ladders', 'list', walk.ladders.map((one) => row(one, ' > '))),
    column('Steps in no block', 'list', walk.elsewhere.map(step)),
  ]);
  const places = lines(walk.places, 'place');
  const width = GAP + Math.max(walk.chapters.length, 5) * (WIDTH + GAP);
  const listsAt = TOP + chapters.height + 2 * GAP;
  const placesAt = listsAt + lists.height + 2 * GAP;
  const height = placesAt + 2 * LINE + places.height + GAP;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:space="preserve" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="graphics-document document" aria-labelledby="map-title map-desc">`,
    '<title id="map-title">The walk</title>',
    `<desc id="map-desc">${escaped(`The ${walk.chapters.length} chapters of the walk from left to right: ${walk.chapters.map((one) => one.title).join(', ')}. Each has its blocks and steps in their order from top to bottom. Below: what is asked again after what, the adjustments with the steps that they need, the ladders, and the places of the machine. The same stands as text in map.txt.`)}</desc>`,
    `<style>${STYLE}\n</style>`,
    `<rect width="${width}" height="${height}" class="ground"/>`,
    textAt(GAP, 44, 'The walk', 'title'),
    textAt(GAP, 66, 'From left to right, and in each chapter from top to bottom. Under a step: kind, pause, effect; when it is asked.', 'soft'),
    ...ways(walk.chapters.length),
    ...chapters.svg(GAP, TOP),
    ...lists.svg(GAP, listsAt),
    ...grouped('The machine\'s own places', 'places', [textAt(GAP, placesAt + LINE, 'The machine\'s own places', 'head'), ...places.svg(GAP, placesAt + 2 * LINE)]),
    '</svg>', '',
  ].join('\n');
}
