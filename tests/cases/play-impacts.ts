// Takes what a case saw beyond paper: two kinds at a target, a plumb line, each arrow of the set once.

import type { Tear } from '../../src/machine/types.ts';
import type { Seen } from './case.ts';
import type { Played } from './play-case.ts';
import { ROUND } from './round.ts';

type Impacts = Extract<Seen, { impacts: unknown } | { line: unknown } | { round: unknown }>;

export function takeImpacts(played: Played, item: Impacts): void {
  pastPaper(played);
  if ('round' in item) return oneRound(played, item.round);
  const count = { usual: 0, other: 0 };
  if ('line' in item) {
    return shootSet(played, 3, ({ distance }) => ({ x: item.line.drift * (distance - 20) + around(count.usual++ / 3, item.line.spread * (distance / 20)).x, y: 0 }));
  }
  const { usual, other, spread, spreadOther } = item.impacts;
  shootSet(played, 2, ({ second }) => {
    const [[x, y], wide, nth] = second ? [other, spreadOther ?? spread, count.other++] : [usual, spread, count.usual++];
    const off = around(nth, wide);
    return { x: x + off.x, y: y + off.y };
  });
}

function around(nth: number, spread: number): Tear {
  const [x, y] = ROUND[Math.floor(nth) % ROUND.length] ?? [0, 0];
  return { x: x * spread, y: y * spread };
}

/** Exactly these, each kind in its own order. */
export function takeHits(played: Played, { usual, other }: Extract<Seen, { hits: unknown }>['hits']): void {
  pastPaper(played);
  const left = { usual: [...usual], other: [...other] };
  while (left.usual.length + left.other.length > 0) {
    const { ask } = played;
    if (ask.kind !== 'impact') throw new Error(`an impact is wanted, not ${ask.about} (${played.view.say.join(' ')})`);
    const [x, y] = (ask.head === 'broadhead' || ask.shaft === 'unfletched' ? left.other : left.usual).shift() ?? [NaN, NaN];
    played.answer({ x, y });
    played.untilItStands();
  }
}

/** Paper, as far as it is still to be shot, is in tune. */
export function pastPaper(played: Played): void {
  played.untilItStands();
  for (let at = 0; at < 20 && played.view.chapter === 'paper' && played.ask.kind === 'tear'; at += 1) {
    played.answer({ x: at % 2 === 0 ? 0.02 : -0.02, y: 0.06 });
    played.untilItStands();
  }
}

/** Shoots the set that stands, as long as the coach wants more of it; a set begun anew is another matter. */
function shootSet(played: Played, pairs: number, where: (shot: { readonly second: boolean; readonly distance: number }) => Tear): void {
  const bow = JSON.stringify(played.view.bow);
  const { chapter } = played.view;
  if (played.ask.kind !== 'impact') throw new Error(`an impact is wanted, not ${played.ask.about} (${played.view.say.join(' ')})`);
  for (let at = 0; at < 24; at += 1) {
    const { ask } = played.view;
    if (ask?.kind !== 'impact' || played.view.chapter !== chapter || JSON.stringify(played.view.bow) !== bow) return;
    if (at >= pairs && ask.shots.taken === 0) return;
    played.answer(where({ second: ask.head === 'broadhead' || ask.shaft === 'unfletched', distance: ask.distance.value }));
    played.untilItStands();
  }
}

/** As many shots as there are arrows: each has one, whatever the order and the references among them. */
function oneRound(played: Played, { all, arrow, tear }: Extract<Seen, { round: unknown }>['round']): void {
  const shot = new Set<string>();
  for (let at = 0; at < 30 && shot.size < 12; at += 1) {
    const { ask } = played;
    if (ask.kind !== 'tear' || ask.arrow === null) throw new Error(`an arrow by its number is wanted, not ${ask.about} (${played.view.say.join(' ')})`);
    shot.add(ask.arrow);
    const [x, y] = ask.arrow === arrow ? tear : all;
    played.answer({ x, y });
    played.untilItStands();
  }
}
