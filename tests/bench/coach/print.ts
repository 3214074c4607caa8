// The bench of the coach for people: a line a rule, in percent, with one standard error.

import type { Bin } from './calibration.ts';
import type { Policy, SeedRows } from './report.ts';
import { FIGURES, SOON } from './tally.ts';

const NAMES: Readonly<Record<string, string>> = {
  coach: 'the coach', allBows: 'all bows that it may be', blendedLine: 'blended line, no walk', chart: 'chart, by the mean', chartConfirmed: 'chart, confirmed',
  secant: 'secant, by the mean', secantConfirmed: 'secant, confirmed', random: 'random, kept if better', oracle: 'knows the response',
};
export const HEAD = ['', 'tuned %', 'wrong %', 'worse %', 'excursion %', 'shots', 'moves', 'x shots', 'x moves', 'unfixable: tuned %', 'shots'];
const COUNTED = new Set<string>(['shots', 'moves']);

export function rowLines(world: string, about: string, { seed, bows, fixable, policies }: SeedRows): readonly string[] {
  const { coach, ...rivals } = policies;
  const { ended } = coach;
  const percent = (value: number): string => (100 * value).toFixed(1);
  return [
    `${world} (${about}), seed ${seed}: ${bows} bows, of which the adjustment can tune ${fixable}. Tuned is 1/4 in each way.`,
    ...aligned([HEAD, line('coach', coach), ...Object.entries(rivals).map(([name, policy]) => line(name, policy))]),
    `  the coach's ends, %: tuned ${percent(ended.tuned)}, left at a borderline ${percent(ended.accepted)}, cannot ${percent(ended.cannot)}, scatter ${percent(ended.inconsistent)}, out of moves or shots ${percent(ended.budget)}; `
      + `put back and proved ${coach.putBacks.toFixed(2)} times a bow, counted in shots and moves; of the bows that it cannot tune, told so within ${SOON} shots ${percent(coach.beyondSoon)}`,
    '',
  ];
}

export function line(name: string, policy: Policy): readonly string[] {
  const figures = FIGURES.map((figure) => (COUNTED.has(figure)
    ? `${policy[figure].toFixed(2)} +-${policy.errors[figure].toFixed(2)}` : `${(100 * policy[figure]).toFixed(2)} +-${(100 * policy.errors[figure]).toFixed(2)}`));
  const { toOracle, unfixable } = policy;
  return [NAMES[name] ?? name, ...figures, toOracle.shots.toFixed(2), toOracle.moves.toFixed(2), (100 * unfixable.declared).toFixed(1), unfixable.shots.toFixed(1)];
}

export const calibrationLines = (bins: readonly Bin[]): readonly string[] => [
  'What the coach said after a shot of the chance to be in tolerance, and how often it was so',
  ...aligned([['', 'said %', 'so %', 'times'], ...bins.map(({ said, right, error, count }) => ['', (100 * said).toFixed(1), `${(100 * right).toFixed(1)} +-${(100 * error).toFixed(1)}`, `${count}`])]),
];

/** The first column to the left, the others to the right. */
export function aligned(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows.map((row) => `  ${row.map((entry, i) => (i === 0 ? entry.padEnd(widths[i] ?? 0) : entry.padStart(widths[i] ?? 0))).join('  ')}`.trimEnd());
}
