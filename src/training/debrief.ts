// The debrief: what was true of the practice bow, what the learner did with it, and what the coach alone would have come to. As a record of
// rows, so that every face can tell it. Shown at the end, and never a line of it before.

import { fill } from '../content/fill.ts';
import type { PracticeWords } from '../content/practice-words.ts';
import type { Content } from '../content/types.ts';
import type { PracticeOf } from '../journal/practice-mark.ts';
import type { BowRecord, RecordRow } from '../machine/types.ts';
import { byModel } from '../practice/by-model.ts';
import type { Flight } from '../practice/flight.ts';
import { AS_FOUND } from '../practice/condition.ts';
import { quietTear, trace, type PracticeLine, type Trace } from '../practice/trace.ts';
import type { World } from '../practice/world.ts';
import { coachAlone } from './coach-alone.ts';
import { readingRows } from './debrief-reading.ts';
import { truthRows } from './debrief-truth.ts';
import { inInches, settingWords, tailWords } from './debrief-words.ts';
import { nameOf, worldOf } from './world-of.ts';

export interface Debriefing {
  readonly content: Content;
  readonly words: PracticeWords;
  readonly of: PracticeOf;
  readonly world: World;
  readonly lines: readonly PracticeLine[];
  readonly flight: Flight;
}

/** The debrief of a practice that lies on disk. */
export const debriefIn = (content: Content, words: PracticeWords, of: PracticeOf, lines: readonly PracticeLine[]): BowRecord =>
  debriefOf({ content, words, of, world: worldOf(of, content), lines, flight: byModel() });

type Says = PracticeWords['debrief'];

export function debriefOf(about: Debriefing): BowRecord {
  const { content, words, of, world, lines, flight } = about;
  const { debrief: says, lessons } = words;
  const traced = trace(world, lines, flight);
  const lesson = of.lesson === null ? says.any : (lessons[of.lesson]?.about ?? of.lesson);
  const section = (title: string, rows: readonly RecordRow[]): { title: string; rows: readonly RecordRow[] } => ({ title, rows });
  return {
    invented: true,
    title: fill(says.title, { of: nameOf(of, words) }),
    sections: [
      section(says.about, [{ name: says.lesson, value: lesson }]),
      section(says.wrong, truthRows(content, says, words, world, traced, flight)),
      section(says.archer, [{ name: says.archer, value: fill(says.spread, { sd: inInches(ONE_SHOT * world.archer.noise) }) }]),
      section(says.did, didRows(says, traced, world, flight)),
      section(says.reading, readingRows(says, traced)),
      section(says.left, leftRows(about, traced)),
      section(says.coach, coachRows(about)),
    ],
  };
}

/** What one shot of an ordinary archer strays by at 7 ft, inches (archer.ts). */
const ONE_SHOT = 0.18;

/** A change that is worse by less than this (in) is not told as one: a play in the screw does as much. */
const TOLD_FROM = 1 / 32;

/** As many as somebody reads. */
const MOST_TOLD = 4;

function didRows(says: Says, { shots, turns, onlyTold, overlooked }: Trace, world: World, flight: Flight): readonly RecordRow[] {
  const size = ({ x, y }: { readonly x: number; readonly y: number }): number => Math.hypot(x, y);
  const found = size(quietTear(world, AS_FOUND, flight));
  const worse = turns.filter(({ before, after }) => size(after) > size(before) + TOLD_FROM).length;
  const worst = turns.filter(({ after }) => size(after) > found + TOLD_FROM).length;
  const silent = turns.filter(({ told }) => told === 'not at all').length;
  const otherwise = turns.filter(({ told }) => told === 'otherwise').length + onlyTold;
  return [
    { name: says.shots, value: String(shots.length) },
    { name: says.changes, value: fill(says['change-words'], { n: turns.length, back: turns.filter(({ putBack }) => putBack).length }) },
    { name: says.worse, value: String(worse) },
    { name: says.worst, value: String(worst) },
    ...(silent === 0 ? [] : [{ name: says.hidden, value: String(silent) }]),
    ...(otherwise === 0 ? [] : [{ name: says.otherwise, value: String(otherwise) }]),
    ...(overlooked.length === 0 ? [] : [{ name: says.overlooked, value: fill(says['overlooked-words'], { n: overlooked.length, seen: overlooked.slice(0, MOST_TOLD).join(' ') }) }]),
  ];
}

function leftRows({ content, words: { debrief: says }, world, flight }: Debriefing, { memory: { condition } }: Trace): readonly RecordRow[] {
  return [
    { name: says['as-found'], value: tailWords(quietTear(world, AS_FOUND, flight)) },
    { name: says['as-left'], value: tailWords(quietTear(world, condition, flight)) },
    ...settingWords(content, world, condition).map(({ name, at, right }) => ({ name, value: fill(says['set-at'], { at, right }) })),
  ];
}

function coachRows({ content, words: { debrief: says }, world, flight }: Debriefing): readonly RecordRow[] {
  const { shots, changes, tear, ends } = coachAlone(content, world, flight);
  return [
    { name: says.shots, value: String(shots) },
    { name: says.changes, value: String(changes) },
    { name: says['coach-result'], value: ends === 'stopped' ? says['coach-stopped'] : tailWords(tear) },
    { name: says.note, value: `${says['coach-note']} ${says.real}` },
  ];
}
