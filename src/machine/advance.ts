// Carries a decision on until a question stands: settles chapters, asks again what is due, judges a full set,
// picks the next change. Each turn makes one small step, so the order of rules can be read from top to bottom.

import type { Axis } from '../content/types.ts';
import { agenda } from './agenda.ts';
import { nextUndo } from './after-happening.ts';
import { axisOf } from './ask.ts';
import type { Deciding } from './deciding.ts';
import { chosen } from './guards.ts';
import { choose } from './loop/advise.ts';
import { differs, judgeResume, judgeReturn, judgeSecond } from './loop/compare.ts';
import { evidenceOn, lineOf } from './loop/evidence.ts';
import { judgeAsFound, judgeAxis, judgeSet } from './loop/judge.ts';
import type { Judgement } from './loop/judgement.ts';
import { rungNow } from './loop/ladder.ts';
import { sizeMove } from './loop/size.ts';
import { currentSet, SECOND_DISTANCE, taken, TOLERANCE } from './loop/sets.ts';
import { phrase } from './words.ts';

/** A finishing step is offered beyond this, inches. */
const FINISH_FROM = 1 / 8;
const MOST_TURNS = 60;

export function advance(d: Deciding): void {
  for (let turn = 0; turn < MOST_TURNS; turn++) if (!oneTurn(d)) return;
  throw new RangeError(`the walk does not come to a question from ${d.place} (${d.fact().decided.events.map((e) => e.type).join(" ")}; due ${d.state.due.join(" ")})`);
}

/** One automatic step; false where a question stands. */
function oneTurn(d: Deciding): boolean {
  const { place } = d;
  if (place === 'stopped') return false;
  if (place === 'record') return finishOnce(d);
  const pending = agenda(d.content, d.state);
  const open = pending.length > 0;
  if (place === 'asking') return open ? false : go(d, 'clear');
  if (place === 'safety' || place === 'baseline' || place === 'warmUp') return open ? false : go(d, 'settled');
  // The finish asks its own questions in place; everything else interrupts.
  if (open) return place.startsWith('finish.') && pending.every((p) => isOfFinish(d, p.step.id)) ? false : go(d, 'due');
  if (chosen(d.state, 'release') === 'fingers') return go(d, 'settled');
  const [chapter = '', , phase = ''] = place.split('.');
  return chapter === 'finish' ? turnFinish(d, place) : turnPaper(d, phase);
}

const isOfFinish = (d: Deciding, step: string): boolean =>
  d.content.chapters.some((chapter) => chapter.id === 'finish' && chapter.blocks.some((block) => block.steps.includes(step)));

function go(d: Deciding, type: 'clear' | 'settled' | 'due'): true {
  d.event({ type });
  return true;
}

function finishOnce(d: Deciding): boolean {
  if (d.state.notes.done) return false;
  d.say('done');
  d.add({ loop: { done: true } });
  return false;
}

function turnPaper(d: Deciding, phase: string): boolean {
  switch (phase) {
    case 'shooting':
      return turnShooting(d);
    case 'proving':
      return turnProving(d);
    case 'advising':
      return turnAdvising(d);
    case 'passed':
      return turnPassed(d);
    case 'puttingBack':
      if (d.state.notes.reshoot) return reshoot(d);
      if (d.state.advice !== null) return false;
      if (d.state.notes.undo.length === 0) { d.event({ type: 'looked' }); return true; }
      nextUndo(d);
      return false;
    default:
      // inspecting, offering: the archer chooses, unless something else made the question void.
      return d.state.notes.reshoot && phase === 'offering' ? reshoot(d) : false;
  }
}

function reshoot(d: Deciding): true {
  d.add({ events: [{ type: 'looked' }], advice: null, loop: { reshoot: false, offered: null } });
  return true;
}

function turnShooting(d: Deciding): boolean {
  const stage = d.place.split('.')[1] ?? '';
  if (skipStage(d, stage)) return true;
  if (d.state.notes.reshoot) d.add({ loop: { reshoot: false } });
  if (stage === 'second' && d.state.notes.distance !== SECOND_DISTANCE) return secondDistance(d);
  if (resumeDue(d)) return true;
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (taken(d.state) < d.state.notes.wanted) return false;
  return apply(d, judgeHere(d, stage));
}

function judgeHere(d: Deciding, stage: string): Judgement {
  const { content, state } = d;
  if (state.notes.purpose === 'resume') return judgeResume(content, state);
  const scatter = judgeSet(content, state);
  if (scatter !== null) return scatter;
  if (stage === 'asFound') return judgeAsFound(content, state);
  if (stage === 'second') {
    const axes = tunedAxes(d);
    return judgeSecond(content, axes.flatMap((axis) => evidenceOn(content, state, axis, null) ?? []), state);
  }
  return judgeAxis(content, state, axisOf(d.place) ?? 'height');
}

/** Axes that were tuned at the first distance. */
const tunedAxes = (d: Deciding): readonly Axis[] =>
  (['height', 'side'] as const).filter((axis) => d.state.notes.axis[axis]?.result === 'tuned');

/** Stages that have nothing to do: scatter has ended the paper work, or nothing has changed since the axis was settled. */
function skipStage(d: Deciding, stage: string): boolean {
  const { axis, cablesAt, heightAt } = d.state.notes;
  const scattered = axis.height?.result === 'inconsistent' || axis.side?.result === 'inconsistent';
  const nothingMoved = stage === 'heightAgain' && (cablesAt <= heightAt || axis.height?.result !== 'tuned');
  const nothingToConfirm = stage === 'second' && tunedAxes(d).length === 0;
  if (!scattered && !nothingMoved && !nothingToConfirm) return false;
  if (stage === 'asFound' && !scattered) return false;
  return go(d, 'settled');
}

function secondDistance(d: Deciding): true {
  d.trigger('distance-changed');
  d.say('to-second-distance', { distance: SECOND_DISTANCE });
  d.add({ loop: { distance: SECOND_DISTANCE, newSet: true, purpose: 'judge', wanted: 3 } });
  return true;
}

// The first set after a long break is held against the last one at this setting before it is used.
function resumeDue(d: Deciding): boolean {
  if (!d.state.notes.resumeSet) return false;
  d.add({ loop: { resumeSet: false, newSet: true, purpose: 'resume', wanted: 3 } });
  return true;
}

/** Adopts a judgement; false where one more shot is wanted. */
function apply(d: Deciding, judged: Judgement): boolean {
  d.add({ say: judged.say, findings: judged.findings, loop: { ...judged.notes } });
  learn(d);
  const { verdict } = judged;
  if (verdict === null) return false;
  if (verdict === 'inconsistent' && tooManyInspections(d)) return leaveScattered(d);
  // 'returned' in a shooting state means: the set is as before, judge it now.
  const staying = verdict === 'returned' && d.place.endsWith('shooting');
  if (!staying) d.event({ type: 'verdict', verdict });
  if (verdict === 'inconsistent' || verdict === 'gross' || verdict === 'not returned') inspectAdvice(d);
  if (verdict === 'worse') nextUndo(d);
  if (verdict === 'cannot' && d.state.notes.undo.length > 0) {
    d.event({ type: 'put back' });
    nextUndo(d);
  }
  return true;
}

const tooManyInspections = (d: Deciding): boolean => d.state.notes.inspections > 2;

function leaveScattered(d: Deciding): true {
  const axes = (['height', 'side'] as const).filter((axis) => d.state.notes.axis[axis]?.result !== 'tuned');
  d.add({
    events: [{ type: 'settled' }],
    findings: axes.map((axis) => ({ kind: 'axis' as const, axis, chapter: 'paper' as const, result: 'inconsistent' as const })),
    loop: { axis: { ...d.state.notes.axis, ...Object.fromEntries(axes.map((axis) => [axis, { result: 'inconsistent', chance: 0 }])) }, inspection: null },
  });
  d.say('leave-scattered');
  return true;
}

function inspectAdvice(d: Deciding): void {
  const id = d.state.notes.inspection ?? 'scatter';
  const inspection = d.content.inspections[id as keyof typeof d.content.inspections];
  d.add({ advice: { kind: 'inspect', what: phrase(d.content, `inspect-what-${id}`), why: inspection.say[0] ?? '', caution: [] } });
}

/** Keeps what the line now says of the adjustment under work; told once, when its sign is beyond doubt. */
function learn(d: Deciding): void {
  const axis = axisOf(d.place);
  const rung = axis === null ? null : rungNow(d.content, d.state, axis);
  if (axis === null || rung === null || !d.state.moves.some((m) => m.knob === rung.knob)) return;
  const line = lineOf(d.content, d.state, axis, rung.knob);
  const sd = Math.sqrt(line.varSlope);
  if (Math.abs(line.slope) < 2 * sd) return;
  const fresh = d.state.notes.learned[rung.knob] === undefined;
  d.add({
    loop: { learned: { ...d.state.notes.learned, [rung.knob]: { mean: line.slope, sd } } },
    findings: fresh ? [{ kind: 'knob', knob: rung.knob, result: 'learned' }] : [],
  });
  if (!fresh) return;
  const knob = d.content.knobs[rung.knob];
  d.say('learned', { knob: knob.name, change: Math.abs(line.slope * knob.first).toFixed(2), step: phrase(d.content, 'first-step-of', { first: knob.first === Math.trunc(knob.first) ? knob.first : `1/${Math.round(1 / knob.first)}`, unit: knob.unit }) });
}

function turnProving(d: Deciding): boolean {
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (taken(d.state) < d.state.notes.wanted) return false;
  return apply(d, judgeReturn(d.content, d.state));
}

function turnAdvising(d: Deciding): boolean {
  const { content, state } = d;
  if (state.notes.reshoot || state.notes.resumeSet) return reshoot(d);
  if (state.advice?.kind === 'adjust') return false;
  const axis = axisOf(d.place) ?? 'height';
  const choice = choose(content, state, axis);
  if (choice.kind === 'ask first') { d.add({ due: choice.steps }); return true; }
  if (choice.kind === 'advice') { d.add({ advice: choice.advice }); return false; }
  const shop = { kind: 'shop' as const, what: phrase(content, 'shop-what'), why: choice.shop, caution: [content.cautions['manual'] ?? ''].filter((c) => c !== '') };
  d.add({
    advice: shop, events: [{ type: 'settled' }],
    findings: [{ kind: 'axis', axis, chapter: 'paper', result: 'cannot' }],
    loop: { axis: { ...state.notes.axis, [axis]: { result: 'cannot', chance: 0 } }, shop: [...state.notes.shop, choice.shop] },
  });
  d.say('none-left', { shop: choice.shop });
  return true;
}

// In tolerance. One finishing step is offered where the estimate lies beyond 1/8 in and the knob is learned.
function turnPassed(d: Deciding): boolean {
  const { notes } = d.state;
  if (notes.offered === 'finish step') return false;
  const axis = axisOf(d.place);
  if (axis !== null && notes.offeredFor[axis] !== true && finishingStepFits(d, axis)) {
    d.add({ loop: { offered: 'finish step', offeredFor: { ...notes.offeredFor, [axis]: true } } });
    return false;
  }
  return go(d, 'settled');
}

function finishingStepFits(d: Deciding, axis: Axis): boolean {
  const rung = rungNow(d.content, d.state, axis);
  if (rung === null || d.state.notes.learned[rung.knob] === undefined) return false;
  const evidence = evidenceOn(d.content, d.state, axis, rung.knob);
  if (evidence === null || Math.abs(evidence.mean) <= FINISH_FROM) return false;
  const sized = sizeMove(d.content, d.state, axis, rung);
  if (sized === null || sized.trial) return false;
  // Only a step that promises something: the estimate must come closer to the aim.
  const { aim } = TOLERANCE[axis];
  const after = sized.line.intercept + sized.line.slope * sized.to;
  return Math.abs(after - aim) < Math.abs(evidence.mean - aim);
}

function turnFinish(d: Deciding, place: string): boolean {
  if (place === 'finish.tightening') {
    const hardware = ['cams', 'rest'].filter((id) => d.state.answers[id] === undefined);
    if (hardware.length > 0) { d.add({ due: hardware }); return true; }
    d.add({ loop: { newSet: true, purpose: 'tightened', wanted: 3 } });
    return go(d, 'settled');
  }
  if (place === 'finish.proof') return turnProof(d);
  if (place === 'finish.closing') return go(d, 'settled');
  return false;
}

// Tightening can move a rest: three shots against the last ones at this setting. Nothing to hold them against, nothing to prove.
function turnProof(d: Deciding): boolean {
  if (tunedAxes(d).length === 0) return go(d, 'settled');
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (taken(d.state) < d.state.notes.wanted) return false;
  if (differs(d.state) === null) return go(d, 'settled');
  return apply(d, judgeReturn(d.content, d.state));
}
