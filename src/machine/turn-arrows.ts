// The arrows one by one, one automatic step at a time: begin, shoot the rounds, judge them, mend what stands out, end.

import { beginRounds, skipReason } from './arrows/begin.ts';
import { batchLookedAt, lookAtAll, settleAll, wanderAway } from './arrows/end.ts';
import { judgeRounds } from './arrows/judge.ts';
import { arrowsGone } from './arrows/gone.ts';
import { adviseMending, judgeMending } from './arrows/mend.ts';
import { arrowPlan } from './arrows/plan.ts';
import { isTuningArrow, roundShots } from './arrows/shots.ts';
import { sayStage } from './arrows/stage.ts';
import { heldAgainstForetold, offerTogether, turnIndexing } from './arrows/turn-set.ts';
import { watchersWander } from './arrows/wander.ts';
import { offInWords } from './arrows/words.ts';
import type { Deciding } from './deciding.ts';
import { chosen } from './guards.ts';
import { currentSet, FIRST_DISTANCE } from './loop/sets.ts';
import type { PlaceIn } from './places.ts';
import type { State } from './state.ts';

/** One automatic step of the chapter; false where a question stands. */
export function turnArrows(d: Deciding<PlaceIn<'arrows'>>): boolean {
  if (d.isAt('arrows.preparing')) return prepare(d);
  if (d.isAt('arrows.screening.shooting')) return shootRounds(d);
  if (d.isAt('arrows.indexing')) return turnIndexing(d);
  if (d.isAt('arrows.mending.advising')) return backToRounds(d) || adviseMending(d);
  if (d.isAt('arrows.mending.shooting')) return backToRounds(d) || arrowsGone(d) || (readyToShoot(d) ? false : judgeMending(d));
  // screening.inspecting, mending.looking: the archer chooses.
  return false;
}

function prepare(d: Deciding<'arrows.preparing'>): boolean {
  const reason = skipReason(d.state);
  if (reason === null) return beginRounds(d);
  if (reason !== 'done') d.say(`arrows-skip-${reason}`);
  return d.event({ type: 'skipped' }, { loop: { arrows: { ...d.state.notes.arrows, done: true } } });
}

/** Opens the set where none is open, on another day too; true while a shot is wanted. */
function readyToShoot(d: Deciding): boolean {
  const { notes } = d.state;
  if (notes.reshoot) d.add({ loop: { reshoot: false } });
  if (notes.resumeSet) {
    d.add({ loop: { resumeSet: false, newSet: true } });
    d.say('arrows-another-day');
  }
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  return arrowPlan(d.state) !== null;
}

function shootRounds(d: Deciding<'arrows.screening.shooting'>): boolean {
  if (arrowsGone(d)) return true;
  const wanted = readyToShoot(d);
  const fresh = sayStage(d);
  // Reference shots that wander say something of the archer or the bow, and nothing of any arrow.
  const wander = fresh ? watchersWander(d.state) : null;
  if (wander !== null) return wanderAway(d, wander);
  // That many at once is no matter of single arrows: no need to shoot the set to its end for that, the first time.
  const early = fresh && roundsTold(d) && !(batchLookedAt(d.state) && mayYetTurn(d.state)) && judgeRounds(d.state)?.tooMany === true;
  return wanted && !early ? false : judgeAll(d);
}

/** That it is the whole set that differs is settled by whole rounds, where its nocks may be turned. */
const mayYetTurn = (state: State): boolean => state.notes.arrows.together === undefined && chosen(state, 'nock-turns') !== 'fixed';

/** The first round is shot, and what stood out in it was shot twice more. */
const roundsTold = (d: Deciding): boolean => !['', 'round 1', 'again'].includes(d.state.notes.arrows.told);

function judgeAll(d: Deciding<'arrows.screening.shooting'>): true {
  if (heldAgainstForetold(d)) return true;
  const judged = judgeRounds(d.state);
  // The bow and the batch first; if it is so again, the set differs.
  if (judged?.tooMany === true && !batchLookedAt(d.state)) return lookAtAll(d, judged.standOut);
  if (offerTogether(d)) return true;
  if (judged?.tooMany === true) return lookAtAll(d, judged.standOut);
  if (judged === null || judged.odd.length === 0) return settleAll(d);
  const { arrows } = d.state.notes;
  const odd = judged.odd.filter((arrow) => arrows.classes[arrow] === undefined);
  if (odd.length === 0) return settleAll(d);
  const cases = Object.fromEntries(odd.map((arrow) => [arrow, arrows.cases[arrow] ?? { swapped: null, tried: [0], turn: 0, declined: [] }]));
  for (const arrow of odd) d.say('arrow-is-odd', { arrow, off: offInWords(judged.off(arrow)), usual: judged.usual.toFixed(2) });
  // The bow was tuned with three arrows; one of them odd, and "tuned" rests partly on its shots.
  const [own] = odd.filter(isTuningArrow);
  if (own !== undefined) d.say('tuning-arrow-odd', { arrow: own });
  return d.event({ type: 'verdict', verdict: 'odd arrows' }, { advice: null, loop: { arrows: { ...arrows, odd, cases: { ...arrows.cases, ...cases } }, newSet: true, purpose: 'prove' } });
}

/**
 * What mending rests on may change under it: a corrected shot, a part that was replaced, a setting that was moved.
 * Then the rounds are judged again, or shot again where they no longer count.
 */
function backToRounds(d: Deciding<'arrows.mending.advising' | 'arrows.mending.shooting'>): boolean {
  const { arrows } = d.state.notes;
  const judged = roundShots(d.state).length === 0 ? null : judgeRounds(d.state);
  const odd = judged?.odd.filter((arrow) => arrows.classes[arrow] === undefined) ?? [];
  const holds = judged !== null && judged.complete && !judged.tooMany && odd.length === arrows.odd.length && odd.every((arrow) => arrows.odd.includes(arrow));
  if (holds || arrows.odd.length === 0) return false;
  d.say('arrows-judged-anew');
  return d.event({ type: 'looked' }, { advice: null, loop: { arrows: { ...arrows, odd: [], told: judged === null ? '' : arrows.told }, newSet: true, purpose: 'judge' } });
}

/** The arrows are left for work on the bow: they begin anew when the walk comes back to them. */
export function arrowsWait(d: Deciding): true {
  const { arrows } = d.state.notes;
  d.add({ loop: { of: 'paper', distance: FIRST_DISTANCE, arrows: { ...arrows, odd: [], told: '' } } });
  return true;
}
