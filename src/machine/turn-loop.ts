// The measuring loop, one automatic step at a time: when to judge, when to advise, when to leave an axis.

import type { Axis } from '../content/types.ts';
import { adoptAxis, adoptReturn, adoptSame, adoptScatter, adoptWhole, type InLoop, type Shooting } from './adopt-judgement.ts';
import { nextUndo } from './bring-back.ts';
import type { Deciding } from './deciding.ts';
import { choose, shopNote, shopWith } from './loop/advise.ts';
import { judgeResume, judgeReturn } from './loop/compare.ts';
import { evidenceOn, toleranceOn } from './loop/evidence.ts';
import { gaugeOf, wantsShots } from './loop/gauge.ts';
import { judgeAsFound, judgeAxis } from './loop/judge.ts';
import { judgeSet } from './loop/judge-set.ts';
import { rungNow } from './loop/ladder.ts';
import { sizeMove } from './loop/size.ts';
import { endedWithout } from './loop/results.ts';
import { currentSet, FIRST_DISTANCE, SECOND_DISTANCE, shotsHere } from './loop/sets.ts';
import type { PlaceIn, PlaceOf } from './places.ts';
import { onceMore, skipStage, withoutPaper } from './turn-paper.ts';
import { judgeAtSecond, toSecondDistance } from './turn-second.ts';
import { stepBetween, swapHeads } from './turn-broadheads.ts';
import { axisOf } from './walk.ts';

/** A finishing step is offered beyond this, inches. */
const FINISH_FROM = 1 / 8;

/** One automatic step of a measuring loop, whatever it measures; false where a question stands. */
export function turnLoop(d: Deciding<PlaceIn<'paper' | 'broadheads'>>): boolean {
  if (d.inPhase('shooting')) return turnShooting(d);
  if (d.inPhase('proving')) return turnProving(d);
  if (d.inPhase('advising')) return turnAdvising(d);
  if (d.inPhase('passed')) return turnPassed(d);
  if (d.inPhase('puttingBack')) return turnPuttingBack(d);
  // inspecting, offering: the archer chooses, unless something else made the question void.
  if (d.inPhase('inspecting')) return nothingToLookFor(d);
  return d.inPhase('offering') && d.state.notes.reshoot && reshoot(d);
}

function turnPuttingBack(d: Deciding<InLoop<'puttingBack'>>): boolean {
  // A note for the shop on the other axis may stand here: it asks for nothing.
  const standing = (): boolean => d.state.advice?.kind === 'put-back';
  if (!standing()) nextUndo(d);
  if (standing()) return false;
  // All is put back, or there was nothing to put back.
  return d.event({ type: d.state.notes.purpose === 'prove' ? 'moved' : 'looked' });
}

/** What was to be looked into was in a figure that was corrected: the shots are judged as they now read. */
export const nothingToLookFor = (d: Deciding<PlaceOf<'inspecting'>>): boolean => d.state.notes.inspection === null && d.event({ type: 'looked' });

function reshoot(d: Deciding<InLoop<'advising' | 'proving' | 'passed' | 'offering'>>): true {
  return d.event({ type: 'looked' }, { advice: null, loop: { reshoot: false, offered: null } });
}

function turnShooting(d: Deciding<Shooting>): boolean {
  if (d.isIn('paper') && withoutPaper(d)) return true;
  if (onceMore(d) || skipStage(d)) return true;
  if (d.state.notes.reshoot) d.add({ loop: { reshoot: false } });
  if (resumeDue(d)) return true;
  if (d.isAt('paper.second.shooting') && d.state.notes.distance !== SECOND_DISTANCE && d.state.notes.purpose !== 'resume') return toSecondDistance(d);
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (wantsShots(d.state)) return swapHeads(d);
  return judgeHere(d) || swapHeads(d);
}

function judgeHere(d: Deciding<Shooting>): boolean {
  const { content, state } = d;
  if (state.notes.purpose === 'resume') return adoptSame(d, judgeResume(content, state));
  if (d.isAt('paper.second.shooting')) return judgeAtSecond(d);
  const scatter = judgeSet(content, state);
  if (scatter !== null) return adoptScatter(d, scatter);
  if (d.isAt('paper.asFound.shooting')) return adoptWhole(d, judgeAsFound(content, state));
  const axis = axisOf(d.place) ?? 'height';
  return adoptAxis(d.where('put back'), stepBetween(d, axis, judgeAxis(content, state, axis)));
}

// The first set after a long break is held against the last one at this setting before it is used: where the second
// distance has no shots yet, that one was shot at the first.
function resumeDue(d: Deciding): boolean {
  if (!d.state.notes.resumeSet) return false;
  const onPaper = gaugeOf(d.state).of === 'paper';
  const distance = !onPaper || shotsHere(d.state).length > 0 ? d.state.notes.distance : FIRST_DISTANCE;
  d.add({ loop: { resumeSet: false, distance, newSet: true, purpose: 'resume', wanted: gaugeOf(d.state).first } });
  return true;
}

/** On another day the proving set is shot whole, and is itself the set that is held against the last day. */
export function startAnew(d: Deciding): void {
  if (d.state.notes.resumeSet) d.add({ loop: { resumeSet: false, newSet: true, wanted: gaugeOf(d.state).first } });
}

function turnProving(d: Deciding<InLoop<'proving'>>): boolean {
  // Moved or found otherwise in between: there is no return to be proved any more.
  if (d.state.notes.reshoot) return reshoot(d);
  startAnew(d);
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (wantsShots(d.state)) return false;
  return adoptReturn(d, judgeReturn(d.content, d.state));
}

function turnAdvising(d: Deciding<InLoop<'advising'>>): boolean {
  const { content, state } = d;
  if (state.notes.reshoot || state.notes.resumeSet) return reshoot(d);
  if (state.advice?.kind === 'adjust') return false;
  const axis = axisOf(d.place) ?? 'height';
  const choice = choose(content, state, axis);
  if (choice.kind === 'ask first') { d.add({ due: choice.steps }); return true; }
  if (choice.kind === 'advice') { d.add({ advice: choice.advice }); return false; }
  const { findings, notes } = endedWithout(state, [axis], 'cannot');
  d.event({ type: 'settled' }, {
    advice: shopNote(content, choice.shop),
    findings, loop: { ...notes, shop: shopWith(state, choice.shop) },
  });
  d.say('none-left', { shop: choice.shop });
  return true;
}

// In tolerance. One finishing step is offered where the estimate lies beyond 1/8 in and the knob is learned.
function turnPassed(d: Deciding<InLoop<'passed'>>): boolean {
  const { notes } = d.state;
  if (notes.reshoot) return reshoot(d);
  if (notes.offered === 'finish step') return false;
  const axis = axisOf(d.place);
  if (axis !== null && notes.offeredFor[axis] !== true && finishingStepFits(d, axis)) {
    d.add({ loop: { offered: 'finish step', offeredFor: { ...notes.offeredFor, [axis]: true } } });
    return false;
  }
  return d.event({ type: 'settled' });
}

function finishingStepFits(d: Deciding, axis: Axis): boolean {
  // A step finer than tolerance can be told from luck on paper alone.
  const rung = gaugeOf(d.state).of === 'paper' ? rungNow(d.content, d.state, axis) : null;
  if (rung === null || d.state.notes.learned[rung.knob] === undefined) return false;
  const evidence = evidenceOn(d.content, d.state, axis, rung.knob);
  if (evidence === null || Math.abs(evidence.mean) <= FINISH_FROM) return false;
  const sized = sizeMove(d.content, d.state, axis, rung);
  if (sized === null || sized.trial) return false;
  // Only a step that promises something: the estimate must come closer to the aim.
  const { aim } = toleranceOn(d.content, d.state, axis);
  const after = sized.line.intercept + sized.line.slope * sized.to;
  return Math.abs(after - aim) < Math.abs(evidence.mean - aim);
}
