// The second close distance. It drives no move; but scatter there, or more than an inch, is looked into as at the first one. Where that
// finds nothing and it stays, the axes that were called tuned are not: nobody goes on to broadheads with such a bow.

import { adoptScatter, adoptWhole } from './adopt-judgement.ts';
import type { Deciding } from './deciding.ts';
import { shopNote } from './loop/advise.ts';
import { judgeSecond } from './loop/compare.ts';
import { evidenceOn, readingHere } from './loop/evidence.ts';
import { GROSS, judgeSet, VERY_GROSS } from './loop/judge-set.ts';
import { judgement, type Judgement } from './loop/judgement.ts';
import { axisFinding, endAxes, tunedAxes } from './loop/results.ts';
import { currentSet, FIRST_DISTANCE, SECOND_DISTANCE } from './loop/sets.ts';
import type { State } from './state.ts';
import { phrase, tearInWords } from './words.ts';

type Second = 'paper.second.shooting';
/** So often it is looked into here; then it is left. */
const MOST_LOOKS = 2;
/** Who scattered shoots five. */
const AFTER_SCATTER = 5;

/** The walk comes here with paper at the first distance; what stops the arrow is looked at wherever the distance has changed (target.ts). */
export function toSecondDistance(d: Deciding<Second>): true {
  const scattered = looksHere(d.state) > 0;
  d.say('to-second-distance', { distance: SECOND_DISTANCE });
  d.add({ loop: { distance: SECOND_DISTANCE, newSet: true, purpose: 'judge', wanted: scattered ? AFTER_SCATTER : 3 } });
  return true;
}

export function judgeAtSecond(d: Deciding<Second>): boolean {
  const { content, state } = d;
  const read = judgeSet(content, state);
  if (read?.verdict === null) return adoptScatter(d, read);
  const found = read?.verdict === 'inconsistent' ? read : grossHere(d);
  if (found !== null) return looksHere(state) < MOST_LOOKS ? lookInto(d, found) : leaveUnsettled(d, found);
  return adoptWhole(d, judgeSecond(content, tunedAxes(state).flatMap((axis) => evidenceOn(content, state, axis, null) ?? []), state));
}

/** More than an inch here, whatever was looked into at the first distance. */
function grossHere({ content, state }: Deciding): Judgement<'gross'> | null {
  const mean = readingHere(state)?.mean;
  const size = mean === undefined ? 0 : Math.max(Math.abs(mean.x), Math.abs(mean.y));
  if (mean === undefined || size <= GROSS) return null;
  const very = size > VERY_GROSS;
  return judgement('gross', {
    say: [phrase(content, very ? 'tear-very-gross' : 'tear-gross', { tear: tearInWords(mean) })],
    notes: { inspection: very ? 'very-gross' : 'gross', grossSeen: true, inspections: state.notes.inspections + 1 },
  });
}

/** How often it was looked into since the first shot from here, with the bow as it is: what was found since then began anew. */
function looksHere({ sets, notes: { epoch }, facts }: State): number {
  const first = sets.find((set) => set.of === 'paper' && set.distance === SECOND_DISTANCE && set.epoch === epoch && set.shots.length > 0)?.shots[0]?.seq ?? Infinity;
  return facts.filter((fact) => fact.kind === 'answered' && fact.about === 'inspected' && fact.seq > first).length;
}

/** Causes are looked for at the first distance: nothing found, all that was tuned there is passed by, and it is shot again here. */
export function byWayOfPaper(d: Deciding): void {
  d.where('return: paper').event({ type: 'return', to: 'paper' }, { loop: { rounds: Math.max(1, d.state.notes.rounds), purpose: 'judge', distance: FIRST_DISTANCE } });
  d.where('looked').event({ type: 'looked' });
}

function lookInto(d: Deciding, found: Judgement<'inconsistent' | 'gross'>): true {
  const { inspections } = d.state.notes;
  byWayOfPaper(d);
  // What was looked into at the first distance does not keep from looking here.
  if (d.isAt('paper.height.shooting')) adoptScatter(d, { ...found, notes: { ...found.notes, inspections: Math.min(inspections + 1, MOST_LOOKS) } });
  return true;
}

function leaveUnsettled(d: Deciding<Second>, found: Judgement<'inconsistent' | 'gross'>): true {
  const set = currentSet(d.state);
  const why = phrase(d.content, 'shop-second-distance', { near: FIRST_DISTANCE, far: SECOND_DISTANCE });
  const axes = tunedAxes(d.state);
  d.event({ type: 'settled' }, {
    say: found.say,
    advice: shopNote(d.content, why),
    findings: axes.map((axis) => axisFinding(d.state, axis, 'inconsistent')),
    loop: {
      ...endAxes(d.state, Object.fromEntries(axes.map((axis) => [axis, { result: 'inconsistent', chance: 0 }]))),
      secondDistance: 'not confirmed', shop: [...new Set([...d.state.notes.shop, why])],
      scattered: [...new Set([...d.state.notes.scattered, ...(set === null ? [] : [set.id])])],
    },
  });
  d.say('second-left', { far: SECOND_DISTANCE });
  return true;
}
