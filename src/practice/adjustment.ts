// The truth about one adjustment of a practice bow: where it should stand, which way and how strongly it works, how far it goes, how much
// play it has. What the book says comes from content, and how far a bow may be from its book is said here.

import type { BookRow, Knob, KnobId } from '../content/types.ts';
import type { Random } from '../maths/random.ts';
import { happens, logNormal } from './chance.ts';
import { mirroredPush, TEAR_PER_INCH, type Push } from './departure.ts';
import type { Hardware } from './hardware.ts';
import { OFTEN } from './often.ts';

export const WORKS = ['as the book says', 'the other way', 'not at all'] as const;
export type Works = (typeof WORKS)[number];

/** Settings are against how the bow was found, in the adjustment's own unit: what the ledger shows. */
export type Settings = Readonly<Partial<Record<KnobId, number>>>;

/** From and to, in an adjustment's unit, from as found. */
export interface Span { readonly low: number; readonly high: number }

export interface Adjustment {
  /** The setting at which it pushes no arrow aside. 0: it was right as found. */
  readonly optimum: number;
  readonly works: Works;
  /** What one unit of it does, inches of rest: on its own axis, and a little on the other. */
  readonly worth: Push;
  /** What the hardware allows, from as found. */
  readonly travel: Span;
  /** Content's: nobody is sent farther each way, whatever would come of it. */
  readonly limit: number;
  /** Only in a press. */
  readonly press: boolean;
  /** How far it may end from where it was set, one standard deviation, in its unit. */
  readonly play: number;
  /** Others that it takes along, each in its own unit for a unit of this one. */
  readonly carries: Settings;
  /** The least that can be set, in its unit. */
  readonly step: number;
}

/** The strength of a bow's answer against the book: log-normal with a median of 1. Nine bows in ten lie within a factor of 2.5 (assumed). */
export const GAIN_SPREAD = 0.55;
/** Half of all responses of a normal spread are smaller than this share of its standard deviation: how strong an answer is where no book says. */
const MEDIAN_OF_NORMAL = 0.6745;
/** What an adjustment does on the axis that it is not made for, as a share of what it does on its own (assumed). */
const CROSS_TALK = 0.06;

/** What the book says of this adjustment on such a bow: as the coach looks it up. */
export const bookOf = (knob: Knob, { cams, rest }: Pick<Hardware, 'cams' | 'rest'>): Pick<BookRow, 'wrongSign' | 'dead'> & { readonly perUnit: number | null } => {
  const row = knob.books.find((one) => (one.cams === 'any' || one.cams.includes(cams)) && (one.rest === 'any' || one.rest.includes(rest)));
  const book = row ?? knob.book;
  return { wrongSign: (row ?? knob).wrongSign, dead: (row ?? knob).dead, perUnit: book === null ? null : book.change / book.per };
};

/** An adjustment as it comes, right as found. `forced` says how it works where that is not left to chance; `gain` how strongly. */
export function adjustmentBy(chance: Random, knob: Knob, hardware: Hardware, forced: { readonly works?: Works; readonly gain?: number } = {}): Adjustment {
  const book = bookOf(knob, hardware);
  // All draws are made whatever is forced: another lesson on the same seed is the same bow otherwise.
  const [dead, wrong] = [happens(chance, book.dead), happens(chance, book.wrongSign)];
  const gain = logNormal(chance, 1, GAIN_SPREAD);
  const [across, turned] = [CROSS_TALK * chance.normal(), 2 * Math.PI * chance.uniform()];
  const [low, high] = [roomIn(knob, chance), roomIn(knob, chance)];
  const works = forced.works ?? (dead ? 'not at all' : wrong ? 'the other way' : 'as the book says');
  const bookWorth = -(book.perUnit ?? -knob.plausible * MEDIAN_OF_NORMAL) / TEAR_PER_INCH;
  const own = works === 'not at all' ? 0 : bookWorth * (forced.gain ?? gain) * (works === 'the other way' ? -1 : 1);
  return {
    optimum: 0, works, worth: onAxis(knob, own, across * own, turned),
    travel: { low: -low, high }, limit: knob.hard, press: knob.press, play: knob.smallest * PLAY * (isRest(knob.id) && hardware.restScale === 'coarse' ? 2 : 1),
    carries: knob.id === 'yoke' ? twisted(chance) : {}, step: knob.smallest,
  };
}

// Bolts change how stiff a shaft acts, and push it whichever way it bends on this bow.
function onAxis(knob: Knob, own: number, across: number, turned: number): Push {
  switch (knob.axis) {
    case 'height': return { x: across, y: own };
    case 'side': return { x: own, y: across };
    case 'none': return { x: own * Math.cos(turned), y: own * Math.sin(turned) };
  }
}

const isRest = (id: KnobId): boolean => id === 'rest-height' || id === 'rest-side';

/** A setting ends within a quarter of the smallest step of where it was meant, two times in three (assumed). */
const PLAY = 1 / 4;

/** Twice the coach's limit where all is free; now and then the bow comes with a screw near its end. */
const roomIn = (knob: Knob, chance: Random): number => knob.hard * (happens(chance, OFTEN.bow.nearItsEnd) ? 1 / 2 : 2);

/** A twist of the yoke shortens a cable a little more than it lengthens the other: timing and nock follow (assumed sizes: a tenth of a half twist, 1/250 in). */
const twisted = (chance: Random): Settings => ({ 'cam-sync': 0.1 * chance.normal(), 'nock-height': 0.004 * chance.normal() });

/** Seen in a mirror. An adjustment that moves sideways goes to the other side; one that moves up and down keeps its way. */
export function mirroredAdjustment(one: Adjustment, sideways: boolean): Adjustment {
  if (!sideways) return { ...one, worth: mirroredPush(one.worth) };
  const carries = Object.fromEntries(Object.entries(one.carries).map(([id, share]) => [id, -share]));
  // One unit to the right in the mirror is one to the left here: on its own axis it does the same, on the other the opposite.
  return { ...one, optimum: 0 - one.optimum, worth: { x: one.worth.x, y: -one.worth.y }, travel: { low: -one.travel.high, high: -one.travel.low }, carries };
}
