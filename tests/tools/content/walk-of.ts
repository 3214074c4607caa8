// What the map shows, taken from the content: every step at its home, and every list that asks it again.

import type { Content, Step } from '../../../src/content/types.ts';
import { walkMap } from '../pages/walk-map.ts';
import { broken } from './broken.ts';

export interface StepLine {
  readonly id: string;
  readonly short: string;
  readonly kind: string;
  readonly pause: string;
  readonly effect: string;
  /** What is special of it: on demand, its named conditions. */
  readonly marks: readonly string[];
  /** Of a chunk: `limb-bolts (when adult)`. */
  readonly checks: readonly string[];
}
export interface BlockPart { readonly id: string; readonly title: string; readonly steps: readonly StepLine[] }
export interface ChapterPart { readonly id: string; readonly title: string; readonly blocks: readonly BlockPart[] }
/** One line of a list: what it is about, and the ids in their order. */
export interface Row { readonly name: string; readonly ids: readonly string[]; readonly note: string }

export interface Walk {
  readonly chapters: readonly ChapterPart[];
  /** Steps that stand in no block: an adjustment, a list or the machine asks them. */
  readonly elsewhere: readonly StepLine[];
  readonly again: readonly Row[];
  readonly needs: readonly Row[];
  readonly ladders: readonly Row[];
  /** The machine's own places, as lines of at most 80 columns. */
  readonly places: readonly string[];
}

const conditions = (when: readonly string[]): string[] => (when.length > 0 ? [`when ${when.join(' and ')}`] : []);

const lineOf = (step: Step): StepLine => ({
  id: step.id, short: step.short, kind: step.kind, pause: step.pause, effect: step.effect,
  marks: [...(step.onDemand ? ['on demand'] : []), ...(step.everyTune ? ['every tune'] : []), ...(step.unknown ? ['may be not known'] : []), ...conditions(step.when)],
  checks: step.kind === 'chunk' ? step.checks.map((one) => [one.id, ...conditions(one.when).map((words) => `(${words})`)].join(' ')) : [],
});

const listed = (given: readonly string[] | 'any', any: string): string => (given === 'any' ? any : given.join(' or '));

export function walkOf(content: Content): Walk {
  const line = (id: string): StepLine[] => { const step = content.steps[id]; return step === undefined ? [] : [lineOf(step)]; };
  const chapters = content.chapters.map((chapter) => ({
    id: chapter.id, title: chapter.title, blocks: chapter.blocks.map((block) => ({ id: block.id, title: block.title, steps: block.steps.flatMap(line) })),
  }));
  const placed = new Set(content.chapters.flatMap((chapter) => chapter.blocks.flatMap((block) => block.steps)));
  return {
    chapters,
    elsewhere: Object.keys(content.steps).filter((id) => !placed.has(id)).flatMap(line),
    again: Object.entries(content.rechecks).map(([name, ids]) => ({ name, ids, note: '' })),
    needs: Object.values(content.knobs).map((knob) => ({ name: knob.id, ids: knob.needs, note: [`asks again "${knob.trigger}"`, ...(knob.press ? ['in a press'] : []), ...knob.cautions.map((id) => `caution ${id}`)].join(', ') })),
    ladders: content.ladders.map((rule) => ({
      name: `${rule.axis}: ${listed(rule.cams, 'any cams')}; press: ${listed(rule.press, 'any')}`, ids: [...rule.rungs.map((one) => one.knob), 'shop'], note: '',
    })),
    places: walkMap().split('\n').flatMap((text) => narrowed(text)),
  };
}

/** A line of the machine's map is up to 100 columns wide; what is too much goes on under the words, not under the name. */
function narrowed(text: string): string[] {
  const label = /^ *\S.*?  +(?=\S)|^ +/.exec(text)?.[0] ?? '';
  return broken(label, text.slice(label.length), label.length);
}
