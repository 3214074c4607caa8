// One odd arrow at a time, one change each: another nock, then the nock turned, then a look at point and vanes.

import type { Deciding } from '../deciding.ts';
import type { Advice } from '../types.ts';
import { phrase } from '../words.ts';
import { classify, settleAll } from './end.ts';
import { arrowsGone } from './gone.ts';
import { judgeRounds, standingOf } from './judge.ts';
import { AFTER_CHANGE, turnNow } from './plan.ts';
import { bestTurnOf, nextTurnOf, turnsWithIt, type NextTurn } from './turns.ts';
import { asTurn, waysCount, waysOf, type Ways } from './ways.ts';
import { offInWords, vanesInWords } from './words.ts';

/** The next change of the arrow in hand; on to the next arrow, or to the end, where none is left. */
export function adviseMending(d: Deciding<'arrows.mending.advising'>): boolean {
  if (arrowsGone(d)) return true;
  const { notes } = d.state;
  const [arrow] = notes.arrows.odd;
  if (arrow === undefined) return settleAll(d);
  if (notes.reshoot) d.add({ advice: null, loop: { reshoot: false } });
  if (d.state.advice?.kind === 'adjust') return false;
  const one = notes.arrows.cases[arrow];
  if (one !== undefined && one.swapped === null && !one.declined.includes('nock-swap')) return advise(d, swapAdvice(d, arrow));
  if (one === undefined || one.declined.includes('nock-turn')) return d.event({ type: 'verdict', verdict: 'cannot' });
  const ways = waysOf(d.state);
  if ('ask' in ways) { d.add({ due: [ways.ask] }); return true; }
  if (waysCount(ways) === 1) return d.event({ type: 'verdict', verdict: 'cannot' });
  const next = turnsWithIt(d.state, arrow, ways) ? null : nextTurnOf(d.state, arrow, ways);
  if (next !== null) return advise(d, turnAdvice(d, arrow, ways, next));
  const best = bestTurnOf(d.state, arrow);
  if (best !== one.turn) return advise(d, turned(d, arrow, ways, best, phrase(d.content, 'nock-turn-why-best', { arrow })));
  return d.event({ type: 'verdict', verdict: 'cannot' });
}

function advise(d: Deciding, advice: Advice): false {
  d.add({ advice });
  return false;
}

/** After the shots that a change asks for: near the others, or the next change. */
export function judgeMending(d: Deciding<'arrows.mending.shooting'>): true {
  const [arrow] = d.state.notes.arrows.odd;
  const now = arrow === undefined ? null : standingOf(d.state, arrow);
  if (arrow === undefined || now === null) return d.event({ type: 'verdict', verdict: 'in tolerance' });
  const holes = { arrow, off: offInWords(now.off), shots: now.shots };
  if (now.near) {
    const one = d.state.notes.arrows.cases[arrow];
    d.say('arrow-mended', holes);
    classify(d, arrow, 'first choice', one === undefined || one.turn === one.tried[0] ? phrase(d.content, 'arrow-why-new-nock') : phrase(d.content, 'arrow-why-turned', { vanes: vanesInWords(one.turn) }));
    return d.event({ type: 'verdict', verdict: 'in tolerance' });
  }
  if (d.draft.kind === 'answered' && d.draft.answer.kind === 'shots') {
    const ways = waysOf(d.state);
    d.say('ask' in ways || !turnsWithIt(d.state, arrow, ways) ? 'arrow-still-off' : 'arrow-turned-with', holes);
  }
  return d.event({ type: 'verdict', verdict: 'out' });
}

const cautionsOf = (d: Deciding): readonly string[] => [phrase(d.content, 'caution-nock')];

function swapAdvice(d: Deciding, arrow: string): Advice {
  const judged = judgeRounds(d.state);
  return {
    kind: 'adjust', knob: 'nock-swap', arrow, amount: { value: 1, unit: 'count' },
    what: phrase(d.content, 'nock-swap-what', { arrow }),
    why: phrase(d.content, 'nock-swap-why', { arrow, off: offInWords(judged?.off(arrow) ?? { x: 0, y: 0 }) }),
    wrongIf: phrase(d.content, 'nock-swap-wrong', { shots: AFTER_CHANGE }),
    undo: phrase(d.content, 'nock-swap-undo'),
    caution: cautionsOf(d),
  };
}

function turnAdvice(d: Deciding, arrow: string, ways: Ways, next: NextTurn): Advice {
  const why = next.expect === null ? phrase(d.content, 'nock-turn-why', { arrow }) : phrase(d.content, 'nock-turn-why-likely', { arrow });
  return {
    ...turned(d, arrow, ways, next.turn, why),
    ...(next.expect === null ? {} : { expect: next.expect }),
    wrongIf: phrase(d.content, 'nock-turn-wrong', { shots: AFTER_CHANGE }),
  };
}

function turned(d: Deciding, arrow: string, ways: Ways, to: number, why: string): Advice {
  const by = asTurn(ways, to - turnNow(d.state, arrow));
  return {
    kind: 'adjust', knob: 'nock-turn', arrow, amount: { value: by, unit: 'count' }, to: { value: to, unit: 'count' },
    what: phrase(d.content, 'nock-turn-what', { arrow, vanes: vanesInWords(by).toUpperCase() }), why,
    undo: phrase(d.content, 'nock-turn-undo', { vanes: vanesInWords(by) }), caution: cautionsOf(d),
  };
}
