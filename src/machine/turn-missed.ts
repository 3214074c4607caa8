// Shots that leave no hole. One is a miss, and its arrow is looked at. Two in a row beside a sheet a few feet away, or off a target, say that
// something is badly wrong with bow, arrow or aim: nothing more is shot before it was looked for. What was adjusted since the last shot that
// hit goes back first. Looked for twice, and missed again: a shop sees bow and arrows before another shot.

import type { Deciding } from './deciding.ts';
import { nextUndo } from './bring-back.ts';
import { lookNote, shopNote, shopWith } from './loop/advise.ts';
import { gaugeOf } from './loop/gauge.ts';
import { backFrom } from './loop/judge.ts';
import { axisResults, endedWithout } from './loop/results.ts';
import type { PlaceIn } from './places.ts';
import { isImpact } from './plan.ts';
import { effectiveFacts, type Move, type State } from './state.ts';
import { stopNow } from './stop-now.ts';
import { byWayOfPaper } from './turn-second.ts';
import { isNotMoved, type Answer, type Fact } from './types.ts';
import { phrase } from './words.ts';

const IN_A_ROW = 2;
const MOST_LOOKS = 2;
/** So many hits in a row, and what was missed before is over. */
const OVER = 3;

interface Missed {
  /** Misses since the last hit, look or change of the bow. */
  readonly inARow: number;
  /** How often it was looked for since it last was over. */
  readonly looks: number;
  /** The line of the last hit; 0 where there was none. */
  readonly hitAt: number;
  /** The last shot, where it missed. */
  readonly last: Extract<Fact, { kind: 'answered' }> | null;
}

const NONE: Missed = { inARow: 0, looks: 0, hitAt: 0, last: null };

/** What was missed up to now, as the answers read now; paper and target each by themselves. */
export function missedSoFar(state: State): Missed {
  if (state.sets.every((set) => set.missed === 0)) return NONE;
  let [now, hits, of] = [NONE, 0, ''];
  for (const fact of effectiveFacts(state.facts)) {
    if (fact.kind === 'changed' || (fact.kind === 'answered' && fact.step === 'released')) now = { ...now, inARow: 0, looks: 0 };
    if (fact.kind === 'moved' || (fact.kind === 'answered' && isMoved(fact.answer))) now = { ...now, inARow: 0 };
    if (fact.kind !== 'answered') continue;
    if (fact.about === 'inspected') now = { ...now, inARow: 0, looks: now.looks + (fact.step === 'inspect-missed' ? 1 : 0) };
    if (fact.answer.kind !== 'shots') continue;
    if (fact.about !== of) [now, hits, of] = [{ ...now, inARow: 0, looks: 0 }, 0, fact.about];
    for (const shot of fact.answer.shots) {
      const missed = 'missed' in shot;
      hits = missed ? 0 : hits + 1;
      now = missed ? { ...now, inARow: now.inARow + 1, last: fact } : { inARow: 0, looks: hits >= OVER ? 0 : now.looks, hitAt: fact.seq, last: null };
    }
  }
  return now;
}

const isMoved = (answer: Answer): boolean => answer.kind === 'moved' && !isNotMoved(answer.moved);

/** Whether so many were missed in a row, of what is shot now, that it is to be looked for. */
export const missedTooOften = (state: State, missed = missedSoFar(state)): boolean =>
  missed.inARow >= IN_A_ROW && missed.last?.about === (isImpact(state.notes.of) ? 'impact' : 'tear');

/** Before the next shot is asked for; true where something was decided. */
export function lookForMisses(d: Deciding<PlaceIn<'paper' | 'broadheads' | 'arrows' | 'finish'>>): boolean {
  if (!d.inPhase('shooting', 'proving', 'proof')) return false;
  const missed = missedSoFar(d.state);
  if (!missedTooOften(d.state, missed)) return false;
  const far = isImpact(d.state.notes.of);
  if (goesBack(d, missed, far)) return true;
  if (missed.looks < MOST_LOOKS) return look(d, far);
  return far ? leaveTarget(d) : leaveToShop(d, missed);
}

// Whatever was adjusted since the last shot that hit was never seen to do any good.
function goesBack(d: Deciding, { hitAt }: Missed, far: boolean): boolean {
  const since = (move: Move | undefined): move is Move => move?.why === 'advice' && move.seq > hitAt;
  const last = d.state.moves.at(-1);
  if (!since(last) || hitAt === 0 || !d.may('put back')) return false;
  const { notes, findings } = backFrom(d.state, last);
  d.say(far ? 'missed-again-target' : 'missed-again');
  d.say('missed-back');
  d.event({ type: 'put back' }, { findings, loop: { ...notes, inspection: null } });
  nextUndo(d);
  return true;
}

function look(d: Deciding, far: boolean): true {
  d.say(far ? 'missed-again-target' : 'missed-again');
  const patch = { advice: lookNote(d.content, 'missed'), loop: { inspection: 'missed' as const } };
  // Whatever stands behind must stop more than what was thought of.
  if (!far) d.trigger('distance-changed');
  if (d.isAt('paper.second.shooting')) byWayOfPaper(d);
  // What a single arrow showed is shot anew with the rounds.
  if (d.isAt('arrows.mending.shooting')) d.event({ type: 'looked' }, { loop: { arrows: { ...d.state.notes.arrows, odd: [] } } });
  return d.where('verdict: inconsistent').event({ type: 'verdict', verdict: 'inconsistent' }, patch);
}

function leaveToShop(d: Deciding, { last }: Missed): true {
  const why = phrase(d.content, 'shop-missed');
  d.say('missed-stop');
  stopNow(d, { cause: 'gate', ask: ['released'], from: last?.step ?? 'missed', ...(last === null ? {} : { line: last.seq }) });
  d.add({ advice: shopNote(d.content, why), loop: { shop: shopWith(d.state, why) } });
  return true;
}

// At a target the sight alone may be to blame: paper, or whatever is shot next, goes on without it.
function leaveTarget(d: Deciding): boolean {
  const { axes } = gaugeOf(d.state);
  if (axes.every((axis) => axisResults(d.state)[axis]?.result === 'inconsistent')) return d.isAt('finish.proof') && d.event({ type: 'settled' });
  const why = phrase(d.content, 'shop-missed-target');
  d.say('missed-left');
  if (d.inPhase('proving')) d.event({ type: 'verdict', verdict: 'inconsistent' });
  const leaving: Deciding = d;
  const { findings, notes } = endedWithout(d.state, axes, 'inconsistent');
  return leaving.where('settled').event({ type: 'settled' }, { advice: shopNote(d.content, why), findings, loop: { ...notes, shop: shopWith(d.state, why) } });
}
