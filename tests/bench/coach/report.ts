// What the bench of the coach found, as data: one object, printed whole by --json.

import { calibration, type Bin } from './calibration.ts';
import type { CoachOutcome } from './coach.ts';
import { rowOf, shareOf, SOON, type FigureName, type Row } from './tally.ts';
import type { ByRival, Done } from './work.ts';
import type { Order } from './workers.ts';
import type { WorldName } from './world.ts';

type Shares = Readonly<Record<FigureName, number>>;

/** Shares are fractions of 1; `errors` are one standard error; `toOracle` says how many times the shots and moves of who knows the response. */
export interface Policy extends Shares {
  readonly errors: Shares;
  readonly toOracle: { readonly shots: number; readonly moves: number };
  readonly unfixable: { readonly declared: number; readonly shots: number };
}

/** Ends of the coach's fixable bows, put-backs a bow, and the share of the bows beyond tuning of which just that is said soon. */
export interface CoachPolicy extends Policy {
  readonly ended: Readonly<Record<CoachOutcome['result'], number>>;
  readonly putBacks: number;
  readonly beyondSoon: number;
}

export interface SeedRows {
  readonly seed: string; readonly bows: number; readonly fixable: number;
  readonly policies: { readonly coach: CoachPolicy } & Readonly<Record<string, Policy>>;
}

export interface Report {
  readonly kernel: { readonly nominal: readonly SeedRows[]; readonly worlds: Readonly<Partial<Record<WorldName, readonly SeedRows[]>>> };
  readonly calibration: readonly Bin[];
}

export function reportOf(orders: readonly Order[], done: readonly Done[]): Report {
  const rows = orders.map((order, i) => ({ world: order.world, rows: seedRows(`${order.seed}`, done[i]) }));
  const of = (world: WorldName): readonly SeedRows[] => rows.flatMap((one) => (one.world === world ? one.rows : []));
  const others = [...new Set(orders.map(({ world }) => world))].filter((world) => world !== 'nominal');
  return {
    kernel: { nominal: of('nominal'), worlds: Object.fromEntries(others.map((world) => [world, of(world)])) },
    calibration: calibration(orders.flatMap(({ world }, i) => (world === 'nominal' ? (done[i]?.coach ?? []).flatMap(({ stated }) => stated) : []))),
  };
}

function seedRows(seed: string, done: Done | undefined): readonly SeedRows[] {
  if (done === undefined) return [];
  const { coach, rivals } = done;
  const oracle = rowOf(rivals.get('oracle') ?? []);
  return [{
    seed, bows: coach.length, fixable: oracle.fixable,
    policies: { ...policies(rivals), coach: coachPolicy(coach, oracle) },
  }];
}

/** Several seeds as one. */
export const pooled = (seeds: readonly string[], done: readonly Done[], together: (done: readonly Done[]) => Done): readonly SeedRows[] =>
  done.length === 0 ? [] : seedRows(seeds.join(', '), together(done));

function policies(rivals: ByRival): Readonly<Record<string, Policy>> {
  const oracle = rowOf(rivals.get('oracle') ?? []);
  return Object.fromEntries([...rivals].map(([name, outcomes]) => [name, policyOf(rowOf(outcomes), oracle)]));
}

export function policyOf(row: Row, oracle: Row): Policy {
  const shares = (pick: 'value' | 'error'): Shares => {
    const { tuned, wrong, worse, excursion, shots, moves } = row;
    return { tuned: tuned[pick], wrong: wrong[pick], worse: worse[pick], excursion: excursion[pick], shots: shots[pick], moves: moves[pick] };
  };
  return {
    ...shares('value'), errors: shares('error'),
    toOracle: { shots: row.shots.value / oracle.shots.value, moves: row.moves.value / oracle.moves.value },
    unfixable: { declared: row.unfixable.declared.value, shots: row.unfixable.shots.value },
  };
}

function coachPolicy(outcomes: readonly CoachOutcome[], oracle: Row): CoachPolicy {
  const fixable = outcomes.filter((o) => o.fixable);
  const ended = (result: CoachOutcome['result']): number => shareOf(fixable, (o) => o.result === result).value;
  return {
    ...policyOf(rowOf(outcomes), oracle),
    ended: { tuned: ended('tuned'), accepted: ended('accepted'), cannot: ended('cannot'), inconsistent: ended('inconsistent'), budget: ended('budget') },
    putBacks: fixable.reduce((total, o) => total + o.putBacks, 0) / Math.max(1, fixable.length),
    beyondSoon: shareOf(outcomes.filter((o) => !o.fixable), (o) => o.result === 'cannot' && o.shots <= SOON).value,
  };
}
