// Takes what a case saw of single arrows: each by its number, as long as the coach wants shots of them.

import type { Seen } from './case.ts';
import type { Played } from './play-case.ts';
import { pastPaper } from './play-impacts.ts';
import { ROUND } from './round.ts';

type Arrows = Extract<Seen, { arrows: unknown }>['arrows'];

export function takeArrows(played: Played, { all, odd, spread, drift }: Arrows): void {
  pastPaper(played);
  const count = new Map<string, number>();
  if (askedFor(played) === null) throw new Error(`an arrow by its number is wanted, not ${played.ask.about} (${played.view.say.join(' ')})`);
  // Three rounds of twelve arrows, those that stand out again, and a reference in between.
  for (let at = 0; at < 120; at += 1) {
    const arrow = askedFor(played);
    if (arrow === null) return;
    const nth = count.get(arrow) ?? 0;
    count.set(arrow, nth + 1);
    const [x, y] = odd[arrow] ?? all;
    const [dx, dy] = ROUND[(nth + Number(arrow)) % ROUND.length] ?? [0, 0];
    played.answer({ x: x + dx * spread + at * drift[0], y: y + dy * spread + at * drift[1] });
    played.untilItStands();
  }
  throw new Error('the coach wants more and more shots of single arrows');
}

const askedFor = ({ view: { ask } }: Played): string | null => (ask?.kind === 'tear' ? ask.arrow : null);
