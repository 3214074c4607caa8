// What a judgement leads to: the verdict goes to the machine, a cause is looked for, a change is put back, a response is kept.

import { nextUndo } from './bring-back.ts';
import { axisOf } from './ask.ts';
import { shopNote } from './loop/advise.ts';
import { step } from './walk.ts';
import type { Deciding } from './deciding.ts';
import { lineOf, priorOf } from './loop/evidence.ts';
import { gaugeOf } from './loop/gauge.ts';
import { axisFinding, axisResults, endAxes } from './loop/results.ts';
import type { Judgement } from './loop/judgement.ts';
import { rungNow } from './loop/ladder.ts';
import { amountInWords, phrase } from './words.ts';

/** What this bow's shots must leave of the uncertainty that the book began with, at the most. */
const OWN_SHARE = 0.7;

/** Adopts a judgement; false where one more shot is wanted. */
export function adoptJudgement(d: Deciding, judged: Judgement): boolean {
  d.add({ say: judged.say, findings: judged.findings, loop: { ...judged.notes } });
  const { verdict } = judged;
  if (verdict === null) return false;
  if (verdict !== 'inconsistent') learn(d);
  if (verdict === 'inconsistent' && tooManyInspections(d)) return undoUnjudged(d) || leaveScattered(d);
  if (verdict === 'gross' && judged.notes.inspection === undefined) return leaveGross(d);
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

// A change that only scattered shots have followed was never judged: it does not stay on the bow.
function undoUnjudged(d: Deciding): boolean {
  const { moves, sets, notes } = d.state;
  const last = moves.at(-1);
  if (last?.why !== 'advice' || step(d.state.walk, { type: 'put back' }) === null) return false;
  const judged = sets.some((set) => !notes.scattered.includes(set.id) && set.shots.some((shot) => shot.good && shot.seq > last.seq));
  if (judged) return false;
  d.say('unjudged-back');
  d.add({ events: [{ type: 'put back' }], loop: { undo: [last.seq], inspection: null } });
  nextUndo(d);
  return true;
}

function leaveScattered(d: Deciding): true {
  const { of, axes: all } = gaugeOf(d.state);
  // Broadheads that scatter farther back leave nothing standing of what agreed nearer: it is one and the same group.
  const axes = of === 'broadheads' ? all : all.filter((axis) => axisResults(d.state)[axis]?.result !== 'tuned');
  d.add({
    events: [{ type: 'settled' }],
    findings: axes.map((axis) => axisFinding(d.state, axis, 'inconsistent')),
    loop: { ...endAxes(d.state, Object.fromEntries(axes.map((axis) => [axis, { result: 'inconsistent', chance: 0 }]))), inspection: null },
  });
  d.say('leave-scattered');
  return true;
}

function leaveGross(d: Deciding): true {
  const why = phrase(d.content, 'shop-very-gross');
  const axes = ['height', 'side'] as const;
  d.add({
    advice: shopNote(d.content, why),
    events: [{ type: 'settled' }],
    findings: axes.map((axis) => axisFinding(d.state, axis, 'cannot')),
    loop: { axis: { height: { result: 'cannot', chance: 0 }, side: { result: 'cannot', chance: 0 } }, shop: [...d.state.notes.shop, why] },
  });
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
  // A response is learned and handed on in inches of tear; what distance shows is used there alone.
  if (gaugeOf(d.state).of !== 'paper') return;
  if (axis === null || rung === null || !d.state.moves.some((m) => m.knob === rung.knob)) return;
  const line = lineOf(d.content, d.state, axis, rung.knob);
  const sd = Math.sqrt(line.varSlope);
  // Beyond doubt, and by this bow's own shots: the book alone is nearly sure of some adjustments.
  if (Math.abs(line.slope) < 2 * sd || sd > OWN_SHARE * priorOf(d.content, d.state, rung.knob).sd) return;
  const fresh = d.state.notes.learned[rung.knob] === undefined;
  d.add({
    loop: { learned: { ...d.state.notes.learned, [rung.knob]: { mean: line.slope, sd } } },
    findings: fresh ? [{ kind: 'knob', knob: rung.knob, result: 'learned' }] : [],
  });
  if (!fresh) return;
  const knob = d.content.knobs[rung.knob];
  d.say('learned', { knob: knob.name, change: Math.abs(line.slope * knob.first).toFixed(2), step: amountInWords({ value: knob.first, unit: knob.unit }) });
}
