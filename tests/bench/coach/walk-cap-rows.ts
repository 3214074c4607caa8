// What each cap of content costs and prevents: the same bows with the same luck, as shipped and with that cap lifted. Every difference has its 95 % interval.

import { meanWithin, shareWithin, type Interval } from './interval.ts';
import { CAP_NAMES, CAPS, kindOf, type CapName, type Kind } from './walk-caps.ts';
import { isInTolerance, onAxis } from './walk-truth.ts';
import type { Played, RowName } from './walk-work.ts';

/** Shots and moves at paper, of both axes; all others of the axis that the adjustment is made for, 1 or 0. */
export const CAP_FIGURES = ['shots', 'moves', 'tuned', 'excursion', 'worse', 'outside'] as const;
type Figure = (typeof CAP_FIGURES)[number];
type Figures = Readonly<Record<Figure, Interval>>;

export interface CapRow {
  readonly name: CapName;
  readonly kind: Kind;
  /** As shipped, and how much more it is with the cap lifted. */
  readonly shipped: Figures;
  readonly lifted: Figures;
}

export const isCount = (figure: Figure): boolean => figure === 'shots' || figure === 'moves';
const shareWithin01 = <T>(all: readonly T[], value: (one: T) => number): Interval => shareWithin(all, (one) => value(one) === 1);

/** So much larger (in) than found is worse. */
const WORSE = 1 / 16;

export const capRows = (of: (row: RowName) => readonly Played[]): readonly CapRow[] => CAP_NAMES.map((name) => {
  const kind = kindOf(name);
  const axis = CAPS[name].axis;
  const lifted = new Map(of(name).map((one) => [one.tune.number, one]));
  const pairs = of(kind).flatMap((before) => {
    const after = lifted.get(before.tune.number);
    return after === undefined ? [] : [{ before, after }];
  });
  const all = (count: (figure: Figure) => Interval): Figures =>
    ({ shots: count('shots'), moves: count('moves'), tuned: count('tuned'), excursion: count('excursion'), worse: count('worse'), outside: count('outside') });
  return {
    name, kind,
    shipped: all((figure) => (isCount(figure) ? meanWithin : shareWithin01)(pairs, ({ before }) => valueOf(figure, axis, before))),
    lifted: all((figure) => meanWithin(pairs, ({ before, after }) => valueOf(figure, axis, after) - valueOf(figure, axis, before))),
  };
});

function valueOf(figure: Figure, axis: 'height' | 'side', { tune }: Played): number {
  switch (figure) {
    case 'shots': return tune.shots;
    case 'moves': return tune.moves;
    case 'tuned': return Number(tune.axes.some((one) => one.axis === axis && one.result === 'tuned'));
    case 'excursion': return Number(tune.excursions.includes(axis));
    case 'worse': return Number(Math.abs(onAxis(axis, tune.left)) - Math.abs(onAxis(axis, tune.unmoved)) > WORSE);
    case 'outside': return Number(!isInTolerance(axis, tune.left));
  }
}
