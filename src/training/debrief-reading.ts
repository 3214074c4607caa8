// How well the learner read the holes: what a rule would have shown, beside what was told.

import { fill } from '../content/fill.ts';
import type { PracticeWords } from '../content/practice-words.ts';
import type { RecordRow, Tear } from '../machine/types.ts';
import { sum } from '../maths/sum.ts';
import type { Trace } from '../practice/trace.ts';
import { inInches, tailWords } from './debrief-words.ts';

interface Read { readonly nth: number; readonly was: Tear; readonly told: Tear; readonly off: number }

/** A side is told wrongly only where there is one to see: this far (in), and read to half of it besides. */
const SEEN = 1 / 8;

export function readingRows(says: PracticeWords['debrief'], { shots }: Trace): readonly RecordRow[] {
  const read = shots.flatMap(({ nth, asked, happened: { hole }, told }): Read[] => (told === null || !('paper' in asked.at) ? [] : [{ nth, was: hole, told, off: Math.max(Math.abs(told.x - hole.x), Math.abs(told.y - hole.y)) }]));
  const [worst] = read.toSorted((a, b) => b.off - a.off);
  if (worst === undefined) return [{ name: says['read-off'], value: says['read-none'] }];
  const mirrored = read.filter(isMirrored).length;
  return [
    { name: says['read-off'], value: inInches(sum(read.map(({ off }) => off)) / read.length) },
    { name: says['read-most'], value: fill(says['read-at'], { by: inInches(worst.off), n: worst.nth, was: tailWords(worst.was), said: tailWords(worst.told) }) },
    ...(mirrored === 0 ? [] : [{ name: says['read-mirror'], value: String(mirrored) }]),
  ];
}

/** The figure is right, and its side is not. */
const isMirrored = ({ was, told }: Read): boolean =>
  Math.abs(was.x) > SEEN && Math.sign(told.x) === -Math.sign(was.x) && Math.abs(Math.abs(told.x) - Math.abs(was.x)) < SEEN / 2;
