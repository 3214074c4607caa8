// `npm run bench -- coach`: the coach's decisions by simulation. The kernel: invented bows of one adjustment, beside rules that it is held against. The walk:
// whole tunes of practice bows, with content as it is shipped.

import type { Report, SeedRows } from './report.ts';
import { pooled, reportOf } from './report.ts';
import { calibrationLines, rowLines } from './print.ts';
import { RIVAL_NAMES, type RivalName } from './rules.ts';
import { together } from './work.ts';
import { second, secondByWorkers, secondLines } from './second.ts';
import { piecesByWorkers, walk } from './walk.ts';
import { walkLines } from './walk-print.ts';
import { doByWorkers, type Order } from './workers.ts';
import { WORLDS, type WorldName } from './world.ts';

export interface CoachOptions {
  readonly seeds: readonly number[]; readonly bows: number; readonly worlds: readonly WorldName[];
  /** Who plays beside the coach; who knows the response always does. */
  readonly rivals: readonly RivalName[];
  /** Which rows: without --only all. */
  readonly rows: Readonly<Record<'kernel' | (typeof OTHER_ROWS)[number], boolean>>;
  readonly workers: number | undefined;
}

/** Rows beside the kernel's. */
const OTHER_ROWS = ['walk', 'caps', 'second'] as const;
const isOther = (name: string): boolean => OTHER_ROWS.some((row) => row === name);
const NAMES = Object.keys(WORLDS).filter((name): name is WorldName => name in WORLDS);

interface Raw { readonly seed: string; readonly bows: string; readonly world: string; readonly only: string; readonly workers: string }

/** Reads `--seed 901-903`, `--bows 400`, `--world noise-1.75,dead` or `all`, `--only coach,chart`, `walk`, `caps` or `second`; a sentence where one cannot be meant. */
export function coachOptions(raw: Raw): CoachOptions | string {
  const [, from, to] = /^(\d{1,9})(?:-(\d{1,9}))?$/.exec(raw.seed) ?? [];
  if (from === undefined) return `the seed is ${raw.seed}; a whole number is needed, or two with a dash between`;
  const [first, last] = [Number(from), Number(to ?? from)];
  if (last < first || last - first >= 100) return `the seeds are ${raw.seed}; the first comes first, and at most a hundred`;
  const bows = Number(raw.bows);
  if (!Number.isInteger(bows) || bows < 1 || bows > 100_000) return `the bows are ${raw.bows}; a whole number from 1 to 100000 is needed`;
  const worlds = raw.world === 'all' ? NAMES : raw.world.split(',').flatMap((name) => NAMES.filter((known) => known === name));
  if (raw.world !== 'all' && worlds.length < raw.world.split(',').length) return `there is no world ${raw.world}; there are all, ${NAMES.join(', ')}`;
  const named = raw.only.split(',').filter((name) => name !== '');
  const has = (name: string): boolean => named.length === 0 || named.includes(name);
  const rows = { kernel: named.length === 0 || named.some((name) => !isOther(name)), walk: has('walk'), caps: has('caps'), second: has('second') };
  const only = named.filter((name) => name !== 'coach' && !isOther(name));
  const unknown = only.find((name) => RIVAL_NAMES.every((known) => known !== name));
  if (unknown !== undefined) return `there is no rival ${unknown}; there are ${OTHER_ROWS.join(', ')}, ${RIVAL_NAMES.join(', ')}`;
  const rivals = raw.only === '' ? RIVAL_NAMES : RIVAL_NAMES.filter((name) => name === 'oracle' || only.includes(name));
  const workers = raw.workers === '' ? undefined : Number(raw.workers);
  if (workers !== undefined && !(Number.isInteger(workers) && workers > 0)) return `the workers are ${raw.workers}; a whole number above 0 is needed`;
  return { seeds: Array.from({ length: last - first + 1 }, (_, i) => first + i), bows, worlds, rivals, rows, workers };
}

export async function coachBench(options: CoachOptions, json: boolean, by = doByWorkers, walkBy = piecesByWorkers, secondBy = secondByWorkers): Promise<0> {
  const { seeds, bows, rows, workers } = options;
  const kernel = rows.kernel ? await kernelBench(options, json, by) : {};
  const walked = rows.walk || rows.caps ? { walk: await walk(seeds, bows, { tunes: rows.walk, caps: rows.caps }, workers, walkBy) } : {};
  const again = rows.second ? { second: await second(seeds, bows, workers, secondBy) } : {};
  if (json) console.log(JSON.stringify({ ...kernel, ...walked, ...again }));
  else console.log([...(walked.walk === undefined ? [] : walkLines(walked.walk)), ...(again.second === undefined ? [] : secondLines(again.second))].join('\n'));
  return 0;
}

async function kernelBench({ seeds, bows, worlds, rivals, workers }: CoachOptions, quiet: boolean, by: typeof doByWorkers): Promise<Report> {
  const orders: Order[] = worlds.flatMap((world) => seeds.map((seed) => ({ world, seed, bows })));
  const began = performance.now();
  const done = await by(orders, rivals, workers);
  const seconds = (performance.now() - began) / 1000;
  const report: Report = reportOf(orders, done);
  if (quiet) return report;
  for (const world of worlds) {
    const own = done.filter((_, i) => orders[i]?.world === world);
    const rows: readonly SeedRows[] = pooled(seeds.map(String), own, together);
    console.log(rows.flatMap((row) => rowLines(world, WORLDS[world].about, row)).join('\n'));
  }
  if (report.calibration.length > 0) console.log(calibrationLines(report.calibration).join('\n'));
  const all = orders.length * bows;
  console.log(`${all} bows by the coach and ${rivals.length} rivals in ${seconds.toFixed(1)} s: ${(all / seconds).toFixed(1)} bows a second. All of it by simulation.`);
  return report;
}
