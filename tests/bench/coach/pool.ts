// Workers, each with a piece in hand until all are done. What comes out does not depend on how many there are.

import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';

/** Pieces are copied: nothing is handed over. */
const NOTHING_ELSE: readonly never[] = [];

/** From which bow to which each piece goes, of so many bows in all. */
export const piecesOf = (bows: number, size: number): readonly { readonly from: number; readonly to: number }[] =>
  Array.from({ length: Math.ceil(bows / size) }, (_, i) => ({ from: i * size, to: Math.min(bows, (i + 1) * size) }));

/** What a worker of `program` answers to each piece, in the order of the pieces. At most `most` workers; the promise fails where one does. */
export async function byPool<Piece, Done>(program: string | URL, workerData: unknown, pieces: readonly Piece[], most = availableParallelism()): Promise<readonly Done[]> {
  const queue = [...pieces.entries()];
  const done = new Map<number, Done>();
  const workers = Array.from({ length: Math.min(most, queue.length) }, () => new Worker(program, { workerData }));
  try {
    await Promise.all(workers.map((worker) => new Promise<void>((resolve, reject) => {
      let place = -1;
      const next = (): void => {
        const now = queue.shift();
        if (now === undefined) { resolve(); return; }
        place = now[0];
        worker.postMessage(now[1], NOTHING_ELSE);
      };
      worker.on('error', reject);
      worker.on('message', (piece: Done) => { done.set(place, piece); next(); });
      next();
    })));
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return [...done].toSorted(([a], [b]) => a - b).map(([, piece]) => piece);
}
