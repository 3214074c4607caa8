// The few words that belong to the screen itself. Words of the trade come with the view.

import type { Changed, KnobId, Ledger, ShotPlan, Tear } from '../machine/types.ts';
import { KNOBS, type Direction } from '../content/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { unitWord } from '../maths/unit-words.ts';
import type { Unit } from '../maths/units.ts';

const along = (value: number, plus: string, minus: string): string => `${formatQuantity({ value: Math.abs(value), unit: 'in' })} ${value < 0 ? minus : plus}`;

/** A tear in words: `the tail is 1/2 in high, 1/8 in left of the point`. */
export const formatTail = ({ x, y }: Tear): string => {
  if (x === 0 && y === 0) return 'a clean hole: the tail went where the point did';
  if (x === 0) return `the tail is ${along(y, 'high', 'low')}, level sideways with the point`;
  if (y === 0) return `the tail is ${along(x, 'right', 'left')} of the point, level up and down`;
  return `the tail is ${along(y, 'high', 'low')}, ${along(x, 'right', 'left')} of the point`;
};

/** `1/2 in high, 1/8 in left`; a side that is right on the spot is left out. */
const figures = ({ x, y }: Tear): string => [...(y === 0 ? [] : [along(y, 'high', 'low')]), ...(x === 0 ? [] : [along(x, 'right', 'left')])].join(', ');

/** Where an arrow landed, from the dot that it was aimed at. */
export const formatImpact = (at: Tear): string => {
  if (at.x === 0) return at.y === 0 ? 'on its dot' : `${along(at.y, 'above', 'below')} its dot`;
  return `${figures(at)} of its dot`;
};
export const impactFigures = (at: Tear): string => (at.x === 0 && at.y === 0 ? 'on the dot' : figures(at));

/** A figure that is worked out and lies on no mark of a tape: `0.47 in high, 0.40 in left`. */
export const decimals = (at: Tear): string => worked(at, ['high', 'low'], ', ') || 'right on it';
/** The same from another spot: `0.50 in below and 0.10 in left of`; `right on` where there is no difference to speak of. */
export const decimalsFrom = ({ x, y }: Tear): string => {
  const words = worked({ x, y }, ['above', 'below'], ' and ');
  if (words === '') return 'right on';
  return Math.abs(x) < SPECK ? words : `${words} of`;
};
const SPECK = 0.005;
const worked = ({ x, y }: Tear, [up, down]: readonly [string, string], and: string): string => [
  ...(Math.abs(y) < SPECK ? [] : [`${Math.abs(y).toFixed(2)} in ${y < 0 ? down : up}`]),
  ...(Math.abs(x) < SPECK ? [] : [`${Math.abs(x).toFixed(2)} in ${x < 0 ? 'left' : 'right'}`]),
].join(and);
export const sideways = (x: number): string => (Math.abs(x) < SPECK ? 'on the line' : `${Math.abs(x).toFixed(2)} in ${x < 0 ? 'left' : 'right'}`);

/** The arrow that is shot now, where it is not simply any tuning arrow at paper. */
export const shotWords = (ask: ShotPlan & { readonly kind: 'tear' | 'impact' }): readonly string[] => [
  ...(ask.arrow === null ? [] : [`arrow ${ask.arrow}`]),
  ...(ask.shaft === 'unfletched' ? ['unfletched (no vanes)'] : []),
  ...(ask.head === 'broadhead' ? ['broadhead'] : []),
  ...(ask.kind === 'impact' && ask.shaft === 'fletched' && ask.head === 'field' ? ['fletched, field point'] : []),
  ...(ask.nockTurn === 0 ? [] : [`nock turned by ${ask.nockTurn} ${ask.nockTurn === 1 ? 'vane' : 'vanes'}`]),
  ...(ask.kind === 'impact' ? [formatQuantity(ask.distance)] : []),
];

/** Units as they are said aloud; the others have no short form. '' for a count. */
const SAID: Partial<Record<Unit, string>> = { in: 'inches', lb: 'pounds', gr: 'grains', ft: 'feet', 'gr/in': 'grains an inch', fps: 'feet a second' };
export const saidUnit = (unit: Unit): string => SAID[unit] ?? unitWord(unit, 2);

interface KnobWords {
  readonly name: string;
  /** The way that counts as plus, then the other one. */
  readonly ways: readonly [readonly [Direction, string], readonly [Direction, string]];
  /** An amount as it may be typed. */
  readonly like: string;
}

/** Adjustments as a person would name them, and the two ways each can go. */
export const KNOB_WORDS: Readonly<Record<KnobId, KnobWords>> = {
  'rest-height': { name: 'the rest, up and down', ways: [['up', 'up'], ['down', 'down']], like: '1/32 in' },
  'rest-side': { name: 'the rest, sideways', ways: [['right', 'to the right'], ['left', 'to the left']], like: '1/32 in' },
  'nock-height': { name: 'the nocking point, up and down', ways: [['up', 'up'], ['down', 'down']], like: '1/32 in' },
  'yoke': { name: 'the yoke legs', ways: [['right', 'into the right leg, out of the left'], ['left', 'into the left leg, out of the right']], like: '1 half-twist pair' },
  'cam-spacers': { name: 'the cam spacers', ways: [['right', 'both cams to the right'], ['left', 'both cams to the left']], like: '1 size' },
  'cam-screw': { name: 'the cams\' side screws', ways: [['right', 'both cams to the right'], ['left', 'both cams to the left']], like: '1/4 turn' },
  'cam-sync': { name: 'the timing of the cams', ways: [['add', 'added to the cable'], ['remove', 'taken out of the cable']], like: '1 half-twist' },
  'limb-bolts': { name: 'both limb bolts', ways: [['in', 'in'], ['out', 'out']], like: '1/4 turn' },
  'point-weight': { name: 'the weight of the points', ways: [['add', 'heavier'], ['remove', 'lighter']], like: '25 gr' },
  'drop-cord': { name: 'the cord of the drop-away rest', ways: [['add', 'longer'], ['remove', 'shorter']], like: '1/16 in' },
};

/** What a bow is set to against the baseline, an adjustment each: `the rest, up and down: 1/32 in up`. */
export const ledgerWords = (bow: Ledger): string[] => KNOBS.flatMap((knob) => {
  const setting = bow[knob];
  if (setting === undefined || setting.value === 0) return [];
  const { name, ways: [plus, minus] } = KNOB_WORDS[knob];
  return [`${name}: ${formatQuantity({ ...setting, value: Math.abs(setting.value) })} ${(setting.value > 0 ? plus : minus)[1]}`];
});

export const CHANGED_WORDS: Readonly<Record<Changed, string>> = {
  string: 'the string or a cable was replaced',
  rest: 'the rest was replaced',
  arrow: 'an arrow was replaced or set aside',
  release: 'I shoot with another release aid',
  loop: 'the loop was tied anew',
  sight: 'the sight was moved',
  fell: 'the bow fell, was hit, or lay in heat',
  other: 'something else',
  place: 'I shoot at another place, or the target was moved',
};

export const HOW_TO_GO_ON = 'all is kept; go on with: quarterturn';
export const HOW_TO_GO_ON_PRACTISING = 'this was practice; all is kept; go on with: quarterturn practice';
export const HOW_TO_SEE_PRACTICE = 'this was practice; the debrief again: quarterturn practice debrief';
export const HOW_TO_SEE_AGAIN = 'all is kept; the record again: quarterturn record';
