// The few words that belong to the screen itself. Words of the trade come with the view.

import type { Changed, KnobId, ShotPlan, Tear } from '../machine/types.ts';
import type { Direction } from '../content/types.ts';
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

/** What is shot now, in one line. */
export const shotWords = (plan: ShotPlan): string => {
  const { taken, wanted } = plan.shots;
  const parts = [
    wanted > 0 ? `shot ${taken + 1} of ${Math.max(wanted, taken + 1)}` : `shot ${taken + 1}`,
    formatQuantity(plan.distance),
    plan.arrow === null ? 'any tuning arrow' : `arrow ${plan.arrow}`,
    ...(plan.shaft === 'unfletched' ? ['no fletching'] : []),
    ...(plan.head === 'broadhead' ? ['broadhead'] : []),
    ...(plan.nockTurn === 0 ? [] : [`nock turn ${plan.nockTurn}`]),
  ];
  return parts.join(', ');
};

/** Units as they are said aloud; the others have no short form. '' for a count. */
const SAID: Partial<Record<Unit, string>> = { in: 'inches', lb: 'pounds', gr: 'grains', ft: 'feet' };
export const saidUnit = (unit: Unit): string => SAID[unit] ?? unitWord(unit, 2);

/** Adjustments as a person would name them, and the two ways each can go. */
export const KNOB_WORDS: Readonly<Record<KnobId, { readonly name: string; readonly ways: readonly (readonly [Direction, string])[] }>> = {
  'rest-height': { name: 'the rest, up and down', ways: [['up', 'up'], ['down', 'down']] },
  'rest-side': { name: 'the rest, sideways', ways: [['left', 'to the left'], ['right', 'to the right']] },
  'nock-height': { name: 'the nocking point, up and down', ways: [['up', 'up'], ['down', 'down']] },
  'yoke': { name: 'the yoke legs', ways: [['left', 'twists into the left leg, out of the right'], ['right', 'twists into the right leg, out of the left']] },
  'cam-spacers': { name: 'the cam spacers', ways: [['left', 'both cams to the left'], ['right', 'both cams to the right']] },
  'cam-screw': { name: 'the cams\' side screws', ways: [['left', 'both cams to the left'], ['right', 'both cams to the right']] },
  'cam-sync': { name: 'the timing of the cams', ways: [['add', 'twists added'], ['remove', 'twists taken out']] },
  'limb-bolts': { name: 'both limb bolts', ways: [['in', 'turned in'], ['out', 'turned out']] },
  'point-weight': { name: 'the weight of the points', ways: [['add', 'heavier'], ['remove', 'lighter']] },
  'drop-cord': { name: 'the cord of the drop-away rest', ways: [['add', 'longer'], ['remove', 'shorter']] },
};

export const CHANGED_WORDS: Readonly<Record<Changed, string>> = {
  string: 'the string or a cable was replaced',
  rest: 'the rest was replaced',
  arrow: 'an arrow was replaced or set aside',
  release: 'another release aid',
  loop: 'the loop was tied anew',
  sight: 'the sight was moved',
  fell: 'the bow fell, was hit, or lay in heat',
  other: 'something else',
};

export const HOW_TO_GO_ON = 'all is kept; go on with: quarterturn';
export const HOW_TO_SEE_AGAIN = 'all is kept; the record again: quarterturn record';
