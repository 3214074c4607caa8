// The reference of the bench: keeps a list of all bows that this one may be, and moves to where it is most likely in tolerance. Rival of the coach: the
// best rule known for one adjustment alone. It may cross back past the start at once, and its shots cost nobody a prompt.

import { normalCdf } from '../../../src/maths/normal.ts';
import { AllBows } from './all-bows-belief.ts';
import { backToBest } from './blended-line.ts';
import { LEFT, mayGoOn, shootHere, Tried, TUNED, type OneKnob, type Said, type Task } from './one-knob.ts';
import { centreOf } from './own-shots.ts';

/** Sure enough with four shots; a little less is asked for with each one more. */
const [SURE, LESS_A_SHOT, OWN_SURE] = [0.97, 0.003, 0.8];
const [UNREACHABLE, WORTH_A_SHOT, DOUBTFUL, GAIN_OF_MOVING] = [0.98, 0.45, 0.3, 0.1];
/** Moves aim at the middle: at so much of the tolerance. */
const MIDDLE = 0.6;
/** A first move may be worse than the start with this chance, and goes over so many steps; so much of the travel is tried before it gives up. */
const [BOUND, FIRST_MOVE, TRIED_SHARE] = [0.095, 10, 0.4];
const [FIRST, MOST_DOUBTFUL, MOST_AT_BEST, MOST_AT_END] = [2, 9, 12, 18];

export type Decision = { readonly do: 'tuned' | 'stop' | 'shoot' } | { readonly do: 'move'; readonly to: number };

export function allBows(bow: OneKnob, task: Task): Said {
  const [belief, tried] = [new AllBows(task.book), new Tried()];
  const first = Array.from({ length: FIRST }, () => bow.shoot());
  // The grid has no mirror: what is told of a mirrored bow must be mirrored all the same.
  const own = first.reduce((a, b) => a + b, 0) < 0 ? mirrored(bow) : bow;
  for (const tear of first) {
    tried.add(0, own === bow ? tear : -tear);
    belief.see(0, own === bow ? tear : -tear);
  }
  return goOn(own, task, belief, tried);
}

function goOn(bow: OneKnob, task: Task, belief: AllBows, tried: Tried): Said {
  const shoot = (count: number): void => {
    shootHere(bow, tried, count);
    for (const tear of tried.at(bow.at).slice(-count)) belief.see(bow.at, tear);
  };
  while (mayGoOn(bow)) {
    const decision = decide(belief, tried, bow.at, task);
    if (decision.do === 'tuned') return TUNED;
    if (decision.do === 'stop') break;
    if (decision.do === 'move') bow.moveTo(decision.to);
    shoot(decision.do === 'move' ? FIRST : 1);
  }
  const sd = belief.spread();
  backToBest(bow, tried.settings().map((x) => ({ x, tear: (belief.tear(x) + centreOf(tried.at(x), sd).mean) / 2 })));
  return LEFT;
}

const mirrored = (bow: OneKnob): OneKnob => ({
  get at() { return -bow.at + 0; },
  get shots() { return bow.shots; },
  get moves() { return bow.moves; },
  shoot: () => -bow.shoot(),
  moveTo: (setting) => bow.moveTo(-setting + 0),
});

/** What to do at setting `now`, by all that was shot so far. */
export function decide(belief: AllBows, tried: Tried, now: number, { within, reach }: Task): Decision {
  const [own, settings, sd] = [tried.at(now), tried.settings(), belief.spread()];
  const n = own.length;
  const { mean, count } = centreOf(own, sd);
  const here = belief.within(now, within);
  const onlyStart = settings.length === 1;
  if (n >= 2 && here >= SURE - LESS_A_SHOT * Math.max(0, n - 4) && ownChance(belief, mean, count, within) >= OWN_SURE) return { do: 'tuned' };
  const farthest = Math.max(...settings.map(Math.abs));
  if (farthest >= triedEnough(reach) && belief.unreachable(reach, within) >= UNREACHABLE) return { do: 'stop' };
  if (here >= WORTH_A_SHOT && n < MOST_DOUBTFUL) return { do: 'shoot' };
  if (onlyStart && n < 3 && Math.abs(mean) < (4 * sd) / Math.sqrt(count)) return { do: 'shoot' };
  const best = bestOf(belief, now, onlyStart, reach, MIDDLE * within);
  if (here >= DOUBTFUL && belief.within(best, within) - here < GAIN_OF_MOVING && n < MOST_DOUBTFUL) return { do: 'shoot' };
  if (best !== now) return { do: 'move', to: best };
  if (n < (Math.abs(now) === reach ? MOST_AT_END : MOST_AT_BEST)) return { do: 'shoot' };
  const beside = [now - 1, now + 1].filter((x) => Math.abs(x) <= reach);
  const [next] = beside.toSorted((a, b) => Math.abs(belief.tear(a)) - Math.abs(belief.tear(b)));
  return next === undefined ? { do: 'stop' } : { do: 'move', to: next };
}

const triedEnough = (reach: number): number => (reach === 24 ? 10 : Math.ceil(TRIED_SHARE * reach));

function bestOf(belief: AllBows, now: number, firstMove: boolean, reach: number, middle: number): number {
  const far = firstMove ? Math.min(FIRST_MOVE, reach) : reach;
  let [best, most] = [now, belief.within(now, middle)];
  for (let x = -far; x <= far; x++) {
    const chance = belief.within(x, middle);
    if (chance > most && (!firstMove || belief.worseThanStart(x) <= BOUND)) [best, most] = [x, chance];
  }
  return best;
}

/** By the shots at this setting alone, whatever the spread may be. */
function ownChance(belief: AllBows, mean: number, count: number, within: number): number {
  return belief.spreads().reduce((total, { sd, chance }) => {
    const width = sd / Math.sqrt(count);
    return total + chance * (normalCdf((within - mean) / width) - normalCdf((-within - mean) / width));
  }, 0);
}
