// What follows from a corrected answer: figures change, the bow does not; a gate corrected to failed stops at once;
// a choice may take later answers off the route, and those are kept as suggestions only.

import type { Deciding } from './deciding.ts';
import { afterAnswer, applyGate, releaseIfAnswered, sideEffects } from './after-answer.ts';
import { lookUp } from './agenda.ts';
import { undoAnew } from './bring-back.ts';
import { classedTooEarly } from './arrows/late.ts';
import { seeToMass } from './figures/adding-up.ts';
import { arrowParts, isPart, MASS_WAY, PARTS } from './figures/arrow-mass.ts';
import { isFigure } from './figures/list.ts';
import { sayFigure } from './figures/said.ts';
import { chosen, holds, mayChoose } from './guards.ts';
import { isWalkChoice } from './correctable.ts';
import { gaugeAt } from './loop/gauge.ts';
import { spreadOver } from './loop/pooled.ts';
import { countingSets, goodShots } from './loop/sets.ts';
import { settingsOf, type State } from './state.ts';
import { takenBack, withoutQuestions } from './stops.ts';
import type { Answer, Fact } from './types.ts';
import { judgeStanding } from './still-shown.ts';
import { judgeVerdict } from './verdict-again.ts';
import { phaseOfPlace, placeUnder } from './walk.ts';
import { differenceInWords, settingInWords, tearInWords } from './words.ts';

export function afterCorrection(d: Deciding, of: number, answer: Answer): void {
  const fact = d.before.facts.find((f) => f.seq === of);
  if (fact?.kind !== 'answered') return;
  d.say('corrected');
  if (isWalkChoice(fact)) {
    d.add({ loop: { rewindTo: of } });
    afterAnswer(d, fact.step, answer);
    return;
  }
  if (answer.kind === 'shots') {
    correctedShots(d, of);
    // An arrow that missed after all has hit something: it is looked at like any other.
    if (answer.shots.some((shot) => 'missed' in shot)) { d.trigger('clash'); d.say('missed-paper'); }
  }
  else if (answer.kind === 'moved') correctedMove(d, fact);
  else correctedStep(d, fact, answer);
}

function correctedShots(d: Deciding, of: number): void {
  const meanIn = (state: State): string | null => {
    const set = state.sets.find((s) => s.shots.some((shot) => shot.seq === of));
    // Where every shot was missed or called bad there is no middle to tell; single arrows have none together.
    if (set === undefined || set.of === 'arrows') return null;
    const gauge = gaugeAt(state, set.of, set.distance);
    const centre = gauge.read(goodShots(set), spreadOver(gauge, countingSets(state, set.of)).sd);
    return centre === null ? null : gauge.of === 'paper' ? tearInWords(centre.mean) : differenceInWords(centre.mean);
  };
  const was = meanIn(d.before);
  const is = meanIn(d.state);
  if (was !== null && is !== null) d.say('corrected-shots', { was, is });
  classedTooEarly(d, of);
  rejudge(d);
  judgeVerdict(d, of);
  judgeStanding(d, of);
}

// The advice that stands was made from the old figures: it is worked out anew, also where a question or a stop interrupts it.
// Changes already made stay as they are.
function rejudge(d: Deciding): void {
  if (phaseOfPlace(placeUnder(d.state.walk)) === 'advising') d.add({ loop: { reshoot: true } });
}

function correctedMove(d: Deciding, fact: Extract<Fact, { kind: 'answered' }>): void {
  const told = fact.decided.loop?.told;
  if (told === undefined) return;
  const knob = d.content.knobs[told.knob];
  const now = settingsOf(d.state.moves)[told.knob] ?? 0;
  d.say('corrected-move', { knob: knob.name, now: settingInWords(d.content, knob, now) });
  rejudge(d);
  judgeVerdict(d, fact.seq);
  undoAnew(d);
  judgeStanding(d, fact.seq);
}

function correctedStep(d: Deciding, fact: Extract<Fact, { kind: 'answered' }>, answer: Answer): void {
  const pending = lookUp(d.content, fact.step);
  if (pending === null) return;
  // Taken back in time ("written by mistake, nothing happened"): the answer that raised the stop is given anew. Another answer to
  // the same question clears nothing of it.
  const inForce = d.before.answers[fact.step]?.seq === fact.seq;
  const left = takenBack(d.before.stop, { step: fact.step, line: fact.seq, inForce })
    // A part of the mass stands for the mass that it makes.
    ?? (inForce && isPart(fact.step) ? takenBack(d.before.stop, { step: 'arrow-mass', line: fact.seq, inForce }) : null);
  if (d.place === 'stopped' && left !== null) d.add({ loop: { stop: left } });
  if (inForce) seeToMass(d, fact.step);
  const ruled = (inForce ? lastPartOf(d, fact.step) : null) ?? { step: fact.step, answer };
  applyGate(d, ruled.step, ruled.answer, fact.seq);
  if (inForce) sayFigure(d, fact.step);
  // What happened to the bow, or that the place was another, was never looked into: no later "nothing since" makes up for it.
  if (inForce || ['history', 'place', 'nock-stays'].includes(fact.step)) sideEffects(d, fact.step, answer);
  if (pending.step.effect === 'chosen') {
    offRoute(d);
    leaveGates(d);
  }
  sayPutAside(d, fact.step);
  rejudge(d);
}

// Where the way is "add up" once more and every part is told, their sum is held against the limit anew, as by the last of them: to have
// chosen it again is no answer to a mass that was too low.
function lastPartOf(d: Deciding, step: string): { readonly step: string; readonly answer: Answer } | null {
  if (step !== MASS_WAY || arrowParts(d.state) === null) return null;
  const last = PARTS.findLast((part) => d.state.answers[part] !== undefined);
  const answer = last === undefined ? undefined : d.state.answers[last]?.answer;
  return last === undefined || answer === undefined ? null : { step: last, answer };
}

// A choice may take answers off its way, and a mass those of the arrow's parts.
function sayPutAside(d: Deciding, corrected: string): void {
  const aside = Object.keys(d.before.answers).filter((id) => id !== corrected && d.state.answers[id] === undefined);
  if (aside.length > 0) d.say('off-route', { n: aside.length });
}

// Another way was chosen: a gate that only the way left behind asks (a target for broadheads, say) no longer holds the walk.
// What waits for a dealer does, whatever is chosen. The gate is asked anew where that way is taken again.
function leaveGates(d: Deciding): void {
  const { stop } = d.state;
  if (d.place !== 'stopped' || stop === null) return;
  const left = withoutQuestions(stop, (id) => {
    const pending = lookUp(d.content, id);
    return pending !== null && !holds(d.state, pending.step.when);
  });
  if (left === stop) return;
  d.add({ loop: { stop: left } });
  releaseIfAnswered(d);
}

// What one answer takes off the route may have led to others: all of them, until nothing more goes.
function offRoute(d: Deciding): void {
  const { content } = d;
  const strays = (): readonly string[] => Object.keys(d.state.answers).filter((id) => {
    const pending = lookUp(content, id);
    // A figure for the card holds whether or not further ones are wanted.
    if (isFigure(id)) return false;
    // Nor was an option that is not offered to this archer (any more) chosen by one who may.
    return pending !== null && !(holds(d.state, pending.step.when) && mayChoose(d.state, pending.step, chosen(d.state, id)));
  });
  for (let more = strays(); more.length > 0; more = strays()) d.add({ loop: { suggest: more } });
}
