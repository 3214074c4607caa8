// A worker of the walk's rows: is given the content once, then piece after piece.

import { parentPort, workerData } from 'node:worker_threads';
import type { Content } from '../../../src/content/types.ts';
import { playPiece, type WalkPiece } from './walk-work.ts';

const content: Content = workerData;
parentPort?.on('message', (piece: WalkPiece) => parentPort?.postMessage(playPiece(content, piece), []));
