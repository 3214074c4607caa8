// What a judgement leads to: the verdict goes to the machine, a cause is looked for, a change is put back, a response is kept.

import { AXES } from '../content/types.ts';
import { nextUndo } from './bring-back.ts';
import { lookNote, shopNote } from './loop/advise.ts';
import type { Deciding } from './deciding.ts';
import { lineOf, priorOf } from './loop/evidence.ts';
import { gaugeOf } from './loop/gauge.ts';
import { secondKind } from './loop/gauge-groups.ts';
import { axisResults, endedWithout, tunedByScatter, unsaid } from './loop/results.ts';
import { backFrom } from './loop/judge.ts';
import type { Judgement } from './loop/judgement.ts';
import { rungNow } from './loop/ladder.ts';
import { sideEffectOf } from './loop/side-effect.ts';
import type { Verdict } from './types.ts';
import type { PlaceIn, PlaceOf, PlaceWith } from './places.ts';
import { axisOf } from './walk.ts';
import { amountInWords, phrase, shiftInWords } from './words.ts';

/** What this bow's shots must leave of the uncertainty that the book began with, at the most. */
const OWN_SHARE = 0.7;

/** A place of the measuring loop that every axis shares: the only ones where something can be put back. */
export type InLoop<Phase extends string> = Extract<PlaceWith<'put back'>, PlaceOf<Phase>>;
/** Wherever the bow is judged by shots. */
export type Shooting = Extract<PlaceIn<'paper' | 'broadheads'>, PlaceOf<'shooting'>>;

// Each adopts one kind of judgement, and takes the verdicts that the places it is called from can take. False where one
// more shot is wanted.

/** Shots that cannot be read: a cause is looked for. */
export function adoptScatter(d: Deciding<Shooting>, judged: Judgement<'inconsistent' | 'gross'>): boolean {
  // More than an inch is looked into; where it is more than two, and a change was just made, that change comes off first.
  if (judged.verdict === 'gross' && judged.notes.inspection !== 'gross' && undoTooFar(d)) return true;
  const verdict = keep(d, judged);
  if (verdict === null) return false;
  if (verdict === 'gross') learn(d);
  if (verdict === 'inconsistent' && tooManyInspections(d)) return undoUnjudged(d) || leaveScattered(d);
  if (verdict === 'gross' && judged.notes.inspection === undefined) return leaveGross(d);
  d.event({ type: 'verdict', verdict });
  inspectAdvice(d);
  return true;
}

/** The first set of another day was held against the last one: what it shows is judged next, where the walk stands. */
export function adoptSame(d: Deciding<Shooting>, judged: Judgement<'returned'>): boolean {
  if (keep(d, judged) === null) return false;
  learn(d);
  return true;
}

/** Both axes at once, as found or at the second distance. */
export function adoptWhole(d: Deciding<'paper.asFound.shooting' | 'paper.second.shooting'>, judged: Judgement<'in tolerance' | 'out'>): boolean {
  const verdict = keep(d, judged);
  if (verdict === null) return false;
  learn(d);
  return d.event({ type: 'verdict', verdict });
}

export function adoptAxis(d: Deciding<InLoop<'shooting'>>, judged: Judgement<'in tolerance' | 'out' | 'worse' | 'cannot' | 'borderline'>): boolean {
  const verdict = keep(d, judged);
  if (verdict === null) return false;
  learn(d);
  // What goes back takes along whatever it did.
  if (d.state.notes.undo.length === 0) learnBesides(d);
  // Shot again and found otherwise: what was said of this axis before is said no more.
  const axis = axisOf(d.place);
  if (axis !== null && verdict !== 'in tolerance') d.add({ loop: unsaid(d.state, axis) });
  d.event({ type: 'verdict', verdict });
  if (verdict === 'worse') nextUndo(d);
  if (verdict === 'cannot' && d.state.notes.undo.length > 0) {
    d.event({ type: 'put back' });
    nextUndo(d);
  }
  return true;
}

/** Did it come back? After a put-back, and after tightening. */
export function adoptReturn(d: Deciding<InLoop<'proving'> | 'finish.proof'>, judged: Judgement<'returned' | 'not returned'>): boolean {
  const verdict = keep(d, judged);
  if (verdict === null) return false;
  learn(d);
  d.event({ type: 'verdict', verdict });
  if (verdict === 'not returned') inspectAdvice(d);
  return true;
}

function keep<V extends Verdict>(d: Deciding, { verdict, say, findings, notes }: Judgement<V>): V | null {
  d.add({ say, findings, loop: { ...notes } });
  return verdict;
}

const tooManyInspections = (d: Deciding): boolean => d.state.notes.inspections > 2;

/** No word on the bow. */
const UNREAD: readonly Verdict[] = ['inconsistent', 'gross'];

// A change that only scattered shots have followed was never judged: it does not stay on the bow.
function undoUnjudged(d: Deciding<Shooting>): boolean {
  const { moves, facts } = d.state;
  const last = moves.at(-1);
  if (last?.why !== 'advice' || !d.may('put back')) return false;
  const judged = facts.some(({ seq, decided }) => seq > last.seq && decided.events.some((event) => event.type === 'verdict' && !UNREAD.includes(event.verdict)));
  if (judged) return false;
  d.say('unjudged-back');
  d.event({ type: 'put back' }, { loop: { undo: [last.seq], inspection: null } });
  nextUndo(d);
  return true;
}

// What was shot after an advised change shows more than two inches: nobody looks on, shoots on or leaves it so. What it taught is kept.
function undoTooFar(d: Deciding<Shooting>): boolean {
  const { moves, sets } = d.state;
  const last = moves.at(-1);
  if (last?.why !== 'advice' || !d.may('put back')) return false;
  // Looked into for scatter in between, and nothing found: it is still the change that is judged. A later day's tear is not.
  const since = sets.filter((set) => set.shots.some((shot) => shot.seq > last.seq));
  if (since.some(({ purpose, epoch }) => purpose !== 'judge' || epoch !== d.state.notes.epoch)) return false;
  const { notes, findings } = backFrom(d.state, last);
  learn(d);
  d.say('gross-back');
  d.event({ type: 'put back' }, { findings, loop: { ...notes, inspection: null } });
  nextUndo(d);
  return true;
}

function leaveScattered(d: Deciding<Shooting>): true {
  const { of, axes: all } = gaugeOf(d.state);
  // Broadheads that scatter farther back leave nothing standing of what agreed nearer: it is one and the same group.
  const axes = of === 'broadheads' ? all : all.filter((axis) => axisResults(d.state)[axis]?.result !== 'tuned' || tunedByScatter(d.state, axis));
  const { findings, notes } = endedWithout(d.state, axes, 'inconsistent');
  d.event({ type: 'settled' }, { findings, loop: { ...notes, inspection: null } });
  d.say('leave-scattered');
  return true;
}

function leaveGross(d: Deciding<Shooting>): true {
  const why = phrase(d.content, 'shop-very-gross');
  const { findings, notes } = endedWithout(d.state, AXES, 'cannot');
  return d.event({ type: 'settled' }, { advice: shopNote(d.content, why), findings, loop: { ...notes, shop: [...d.state.notes.shop, why] } });
}

function inspectAdvice(d: Deciding): void {
  d.add({ advice: lookNote(d.content, d.state.notes.inspection ?? 'scatter') });
}

/** Keeps, and tells once, what the last change did on the axis that it is not made for. */
function learnBesides(d: Deciding): void {
  const last = d.state.moves.at(-1);
  const effect = last?.why === 'advice' ? sideEffectOf(d.content, d.state, last.knob) : null;
  if (last === undefined || effect === null) return;
  const { besides, besidesTold } = d.state.notes;
  const { mean, sd, axis, change, told } = effect;
  const { of } = gaugeOf(d.state);
  // Learned and handed on in inches of tear; what distance shows is told, and used there alone.
  if (of === 'paper' && (told || besides[last.knob] !== undefined)) d.add({ loop: { besides: { ...besides, [last.knob]: { mean, sd } } } });
  if (!told || besidesTold.includes(last.knob)) return;
  d.add({ loop: { besidesTold: [...besidesTold, last.knob] } });
  d.say(of === 'paper' ? 'besides-paper' : 'besides-groups', {
    axis: phrase(d.content, `axis-${axis}`), change: shiftInWords(axis, change, of === 'paper' ? 2 : 1),
    ...(of === 'paper' || of === 'plumb' ? {} : { what: phrase(d.content, `what-${secondKind(of)}`) }),
  });
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
