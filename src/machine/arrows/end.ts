// How the rounds may end: all classed, the bow or the batch looked at, or nothing said of any arrow.

import type { Deciding } from '../deciding.ts';
import { currentSet } from '../loop/sets.ts';
import { lookNote, shopNote } from '../loop/advise.ts';
import type { ArrowClass } from '../notes.ts';
import type { State } from '../state.ts';
import { phrase } from '../words.ts';
import { sayInstead } from './instead.ts';
import type { Wander } from './wander.ts';
import { asksForPaper, backToPaper } from './paper-again.ts';
import { turnNow } from './plan.ts';
import { arrowsInPlay } from './shots.ts';
import { arrowsInWords, vanesInWords } from './words.ts';

/** The bow or the batch is looked at once; if it is so again, nothing is said of any arrow. */
const MOST_LOOKS = 1;

/** Where the chapter may end: after the rounds, or once the last odd arrow is dealt with. */
type Leaving = 'arrows.screening.shooting' | 'arrows.mending.advising';

/** Gives one arrow its class, once. */
export function classify(d: Deciding, arrow: string, as: ArrowClass, why: string): void {
  const { arrows } = d.state.notes;
  if (arrows.classes[arrow] !== undefined) return;
  d.add({
    findings: [{ kind: 'arrow', arrow, class: as, why }],
    loop: { arrows: { ...arrows, odd: arrows.odd.filter((one) => one !== arrow), classes: { ...arrows.classes, [arrow]: { class: as, why } } } },
  });
}

/** Nothing is left to do: every arrow that does not stand out is first choice. */
export function settleAll(d: Deciding<Leaving>): true {
  for (const arrow of arrowsInPlay(d.state)) classify(d, arrow, 'first choice', whyNear(d, arrow));
  if (asksForPaper(d)) return true;
  const of = (as: ArrowClass): readonly string[] => Object.entries(d.state.notes.arrows.classes).filter(([, one]) => one.class === as).map(([arrow]) => arrow);
  for (const as of ['first choice', 'practice', 'repair', 'never again'] as const) {
    const which = of(as);
    if (which.length > 0) d.say(`arrows-end-${as.replace(' ', '-')}`, { which: arrowsInWords(d.content, which) });
  }
  return leave(d);
}

function whyNear(d: Deciding, arrow: string): string {
  const turn = d.state.notes.arrows.together?.how === 'kept' ? turnNow(d.state, arrow) : 0;
  return turn === 0 ? phrase(d.content, 'arrow-why-near') : phrase(d.content, 'arrow-why-set-turned', { vanes: vanesInWords(turn) });
}

/** Whether bow and batch were looked at already. */
export const batchLookedAt = ({ notes: { arrows: { manyOdd } } }: State): boolean => manyOdd >= MOST_LOOKS;

/** More than a third stand out: nobody is culled. The first time the bow and the batch are looked at, and all is shot anew. */
export function lookAtAll(d: Deciding<'arrows.screening.shooting'>, odd: readonly string[]): true {
  const of = arrowsInPlay(d.state).length;
  if (batchLookedAt(d.state)) {
    const why = phrase(d.content, 'shop-many-odd', { odd: odd.length, of });
    d.say('arrows-many-odd-again');
    d.add({ advice: shopNote(d.content, why), loop: { shop: [...d.state.notes.shop, why] } });
    return leave(d);
  }
  d.say('arrows-many-odd', { odd: odd.length, of });
  return inspect(d, 'many-odd', 'many odd');
}

/** The references wander: another day or another look, and no word about any arrow. */
export function wanderAway(d: Deciding<'arrows.screening.shooting'>, { kind, size }: Wander): true {
  d.say(kind === 'drift' ? 'arrows-drift' : 'arrows-scatter', { size: size.toFixed(2) });
  if (d.state.notes.arrows.wandered < MOST_LOOKS) return inspect(d, 'references', 'inconsistent');
  d.say('arrows-wander-again');
  return leave(d);
}

function inspect(d: Deciding<'arrows.screening.shooting'>, id: 'many-odd' | 'references', verdict: 'many odd' | 'inconsistent'): true {
  const { arrows } = d.state.notes;
  const counted = id === 'many-odd' ? { manyOdd: arrows.manyOdd + 1 } : { wandered: arrows.wandered + 1 };
  return d.event({ type: 'verdict', verdict }, {
    advice: lookNote(d.content, id),
    // All shots so far are left out, whatever is found: the arrows are shot anew.
    loop: { inspection: id, arrows: { ...arrows, ...counted, after: currentSet(d.state)?.id ?? arrows.after, told: '' } },
  });
}

function leave(d: Deciding<Leaving>): true {
  sayInstead(d);
  d.add({ loop: { of: 'paper', purpose: 'judge', arrows: { ...d.state.notes.arrows, odd: [], done: true } } });
  if (backToPaper(d)) return true;
  return d.event({ type: 'settled' }, { loop: { newSet: true } });
}
