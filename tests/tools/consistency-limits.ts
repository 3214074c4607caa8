// Works out how far apart the two tears furthest from each other may lie in a set of honest shots, and writes
// src/archery/consistency-limits.ts. Run: npx tsx tests/tools/consistency-limits.ts (about a minute).
//
// For n shots whose x and y are normal with standard deviation 1: W is the largest distance between two of them, W1 the
// same after leaving out the shot whose removal shrinks it most. Both are divided by an estimated spread s with df * s^2
// chi-square distributed. The limit q solves mean over sets of P(s < W / q) = 1 - level: the sets are simulated (seeded),
// the chance of s is exact, which halves the Monte-Carlo error for few df.

import { writeFileSync } from 'node:fs';
import jStat from 'jstat';
import { widest } from '../../src/archery/widest.ts';
import { seededRandom } from '../../src/maths/random.ts';

const SETS = 200_000;
const DFS = [2, 3, 4, 6, 8, 12, 16, 24, 32, 64, Infinity];
const COUNTS = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const LEVELS = [0.95, 0.99];

function simulate(n: number): { pair: number[]; oddOut: number[] } {
  const random = seededRandom(4301 + n);
  const pair: number[] = [];
  const oddOut: number[] = [];
  for (let i = 0; i < SETS; i++) {
    const w = widest(Array.from({ length: n }, () => ({ x: random.normal(), y: random.normal() })));
    pair.push(w.pair);
    if (w.oddOut !== null) oddOut.push(w.oddOut);
  }
  return { pair: pair.sort((a, b) => a - b), oddOut: oddOut.sort((a, b) => a - b) };
}

/** The sorted widths in 2,000 equal parts, each by its middle: enough for the smooth chance of s. */
function thin(sorted: readonly number[]): number[] {
  const parts = 2000;
  return Array.from({ length: parts }, (_, i) => sorted[Math.floor(((i + 0.5) / parts) * sorted.length)] ?? NaN);
}

function limit(sorted: readonly number[], df: number, level: number): number {
  if (df === Infinity) return sorted[Math.floor(level * sorted.length)] ?? NaN;
  const widths = thin(sorted);
  const beyond = (q: number): number =>
    widths.reduce((total, w) => total + jStat.chisquare.cdf(df * (w / q) ** 2, df), 0) / widths.length;
  let low = 0.1;
  let high = 200;
  for (let i = 0; i < 30; i++) {
    const q = Math.sqrt(low * high);
    if (beyond(q) > 1 - level) low = q;
    else high = q;
  }
  return Math.sqrt(low * high);
}

const rows = COUNTS.map((n) => {
  const { pair, oddOut } = simulate(n);
  const row = (sorted: readonly number[], level: number): string =>
    sorted.length === 0 ? 'null' : `[${DFS.map((df) => limit(sorted, df, level).toFixed(3)).join(', ')}]`;
  const [low = 0, high = 0] = LEVELS;
  return [
    `  {`,
    `    n: ${n},`,
    `    pair95: ${row(pair, low)},`,
    `    pair99: ${row(pair, high)},`,
    `    oddOut95: ${row(oddOut, low)},`,
    `    oddOut99: ${row(oddOut, high)},`,
    `  },`,
  ].join('\n');
});

writeFileSync(
  new URL('../../src/archery/consistency-limits.ts', import.meta.url),
  `// Made by tests/tools/consistency-limits.ts from ${SETS} simulated sets a row; do not edit. What the numbers mean is told there.
// Monte-Carlo error (one standard error): about 0.15 % at the 95 % level and 0.2 % at the 99 % level.

/** Degrees of freedom behind the spread, one a column. */
export const DFS = [${DFS.join(', ')}] as const;

/** Limits in units of the spread of one axis; n shots in the set. */
export const LIMITS: readonly {
  readonly n: number;
  readonly pair95: readonly number[];
  readonly pair99: readonly number[];
  readonly oddOut95: readonly number[] | null;
  readonly oddOut99: readonly number[] | null;
}[] = [
${rows.join('\n')}
];
`,
);
