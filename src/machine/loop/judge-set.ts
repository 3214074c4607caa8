// May the present set be read at all? Scatter, shots too far apart, a gross tear, groups that are no groups, a line that bends.

import { changesDirection, FAR_APART, judgeConsistency, pairLimits, WIDE_FROM, widest } from '../../archery/consistency.ts';
import { judgeDrift } from '../../archery/drift.ts';
import { scatters } from '../../archery/two-groups.ts';
import { bends } from '../../archery/plumb-line.ts';
import type { Content, Inspection } from '../../content/types.ts';
import { mrad } from '../../maths/units.ts';
import type { Shot, ShotSet, State } from '../state.ts';
import { phrase, tearInWords } from '../words.ts';
import { beliefOn, readingHere, spreadAsShot, spreadOf } from './evidence.ts';
import { groupsIn } from './gauge-groups.ts';
import { INCHES_PER_MRAD, plumbPoints } from './gauge-plumb.ts';
import { judgement, shootOn, type Judgement } from './judgement.ts';
import { countingSets, currentSet, goodShots, shotsHere, subjectOf } from './sets.ts';

/** Above this spread of one shot (in) a set is five shots (common practice). */
const SCATTERS_FROM = 0.35;
export const FIVE = 5;
/** What is shot anew after a look at scatter that found nothing: five where more than one of them strays (common practice); else one more, and all count. */
export function freshAfterScatter(state: State): number {
  const set = currentSet(state);
  const shots = set === null ? [] : goodShots(set);
  const butForOne = Math.min(...shots.map((_, left) => widest(shots.filter((__, i) => i !== left)).pair));
  return shots.length > 0 && butForOne > WIDE_FROM ? FIVE : 1;
}

const farApart = (shots: readonly Shot[], sd: number): boolean =>
  [shots.map(({ x }) => x), shots.map(({ y }) => y)].some((on) => Math.max(...on) - Math.min(...on) > FAR_APART * sd);

/** After so many shots at one setting it is asked whether they wander, from the first to the last: fewer cannot tell, and asked after each one luck would. */
const WANDERS_AT = [5, 8];
/** Wandering by less (in) the middle of a set still says enough: it is as wide as what is called tuned. */
const WANDERS_BY = 1 / 2;

/** So often it is looked for a cause of scatter. */
const LOOKS = 2;
/** Above this spread of one shot (in) three to nine shots cannot tell a step of any adjustment from luck. */
const MOST_SPREAD = 0.3;
/** Looked into, and nothing found: then this is how the archer shoots, and more shots tell what fewer cannot, up to this spread but for strays. By
 *  simulation a bow is tuned then where the spread is 0.3 in, and of archers of 0.6 in a quarter get an adjustment, and hardly one a "tuned". */
const MOST_ONCE_LOOKED = 0.48;
const GROSS = 1;
const VERY_GROSS = 2;

type Unreadable = 'inconsistent' | 'gross';

/** Why the present set cannot be read, or what must be shot first; null where it may be read. */
export function judgeSet(content: Content, state: State): Judgement<Unreadable> | null {
  const set = currentSet(state);
  if (set === null) return null;
  const of = subjectOf(state);
  if (of === 'paper') return judgePaperSet(content, state, set);
  return of === 'plumb' ? judgeLine(content, state, set) : judgeGroups(content, state, set, of);
}

const lookElsewhere = (state: State, set: ShotSet, inspection: Inspection['id'], say: string): Judgement<'inconsistent'> =>
  judgement('inconsistent', {
    say: [say],
    notes: { inspection, inspections: state.notes.inspections + 1, scattered: [...state.notes.scattered, set.id] },
  });

// Broadheads honestly spread wider than field points; twice as wide and beyond luck is no matter of the rest.
function judgeGroups(content: Content, state: State, set: ShotSet, of: 'broadheads' | 'unfletched'): Judgement<Unreadable> | null {
  const pairs = [...countingSets(state).filter((other) => other.id !== set.id), set].map((one) => groupsIn(goodShots(one), of));
  const here = groupsIn(goodShots(set), of);
  if (here.a.length < 3 || here.b.length < 3) return null;
  // Sets that scattered, and no cause was found: one that passes by luck does not outweigh them, they are judged together.
  const unexplained = state.sets.filter((one) => one.of === of && one.epoch === state.notes.epoch && state.notes.scattered.includes(one.id));
  const together = [...pairs, ...unexplained.map((one) => groupsIn(goodShots(one), of))];
  if (unexplained.length > 0 ? !scatters(together) : !scatters([here]) || !scatters(pairs)) return null;
  const width = (kind: 'a' | 'b'): string => Math.max(...(unexplained.length > 0 ? together : [here]).map((groups) => widest(groups[kind]).pair)).toFixed(1);
  if (of === 'unfletched') {
    return lookElsewhere(state, set, 'scatter', phrase(content, 'scatter', { pair: width('b'), usual: spreadOf(state, set.id).sd.toFixed(2) }));
  }
  return lookElsewhere(state, set, 'broadhead-scatter', phrase(content, 'scatter-broadheads', { b: width('b'), a: width('a') }));
}

function judgeLine(content: Content, state: State, set: ShotSet): Judgement<Unreadable> | null {
  const { sd, df } = spreadOf(state);
  return bends(plumbPoints(goodShots(set)), { sd: mrad(sd / INCHES_PER_MRAD), df })
    ? lookElsewhere(state, set, 'plumb-bend', phrase(content, 'plumb-bends')) : null;
}

function judgePaperSet(content: Content, state: State, set: ShotSet): Judgement<Unreadable> | null {
  const shots = goodShots(set);
  const others = spreadOf(state, set.id);
  // One wild shot among three is no scatter: it takes a fourth to tell (measured: 77 % false alarms otherwise). Three that
  // point three ways are: the trade's plain rule, where their spread is beyond luck as well.
  const consistency = judgeConsistency(shots, others, 4);
  const looked = state.notes.strayed.length > 0;
  // A stray among them was looked into, and again: it is weighed as one from then on. Only a hand that is too wide ends it.
  const weighed = looked && state.notes.inspections >= LOOKS;
  const threeWays = !looked && shots.length < 7 && consistency.kind !== 'fine' && changesDirection(shots, others);
  if (shots.length >= 3 && !weighed && (consistency.kind === 'inconsistent' || threeWays)) {
    const { pair } = widest(shots);
    return lookElsewhere(state, set, 'scatter', phrase(content, 'scatter', { pair: pair.toFixed(2), usual: others.sd.toFixed(2) }));
  }
  const wandered = looked || !WANDERS_AT.includes(shots.length) ? null : judgeDrift([shots.map((tear, at) => ({ at, tear }))]);
  if (wandered?.drifts === true && wandered.size > WANDERS_BY) return lookElsewhere(state, set, 'scatter', phrase(content, 'shots-wander', { size: wandered.size.toFixed(2) }));
  // Who scatters shoots five before anything is read from them.
  const here = shotsHere(state).length;
  if (looked && set.purpose === 'judge' && here < FIVE && here >= 2 && spreadAsShot(state).sd > SCATTERS_FROM) {
    return shootOn({ notes: { wanted: shots.length + FIVE - here }, say: [phrase(content, 'five-shots')] });
  }
  // Each set alone may pass by luck; together they say that no move could be judged.
  const asShot = spreadAsShot(state);
  if (looked ? here >= FIVE && spreadButForStrays(content, state) > MOST_ONCE_LOOKED : shots.length >= 3 && asShot.sd > MOST_SPREAD) {
    return lookElsewhere(state, set, 'scatter', phrase(content, 'scatter-wide', { sd: asShot.sd.toFixed(2) }));
  }
  if (shots.length === 2 && widest(shots).pair > pairLimits(3, others.df).pair95 * others.sd) {
    return shootOn({ notes: { wanted: 3 }, say: [phrase(content, 'two-far-apart')] });
  }
  // Before anything is moved one far off among three is not read: it takes a fourth to tell.
  const early = shots.length === 3 && state.moves.length === 0 && farApart(shots, others.sd);
  if (!looked && (early || consistency.kind === 'suspect') && shots.length < 7) return shootOn({ notes: { wanted: shots.length + 1 }, say: [phrase(content, 'one-far-off')] });
  return judgeGross(content, state);
}

/** Of one shot, as all shots here show it on both axes; one that went astray counts as that and not as a wide hand. */
function spreadButForStrays(content: Content, state: State): number {
  const [height, side] = [beliefOn(content, state, 'height', null), beliefOn(content, state, 'side', null)];
  return Math.sqrt((height.sd ** 2 + side.sd ** 2) / 2);
}

function judgeGross(content: Content, state: State): Judgement<'gross'> | null {
  const found = grossHere(content, state);
  if (found === null || !state.notes.grossSeen) return found;
  // Looked into once, and no cause found: an inch may be tuned step by step, two inches may not. Without an inspection it is left.
  return found.notes.inspection === 'very-gross' ? judgement('gross', { say: [phrase(content, 'very-gross-left')] }) : null;
}

/** More than an inch here, and to be looked into, whatever was looked into before; null where it is less, or no shot shows anything. */
export function grossHere(content: Content, state: State): Judgement<'gross'> | null {
  const mean = readingHere(state)?.mean;
  const size = mean === undefined ? 0 : Math.max(Math.abs(mean.x), Math.abs(mean.y));
  if (mean === undefined || size <= GROSS) return null;
  const very = size > VERY_GROSS;
  return judgement('gross', {
    say: [phrase(content, very ? 'tear-very-gross' : 'tear-gross', { tear: tearInWords(mean) })],
    notes: { inspection: very ? 'very-gross' : 'gross', grossSeen: true, inspections: state.notes.inspections + 1 },
  });
}
