// The second tune's rows of `npm run bench -- coach --only second`: shots and errors with what was carried and without, beside who knows the response.

import { bundle } from '../../explore/bundle.ts';
import { shippedContent } from '../../tunes/play.ts';
import { byPool, piecesOf } from './pool.ts';
import { HEAD, aligned, line } from './print.ts';
import { policyOf, type Policy } from './report.ts';
import { playSecond, type SecondPiece, type SecondTune } from './second-play.ts';
import { rowOf } from './tally.ts';

/** Four tunes a bow. */
const PIECE = 10;
const WAYS = { carried: 'response and spread carried', spreadAlone: 'spread carried alone', nothing: 'nothing carried', oracle: 'knows the response' } as const;

export interface SecondReport {
  readonly bows: number;
  /** Of the first tunes, those that taught how the adjustment answers. */
  readonly learned: number;
  readonly policies: Readonly<Record<keyof typeof WAYS, Policy>>;
}

export type PlaySecond = (pieces: readonly SecondPiece[], workers?: number) => Promise<readonly (readonly SecondTune[])[]>;

export const secondByWorkers: PlaySecond = async (pieces, workers) =>
  byPool(await bundle('tests/bench/coach/second-worker.ts', 'second-worker'), shippedContent(), pieces, workers);

/** In this process: for a handful of bows. */
export const secondHere: PlaySecond = (pieces) => Promise.resolve(pieces.map((piece) => playSecond(shippedContent(), piece)));

export async function second(seeds: readonly number[], bows: number, workers?: number, by = secondByWorkers): Promise<SecondReport> {
  const pieces = seeds.flatMap((seed) => piecesOf(bows, PIECE).map((piece) => ({ world: 'nominal' as const, seed, ...piece })));
  const tunes = (await by(pieces, workers)).flat();
  const oracle = rowOf(tunes.map((tune) => tune.oracle));
  const of = (way: keyof typeof WAYS): Policy => policyOf(rowOf(tunes.map((tune) => tune[way])), oracle);
  return {
    bows: tunes.length, learned: tunes.filter(({ learned }) => learned).length / Math.max(1, tunes.length),
    policies: { carried: of('carried'), spreadAlone: of('spreadAlone'), nothing: of('nothing'), oracle: of('oracle') },
  };
}

export const secondLines = ({ bows, learned, policies }: SecondReport): readonly string[] => [
  `The same archer's second tune of ${bows} bows that have drifted by a quarter; ${(100 * learned).toFixed(1)} % of first tunes taught how the adjustment answers.`,
  ...aligned([HEAD, ...Object.entries(policies).map(([way, policy]) => line(Object.entries(WAYS).find(([name]) => name === way)?.[1] ?? way, policy))]),
];
