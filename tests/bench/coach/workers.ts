// As many workers as there are processors, each with a piece in hand until all are done. What comes out does not depend on how many there are.

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { bundle } from '../../explore/bundle.ts';
import { preparedFacts } from './coach.ts';
import { shippedContent } from '../../tunes/play.ts';
import { RIVAL_NAMES, type RivalName } from './rules.ts';
import { doPiece, together, type Done, type Given, type Piece } from './work.ts';

/** Bows in a piece: small enough that no worker waits long for the last one. */
const PIECE = 25;
/** Pieces are copied: nothing is handed over. */
const NOTHING_ELSE: readonly never[] = [];

export function given(rivals: readonly RivalName[] = RIVAL_NAMES): Given {
  const content = shippedContent();
  return { content, prepared: preparedFacts(content), rivals };
}

/** `bows` of one world and one seed. */
export interface Order { readonly world: Piece['world']; readonly seed: number; readonly bows: number }

function piecesOf({ world, seed, bows }: Order): readonly Piece[] {
  return Array.from({ length: Math.ceil(bows / PIECE) }, (_, i) => ({ world, seed, from: i * PIECE, to: Math.min(bows, (i + 1) * PIECE) }));
}

/** In this process: for a handful of bows. */
export const doHere = (orders: readonly Order[], all: Given): readonly Done[] =>
  orders.map((order) => together(piecesOf(order).map((piece) => doPiece(all, piece))));

/** By workers; at most `most`. The promise fails where a worker does. */
export async function doByWorkers(orders: readonly Order[], rivals: readonly RivalName[], most = availableParallelism()): Promise<readonly Done[]> {
  const program = await bundle('tests/bench/coach/worker.ts', 'coach-worker');
  const queue = orders.flatMap((order, place) => piecesOf(order).map((piece, i) => ({ piece, place, i })));
  const done: Done[][] = orders.map(() => []);
  const workerData = given(rivals);
  const workers = Array.from({ length: Math.min(most, queue.length) }, () => new Worker(program, { workerData }));
  try {
    await Promise.all(workers.map((worker) => new Promise<void>((resolve, reject) => {
      let now: (typeof queue)[number] | undefined;
      const next = (): void => {
        now = queue.shift();
        if (now === undefined) resolve();
        else worker.postMessage(now.piece, NOTHING_ELSE);
      };
      worker.on('error', reject);
      worker.on('message', (piece: Done) => {
        if (now !== undefined) (done[now.place] ??= [])[now.i] = piece;
        next();
      });
      next();
    })));
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return done.map(together);
}
