// Reads a screen as an archer does: where am I, what is asked, which keys are there. Nothing is known but the text.

import type { Content, Knob, KnobId, Step } from '../../src/content/types.ts';
import { parseQuantity } from '../../src/maths/fractions.ts';

const HEADER = /(^|\s)day \d+, \d+ shots?$/;

export interface Live {
  /** From the header to the line of keys. */
  readonly lines: readonly string[];
  readonly header: string;
  readonly keys: string;
  /** All of it in one line of words. */
  readonly words: string;
}

export const isHeader = (line: string): boolean => HEADER.test(line);

/** The live part, or null where no header is on the screen. */
export function readLive(screen: readonly string[]): Live | null {
  const at = screen.findLastIndex(isHeader);
  if (at === -1) return null;
  // On a narrow screen the day stands on a line of its own below the chapter.
  const from = /^\s*day /.test(screen[at] ?? '') ? Math.max(0, at - 1) : at;
  const to = screen.findLastIndex((line) => line.trim() !== '');
  const lines = screen.slice(from, to + 1);
  return { lines, header: screen.slice(from, at + 1).map((line) => line.trim()).join('  '), keys: lines.at(-1) ?? '', words: flat(lines.join(' ')) };
}

export const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** What is shot, as the screen tells it. */
export interface ShotRead {
  readonly of: 'tear' | 'impact';
  readonly head: 'field' | 'broadhead';
  readonly shaft: 'fletched' | 'unfletched';
  readonly arrow: string | null;
  readonly nockTurn: number;
  readonly yards: number;
}

export type Asked =
  | { readonly kind: 'step'; readonly step: Step }
  | { readonly kind: 'call' | 'leave it' | 'nothing found' | 'finished' }
  | ({ readonly kind: 'shot' } & ShotRead)
  | { readonly kind: 'nock'; readonly arrow: string; readonly swap: boolean }
  | { readonly kind: 'moved'; readonly knob: KnobId; readonly delta: number };

/** What is asked, or null where the words on the screen do not tell. */
export function readAsked(live: Live, content: Content): Asked | null {
  const { words } = live;
  if (/^bow record\b/i.test(live.header)) return { kind: 'finished' };
  if (words.includes('Called good or bad?')) return { kind: 'call' };
  if (/\bcalled (good|bad)\b/.test(words) && words.includes('> ')) return { kind: 'shot', ...readShot(words) };
  if (words.includes('moved it as told')) return readMove(words, content);
  if (words.includes('done as told')) {
    const [, arrow] = /next ARROW (\d+):/.exec(words) ?? [];
    return arrow === undefined ? null : { kind: 'nock', arrow, swap: words.includes('A NEW NOCK') };
  }
  if (words.includes(flat(content.phrases['finishing-leave'] ?? '?')) || words.includes(flat(content.phrases['accept-leave'] ?? '?'))) return { kind: 'leave it' };
  if (words.includes(`coach ${flat(content.phrases['inspect-short'] ?? '?')}`)) return { kind: 'nothing found' };
  const steps = Object.values(content.steps).filter((step) => words.includes(`coach ${flat(step.short)}`)).sort((a, b) => b.short.length - a.short.length);
  return steps[0] === undefined ? null : { kind: 'step', step: steps[0] };
}

/** "shoot ARROW 7, BROADHEAD, 20 YD", in capitals; a shot at paper with any arrow has no such words. */
function readShot(words: string): ShotRead {
  const [shoot = ''] = /shoot [A-Z0-9 ,()]+/.exec(words) ?? [];
  const figure = (pattern: RegExp): string | null => pattern.exec(shoot)?.[1] ?? null;
  return {
    of: words.includes('Inches from its own aiming dot') ? 'impact' : 'tear',
    head: shoot.includes('BROADHEAD') ? 'broadhead' : 'field', shaft: shoot.includes('UNFLETCHED') ? 'unfletched' : 'fletched',
    arrow: figure(/ARROW (\d+)/), nockTurn: Number(figure(/TURNED BY (\d+)/) ?? 0), yards: Number(figure(/(\d+) YD/) ?? 0),
  };
}

/** "REST UP 1/32 in" as the adjustment and how far it goes, plus and minus as the adjustment has them. */
function readMove(words: string, content: Content): Asked | null {
  for (const knob of Object.values(content.knobs)) {
    for (const sign of [1, -1] as const) {
      const delta = amountBehind(words, knob, sign);
      if (delta !== null) return { kind: 'moved', knob: knob.id, delta };
    }
  }
  return null;
}

function amountBehind(words: string, knob: Knob, sign: 1 | -1): number | null {
  const headline = flat(sign === 1 ? knob.words.plus : knob.words.minus);
  const found = new RegExp(`\\b(?:next|back) ${headline}(?: \\([^)]*\\))? ([\\d /.]+ ?[a-z-]+)`, 'i').exec(words);
  const read = found?.[1] === undefined ? null : parseQuantity(found[1], knob.unit);
  return read?.ok === true ? sign * read.value : null;
}

/** True where the list's cursor stands on this number already, so that pressing it changes nothing. */
export const isChosen = (live: Live | null, key: string): boolean => /^[1-9]$/.test(key) && (live?.lines.some((line) => line.startsWith(`  > ${key} `) && !line.startsWith(`  > ${key} [`)) ?? false);
