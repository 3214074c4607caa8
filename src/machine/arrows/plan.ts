// Which arrow is shot next. Worked out from the shots so far, so that a shot that was called bad or missed is simply
// still to be made, and a correction changes the rest of the plan by itself.

import { carriedPrior, type Spread } from '../../archery/spread.ts';
import { thirdRoundTells } from '../../archery/third-round.ts';
import { median } from '../../maths/sum.ts';
import { paperSpreadOf } from '../loop/evidence.ts';
import { currentSet } from '../loop/sets.ts';
import type { ShotTag } from '../notes.ts';
import { once } from '../../maths/once.ts';
import type { State } from '../state.ts';
import type { Tear } from '../types.ts';
import { arrowsInPlay, mendingShots, references, roundShots, type ArrowShot } from './shots.ts';

/** Good shots of every arrow at the most, one in each round. */
export const ROUNDS = 3;
/** Rounds after which an arrow may be judged, where a third would hardly tell more. */
export const FEWEST_ROUNDS = 2;
/** Good shots of an arrow after each change of it. */
export const AFTER_CHANGE = 2;
/** At the most so many other arrows between two references (common practice: 4 to 6). */
const MOST_BETWEEN = 5;
/** Suspects are shot again closer to a reference: at most two of them in between. */
const MOST_SUSPECTS_BETWEEN = 2;
/** An arrow nearer to the typical one than this (in) does not stand out (common practice). */
const NEAR = 1 / 4;

/** How far from the typical arrow one may be: 1/4 in, or two spreads where the archer's spread is wider. */
export const nearEnough = (state: State): number => Math.max(NEAR, 2 * paperSpreadOf(state).sd);

/** Where the rounds stand; `again` shoots the arrows that stood out in the first round twice more, at once. */
export type Stage =
  | { readonly kind: 'round'; readonly round: number }
  | { readonly kind: 'again'; readonly arrows: readonly string[] }
  | { readonly kind: 'shot' };

interface Wanted { readonly arrow: string; readonly turn: number; readonly reference: boolean }

/** Whether the third round is to be shot; null while that cannot be told yet. */
type Third = () => boolean | null;

export function stageOf(rounds: Rounds, shots: readonly ArrowShot[], third: Third = () => tellsMore(rounds, shots)): Stage {
  const { play, near } = rounds;
  const count = counter(shots);
  const round = play.reduce((least, arrow) => Math.min(least, count(arrow)), ROUNDS) + 1;
  if (round === 1) return { kind: 'round', round };
  const suspects = standOutAtOnce(play, shots, near);
  if (suspects.some((arrow) => count(arrow) < ROUNDS)) return { kind: 'again', arrows: suspects };
  return round > ROUNDS || (round > FEWEST_ROUNDS && third() !== true) ? { kind: 'shot' } : { kind: 'round', round };
}

// By the shots of the first two rounds alone, and those that were shot again after the first: a round that is begun is shot to its end.
function tellsMore({ play, near, usual }: Rounds, shots: readonly ArrowShot[]): boolean | null {
  const suspects = standOutAtOnce(play, shots, near);
  const set = play.map((arrow) => {
    const own = shots.filter((shot) => shot.good && shot.arrow === arrow).slice(0, suspects.includes(arrow) ? ROUNDS : FEWEST_ROUNDS);
    return { arrow, shots: own.flatMap(({ tear }) => (tear === null ? [] : [tear])) };
  });
  return set.length === 0 || set.some((one) => one.shots.length < FEWEST_ROUNDS) ? null : thirdRoundTells(set, carriedPrior(usual));
}

/** Arrows whose first shot lies further than `near` (in) from the middle of all first shots. */
export function standOutAtOnce(play: readonly string[], shots: readonly ArrowShot[], near: number): readonly string[] {
  const earliest = new Map<string, Tear | null>();
  for (const shot of shots) if (shot.good && !earliest.has(shot.arrow)) earliest.set(shot.arrow, shot.tear);
  const first = play.flatMap((arrow) => {
    const tear = earliest.get(arrow) ?? null;
    return tear === null ? [] : [{ arrow, tear }];
  });
  if (first.length === 0) return [];
  const middle: Tear = { x: median(first.map(({ tear }) => tear.x)), y: median(first.map(({ tear }) => tear.y)) };
  return first.filter(({ tear }) => Math.hypot(tear.x - middle.x, tear.y - middle.y) > near + 1e-9).map(({ arrow }) => arrow);
}

function counter(shots: readonly ArrowShot[]): Count {
  const counts = new Map<string, number>();
  for (const { arrow, good } of shots) if (good) counts.set(arrow, (counts.get(arrow) ?? 0) + 1);
  return (arrow) => counts.get(arrow) ?? 0;
}

/** Shots since the last good one of a reference in this sitting: every sitting begins with one. */
function sinceReference(shots: readonly ArrowShot[], sitting: number): number {
  const here = shots.filter((shot) => shot.sitting === sitting);
  const last = here.findLastIndex((shot) => shot.reference && shot.good);
  return last < 0 ? Infinity : here.length - 1 - last;
}

/** What the rounds are shot with: the arrows, how near the others is near enough (in), the archer's spread, the set under way, and how each nock stands. */
export interface Rounds {
  readonly play: readonly string[];
  readonly near: number;
  readonly usual: Spread;
  readonly sitting: number;
  readonly turnOf: (arrow: string) => number;
}

/** The next shot of the rounds; null where all are made. */
export function nextOfRounds(rounds: Rounds, shots: readonly ArrowShot[], third?: Third): Wanted | null {
  const { play, near, sitting, turnOf } = rounds;
  const stage = stageOf(rounds, shots, third);
  if (stage.kind === 'shot') return null;
  const count = counter(shots);
  const first = stage.kind === 'round' && stage.round === 1;
  const watchers = references(play, first ? [] : standOutAtOnce(play, shots, near));
  const watcher = leastShot(watchers, count);
  const { owed, between } = stage.kind === 'again' ? suspectsOwed(stage.arrows, count) : roundOwed(stage.round, play, watchers, count);
  const [next] = owed;
  if (watcher !== undefined && (next === undefined || sinceReference(shots, sitting) >= between)) return { arrow: watcher, turn: turnOf(watcher), reference: true };
  return next === undefined ? null : { arrow: next, turn: turnOf(next), reference: false };
}

/** Those still to be shot before the next stage, and how many of them come between two references. */
interface Owed { readonly owed: readonly string[]; readonly between: number }
type Count = (arrow: string) => number;

const leastShot = (arrows: readonly string[], count: Count): string | undefined => arrows.toSorted((a, b) => count(a) - count(b))[0];

function roundOwed(round: number, play: readonly string[], watchers: readonly string[], count: Count): Owed {
  const others = play.filter((arrow) => !watchers.includes(arrow));
  // Spread over the round, so that each tuning arrow's own shot of the round serves as a reference as well.
  const between = Math.min(MOST_BETWEEN, Math.max(1, Math.ceil(others.length / Math.max(1, watchers.length))));
  return { owed: others.filter((arrow) => count(arrow) < round), between };
}

function suspectsOwed(suspects: readonly string[], count: Count): Owed {
  const pass = Math.min(...suspects.map(count));
  return { owed: suspects.filter((arrow) => count(arrow) === pass), between: Math.min(MOST_SUSPECTS_BETWEEN, suspects.length) };
}

/** The next shot of the arrow that is being mended, in turn with a reference; null where it has its shots. */
function nextOfMending(state: State, mending: readonly ArrowShot[]): Wanted | null {
  const { odd } = state.notes.arrows;
  const [arrow] = odd;
  if (arrow === undefined || ownShots(state, mending, arrow).length >= AFTER_CHANGE) return null;
  const watcher = leastShot(references(arrowsInPlay(state), odd), counter(mending));
  if (watcher !== undefined && sinceReference(mending, sittingNow(state)) >= 1) return { arrow: watcher, turn: turnNow(state, watcher), reference: true };
  return { arrow, turn: turnNow(state, arrow), reference: false };
}

/** Good shots of an arrow as its nock stands now, or stood at `turn`: none from before it was replaced. */
export function ownShots(state: State, mending: readonly ArrowShot[], arrow: string, turn = turnNow(state, arrow)): readonly ArrowShot[] {
  const since = state.notes.arrows.cases[arrow]?.swapped ?? 0;
  return [...roundShots(state), ...mending].filter((shot) => shot.good && shot.arrow === arrow && shot.turn === turn && shot.seq > since);
}

export interface ArrowPlan { readonly tag: ShotTag; readonly taken: number; readonly wanted: number }

/** What is to be shot next, after the shots so far and `already` (shots of the same answer); null where nothing is. */
export const arrowPlan = (state: State, already: readonly ShotTag[] = []): ArrowPlan | null => (already.length === 0 ? planNow(state) : planAfter(state, already));

const planNow = once((state: State) => planAfter(state, []));

function planAfter(state: State, already: readonly ShotTag[]): ArrowPlan | null {
  const [mended] = state.notes.arrows.odd;
  const planned = already.map((tag) => plannedShot({ arrow: tag.arrow ?? '', turn: tag.nockTurn, reference: tag.reference === true }, sittingNow(state)));
  if (mended !== undefined) {
    const shots = [...mendingShots(state), ...planned];
    const next = nextOfMending(state, shots);
    return next === null ? null : { tag: tagOf(next), taken: ownShots(state, shots, mended).length, wanted: AFTER_CHANGE };
  }
  const shots = [...roundShots(state), ...planned];
  // What one answer tells of several shots goes on into the third round, where it may be wanted.
  const left = roundsLeft(roundsOf(state), shots, already.length > 0);
  const [next] = left;
  if (next === undefined) return null;
  const taken = shots.filter((shot) => shot.good).length;
  return { tag: tagOf(next), taken, wanted: taken + left.length };
}

export const roundsOf = (state: State): Rounds =>
  ({ play: arrowsInPlay(state), near: nearEnough(state), usual: paperSpreadOf(state), sitting: sittingNow(state), turnOf: (arrow) => turnNow(state, arrow) });

/** The vanes by which an arrow's nock is turned now, from as found. */
export const turnNow = (state: State, arrow: string): number => state.notes.arrows.cases[arrow]?.turn ?? 0;
const sittingNow = (state: State): number => currentSet(state)?.id ?? 0;

/** All shots of the rounds that are still to be made, in order, if none is called bad and no further arrow stands out; `orThird`: with a third round that is not ruled out yet. */
export function roundsLeft(rounds: Rounds, shots: readonly ArrowShot[], orThird = false): readonly Wanted[] {
  const left: Wanted[] = [];
  const made = [...shots];
  const tells = tellsMore(rounds, shots) ?? orThird;
  for (let next = nextOfRounds(rounds, made, () => tells); next !== null; next = nextOfRounds(rounds, made, () => tells)) {
    left.push(next);
    made.push(plannedShot(next, rounds.sitting));
  }
  return left;
}

const plannedShot = (wanted: Wanted, sitting: number): ArrowShot => ({ ...wanted, good: true, seq: Infinity, sitting, tear: null });

const tagOf = ({ arrow, turn, reference }: Wanted): ShotTag =>
  ({ shaft: 'fletched', head: 'field', arrow, nockTurn: turn, ...(reference ? { reference: true as const } : {}) });
