// What came of many whole tunes: shares as fractions of 1 with 95 % intervals, and the numbers of the bows of which something is wrong. Two axes of one bow
// count as two, so that intervals of axes are a little too narrow.

import type { Axis } from '../../../src/content/types.ts';
import { meanWithin, shareWithin, type Interval } from './interval.ts';
import { capRows, type CapRow } from './walk-cap-rows.ts';
import type { AxisEnd } from './walk-play.ts';
import { SOON } from './tally.ts';
import { isInTolerance, onAxis } from './walk-truth.ts';
import type { Played, RowName, Told } from './walk-work.ts';

type Shares<Name extends string> = Readonly<Record<Name, Interval>>;

const RESULTS = ['tuned', 'cannot', 'accepted', 'inconsistent'] as const;

export interface AnyRow {
  readonly axes: Shares<(typeof RESULTS)[number] | 'tunedButNot'>;
  /** Of axes: a larger mean tear as left than as found; larger than with nothing moved; outside of what is called tuned; and of bows, one axis or both. */
  readonly worse: Shares<'axis' | 'byMoves' | 'andOutside' | 'bow'>;
  readonly beyond: Interval;
  readonly beyondAsFound: Interval;
  /** Axes that nothing within the archer's reach can mend, by truth; and of these, ended as such. */
  readonly outOfReach: Shares<'of' | 'told'>;
  readonly broadheads: Shares<'shot' | 'inside' | 'calledOfShot' | 'insideOfCalled'>;
  readonly arrows: Shares<'soundAside' | 'badFound'>;
  readonly counts: Shares<'shots' | 'moves' | 'questions'>;
  readonly stops: Shares<'due' | 'wrong'>;
  readonly second: Readonly<Record<'known' | 'fresh', Shares<'shots' | 'moves' | 'questions' | 'tuned'>>> & { readonly savedShots: Interval; readonly savedMoves: Interval };
}

export interface WalkReport {
  readonly seeds: readonly number[];
  readonly bows: number;
  readonly any: AnyRow;
  /** Told within so many shots, and at all. */
  readonly unfixable: Interval;
  readonly unfixableEver: Interval;
  /** The same of axes whose adjustments answer too weakly inside their limits, and of those whose screws end too early. */
  readonly tooWeak: Interval;
  readonly tooWeakEver: Interval;
  readonly screwsEnd: Interval;
  readonly screwsEndEver: Interval;
  /** And of those only whose vanes touched at least twice before paper was done. */
  readonly contact: Interval;
  readonly contactTwice: Interval;
  readonly contactEver: Interval;
  readonly danger: Interval;
  readonly neverEnds: Interval;
  readonly caps: readonly CapRow[];
  /** Bows by their number, so that each can be played again. */
  readonly faults: Readonly<Record<'never' | 'refused' | 'wronglyStopped' | 'shotThoughDeadly' | 'worseByMoves' | 'unfixableMissed' | 'outOfReachMissed' | 'contactMissed', readonly string[]>>;
}

/** So much larger (in) is worse. */
const WORSE = 1 / 16;

export interface One { readonly tune: Told; readonly end: AxisEnd; readonly outOfReach: readonly Axis[] }

export function walkReport(seeds: readonly number[], bows: number, of: (row: RowName) => readonly Played[]): WalkReport {
  const rows = { any: of('any'), unfixable: of('unfixable'), beyond: of('beyond'), contact: of('contact'), danger: of('danger') };
  const [weak, ends] = [rows.beyond.filter(({ why }) => why === 'its limit comes first'), rows.beyond.filter(({ why }) => why === 'its travel ends first')];
  const all = Object.values(rows).flat();
  const everyTune = all.flatMap(({ tune, again }) => [tune, ...(again === null || again === undefined ? [] : [again.known, again.fresh])]);
  return {
    seeds, bows, any: anyRow(rows.any),
    unfixable: shareWithin(rows.unfixable, isFoundUnfixable),
    unfixableEver: shareWithin(rows.unfixable, isFoundEver),
    tooWeak: shareWithin(weak, isFoundUnfixable), tooWeakEver: shareWithin(weak, isFoundEver),
    screwsEnd: shareWithin(ends, isFoundUnfixable), screwsEndEver: shareWithin(ends, isFoundEver),
    contact: shareWithin(rows.contact, isFoundTouching),
    contactTwice: shareWithin(rows.contact.filter(({ tune }) => tune.touches > 1), isFoundTouching),
    contactEver: shareWithin(rows.contact, ({ tune }) => tune.causes.some(({ cause }) => cause === 'contact')),
    danger: shareWithin(rows.danger, isStoppedUnshot), neverEnds: shareWithin(everyTune, ({ end }) => end === 'never'),
    caps: capRows(of),
    faults: {
      never: everyTune.flatMap((tune) => (tune.end === 'never' ? [`${tune.number} at ${tune.why}`] : [])),
      refused: everyTune.flatMap((tune) => (tune.end === 'refused' ? [`${tune.number} at ${tune.why}`] : [])),
      wronglyStopped: rows.any.flatMap(({ tune, deadly }) => (tune.end === 'stopped' && !deadly ? [`${tune.number} after ${tune.shots} shots`] : [])),
      shotThoughDeadly: [...rows.any, ...rows.danger].flatMap((one) => (one.deadly && !isStoppedUnshot(one) ? [`${one.tune.number} ${one.tune.shots} shots`] : [])),
      worseByMoves: axesOf(rows.any).flatMap((one) => (isWorse(one) && isWorseByMoves(one) ? [storyOf(one)] : [])),
      unfixableMissed: missed(rows.unfixable), outOfReachMissed: missed(rows.beyond),
      contactMissed: rows.contact.flatMap((one) => (isFoundTouching(one) ? [] : [`${one.tune.number} touched ${one.tune.touches}: ${endsOf(one.tune)}`])),
    },
  };
}

function anyRow(played: readonly Played[]): AnyRow {
  const shot = played.filter(({ deadly }) => !deadly);
  const tunes = shot.map(({ tune }) => tune);
  const axes = axesOf(shot);
  const ended = (result: AxisEnd['result']): Interval => shareWithin(axes, ({ end }) => end.result === result);
  const withHeads = tunes.filter(({ broadheads }) => broadheads !== null);
  const sets = shot.filter(({ tune }) => tune.aside !== null);
  const bad = sets.flatMap((one) => one.bad.map((arrow) => ({ arrow, tune: one.tune })));
  const again = played.flatMap((one) => (one.again === null || one.again === undefined ? [] : [one.again]));
  return {
    axes: {
      tuned: ended('tuned'), cannot: ended('cannot'), accepted: ended('accepted'), inconsistent: ended('inconsistent'),
      tunedButNot: shareWithin(axes.filter(({ end }) => end.result === 'tuned'), isBeyond),
    },
    worse: {
      axis: shareWithin(axes, isWorse), byMoves: shareWithin(axes, (one) => isWorse(one) && isWorseByMoves(one)),
      andOutside: shareWithin(axes, (one) => isWorse(one) && isBeyond(one)), bow: shareWithin(tunes, (tune) => axesIn(tune).some(isWorse)),
    },
    beyond: shareWithin(axes, isBeyond), beyondAsFound: shareWithin(axes, ({ tune, end: { axis } }) => !isInTolerance(axis, tune.found)),
    outOfReach: {
      of: shareWithin(axes, isOutOfReach), told: shareWithin(axes.filter(isOutOfReach), ({ end }) => end.result === 'cannot'),
    },
    broadheads: {
      shot: shareWithin(tunes, ({ broadheads }) => broadheads !== null), inside: shareWithin(tunes, ({ broadheads }) => broadheads?.inside === true),
      calledOfShot: shareWithin(withHeads, ({ broadheads }) => broadheads?.called === true),
      insideOfCalled: shareWithin(withHeads.filter(({ broadheads }) => broadheads?.called === true), ({ broadheads }) => broadheads?.inside === true),
    },
    arrows: {
      soundAside: shareWithin(sets, (one) => (one.tune.aside ?? []).some((arrow) => !one.bad.includes(arrow))),
      badFound: shareWithin(bad, ({ arrow, tune }) => [...(tune.aside ?? []), ...tune.touched].includes(arrow)),
    },
    counts: countsOf(tunes),
    stops: {
      due: shareWithin(played.filter(({ deadly }) => deadly), isStoppedUnshot),
      wrong: shareWithin(tunes, ({ end }) => end === 'stopped'),
    },
    second: {
      known: secondOf(again.map(({ known }) => known)), fresh: secondOf(again.map(({ fresh }) => fresh)),
      savedShots: meanWithin(again, ({ known, fresh }) => fresh.shots - known.shots), savedMoves: meanWithin(again, ({ known, fresh }) => fresh.moves - known.moves),
    },
  };
}

const countsOf = (tunes: readonly Told[]): Shares<'shots' | 'moves' | 'questions'> =>
  ({ shots: meanWithin(tunes, ({ shots }) => shots), moves: meanWithin(tunes, ({ moves }) => moves), questions: meanWithin(tunes, ({ questions }) => questions) });

const secondOf = (tunes: readonly Told[]): Shares<'shots' | 'moves' | 'questions' | 'tuned'> =>
  ({ ...countsOf(tunes), tuned: shareWithin(tunes.flatMap((tune) => axesIn(tune)), ({ end }) => end.result === 'tuned') });

const axesIn = (tune: Told, outOfReach: readonly Axis[] = []): readonly One[] => tune.axes.map((end) => ({ tune, end, outOfReach }));
const axesOf = (played: readonly Played[]): readonly One[] => played.flatMap(({ tune, outOfReach }) => axesIn(tune, outOfReach));
const isOutOfReach = ({ outOfReach, end: { axis } }: One): boolean => outOfReach.includes(axis);

const sizes = ({ tune, end: { axis } }: One) => ({
  found: Math.abs(onAxis(axis, tune.found)), left: Math.abs(onAxis(axis, tune.left)), unmoved: Math.abs(onAxis(axis, tune.unmoved)),
});

function isWorse(one: One): boolean {
  const { found, left } = sizes(one);
  return left - found > WORSE;
}

function isWorseByMoves(one: One): boolean {
  const { left, unmoved } = sizes(one);
  return left - unmoved > WORSE;
}

const isBeyond = ({ tune, end: { axis } }: One): boolean => !isInTolerance(axis, tune.left);
const isStoppedUnshot = ({ tune: { end, shots } }: Played): boolean => end === 'stopped' && shots === 0;

const isFoundEver = ({ tune, unfixable }: Played): boolean => tune.axes.some(({ axis, result }) => axis === unfixable && result === 'cannot');
const missed = (row: readonly Played[]): readonly string[] =>
  row.flatMap((one) => (isFoundUnfixable(one) ? [] : [`${one.tune.number} ${one.unfixable ?? ''}: ${endsOf(one.tune)}`]));

const isFoundUnfixable = ({ tune, unfixable }: Played): boolean =>
  tune.axes.some(({ axis, result, shots }) => axis === unfixable && result === 'cannot' && shots <= SOON);

/** That something touches; or, where it was looked for and not seen, that the shots do not agree. */
const isFoundTouching = ({ tune: { axes, causes } }: Played): boolean =>
  causes.some(({ cause, shots }) => cause === 'contact' && shots <= SOON) || axes.some(({ result, shots }) => result === 'inconsistent' && shots <= SOON);

const inches = (tear: number): string => tear.toFixed(2);
function storyOf({ tune, end: { axis, result } }: One): string {
  return `${tune.number} ${axis} ${result ?? 'no end'}: found ${inches(onAxis(axis, tune.found))}, left ${inches(onAxis(axis, tune.left))}, unmoved ${inches(onAxis(axis, tune.unmoved))}; moved ${tune.moved.join(' ')}`;
}
const endsOf = ({ axes, causes }: Told): string =>
  [...axes.map(({ axis, result, shots }) => `${axis} ${result ?? 'no end'} after ${shots}`), ...causes.map(({ cause, shots }) => `${cause} at ${shots}`)].join(', ');
