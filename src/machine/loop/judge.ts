// After each shot: is it enough, do the shots agree, is it in tolerance, worse, out, or beyond this adjustment?
// Order matters: scatter and gross tears come before any figure, a proven "worse" before anything hopeful.

import { normalCdf } from '../../maths/normal.ts';
import { chanceNotReachable, chanceWorse, predict } from '../../archery/response.ts';
import { changesDirection, judgeConsistency, pairLimits, widest } from '../../archery/consistency.ts';
import type { Axis, Content } from '../../content/types.ts';
import type { State } from '../state.ts';
import { phrase, sideInWords, tearInWords } from '../words.ts';
import { centreOf, evidenceOn, pointsOf, spreadAsShot, spreadOf, type AxisEvidence } from './evidence.ts';
import { judgement, type Judgement } from './judgement.ts';
import { homeOf, rungNow, type Rung } from './ladder.ts';
import { sizeMove } from './size.ts';
import { currentSet, goodShots, on, settingNow, shotsHere, taken, TOLERANCE } from './sets.ts';

export const SURE = 0.95;
const OWN_CHECK = 0.8;
const WORSE_FROM = 0.9;
const LIKELY_WORSE = 0.6;
const MOST_DOUBTFUL = 4;
const BY_SIGHT = 0.975;
export const NEAR = 0.45;
const FAR = 0.1;
export const MOST_SHOTS = 9;
const CHEAP_SHOTS = 5;
/** Above this spread of one shot (in) a set is five shots (common practice). */
const SCATTERS_FROM = 0.25;
const FIVE = 5;
/** Above this spread of one shot (in) three to nine shots cannot tell a step of any adjustment from luck. */
const MOST_SPREAD = 0.3;
const GROSS = 1;
const VERY_GROSS = 2;

const AXIS_WORDS: Readonly<Record<Axis, readonly [string, string]>> = { height: ['high', 'low'], side: ['right', 'left'] };

/** Scatter, two shots too far apart, or a gross tear; null where the present set may be read as a tear. */
export function judgeSet(content: Content, state: State): Judgement | null {
  const set = currentSet(state);
  if (set === null) return null;
  const shots = goodShots(set);
  const others = spreadOf(state, set.id);
  // One wild shot among three is no scatter: it takes a fourth to tell (measured: 77 % false alarms otherwise). Three that
  // point three ways are: the trade's plain rule, where their spread is beyond luck as well.
  const consistency = judgeConsistency(shots, others, 4);
  const threeWays = shots.length < 7 && consistency.kind !== 'fine' && changesDirection(shots, others);
  if (shots.length >= 3 && (consistency.kind === 'inconsistent' || threeWays)) {
    const { pair } = widest(shots);
    return judgement('inconsistent', {
      say: [phrase(content, 'scatter', { pair: pair.toFixed(2), usual: others.sd.toFixed(2) })],
      notes: { inspection: 'scatter', inspections: state.notes.inspections + 1, scattered: [...state.notes.scattered, set.id] },
    });
  }
  // Who scatters shoots five before anything is read from them.
  if (set.purpose === 'judge' && shots.length < FIVE && shots.length >= 2 && spreadAsShot(state).sd > SCATTERS_FROM) {
    return judgement(null, { notes: { wanted: FIVE }, say: [phrase(content, 'five-shots')] });
  }
  // Each set alone may pass by luck; together they say that no move could be judged.
  const asShot = spreadAsShot(state);
  if (shots.length >= 3 && asShot.sd > MOST_SPREAD) {
    return judgement('inconsistent', {
      say: [phrase(content, 'scatter-wide', { sd: asShot.sd.toFixed(2) })],
      notes: { inspection: 'scatter', inspections: state.notes.inspections + 1, scattered: [...state.notes.scattered, set.id] },
    });
  }
  if (shots.length === 2 && widest(shots).pair > pairLimits(3, others.df).pair95 * others.sd) {
    return judgement(null, { notes: { wanted: 3 }, say: [phrase(content, 'two-far-apart')] });
  }
  if (consistency.kind === 'suspect' && shots.length < 7) return judgement(null, { notes: { wanted: shots.length + 1 }, say: [phrase(content, 'one-far-off')] });
  return judgeGross(content, state);
}

function judgeGross(content: Content, state: State): Judgement | null {
  const { mean } = centreOf(shotsHere(state), spreadOf(state).sd);
  const size = Math.max(Math.abs(mean.x), Math.abs(mean.y));
  if (size <= GROSS) return null;
  // Looked into once, and no cause found: an inch may be tuned step by step, two inches may not. Without an inspection it is left.
  if (state.notes.grossSeen) return size > VERY_GROSS ? judgement('gross', { say: [phrase(content, 'very-gross-left')] }) : null;
  return judgement('gross', {
    say: [phrase(content, size > VERY_GROSS ? 'tear-very-gross' : 'tear-gross', { tear: tearInWords(mean) })],
    notes: { inspection: size > VERY_GROSS ? 'very-gross' : 'gross', grossSeen: true, inspections: state.notes.inspections + 1 },
  });
}

/** As found: both axes at once; "in tolerance" only if both are, so that a bow in tune is left alone. */
export function judgeAsFound(content: Content, state: State): Judgement {
  const both = (['height', 'side'] as const).flatMap((axis) => evidenceOn(content, state, axis, null) ?? []);
  const say = [summary(content, state, both)];
  if (both.every(inTolerance)) {
    return judgement('in tolerance', {
      say: [...say, phrase(content, 'as-found-tuned')],
      notes: { axis: Object.fromEntries(both.map((e) => [e.axis, { result: 'tuned', chance: e.within }])), heightAt: lastSeq(state) },
      findings: both.map((e) => ({ kind: 'axis', axis: e.axis, chapter: 'paper', result: 'tuned', chance: round(e.within) })),
    });
  }
  if (!both.some(decidedOut) && wantsMore(Math.min(...both.map((e) => e.within)), both[0]?.shots ?? 0)) return oneMore(content, state, say);
  return judgement('out', { say });
}

const decidedOut = (e: AxisEvidence): boolean => e.within < NEAR && (e.within <= FAR || e.shots >= CHEAP_SHOTS);
const inTolerance = (e: AxisEvidence): boolean => e.within >= SURE && e.withinHere >= OWN_CHECK;
const wantsMore = (within: number, shots: number): boolean =>
  (within >= NEAR && shots < MOST_SHOTS) || (within > FAR && shots < CHEAP_SHOTS);

function oneMore(content: Content, state: State, say: readonly string[], why: 'one-more' | 'perhaps-worse' = 'one-more'): Judgement {
  const set = currentSet(state);
  const shots = set === null ? 0 : goodShots(set).length;
  return judgement(null, { notes: { wanted: shots + 1 }, say: [...say, phrase(content, why)] });
}

/** One axis at the present setting, with the adjustment under work. */
export function judgeAxis(content: Content, state: State, axis: Axis): Judgement {
  const rung = touchedRung(content, state, axis);
  const evidence = evidenceOn(content, state, axis, rung?.knob ?? null);
  if (evidence === null) return judgement(null, { notes: { wanted: 3 } });
  const say = [axisSummary(content, state, evidence)];
  if (inTolerance(evidence)) return tuned(content, state, evidence, say);
  const worse = rung === null ? null : judgeWorse(content, state, axis, rung, evidence, say);
  if (worse !== null) return worse;
  // "Enough tried" comes before "one more shot" only where it is proven; otherwise shots are cheaper than moves.
  if (wantsMore(evidence.within, evidence.shots)) return oneMore(content, state, say);
  if (rung !== null) {
    const ended = judgeEnd(content, state, axis, rung, evidence);
    if (ended !== null) return { ...ended, say: [...say, ...ended.say] };
  }
  // Shots no longer help; a step that is known to help does, otherwise leaving it is the archer's choice.
  if (evidence.within >= NEAR && !promising(content, state, axis, rung, evidence)) {
    return judgement('borderline', { say: [...say, phrase(content, 'borderline', { shots: evidence.shots })], notes: { offered: 'accept' } });
  }
  return judgement('out', { say });
}

function promising(content: Content, state: State, axis: Axis, rung: Rung | null, evidence: AxisEvidence): boolean {
  if (rung === null || state.notes.learned[rung.knob] === undefined) return false;
  const sized = sizeMove(content, state, axis, rung);
  if (sized === null || sized.trial) return false;
  const { aim } = TOLERANCE[axis];
  return Math.abs(predict(sized.line, sized.to).mean - aim) < Math.abs(evidence.mean - aim);
}

function tuned(content: Content, state: State, evidence: AxisEvidence, say: readonly string[]): Judgement {
  const { axis, within } = evidence;
  return judgement('in tolerance', {
    say: [...say, phrase(content, axis === 'height' ? 'height-tuned' : 'side-tuned', { chance: percent(within) })],
    notes: {
      axis: { ...state.notes.axis, [axis]: { result: 'tuned', chance: within } },
      ...(axis === 'height' ? { heightAt: lastSeq(state) } : {}),
    },
    findings: [{ kind: 'axis', axis, chapter: 'paper', result: 'tuned', chance: round(within) }],
  });
}

/** The rung under work, where it was moved or its neighbourhood shot; null before its first move. */
function touchedRung(content: Content, state: State, axis: Axis): Rung | null {
  const rung = rungNow(content, state, axis);
  if (rung === null) return null;
  return state.moves.some((move) => move.knob === rung.knob) ? rung : null;
}

function judgeWorse(content: Content, state: State, axis: Axis, rung: Rung, evidence: AxisEvidence, say: readonly string[]): Judgement | null {
  const last = state.moves.at(-1);
  if (last === undefined || last.knob !== rung.knob || last.why !== 'advice' || evidence.line === null) return null;
  const now = settingNow(state, rung.knob);
  const before = now - last.delta;
  // Past the aim to its other side: the way was right and the step too long. It goes back in part, by the line.
  const { aim } = TOLERANCE[axis];
  if ((predict(evidence.line, before).mean - aim) * (predict(evidence.line, now).mean - aim) < 0) return null;
  // Brought to the maker's figure: that is no attempt on the tear, and stays whatever the tear does.
  const home = homeOf(state, rung.knob);
  if (home !== 0 && Math.abs(now - home) < 1e-9 && Math.abs(before) < 1e-9) return null;
  const chance = Math.max(chanceWorse(evidence.line, before, now, aim), worseBySight(state, axis, rung, before, now));
  // Likely worse, not proven: a shot more before the side is given up or kept.
  if (chance >= LIKELY_WORSE && chance < WORSE_FROM && taken(state) < MOST_DOUBTFUL) return oneMore(content, state, say, 'perhaps-worse');
  if (chance < WORSE_FROM) return null;
  const times = (state.notes.worse[rung.knob] ?? 0) + 1;
  return judgement('worse', {
    say: [...say, phrase(content, 'worse', { chance: percent(chance) })],
    notes: {
      worse: { ...state.notes.worse, [rung.knob]: times },
      undo: [last.seq],
      ...(times >= 2 ? { ended: { ...state.notes.ended, [rung.knob]: 'limit' } } : {}),
    },
    findings: times >= 2 ? [{ kind: 'knob', knob: rung.knob, result: 'limit' }] : [],
  });
}

/**
 * Chance of being worse by the shots at the two settings alone. A straight line cannot bend: where a knob is at its best it sees
 * no slope, however plain the shots are. Counts only where it is beyond doubt; else the line speaks.
 */
function worseBySight(state: State, axis: Axis, rung: Rung, before: number, now: number): number {
  const { points, group } = pointsOf(state, axis, rung.knob);
  const at = (x: number) => points.find((p) => p.group === group && Math.abs(p.x - x) < 1e-9);
  const [a, b] = [at(before), at(now)];
  if (a === undefined || b === undefined) return 0;
  const { aim } = TOLERANCE[axis];
  const further = Math.abs(b.mean - aim) - Math.abs(a.mean - aim);
  const chance = normalCdf(further / (spreadOf(state).sd * Math.sqrt(1 / a.count + 1 / b.count)));
  return chance >= BY_SIGHT ? chance : 0;
}

/** "This adjustment cannot": nothing in reach would do, it does nothing, or it wants to go beyond its limit. */
function judgeEnd(content: Content, state: State, axis: Axis, rung: Rung, evidence: AxisEvidence): Judgement | null {
  const { line } = evidence;
  if (line === null) return null;
  const knob = content.knobs[rung.knob];
  const { low, high, aim } = TOLERANCE[axis];
  const { points, group } = pointsOf(state, axis, rung.knob);
  const tried = points.filter((p) => p.group === group).map((p) => p.x);
  const range = Math.max(...tried) - Math.min(...tried);
  const enough = range >= 2 * knob.first - 1e-9;
  const home = homeOf(state, rung.knob);
  const best = bestTried(points.filter((p) => p.group === group), line, aim, rung, home);
  const helped = best !== home && chanceWorse(line, best, home, aim) >= WORSE_FROM;
  const beyond = sizeMove(content, state, axis, rung) === null;
  // An adjustment that helps is used up to its limit, also where it alone will not do: the next rung begins nearer.
  const unreachable = enough && !helped && chanceNotReachable(line, rung.lo, rung.hi, low, high, evidence.spread.df) >= SURE;
  const now = settingNow(state, rung.knob);
  // What answers clearly is not deaf, even where no setting tried so far was better than the start (overshot).
  const answers = Math.abs(line.slope) >= 2 * Math.sqrt(line.varSlope);
  const deaf = enough && !answers && Math.abs(now - home) >= 2 * knob.first - 1e-9 && !helped && chanceWorse(line, home, now, aim) < WORSE_FROM;
  if (!beyond && !unreachable && !deaf) return null;
  const result = helped ? 'limit' : 'no response';
  const target = helped ? best : home;
  return judgement('cannot', {
    say: [phrase(content, helped ? 'knob-limit' : 'knob-no-response', { knob: knob.name })],
    notes: { ended: { ...state.notes.ended, [rung.knob]: result }, undo: undoTo(state, rung.knob, target) },
    findings: [{ kind: 'knob', knob: rung.knob, result }],
  });
}

// Half of what the line says, half of what was seen; the start gets a small bonus. Only settings inside the limits.
function bestTried(points: readonly { x: number; mean: number }[], line: AxisEvidence['line'], aim: number, rung: Rung, home: number): number {
  let best = home;
  let least = Infinity;
  for (const { x, mean } of points) {
    if (x < rung.lo - 1e-9 || x > rung.hi + 1e-9) continue;
    const guess = line === null ? mean : line.intercept + line.slope * x;
    const cost = (0.5 * (guess - aim) + 0.5 * (mean - aim)) ** 2 + (x === home ? 0 : 0.01);
    if (cost < least) [best, least] = [x, cost];
  }
  return best;
}

/** The moves (newest first) whose undoing brings a knob to `target`; empty where it stands there. */
export function undoTo(state: State, knob: string, target: number): readonly number[] {
  const seqs: number[] = [];
  let setting = state.moves.filter((m) => m.knob === knob).reduce((sum, m) => sum + m.delta, 0);
  for (const move of [...state.moves].reverse()) {
    if (Math.abs(setting - target) < 1e-9) break;
    if (move.knob !== knob) continue;
    seqs.push(move.seq);
    setting -= move.delta;
  }
  return seqs;
}

function axisSummary(content: Content, state: State, e: AxisEvidence): string {
  const { mean } = centreOf(shotsHere(state), e.spread.sd);
  const [plus, minus] = AXIS_WORDS[e.axis];
  return phrase(content, 'axis-summary', {
    shots: e.shots,
    mean: sideInWords(on(e.axis, mean), plus, minus),
    from: sideInWords(e.mean - 2 * e.se, plus, minus),
    to: sideInWords(e.mean + 2 * e.se, plus, minus),
    chance: percent(e.within),
  });
}

function summary(content: Content, state: State, both: readonly AxisEvidence[]): string {
  const { mean } = centreOf(shotsHere(state), spreadOf(state).sd);
  return phrase(content, 'tear-summary', { shots: both[0]?.shots ?? 0, tear: tearInWords(mean), sd: spreadOf(state).sd.toFixed(2) });
}

const lastSeq = (state: State): number => state.facts.at(-1)?.seq ?? 0;
const round = (value: number): number => Math.round(value * 1000) / 1000;
/** Rounded down, and never 0 or 100: shots do not show certainty. */
export const percent = (value: number): string => (value < 0.01 ? 'under 1 %' : `${Math.min(99, Math.floor(value * 100 + 1e-9))} %`);
