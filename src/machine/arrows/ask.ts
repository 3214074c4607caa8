// The questions of this chapter that are no steps of content: the next arrow's tear, the change of a nock, the last look.

import type { Content } from '../../content/types.ts';
import { namesOf } from '../../maths/closed.ts';
import { currentSet } from '../loop/sets.ts';
import type { TurnedTogether } from '../notes.ts';
import type { Place } from '../places.ts';
import { distanceOf } from '../plan.ts';
import type { State } from '../state.ts';
import type { Ask } from '../types.ts';
import { phrase } from '../words.ts';
import { LOOKS, TURN_ANSWERS } from './answers.ts';
import { listNow } from './together.ts';
import { arrowPlan } from './plan.ts';
import { waysOf } from './ways.ts';
import { turnsInWords, vanesInWords } from './words.ts';

/** The standing question at a place of the arrows; null where it is one that every chapter has. */
export function arrowAsk(content: Content, state: State, place: Place): Ask | null {
  if (place === 'arrows.screening.shooting' || place === 'arrows.mending.shooting') return tearAsk(content, state);
  if (place === 'arrows.mending.advising') return changeAsk(content, state);
  if (place === 'arrows.indexing') return turnSetAsk(content, state);
  return place === 'arrows.mending.looking' ? lookAsk(content, state.notes.arrows.odd[0] ?? '') : null;
}

function tearAsk(content: Content, state: State): Ask | null {
  const plan = arrowPlan(state);
  if (plan === null) return null;
  const { tag: { shaft, head, arrow, nockTurn, reference }, taken, wanted } = plan;
  const mending = state.notes.arrows.odd.length > 0;
  const first = (currentSet(state)?.shots.length ?? 0) === 0;
  const which = reference === true ? phrase(content, 'shoot-arrow-reference', { arrow: arrow ?? '' })
    : nockTurn > 0 ? phrase(content, 'shoot-arrow-turned', { arrow: arrow ?? '', vanes: vanesInWords(nockTurn) })
      : phrase(content, 'shoot-arrow', { arrow: arrow ?? '' });
  const opening = mending ? phrase(content, 'shoot-arrows-mending', { wanted }) : phrase(content, 'shoot-arrows', { distance: state.notes.distance });
  return {
    kind: 'tear', about: 'tear', step: mending ? 'shoot-mended-arrow' : 'shoot-each-arrow',
    short: phrase(content, 'shoot-arrow-short', { arrow: arrow ?? '', n: Math.min(taken + 1, wanted), of: wanted }),
    text: first ? [opening, which, phrase(content, 'shoot-how')] : [which, phrase(content, 'shoot-next')],
    why: [phrase(content, mending ? 'why-mending-arrow' : 'why-each-arrow'), phrase(content, 'why-called')],
    caution: [content.cautions['draw']].filter((one) => one !== undefined),
    distance: distanceOf('arrows', state.notes.distance), shaft, head, arrow, nockTurn, shots: { taken, wanted },
  };
}

function changeAsk(content: Content, state: State): Ask | null {
  const { advice } = state;
  if (advice === null || advice.arrow === undefined) return null;
  const ways = waysOf(state);
  const swap = advice.knob === 'nock-swap';
  return {
    kind: 'amount', about: 'moved', step: 'change-the-arrow', unit: 'count', max: swap || 'ask' in ways ? 1 : Math.max(1, ways.vanes - ways.step),
    short: phrase(content, 'arrow-moved-short', { what: advice.what }),
    text: [phrase(content, swap ? 'how-nock-swap' : 'how-nock-turn')],
    why: [advice.why, phrase(content, 'why-mending-arrow')], caution: advice.caution,
  };
}

/** All nocks together: the list, and what became of it. */
function turnSetAsk(content: Content, state: State): Ask | null {
  const list = listNow(state);
  if (list === null) return null;
  const opening = list.back ? phrase(content, 'set-turn-back-text') : phrase(content, 'set-turn-text', { share: Math.round(100 * list.share) });
  // The list is the question itself: on the smallest screen, too, it is what stands.
  const turns = turnsInWords(content, list.turns);
  return { ...turnSetBase(content, list.back), short: phrase(content, list.back ? 'set-turn-back-short' : 'set-turn-short', { turns }), text: [opening, phrase(content, 'how-set-turn')] };
}

/** The same, opened again for a correction; `how` is what was answered. */
export const turnSetAgain = (content: Content, how: TurnedTogether['how'] | undefined): Ask => ({ ...turnSetBase(content, how === 'back' || how === 'kept'), text: [] });

function turnSetBase(content: Content, back: boolean): Extract<Ask, { kind: 'choice' }> {
  return {
    kind: 'choice', about: 'turn-the-set', step: 'turn-the-set', noDefault: true, short: phrase(content, 'set-turn-again-short'), text: [],
    why: [phrase(content, 'why-set-turn'), phrase(content, 'why-set-turn-nocks')], caution: [phrase(content, 'caution-nock')],
    options: TURN_ANSWERS.filter((value) => !back || value !== 'one stays').map((value) => ({ value, label: phrase(content, `set-turn-${value.replace(' ', '-')}`) })),
  };
}

/** The last look at an arrow; also opened again for a correction. */
export function lookAsk(content: Content, arrow: string): Ask {
  return {
    kind: 'choice', about: 'arrow-look', step: 'look-arrow', noDefault: true,
    short: phrase(content, 'arrow-look-short', { arrow }), text: [phrase(content, 'arrow-look-text')],
    why: [phrase(content, 'why-arrow-look')], caution: [content.cautions['flex']].filter((one) => one !== undefined),
    options: namesOf(LOOKS).map((value) => ({ value, label: phrase(content, `arrow-look-${value}`) })),
  };
}
