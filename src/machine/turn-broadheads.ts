// Broadheads against field points: when they are shot at all, the swap of heads at half-time, and how far out.

import { feetIn, yards, yardsIn, type Yards } from '../maths/units.ts';
import { NOT_REACHED } from './notes.ts';
import { chosen, holds } from './guards.ts';
import type { Deciding } from './deciding.ts';
import { pointsOf, spreadOf, type TriedPoint } from './loop/evidence.ts';
import { gaugeOf, taken } from './loop/gauge.ts';
import { FIRST_AT_TARGET, groupAt } from './loop/gauge-groups.ts';
import { judgement, type Judgement } from './loop/judgement.ts';
import { rungNow } from './loop/ladder.ts';
import { stillApart } from './loop/leaving.ts';
import { outdatedAxes, tunedAxes, withoutAxis } from './loop/results.ts';
import { currentSet } from './loop/sets.ts';
import { sizeMove } from './loop/size.ts';
import { UNSEEN, type State } from './state.ts';
import { standingAsk } from './ask.ts';
import { amountInWords, phrase } from './words.ts';
import { MOST_ROUNDS, sayOnceMore } from './turn-paper.ts';
import { knobEntries, AXES, type Axis, type KnobId } from '../content/types.ts';

/** Where broadheads are compared, yards: 20 finds the direction, 30 and 40 confirm it. */
const YARDS = [20, 30, 40].map(yards);
/** A group wider than this share of a yard (in) tells nothing: 5 in at 40 yd (common practice). */
const WIDEST_GROUP = 1 / 8;

export function turnPreparing(d: Deciding<'broadheads.preparing'>): true {
  const { state } = d;
  // Brought here again (a change on the bow was taken back): only what no longer stands is shot again.
  const agreed = AXES.every((axis) => state.notes.broadAxis[axis] !== undefined);
  if (!holds(state, ['shoots-broadheads', 'launch-settled']) || agreed) return skip(d);
  const ended: Partial<Record<KnobId, 'no response' | 'limit'>> = {};
  for (const [knob, how] of knobEntries(state.notes.ended)) if (how === 'no response') ended[knob] = how;
  d.event({ type: 'settled' }, {
    advice: null,
    loop: {
      of: 'broadheads', distance: FIRST_AT_TARGET, purpose: 'judge', resumeSet: false, inspections: 0, inspection: null,
      offered: null, declined: [], worse: {}, ended, rounds: 0, besidesTold: [], broadAxis: {}, broadReached: NOT_REACHED, headsSwappedAt: 0,
    },
  });
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
  return true;
}

/** Why broadheads are shot at all, in inches: where it is asked whether they are. */
export function tellWhatPaperLeaves(d: Deciding): void {
  const asks = (state: State): boolean => standingAsk(d.content, state)?.step === 'broadheads-wanted';
  const apart = asks(d.state) && !asks(d.before) ? stillApart(d.state) : null;
  if (apart !== null) d.say('paper-leaves-broadheads', { apart: amountInWords({ value: Math.max(1, Math.round(2 * apart) / 2), unit: 'in' }) });
}

function skip(d: Deciding<'broadheads.preparing'>): true {
  const known = Object.keys(d.state.notes.broadAxis).length > 0;
  if (!known && !holds(d.state, ['hunts']) && stillApart(d.state) !== null) d.say('paper-leaves-groups');
  if (!known) d.say(holds(d.state, ['hunts', 'adult']) && !holds(d.state, ['launch-settled']) ? 'broadheads-skipped-paper' : 'broadheads-skipped-use');
  return d.event({ type: 'skipped' });
}

/** At half-time the heads change shafts: asked once a set, before its second half. True where that is now due. */
export function swapHeads(d: Deciding): boolean {
  const { of, wanted, headsSwappedAt } = d.state.notes;
  const set = currentSet(d.state);
  const { first } = gaugeOf(d.state);
  if (of !== 'broadheads' || set === null || set.id === headsSwappedAt || wanted <= first || taken(d.state) < first) return false;
  d.add({ due: ['heads-swapped'], loop: { headsSwappedAt: set.id } });
  return true;
}

/** Both axes are done with at this distance: farther, while the group allows and the archer wants, or on to the arrows. */
export function turnFarther(d: Deciding<'broadheads.farther'>): true {
  const { notes } = d.state;
  const here = yardsIn(notes.distance);
  if (isStale(d)) return d.event({ type: 'farther' });
  const agree = tunedAxes(d.state).length === AXES.length;
  if (!agree) return d.event({ type: 'settled' });
  if (notes.broadReached < here) {
    d.say('broadheads-agree', { distance: here });
    d.add({ loop: { broadReached: here } });
    return nextDistance(d, here);
  }
  if (chosen(d.state, 'broadheads-farther') !== 'farther') return d.event({ type: 'settled' });
  return goFarther(d, here);
}

// Moved since it was said, or after work on cables: an axis that no longer stands is judged again where we are.
function isStale(d: Deciding): boolean {
  const { broadAxis, cablesAt, heightAt, rounds } = d.state.notes;
  const afterCables: readonly Axis[] = broadAxis.height?.result === 'tuned' && cablesAt > heightAt ? ['height'] : [];
  const outdated = rounds < MOST_ROUNDS ? outdatedAxes(d.state) : [];
  if (outdated.length > 0) {
    sayOnceMore(d, outdated);
    d.add({ loop: { rounds: rounds + 1 } });
  }
  d.add({ loop: { broadAxis: [...afterCables, ...outdated].reduce(withoutAxis, broadAxis) } });
  return AXES.some((axis) => d.state.notes.broadAxis[axis] === undefined);
}

function nextDistance(d: Deciding<'broadheads.farther'>, here: Yards): true {
  const next = YARDS.find((each) => each > here);
  if (next === undefined) return d.event({ type: 'settled' });
  const group = groupAt(spreadOf(d.state), here, next);
  if (group > next * WIDEST_GROUP) {
    d.say('farther-not', { group: group.toFixed(1), distance: next });
    return d.event({ type: 'settled' });
  }
  d.say('to-farther', { distance: next });
  d.add({ due: ['broadheads-farther'] });
  return true;
}

function goFarther(d: Deciding<'broadheads.farther'>, here: Yards): true {
  const next = YARDS.find((each) => each > here) ?? here;
  d.event({ type: 'farther' }, { loop: { distance: feetIn(next), purpose: 'judge' } });
  d.trigger('broadheads-distance');
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
  return true;
}

type AxisJudged = Judgement<'in tolerance' | 'out' | 'worse' | 'cannot' | 'borderline'>;

/**
 * Left open after all shots, while one step brought the second group over to the other side: then a smaller step back, between the two
 * settings, comes before the offer to leave it. By simulation, 146 invented bows: 2 of 5 axes left worse by what was moved are not, for half a
 * shot more a tune. Whatever is said of it, the step is the line's own, inside content's caps.
 */
export function stepBetween({ content, state }: Deciding, axis: Axis, judged: AxisJudged): AxisJudged {
  const rung = judged.verdict !== 'borderline' || gaugeOf(state).of === 'paper' ? null : rungNow(content, state, axis);
  const sized = rung === null ? null : sizeMove(content, state, axis, rung);
  if (rung === null || sized === null) return judged;
  const { points, group } = pointsOf(state, axis, rung.knob);
  const tried = points.filter((point) => point.group === group);
  const here = tried.find(({ x }) => Math.abs(x - sized.from) < UNSEEN);
  const past = ({ x, mean }: TriedPoint): boolean =>
    here !== undefined && mean * here.mean < 0 && sized.to > Math.min(x, here.x) + UNSEEN && sized.to < Math.max(x, here.x) - UNSEEN;
  // The last sentence offers to leave it.
  return tried.some(past) ? judgement('out', { say: [...judged.say.slice(0, -1), phrase(content, 'step-between')] }) : judged;
}
