// The next single change: what must be known first, which adjustment, which way, how far, and how to undo it.

import { predict } from '../../archery/response.ts';
import type { Axis, Content, Inspection, Knob, KnobId } from '../../content/types.ts';
import { chosen, holds } from '../guards.ts';
import { isSettled } from '../agenda.ts';
import { readingNow } from '../reading-now.ts';
import { tidy, type Move, type State } from '../state.ts';
import { amountInWords, directionOf, headlineOf, phrase, shiftInWords, sideInWords } from '../words.ts';
import type { Advice, Gain, Quantity } from '../types.ts';
import { readingHere, spreadOf } from './evidence.ts';
import { gaugeOf } from './gauge.ts';
import { secondKind } from './gauge-groups.ts';
import { ladderFor, OFF_FIGURE, restOffset, rungNow, type Rung } from './ladder.ts';
import { paperAgainst } from './paper-against.ts';
import { sizeMove, type Sized } from './size.ts';
import { on, otherAxis, settingNow } from './sets.ts';
import { expectedBesides } from './side-effect.ts';
import { AXIS_WORDS } from './summary.ts';

export type Choice =
  | { readonly kind: 'ask first'; readonly steps: readonly string[] }
  | { readonly kind: 'advice'; readonly advice: Advice; readonly knob: KnobId }
  | { readonly kind: 'none left'; readonly shop: string };

/** Grip and face trials are worth their shots only above this. Inches. */
const WORTH_TRIALS = 1 / 4;

const HARDWARE = ['cams', 'rest', 'press', 'rest-scale'];

export function choose(content: Content, state: State, axis: Axis): Choice {
  const first = missing(content, state, axis === 'side' ? [...HARDWARE, 'centre-shot-figure'] : HARDWARE);
  if (first.length > 0) return { kind: 'ask first', steps: first };
  // Paper left rest and nock where they belong; impacts at distance do not bring them back to a figure.
  const restored = gaugeOf(state).of === 'broadheads' ? null : axis === 'side' ? restoreRest(content, state) : liftNock(content, state);
  if (restored !== null) return restored;
  const rung = usableRung(content, state, axis);
  if (rung === null && powderIsOwed(state)) return { kind: 'ask first', steps: ['contact'] };
  if (rung === null) return { kind: 'none left', shop: ladderFor(content, state, axis).shop };
  const knob = content.knobs[rung.knob];
  const needs = missing(content, state, knob.needs);
  if (needs.length > 0) return { kind: 'ask first', steps: needs };
  // One look at a time: what the first one finds may make the next one needless, and asks for a fresh set first.
  const [look] = powderIsOwed(state) ? ['contact'] : missing(content, state, axis === 'side' ? sidewaysLooks(state) : ['contact']);
  if (look !== undefined) return { kind: 'ask first', steps: [look] };
  const sized = sizeMove(content, state, axis, rung);
  if (sized === null) return { kind: 'none left', shop: ladderFor(content, state, axis).shop };
  return { kind: 'advice', advice: adviceOf(content, state, axis, knob, sized), knob: rung.knob };
}

// Declined once, the equally right one is offered; a rung whose step is used up is passed by.
function usableRung(content: Content, state: State, axis: Axis): Rung | null {
  const rung = rungNow(content, state, axis);
  if (rung === null) return null;
  const other = content.knobs[rung.knob].alternative;
  if (!state.notes.declined.includes(rung.knob) || other === null || state.notes.ended[other] !== undefined) return rung;
  const knob = content.knobs[other];
  return { knob: other, ...nockBounds(state, knob.soft), trial: false, smallest: knob.smallest };
}

// Whatever its travel, the nocking point stays between level and 1/4 in above level.
function nockBounds(state: State, soft: number): { lo: number; hi: number } {
  const now = settingNow(state, 'nock-height');
  const here = readingNow(state, 'nock-height');
  if (here === null) return { lo: -soft, hi: soft };
  return { lo: Math.max(-soft, now - here), hi: Math.min(soft, now + 1 / 4 - here) };
}

const missing = (content: Content, state: State, steps: readonly string[]): readonly string[] =>
  steps.filter((id) => {
    const step = content.steps[id];
    return step !== undefined && holds(state, step.when) && !isSettled(state, id);
  });

// Powder once before the first adjustment of either axis: by simulation vanes that touch on 40 shots of 100 are then told within 25 shots in 97
// bows of 100, before the first sideways one alone in 88, for half a question more. Grip and face only where there is something to explain.
function sidewaysLooks(state: State): readonly string[] {
  // Their worth is told in tears: away from paper only contact is ruled out.
  const centre = gaugeOf(state).of === 'paper' ? readingHere(state) : null;
  return centre !== null && Math.abs(centre.mean.x) > WORTH_TRIALS ? ['contact', 'grip', 'face'] : ['contact'];
}

/** Nobody could look for contact, and since then an adjustment did nothing: powder comes before the next one, and before the shop. */
function powderIsOwed(state: State): boolean {
  const asked = state.answers['contact'];
  if (asked === undefined || chosen(state, 'contact') !== 'unknown') return false;
  return state.facts.some(({ seq, decided }) => seq > asked.seq && decided.findings.some((found) => found.kind === 'knob' && found.result === 'no response'));
}

function restoreRest(content: Content, state: State): Choice | null {
  const offset = restOffset(state);
  if (Math.abs(offset) <= OFF_FIGURE + 1e-9 || settingNow(state, 'rest-side') !== 0) return null;
  const from = settingNow(state, 'rest-side');
  const advice = plainMove(content, state, content.knobs['rest-side'], from, tidy(from - offset), phrase(content, 'rest-to-figure', { off: amountInWords({ value: Math.abs(offset), unit: 'in' }) }));
  return { kind: 'advice', advice, knob: 'rest-side' };
}

// A nock below level or more than 1/4 in above it is set right before anything finer.
function liftNock(content: Content, state: State): Choice | null {
  const height = readingNow(state, 'nock-height');
  if (height === null || settingNow(state, 'nock-height') !== 0) return null;
  const knob = content.knobs['nock-height'];
  const want = height < 0 ? 0 : height > 1 / 4 ? 1 / 4 : height;
  const steps = Math.ceil(Math.abs(want - height) / knob.smallest - 1e-9);
  if (steps === 0) return null;
  const to = tidy(Math.sign(want - height) * steps * knob.smallest);
  return { kind: 'advice', advice: plainMove(content, state, knob, 0, to, phrase(content, 'nock-out-of-range')), knob: 'nock-height' };
}

function adviceOf(content: Content, state: State, axis: Axis, knob: Knob, { from, to, trial, line }: Sized): Advice {
  const here = readingHere(state)?.mean ?? { x: 0, y: 0 };
  const next = predict(line, to);
  const sd = Math.hypot(next.sd, spreadOf(state).sd / Math.sqrt(3));
  const [step, other] = [to - from, otherAxis(axis)];
  const besides = expectedBesides(state, knob.id, other);
  const still = Math.hypot(spreadOf(state).sd * Math.sqrt(2 / 3), (besides?.sd ?? 0) * step);
  const [mean, sdAxis, sdOther] = [thousandths(next.mean), thousandths(sd), thousandths(still)];
  const elsewhere = thousandths(on(other, here) + (besides?.mean ?? 0) * step);
  const expect = axis === 'height' ? { x: elsewhere, y: mean, sdX: sdOther, sdY: sdAxis } : { x: mean, y: elsewhere, sdX: sdAxis, sdY: sdOther };
  const [plus, minus] = AXIS_WORDS[axis];
  const digits = gaugeOf(state).of === 'paper' ? 2 : 1;
  const tell = (value: number): string => sideInWords(value, plus, minus, digits);
  const now = tell(on(axis, here));
  return {
    ...plainMove(content, state, knob, from, to, whyMove(content, state, knob, now, trial) + againstPaper(content, state, axis) + alsoMoves(content, other, besides, step, digits)),
    expect,
    ...(trial ? { trial: true as const } : {}),
    wrongIf: phrase(content, WRONG_IF[gaugeOf(state).of], { expect: tell(next.mean), give: sd.toFixed(digits), now }),
  };
}

const WRONG_IF = { paper: 'wrong-if', plumb: 'wrong-if-plumb', broadheads: 'wrong-if-groups', unfletched: 'wrong-if-groups' } as const;

function whyMove(content: Content, state: State, knob: Knob, tear: string, trial: boolean): string {
  const { of } = gaugeOf(state);
  if (of === 'plumb') return phrase(content, 'why-adjust-plumb', { knob: knob.name, drift: tear });
  if (of === 'paper') return phrase(content, trial ? 'why-trial' : 'why-adjust', { knob: knob.name, tear });
  return phrase(content, 'why-adjust-groups', { knob: knob.name, diff: tear, what: phrase(content, `what-${secondKind(of)}`) });
}

/** What paper showed, where it speaks against this step. */
function againstPaper(content: Content, state: State, axis: Axis): string {
  const tear = paperAgainst(content, state, axis);
  const [plus, minus] = AXIS_WORDS[axis];
  return tear === null ? '' : ` ${phrase(content, 'why-paper-against', { tear: sideInWords(tear, plus, minus, 2) })}`;
}

/** Less is not seen, inches. */
const TOLD_FROM = 1 / 32;

/** What it does on the other axis, where this bow has shown that. */
function alsoMoves(content: Content, other: Axis, besides: Gain | null, step: number, digits: 1 | 2): string {
  const change = (besides?.mean ?? 0) * step;
  return Math.abs(change) < TOLD_FROM ? '' : ` ${phrase(content, 'why-besides', { change: shiftInWords(other, change, digits) })}`;
}

/** Nobody reads a tear closer; keeps binary dust off the pipe. */
// Halves away from zero: a mirrored tear gives the mirrored figure.
const thousandths = (value: number): number => (Math.sign(value) * Math.round(Math.abs(value) * 1000)) / 1000 + 0;

/** A move of one knob from one setting to another, with its words, its cautions and its way back. */
export function plainMove(content: Content, state: State, knob: Knob, from: number, to: number, why: string, kind: 'adjust' | 'put-back' = 'adjust'): Advice {
  const delta = tidy(to - from);
  const amount: Quantity = { value: Math.abs(delta), unit: knob.unit };
  const caution = knob.cautions.flatMap((id) => content.cautions[id] ?? []);
  return {
    kind, knob: knob.id, direction: directionOf(knob, delta), amount, to: { value: to, unit: knob.unit },
    press: knob.press, caution, why,
    what: `${headline(content, state, knob, delta)} ${amountInWords(amount)}`,
    undo: `${headline(content, state, knob, -delta)} ${amountInWords(amount)}`,
  };
}

// The rest's words may say in or out as well: that is the only part of a move that the hand changes.
function headline(content: Content, state: State, knob: Knob, delta: number): string {
  const words = headlineOf(knob, delta);
  if (knob.id !== 'rest-side') return words;
  const inward = (delta > 0) === (chosen(state, 'hand') !== 'left');
  return `${words} (${phrase(content, inward ? 'toward-riser' : 'away-from-riser')})`;
}

/** No change, but what is looked at first. */
export const lookNote = (content: Content, id: Inspection['id']): Advice =>
  ({ kind: 'inspect', what: phrase(content, `inspect-what-${id}`), why: content.inspections[id].say[0] ?? '', caution: [] });

/** What a shop is asked to look at, each thing once. */
export const shopWith = ({ notes: { shop } }: State, why: string): readonly string[] => [...new Set([...shop, why])];

/** No change, but what a shop is asked to look at. */
export const shopNote = (content: Content, why: string): Advice =>
  ({ kind: 'shop', what: phrase(content, 'shop-what'), why, caution: [content.cautions['manual']].filter((c) => c !== undefined) });

/** The advice that undoes one move, or several moves of one knob in a row, exactly. */
export function undoAdvice(content: Content, state: State, moves: readonly Move[]): Advice | null {
  const [first] = moves;
  if (first === undefined) return null;
  const knob = content.knobs[first.knob];
  const from = settingNow(state, first.knob);
  const back = moves.reduce((sum, move) => sum + move.delta, 0);
  return plainMove(content, state, knob, from, tidy(from - back), phrase(content, 'why-put-back'), 'put-back');
}
