// How far an adjustment may go. The table is the outer bound of common practice: content may be stricter, never looser.

import { error } from '../problem.ts';
import type { Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import { AXES, type Content, type Knob, type KnobId } from '../types.ts';
import type { Unit } from '../../maths/units.ts';

interface Bound {
  readonly unit: Unit;
  readonly first: number;
  /** Only beyond `over` inches of tear, and then at most `step`. */
  readonly far?: { readonly over: number; readonly step: number };
  readonly later: number;
  readonly soft: number;
  readonly hard: number;
  readonly smallest: number;
  /** A side that is wrong less often than this is not known to anyone: it decides what is announced as a trial. */
  readonly wrongSign: number;
  /** How often it does nothing at all, at least. */
  readonly dead: number;
}

// Common practice. A twist is two half-twists; a yoke's pair is one half-twist in and one out. Where only the end of a set or the
// maker's range bounds a travel, the figures are what is tried before a shop is asked. The nock's hard limit is a place, not a
// travel (never below level, never over 1/4 in above it): the machine holds it against the measured height.
const BOUNDS: Readonly<Record<KnobId, Bound>> = {
  'rest-height': { unit: 'in', first: 1 / 32, far: { over: 3 / 4, step: 1 / 16 }, later: 1 / 16, soft: 1 / 16, hard: 1 / 8, smallest: 1 / 64, wrongSign: 0.03, dead: 0.1 },
  'nock-height': { unit: 'in', first: 1 / 32, later: 1 / 32, soft: 1 / 16, hard: 1 / 4, smallest: 1 / 32, wrongSign: 0.03, dead: 0.1 },
  'rest-side': { unit: 'in', first: 1 / 32, later: 1 / 32, soft: 1 / 16, hard: 1 / 8, smallest: 1 / 64, wrongSign: 0.35, dead: 0.2 },
  'yoke': { unit: 'half-twist-pair', first: 1, far: { over: 1 / 2, step: 2 }, later: 2, soft: 4, hard: 6, smallest: 1, wrongSign: 0.1, dead: 0.1 },
  'cam-spacers': { unit: 'size', first: 1, later: 1, soft: 2, hard: 3, smallest: 1, wrongSign: 0.45, dead: 0.2 },
  'cam-screw': { unit: 'turn', first: 1 / 4, later: 1 / 2, soft: 1, hard: 3 / 2, smallest: 1 / 4, wrongSign: 0.4, dead: 0.2 },
  'cam-sync': { unit: 'half-twist', first: 1, later: 1, soft: 2, hard: 2, smallest: 1, wrongSign: 0.5, dead: 0.2 },
  'limb-bolts': { unit: 'turn', first: 1 / 4, later: 1 / 2, soft: 1 / 2, hard: 1, smallest: 1 / 4, wrongSign: 0.4, dead: 0.4 },
  // About half a step of shaft stiffness.
  'point-weight': { unit: 'gr', first: 25, later: 25, soft: 25, hard: 50, smallest: 25, wrongSign: 0.4, dead: 0.4 },
  'drop-cord': { unit: 'in', first: 1 / 4, later: 1 / 4, soft: 1 / 4, hard: 1 / 2, smallest: 1 / 4, wrongSign: 0.4, dead: 0.4 },
};

export function limits(content: Content, where: Where): Problem[] {
  return [
    ...tuned(content, where),
    ...Object.values(content.knobs).flatMap((knob) => [...order(knob, where), ...bounds(knob, where)]),
    ...rungs(content, where),
  ];
}

// Common practice: gravity alone reads a little low, and a little high is safe for the vanes.
const TUNED: Content['tolerance'] = { height: { low: -1 / 8, high: 1 / 4 }, side: { low: -1 / 4, high: 1 / 4 } };

function tuned({ tolerance }: Content, where: Where): Problem[] {
  return AXES.flatMap((axis) => {
    const { low, high } = tolerance[axis];
    const found: Problem[] = [];
    if (!(low < high)) found.push(error(where(['tolerance', axis]), `tuned on the axis "${axis}" goes from ${low} to ${high} in; the lower end comes first`));
    if (low < TUNED[axis].low) found.push(error(where(['tolerance', axis, 'low']), `tuned on the axis "${axis}" begins at ${low} in; common practice is ${TUNED[axis].low} at the least`));
    if (high > TUNED[axis].high) found.push(error(where(['tolerance', axis, 'high']), `tuned on the axis "${axis}" ends at ${high} in; common practice is ${TUNED[axis].high} at the most`));
    return found;
  });
}

const at = (knob: Knob, key: string, where: Where) => where(['knobs', knob.id, key]);

function order(knob: Knob, where: Where): Problem[] {
  const pairs = [['smallest', 'first'], ['first', 'soft'], ['later', 'soft'], ['soft', 'hard']] as const;
  const found = pairs.flatMap(([low, high]) => (knob[low] <= knob[high] ? []
    : [error(at(knob, low, where), `${low} ${knob[low]} of "${knob.id}" is more than ${high} ${knob[high]}; mend one of them`)]));
  if (!(knob.smallest > 0)) found.push(error(at(knob, 'smallest', where), `smallest of "${knob.id}" is ${knob.smallest}; write a step above 0`));
  if (knob.firstWhenFar && knob.firstWhenFar.step > knob.soft) {
    found.push(error(at(knob, 'firstWhenFar', where), `firstWhenFar.step ${knob.firstWhenFar.step} of "${knob.id}" is more than soft ${knob.soft}; mend one of them`));
  }
  for (const key of ['wrongSign', 'dead'] as const) {
    if (knob[key] < 0 || knob[key] > 1) found.push(error(at(knob, key, where), `${key} of "${knob.id}" is ${knob[key]}; a chance lies between 0 and 1`));
  }
  if (knob.plus === knob.minus) found.push(error(at(knob, 'minus', where), `plus and minus of "${knob.id}" are both ${knob.plus}; write the opposite`));
  for (const [index, row] of knob.books.entries()) {
    if (!(row.per > 0)) found.push(error(where(['knobs', knob.id, 'books', index, 'per']), `per ${row.per} of this row of "${knob.id}" is nothing; write how much was turned, above 0`));
  }
  if (knob.book && !(knob.book.per > 0)) found.push(error(at(knob, 'book', where), `book.per of "${knob.id}" is ${knob.book.per}; write how much was turned, above 0`));
  return found;
}

function bounds(knob: Knob, where: Where): Problem[] {
  const bound = BOUNDS[knob.id];
  if (knob.unit !== bound.unit) {
    return [error(at(knob, 'unit', where), `the limits of "${knob.id}" are known in ${bound.unit}, not in ${knob.unit}; write unit: ${bound.unit}`)];
  }
  const found: Problem[] = [];
  const atMost = (key: string, value: number, most: number): void => {
    if (value > most) found.push(error(at(knob, key.split('.')[0] ?? key, where), `${key} ${value} of "${knob.id}" is looser than common practice; write at most ${most}`));
  };
  const atLeast = (key: 'smallest' | 'wrongSign' | 'dead', least: number): void => {
    if (knob[key] < least) found.push(error(at(knob, key, where), `${key} ${knob[key]} of "${knob.id}" promises more than is known; write at least ${least}`));
  };
  atMost('first', knob.first, bound.first);
  atMost('later', knob.later, bound.later);
  atMost('soft', knob.soft, bound.soft);
  atMost('hard', knob.hard, bound.hard);
  atLeast('smallest', bound.smallest);
  atLeast('wrongSign', bound.wrongSign);
  atLeast('dead', bound.dead);
  if (knob.firstWhenFar) {
    atMost('firstWhenFar.step', knob.firstWhenFar.step, bound.far?.step ?? bound.first);
    if (bound.far && knob.firstWhenFar.over < bound.far.over) {
      found.push(error(at(knob, 'firstWhenFar', where), `firstWhenFar.over ${knob.firstWhenFar.over} of "${knob.id}" is looser than common practice; write at least ${bound.far.over}`));
    }
  }
  return found;
}

function rungs(content: Content, where: Where): Problem[] {
  return content.ladders.flatMap((rule, r) => rule.rungs.flatMap((rung, index) => {
    const knob = content.knobs[rung.knob];
    const found: Problem[] = [];
    if (rung.soft !== undefined && rung.soft > knob.hard) {
      found.push(error(where(['ladders', r, 'rungs', index, 'soft']), `soft ${rung.soft} of this rung is more than hard ${knob.hard} of "${knob.id}"; write at most that`));
    }
    if (knob.axis !== rule.axis) {
      found.push(error(where(['ladders', r, 'rungs', index, 'knob']), `"${knob.id}" works on ${knob.axis}, and this ladder is for ${rule.axis}; take another`));
    }
    return found;
  }));
}
