// A worker of the second tune's rows: is given the content once, then piece after piece.

import { parentPort, workerData } from 'node:worker_threads';
import type { Content } from '../../../src/content/types.ts';
import { playSecond, type SecondPiece } from './second-play.ts';

const content: Content = workerData;
parentPort?.on('message', (piece: SecondPiece) => parentPort?.postMessage(playSecond(content, piece), []));
