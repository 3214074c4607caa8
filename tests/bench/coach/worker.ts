// A worker of the bench: is given the content once, then piece after piece.

import { parentPort, workerData } from 'node:worker_threads';
import { doPiece, type Given, type Piece } from './work.ts';

const given: Given = workerData;
parentPort?.on('message', (piece: Piece) => parentPort?.postMessage(doPiece(given, piece), []));
