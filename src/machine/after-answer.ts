// What follows from an answer: the ruling on a gate, a move that was made, a choice of the walk.

import { isInspection, type KnobId } from '../content/types.ts';
import type { Deciding } from './deciding.ts';
import { bowPicked } from './after-bow.ts';
import { chapterOf } from './agenda.ts';
import { countArrowsAgain, failsAnArrow } from './arrow-fails.ts';
import { afterArrowMove, afterLook } from './arrows/after.ts';
import { afterArrowOut } from './arrows/gone.ts';
import { afterNockStays, afterTurnTheSet } from './arrows/turn-set.ts';
import { afterInspection, causeFound, voidEarlier } from './after-cause.ts';
import { lengthTakenAgain, otherwiseNow, takenAgain } from './after-figure.ts';
import { longBreak } from './after-happening.ts';
import { afterRelease } from './after-release.ts';
import { finishAnew, leaveAsItIs, madePutBack, subjectIn } from './bring-back.ts';
import { broughtInside } from './brought-inside.ts';
import { enterMove } from './enter-move.ts';
import { seeToMass } from './figures/adding-up.ts';
import { sayFigure } from './figures/said.ts';
import { sayOtherPart } from './figures/stiffness-said.ts';
import { judgeGate } from './gates.ts';
import { growsAfterAll } from './growing.ts';
import { holds } from './guards.ts';
import { SHOTS_TO_REST } from './limits.ts';
import { choose } from './loop/advise.ts';
import { gaugeOf, taken } from './loop/gauge.ts';
import { endedWithout } from './loop/results.ts';
import { tagsFor } from './plan.ts';
import { restTold } from './rest-told.ts';
import { stopNow } from './stop-now.ts';
import { stopOver } from './stops.ts';
import { axisOf, placeOf } from './walk.ts';
import { bowKnobOf, type Answer, type Chapter, type MovedAnswer } from './types.ts';

export function afterAnswer(d: Deciding, step: string, answer: Answer): void {
  if (answer.kind === 'shots') return afterShots(d, answer);
  if (answer.kind === 'moved') return broughtInside(d, answer.moved) || afterArrowMove(d, answer.moved) ? undefined : afterMove(d, answer.moved);
  const value = answer.kind === 'choice' ? (answer.values[0] ?? '') : '';
  const inspected = step.startsWith('inspect-') ? step.slice('inspect-'.length) : '';
  if (isInspection(inspected)) return afterInspection(d, inspected, value);
  if (step === 'finishing-step') return afterFinishing(d, value);
  if (step === 'leave-or-go-on') return afterAccept(d, value);
  if (step === 'look-arrow') return afterLook(d, value);
  if (step === 'turn-the-set') return afterTurnTheSet(d, value);
  if (step === 'what-happened') return afterStopWord(d, value);
  if (step === 'released') {
    afterRelease(d);
    return releaseIfAnswered(d);
  }
  if (step === 'arrow-out' && answer.kind === 'number') afterArrowOut(d, answer.value);
  takenAgain(d, step, answer);
  lengthTakenAgain(d, step, answer);
  seeToMass(d, step);
  applyGate(d, step, answer);
  sayOtherPart(d, step, answer);
  sayFigure(d, step);
  sideEffects(d, step, answer);
}

/** What a choice brings about besides its gate, whether it was made now or is how a wrong answer should have read. */
export function sideEffects(d: Deciding, step: string, answer: Answer): void {
  if (failsAnArrow(step, answer)) countArrowsAgain(d);
  if (step === 'nock-stays' && answer.kind === 'number') afterNockStays(d, answer.value);
  if (step === 'proving-shot' && answer.kind === 'confirm' && !answer.value) d.say('proving-shot-no');
  SIDE_EFFECTS[step]?.(d, answer.kind === 'choice' ? (answer.values[0] ?? '') : '');
}

/** Rules on a gate, answered at this line; a failed one stops at once, a passed one may release a stop. */
export function applyGate(d: Deciding, step: string, answer: Answer, line: number = d.draft.seq): void {
  const ruling = judgeGate(d.content, d.state, step, answer);
  if (ruling !== null) {
    d.add({ findings: ruling.findings, due: ruling.due, say: ruling.say });
    if (ruling.stop !== null) {
      stopNow(d, { ...ruling.stop, line });
      d.say(ruling.stop.ask[0] === 'released' ? 'stop-shop' : 'stop-here');
      return;
    }
  }
  if (ruling === null) sayOption(d, step, answer);
  releaseIfAnswered(d);
}

function sayOption(d: Deciding, id: string, answer: Answer): void {
  const step = d.content.steps[id];
  if (step?.kind !== 'choice' || answer.kind !== 'choice') return;
  const say = step.options.find((option) => option.value === answer.values[0])?.say;
  if (say !== undefined && say !== '') d.add({ say: [say] });
}

/** A stop ends when the last of its questions is answered and none of them raised it again. */
export function releaseIfAnswered(d: Deciding): void {
  if (!d.isAt('stopped') || d.state.stop === null || d.state.stop.ask.length > 0) return;
  d.event({ type: 'released' }, { loop: { stop: null } });
  d.say('stop-cleared');
}

function afterStopWord(d: Deciding, what: string): void {
  const leadsOut = (step: string): void => d.add({ loop: { stop: stopOver(d.state.stop, { cause: 'word', ask: [step], from: 'word' }) } });
  if (what === 'bow') leadsOut('released');
  else if (what === 'arrow') leadsOut('arrow-check');
  else if (what === 'person') {
    leadsOut('someone-hurt');
    d.trigger('someone-hurt');
  }
  d.say(`stop-word-${['bow', 'arrow', 'person'].includes(what) ? what : 'nothing'}`);
  releaseIfAnswered(d);
}

function afterShots(d: Deciding, answer: Extract<Answer, { kind: 'shots' }>): void {
  if (d.before.notes.of !== 'paper') d.add({ loop: { tags: tagsFor(d.before, answer.shots.length) } });
  if (answer.shots.some((shot) => 'missed' in shot)) {
    d.trigger('clash');
    d.say(gaugeOf(d.state).of === 'paper' ? 'missed-paper' : 'missed-target');
  }
  if (answer.shots.some((shot) => !('missed' in shot) && shot.called === 'bad')) d.say('called-bad');
  const { shotCount, notes } = d.state;
  if (shotCount - notes.cautionedShots >= SHOTS_TO_REST) {
    d.trigger('forty-shots');
    d.add({ loop: { cautionedShots: shotCount } });
  }
}

// Left for later, and wanted after all once the walk was past it: back to where it has its place, on what stands of the tune.
function wantedLate(d: Deciding, past: readonly Chapter[]): void {
  if (!past.includes(chapterOf(d.state))) return;
  const { arrows } = d.state.notes;
  d.add({
    advice: null,
    loop: { backTo: 'paper', purpose: 'judge', inspection: null, offered: null, ...subjectIn(d.state, 'paper'), arrows: { ...arrows, done: arrows.done && Object.keys(arrows.classes).length > 0 } },
  });
  finishAnew(d);
}

const SIDE_EFFECTS: Readonly<Record<string, (d: Deciding, value: string) => void>> = {
  history: (d, value) => { if (value === 'heat-or-fall') d.trigger('heat-or-fall'); },
  place: (d, value) => { if (value === 'other') longBreak(d); },
  release: (d, value) => { if (value === 'fingers') d.say('fingers'); },
  growing: (d, value) => { if (value === 'growing') growsAfterAll(d); },
  rest: restTold,
  bow: (d, value) => bowPicked(d, 'bow', value),
  'which-bow': (d, value) => bowPicked(d, 'which-bow', value),
  // Those set aside are counted anew each time that some are found, so that kept and set aside add up.
  'arrows-flexed': (d, value) => { if (value === 'some-bad') d.add({ due: ['arrows-set-aside'] }); },
  // Blades are held where the shaft stands at full draw: where that is another place, they are measured anew.
  // Not before the shaft itself reaches far enough: its figure is what they are held by.
  'shaft-ahead': (d) => {
    if (holds(d.state, ['shoots-broadheads']) && d.state.gates['shaft-ahead']?.result === 'passed') d.add({ due: ['blades-ahead'] });
  },
  // With a frame made, backstop and range are looked at for paper; without one yet, the ways are asked again.
  method: (d, value) => {
    if (value !== 'none') return;
    d.say('method-none');
    d.add({ due: ['backstop', 'range'] });
  },
  'broadheads-wanted': (d, value) => { if (value === 'fixed' || value === 'mechanical') wantedLate(d, ['arrows', 'finish']); },
  'arrows-wanted': (d, value) => { if (value === 'all') wantedLate(d, ['finish']); },
  contact: (d, value) => {
    if (value !== 'smear') return;
    causeFound(d, 'contact', ['rest-check', 'contact']);
    voidEarlier(d);
  },
  grip: (d, value) => { if (value === 'moved') causeFound(d, 'grip', []); },
  face: (d, value) => { if (value === 'moved') causeFound(d, 'face', []); },
  'what-was-changed': (d, value) => otherwiseNow(d, value),
  // Without the maker's words on it, moving the cams is no rung of this bow's ladder.
  'cam-range': (d, value) => {
    if (value !== 'known') d.add({ loop: { ended: { ...d.state.notes.ended, 'cam-screw': 'limit', 'cam-spacers': 'limit' } } });
  },
};

function afterMove(d: Deciding, moved: MovedAnswer): void {
  const { advice } = d.before;
  const knobId = bowKnobOf(advice);
  if (advice === null || knobId === null) return;
  const putBack = advice.kind === 'put-back';
  if (moved === 'another') return another(d, putBack, knobId);
  if (moved === 'not now') return notNow(d, putBack);
  if (moved === 'at its end') return atItsEnd(d, putBack, knobId);
  const told = (advice.to?.value ?? 0) - (d.before.moves.filter((m) => m.knob === knobId).reduce((s, m) => s + m.delta, 0));
  enterMove(d, knobId, told, putBack ? 'put-back' : 'adjust', moved);
  if (!putBack) {
    d.where('moved').event({ type: 'moved' }, { advice: null, loop: { newSet: true, purpose: 'judge', wanted: gaugeOf(d.state).again, offered: null, declined: [] } });
    return;
  }
  // The walk goes on to prove it once all is put back.
  madePutBack(d, knobId);
}

// "Another, please": the equally right one, where there is one that would move; else this one stands, and nothing is skipped.
function another(d: Deciding, putBack: boolean, knob: KnobId): void {
  if (putBack) { d.say('put-back-stands'); return; }
  const axis = axisOf(d.place);
  const { declined } = d.state.notes;
  const other = d.content.knobs[knob].alternative;
  const wished = { ...d.state, notes: { ...d.state.notes, declined: [...declined.filter((id) => id !== other), knob] } };
  const choice = axis === null ? null : choose(d.content, wished, axis);
  if (choice === null || choice.kind === 'none left' || (choice.kind === 'advice' && choice.knob === knob)) { d.say('no-other'); return; }
  d.add({ advice: null, loop: { declined: wished.notes.declined } });
  d.say('another-offered');
}

// "Not now" offers the equally right adjustment; where there is none, the axis may be left as it is.
function notNow(d: Deciding, putBack: boolean): void {
  if (putBack) {
    if (!leaveAsItIs(d)) d.say('put-back-stands');
    return;
  }
  const knob = bowKnobOf(d.before.advice);
  if (knob === null) return;
  const declined = [...d.state.notes.declined, knob];
  const other = d.content.knobs[knob].alternative;
  const another = other !== null && !declined.includes(other) && d.state.notes.ended[other] === undefined;
  d.add({ advice: null, loop: { declined } });
  if (another) { d.say('another-offered'); return; }
  d.where('verdict: borderline').event({ type: 'verdict', verdict: 'borderline' }, { loop: { offered: 'accept' } });
}

// Its screw or slot ends: it stays where it stands, and the next rung of the ladder goes on from there, or the note for the shop.
function atItsEnd(d: Deciding, putBack: boolean, knob: KnobId): void {
  if (putBack) { d.say('put-back-stands'); return; }
  d.add({
    advice: null, findings: [{ kind: 'knob', knob, result: 'limit' }],
    loop: { ended: { ...d.state.notes.ended, [knob]: 'limit' }, declined: d.state.notes.declined.filter((id) => id !== knob) },
  });
  d.say('knob-at-its-end', { knob: d.content.knobs[knob].name });
}

function afterFinishing(d: Deciding, value: string): void {
  d.add({ loop: { offered: null } });
  if (value === 'one more step') d.where('chosen: finish step').event({ type: 'chosen', choice: 'finish step' });
  else d.where('settled').event({ type: 'settled' });
}

function afterAccept(d: Deciding, value: string): void {
  if (value !== 'accept') {
    d.where('chosen: go on').event({ type: 'chosen', choice: 'go on' }, { loop: { offered: null, declined: [], wanted: gaugeOf(d.state).next(taken(d.state)) } });
    return;
  }
  const axis = axisOf(placeOf(d.before.walk));
  if (axis !== null) {
    const { findings, notes } = endedWithout(d.state, [axis], 'accepted');
    d.add({ findings, loop: notes });
  }
  d.say('accepted');
  d.where('chosen: accept').event({ type: 'chosen', choice: 'accept' }, { loop: { offered: null, declined: [] } });
}
