// After each shot, of a set that may be read: is it enough, is it in tolerance, worse, out, or beyond this adjustment?
// A proven "worse" comes before anything hopeful. What is measured (tear, difference of groups, drift) is the gauge's matter.

import { studentCdf } from '../../maths/student.ts';
import { chanceTrulyWorse } from '../../archery/truly-worse.ts';
import { chanceNotReachable, chanceWorse, predict } from '../../archery/response.ts';
import type { Axis, Content } from '../../content/types.ts';
import type { Move, State } from '../state.ts';
import { phrase } from '../words.ts';
import { evidenceOn, pointsOf, spreadOf, toleranceOn, waysOf, type AxisEvidence, type TriedPoint } from './evidence.ts';
import { gaugeOf, taken, type Gauge } from './gauge.ts';
import { SURE } from './gauge-paper.ts';
import { judgement, shootOn, type Judgement } from './judgement.ts';
import { homeOf, rungNow, type Rung } from './ladder.ts';
import { axisFinding, endAxes } from './results.ts';
import { sizeMove, type Sized } from './size.ts';
import { settingNow } from './sets.ts';
import { axisSummary, moreWanted, percent, tunedWords, undecidedWords, wholeSummary } from './summary.ts';

const OWN_CHECK = 0.8;
const WORSE_FROM = 0.9;
const LIKELY_WORSE = 0.5;
const BY_SIGHT = 0.975;
/** Out of reach is said from this chance on, after so much of the whole travel was tried. */
const [BEYOND, ENOUGH_TRAVEL] = [0.98, 0.2];

/** As found: both axes at once; "in tolerance" only if both are, so that a bow in tune is left alone. */
export function judgeAsFound(content: Content, state: State): Judgement<'in tolerance' | 'out'> {
  const gauge = gaugeOf(state);
  const all = gauge.axes.flatMap((axis) => evidenceOn(content, state, axis, null) ?? []);
  if (all.length === 0) return shootOn({ notes: { wanted: gauge.first } });
  const say = wholeSummary(content, state, gauge);
  if (all.every((e) => inTolerance(gauge, e))) {
    return judgement('in tolerance', {
      say: [...say, phrase(content, gauge.of === 'plumb' ? 'as-found-straight' : 'as-found-tuned')],
      notes: { ...endAxes(state, Object.fromEntries(all.map((e) => [e.axis, { result: 'tuned', chance: e.within }]))), heightAt: lastSeq(state) },
      findings: all.map((e) => axisFinding(state, e.axis, 'tuned', e.within)),
    });
  }
  if (!all.some((e) => e.says === 'out' && !untouched(gauge, e)) && all.some((e) => wantsMore(gauge, e) || untouched(gauge, e))) return oneMore(content, state, say);
  return judgement('out', { say });
}

const inTolerance = (gauge: Gauge, e: AxisEvidence): boolean => e.says === 'in' && e.withinHere >= OWN_CHECK && e.shots >= gauge.enough;
// In tolerance by all settings together, and not yet by this one alone: shots here decide it.
const wantsMore = ({ most }: Gauge, { says, shots }: AxisEvidence): boolean => says === 'more' || (says === 'in' && shots < most);

/** Nothing was moved yet, and it may well be in tune: by this chance and more it is shot on, for a bow in tune is not touched. */
const MAY_BE_IN = 0.1;
const untouched = ({ most }: Gauge, { belief, within, shots }: AxisEvidence): boolean => belief !== null && within >= MAY_BE_IN && shots < most;

function oneMore(content: Content, state: State, say: readonly string[], why: 'more' | 'perhaps-worse' = 'more'): Judgement<never> {
  const wanted = gaugeOf(state).next(taken(state));
  return shootOn({ notes: { wanted }, say: [...say, why === 'more' ? moreWanted(content, state) : phrase(content, why)] });
}

/** One axis at the present setting, with the adjustment under work. */
export function judgeAxis(content: Content, state: State, axis: Axis): Judgement<'in tolerance' | 'out' | 'worse' | 'cannot' | 'borderline'> {
  const gauge = gaugeOf(state);
  const rung = touchedRung(content, state, axis);
  const evidence = evidenceOn(content, state, axis, rung?.knob ?? null);
  if (evidence === null) return shootOn({ notes: { wanted: gauge.first } });
  const say = axisSummary(content, state, evidence);
  if (inTolerance(gauge, evidence)) return tuned(content, state, evidence, say);
  const worse = rung === null ? null : judgeWorse(content, state, axis, rung, evidence, say);
  if (worse !== null) return worse;
  // "Enough tried" comes before "one more shot" only where it is proven; otherwise shots are cheaper than moves.
  if (wantsMore(gauge, evidence) || (rung === null && untouched(gauge, evidence))) return oneMore(content, state, say);
  const next = rung === null ? null : sizeMove(content, state, axis, rung);
  const byList = rung !== null && evidence.belief !== null;
  const step = byList ? stepOrShot(content, state, axis, rung, evidence, next) : null;
  // Where paper is shot, an adjustment is used up only once no shot would help any more.
  const used = evidence.belief === null || (step === null && evidence.says === 'out');
  const ended = rung === null ? null : judgeEnd(content, state, axis, rung, evidence, next, used);
  if (ended !== null) return { ...ended, say: [...say, ...ended.say] };
  if (step === 'shot') return oneMore(content, state, say);
  // Neither a shot nor a step of what was moved already helps: leaving it is the archer's choice.
  if (step === null && (evidence.says !== 'out' || byList)) {
    return judgement('borderline', { say: [...say, undecidedWords(content, state, evidence)], notes: { offered: 'accept' } });
  }
  return judgement('out', { say });
}

/** Worth a shot while it is open; a step must gain so much more. */
const [DOUBTFUL, GAIN_OF_STEP] = [0.3, 0.1];
/** A step that leads away by the shots here alone waits for so many of them, where it may be in tolerance. */
const AGAINST = 5;
/** The most shots where no step comes nearer. */
const MOST_AT_BEST = 12;
/** At the end of its travel none beyond the first, where it is hardly in tolerance. */
const HARDLY = 0.12;

/** Neither in tolerance nor proven out of it: one more shot, or a step that comes nearer; null where neither helps. */
function stepOrShot(content: Content, state: State, axis: Axis, rung: Rung, { belief, within, meanHere, shots }: AxisEvidence, next: Sized | null): 'shot' | 'step' | null {
  const { low, high, aim } = toleranceOn(content, state, axis);
  if (next === null) {
    const now = settingNow(state, rung.knob);
    const atEnd = Math.min(now - rung.lo, rung.hi - now) < rung.smallest - 1e-9;
    if (atEnd && within < HARDLY && shots >= gaugeOf(state).first) return null;
    return shots < MOST_AT_BEST ? 'shot' : null;
  }
  const shift = next.line.slope * (next.to - next.from);
  if (within >= MAY_BE_IN && shots < AGAINST && Math.abs(meanHere + shift - aim) > Math.abs(meanHere - aim)) return 'shot';
  const gains = (belief?.within(next.to, low, high) ?? 0) - within;
  return within >= DOUBTFUL && gains < GAIN_OF_STEP && shots < gaugeOf(state).most ? 'shot' : 'step';
}

function tuned(content: Content, state: State, evidence: AxisEvidence, say: readonly string[]): Judgement<'in tolerance'> {
  const { axis, within } = evidence;
  return judgement('in tolerance', {
    say: [...say, tunedWords(content, state, axis, within)],
    notes: {
      ...endAxes(state, { [axis]: { result: 'tuned', chance: within } }),
      ...(axis === 'height' ? { heightAt: lastSeq(state) } : {}),
    },
    findings: [axisFinding(state, axis, 'tuned', within)],
  });
}

/** The rung under work, where it was moved or its neighbourhood shot; null before its first move. */
function touchedRung(content: Content, state: State, axis: Axis): Rung | null {
  const rung = rungNow(content, state, axis);
  if (rung === null) return null;
  return state.moves.some((move) => move.knob === rung.knob) ? rung : null;
}

function judgeWorse(content: Content, state: State, axis: Axis, rung: Rung, evidence: AxisEvidence, say: readonly string[]): Judgement<'worse'> | null {
  const last = state.moves.at(-1);
  if (last === undefined || last.knob !== rung.knob || last.why === 'put-back' || evidence.line === null) return null;
  const now = settingNow(state, rung.knob);
  const before = now - last.delta;
  // Past the aim to its other side: the way was right and the step too long. It goes back in part, by the line.
  const { aim } = toleranceOn(content, state, axis);
  if ((predict(evidence.line, before).mean - aim) * (predict(evidence.line, now).mean - aim) < 0) return null;
  // Brought to the maker's figure: that is no attempt on the tear, and stays whatever the tear does.
  const home = homeOf(state, rung.knob);
  if (home !== 0 && Math.abs(now - home) < 1e-9 && Math.abs(before) < 1e-9) return null;
  const { points, group } = pointsOf(state, axis, rung.knob);
  const byAll = evidence.belief?.further(now, before, aim, 0) ?? chanceTrulyWorse(points, group, spreadOf(state), waysOf(content, state, rung.knob), before, now, aim);
  const chance = Math.max(byAll, worseBySight(content, state, axis, rung, before, now));
  // Likely worse, not proven, or by too few shots of which one may have gone astray: a shot more before the side is given up or kept.
  const { doubtful, first } = gaugeOf(state);
  if (chance >= LIKELY_WORSE && (chance < WORSE_FROM || evidence.shots < first) && taken(state) < doubtful) return oneMore(content, state, say, 'perhaps-worse');
  if (chance < WORSE_FROM) return null;
  return judgement('worse', { say: [...say, phrase(content, 'worse', { chance: percent(chance) })], ...backFrom(state, last) });
}

/** A move that made it worse goes back; after the second one, either way, the adjustment is where it should be. */
export function backFrom({ notes: { worse, ended } }: State, { knob, seq }: Move): Pick<Judgement, 'notes' | 'findings'> {
  const times = (worse[knob] ?? 0) + 1;
  const notes = { worse: { ...worse, [knob]: times }, undo: [seq] };
  return times < 2 ? { notes, findings: [] } : { notes: { ...notes, ended: { ...ended, [knob]: 'limit' } }, findings: [{ kind: 'knob', knob, result: 'limit' }] };
}

/**
 * Chance of being worse by the shots at the two settings alone. A straight line cannot bend: where a knob is at its best it sees
 * no slope, however plain the shots are. Counts only where it is beyond doubt; else the line speaks.
 */
function worseBySight(content: Content, state: State, axis: Axis, rung: Rung, before: number, now: number): number {
  const { points, group } = pointsOf(state, axis, rung.knob);
  const at = (x: number) => points.find((p) => p.group === group && Math.abs(p.x - x) < 1e-9);
  const [a, b] = [at(before), at(now)];
  // Of two settings alone the line sees as much.
  const tried = new Set(points.filter((p) => p.group === group).map((p) => p.x));
  if (a === undefined || b === undefined || tried.size < 3) return 0;
  const { aim } = toleranceOn(content, state, axis);
  const further = Math.abs(b.mean - aim) - Math.abs(a.mean - aim);
  const { sd, df } = spreadOf(state);
  const chance = studentCdf(further / (sd * Math.sqrt(1 / a.count + 1 / b.count)), df);
  return chance >= BY_SIGHT ? chance : 0;
}

/** "This adjustment cannot": nothing in reach would do, it does nothing, or it wants to go beyond its limit. */
function judgeEnd(content: Content, state: State, axis: Axis, rung: Rung, evidence: AxisEvidence, next: Sized | null, used: boolean): Judgement<'cannot'> | null {
  const { line } = evidence;
  if (line === null) return null;
  const knob = content.knobs[rung.knob];
  const { low, high, aim } = toleranceOn(content, state, axis);
  const { points, group } = pointsOf(state, axis, rung.knob);
  const tried = points.filter((p) => p.group === group);
  const settings = tried.map((p) => p.x);
  const range = Math.max(...settings) - Math.min(...settings);
  const { belief } = evidence;
  // One step is none: the trade's rule is one more. Where a travel is wide, two that cover a good part of it will do.
  const enough = range >= 2 * knob.first - 1e-9 || (tried.length > 2 && range >= ENOUGH_TRAVEL * (rung.hi - rung.lo) - 1e-9);
  const home = homeOf(state, rung.knob);
  const best = bestTried(tried, line, aim, rung, home);
  const worse = (now: number, before: number): number => belief?.further(now, before, aim, 0) ?? chanceWorse(line, before, now, aim);
  const helped = best !== home && worse(home, best) >= WORSE_FROM;
  const coarse = next !== null && liesBetween(tried, next, rung, evidence, gaugeOf(state).first, aim);
  // An adjustment that helps is used up to its limit, also where it alone will not do: the next rung begins nearer.
  const beyond = belief === null ? chanceNotReachable(line, rung.lo, rung.hi, low, high, evidence.spread.df) >= SURE : belief.outOfReach(rung.lo, rung.hi, low, high) >= BEYOND;
  const unreachable = enough && !helped && beyond;
  const now = settingNow(state, rung.knob);
  // What answers clearly is not deaf, even where no setting tried so far was better than the start (overshot).
  const answers = Math.abs(line.slope) >= 2 * Math.sqrt(line.varSlope);
  // Away from paper two steps may hide in the spread: nothing is called deaf before the setting has all its shots.
  const shotEnough = gaugeOf(state).of === 'paper' || evidence.shots >= gaugeOf(state).most;
  const deaf = enough && shotEnough && !answers && Math.abs(now - home) >= 2 * knob.first - 1e-9 && !helped && worse(now, home) < WORSE_FROM;
  if ((next !== null || !used) && !unreachable && !deaf && !coarse) return null;
  const stays = helped || coarse;
  const result = stays ? 'limit' : 'no response';
  const target = stays ? best : home;
  return judgement('cannot', {
    say: [coarse ? tooCoarse(content, state, knob.name) : phrase(content, helped ? 'knob-limit' : 'knob-no-response', { knob: knob.name })],
    notes: { ended: { ...state.notes.ended, [rung.knob]: result }, undo: undoTo(state, rung.knob, target) },
    findings: [{ kind: 'knob', knob: rung.knob, result }],
  });
}

/** One step to and fro would go on for ever: the aim lies between two settings that both had their shots. */
function liesBetween(tried: readonly TriedPoint[], { from, to, trial }: Sized, { smallest }: Rung, { says, mean, shots }: AxisEvidence, enough: number, aim: number): boolean {
  if (trial || says === 'in' || shots < enough || Math.abs(to - from) > smallest + 1e-9) return false;
  return tried.some((p) => Math.abs(p.x - to) < 1e-9 && p.shots >= enough && (p.mean - aim) * (mean - aim) < 0);
}

const tooCoarse = (content: Content, state: State, knob: string): string =>
  phrase(content, 'knob-too-coarse', { knob, what: phrase(content, gaugeOf(state).of === 'paper' ? 'off-tail' : 'off-shots') });

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

const lastSeq = (state: State): number => state.facts.at(-1)?.seq ?? 0;
