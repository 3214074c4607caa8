// The kernel's rows, piece by piece: by workers, or in this process.

import { bundle } from '../../explore/bundle.ts';
import { preparedFacts } from './coach.ts';
import { shippedContent } from '../../tunes/play.ts';
import { byPool, piecesOf } from './pool.ts';
import { RIVAL_NAMES, type RivalName } from './rules.ts';
import { doPiece, together, type Done, type Given, type Piece } from './work.ts';

/** Bows in a piece: small enough that no worker waits long for the last one. */
const PIECE = 25;

export function given(rivals: readonly RivalName[] = RIVAL_NAMES): Given {
  const content = shippedContent();
  return { content, prepared: preparedFacts(content), rivals };
}

/** `bows` of one world and one seed. */
export interface Order { readonly world: Piece['world']; readonly seed: number; readonly bows: number }

const inPieces = ({ world, seed, bows }: Order): readonly Piece[] => piecesOf(bows, PIECE).map((piece) => ({ world, seed, ...piece }));

/** In this process: for a handful of bows. */
export const doHere = (orders: readonly Order[], all: Given): readonly Done[] =>
  orders.map((order) => together(inPieces(order).map((piece) => doPiece(all, piece))));

/** By workers; at most `most`. The promise fails where a worker does. */
export async function doByWorkers(orders: readonly Order[], rivals: readonly RivalName[], most?: number): Promise<readonly Done[]> {
  const program = await bundle('tests/bench/coach/worker.ts', 'coach-worker');
  const pieces = orders.map(inPieces);
  const done = await byPool<Piece, Done>(program, given(rivals), pieces.flat(), most);
  const firsts = pieces.map((_, place) => pieces.slice(0, place).flat().length);
  return pieces.map((own, place) => together(done.slice(firsts[place] ?? 0, (firsts[place] ?? 0) + own.length)));
}
