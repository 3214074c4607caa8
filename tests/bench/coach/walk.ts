// The walk's rows of `npm run bench -- coach`: whole tunes of practice bows by the session, with content as it is shipped.

import { bundle } from '../../explore/bundle.ts';
import { shippedContent } from '../../tunes/play.ts';
import { byPool, piecesOf } from './pool.ts';
import { CAP_NAMES, KIND_NAMES } from './walk-caps.ts';
import { walkReport, type WalkReport } from './walk-rows.ts';
import { playPiece, type Played, type RowName, type WalkPiece } from './walk-work.ts';

/** A tune takes a fifth of a second. */
const PIECE = 5;
const ROWS: Readonly<Record<'tunes' | 'caps', readonly RowName[]>> = {
  tunes: ['any', 'unfixable', 'beyond', 'contact', 'danger'], caps: [...KIND_NAMES, ...CAP_NAMES],
};
/** Which rows are played: whole tunes, and what each cap costs. */
export interface WalkRows { readonly tunes: boolean; readonly caps: boolean }

export type PlayPieces = (pieces: readonly WalkPiece[], workers?: number) => Promise<readonly (readonly Played[])[]>;

export async function piecesByWorkers(pieces: readonly WalkPiece[], workers?: number): Promise<readonly (readonly Played[])[]> {
  return byPool(await bundle('tests/bench/coach/walk-worker.ts', 'walk-worker'), shippedContent(), pieces, workers);
}

/** In this process: for a handful of bows. */
export const piecesHere: PlayPieces = (pieces) => {
  const content = shippedContent();
  return Promise.resolve(pieces.map((piece) => playPiece(content, piece)));
};

export async function walk(seeds: readonly number[], bows: number, rows: WalkRows, workers?: number, by: PlayPieces = piecesByWorkers): Promise<WalkReport> {
  const names = [...(rows.tunes ? ROWS.tunes : []), ...(rows.caps ? ROWS.caps : [])];
  const pieces = names.flatMap((row) => seeds.flatMap((seed) => piecesOf(bows, PIECE).map((piece) => ({ row, seed, ...piece }))));
  const done = await by(pieces, workers);
  const of = (row: RowName): readonly Played[] => pieces.flatMap((piece, i) => (piece.row === row ? (done[i] ?? []) : []));
  return walkReport(seeds, bows, of);
}
