// The second close distance. It drives no move; but scatter there, or more than an inch, is looked into as at the first one. Where that
// finds nothing and it stays, the axes that were called tuned are not: nobody goes on to broadheads with such a bow.

import { adoptScatter, adoptWhole } from './adopt-judgement.ts';
import type { Deciding } from './deciding.ts';
import { shopNote, shopWith } from './loop/advise.ts';
import { judgeSecond } from './loop/compare.ts';
import { evidenceOn } from './loop/evidence.ts';
import { FIVE, grossHere, judgeSet } from './loop/judge-set.ts';
import type { Judgement } from './loop/judgement.ts';
import { endedWithout, tunedAxes } from './loop/results.ts';
import { currentSet, FIRST_DISTANCE, SECOND_DISTANCE } from './loop/sets.ts';
import type { State } from './state.ts';
import { phrase } from './words.ts';

type Second = 'paper.second.shooting';
/** So often it is looked into here; then it is left. */
const MOST_LOOKS = 2;

/** The walk comes here with paper at the first distance; what stops the arrow is looked at wherever the distance has changed (target.ts). */
export function toSecondDistance(d: Deciding<Second>): true {
  const scattered = looksHere(d.state) > 0;
  d.say('to-second-distance', { distance: SECOND_DISTANCE });
  d.add({ loop: { distance: SECOND_DISTANCE, newSet: true, purpose: 'judge', wanted: scattered ? FIVE : 3 } });
  return true;
}

export function judgeAtSecond(d: Deciding<Second>): boolean {
  const { content, state } = d;
  const read = judgeSet(content, state);
  if (read?.verdict === null) return adoptScatter(d, read);
  const found = read?.verdict === 'inconsistent' ? read : grossHere(content, state);
  if (found !== null) return looksHere(state) < MOST_LOOKS ? lookInto(d, found) : leaveUnsettled(d, found);
  return adoptWhole(d, judgeSecond(content, tunedAxes(state).flatMap((axis) => evidenceOn(content, state, axis, null) ?? []), state));
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
  const { findings, notes } = endedWithout(d.state, tunedAxes(d.state), 'inconsistent');
  d.event({ type: 'settled' }, {
    say: found.say, findings,
    advice: shopNote(d.content, why),
    loop: {
      ...notes, secondDistance: 'not confirmed', shop: shopWith(d.state, why),
      scattered: [...new Set([...d.state.notes.scattered, ...(set === null ? [] : [set.id])])],
    },
  });
  d.say('second-left', { far: SECOND_DISTANCE });
  return true;
}
