// One sentence for each figure that was told for the card: what it means for this archer, and what it does not mean.

import type { Deciding } from '../deciding.ts';
import type { State } from '../state.ts';
import { measured } from '../told.ts';
import { isFigure, type Figure } from './list.ts';
import { balanceOf, carriedBy, drawOf, holdingOf, MORE, secondIsTooLight, speedByPapers, spineOf, withMore } from './reckon.ts';
import { asRead, asSpine, toTenth, toWhole } from './words.ts';

type Sentence = readonly [id: string, holes?: Readonly<Record<string, string | number>>];

/** Says what a figure comes to, once all that it needs is told. */
export function sayFigure(d: Deciding, step: string): void {
  if (!isFigure(step) || d.state.answers[step] === undefined) return;
  const sentence = SENTENCES[step](d.state);
  if (sentence !== null) d.say(...sentence);
}

const SENTENCES: Readonly<Record<Figure, (state: State) => Sentence | null>> = {
  'arrow-length': balance,
  'balance-point': balance,
  'arrow-speed': carries,
  'second-mass': (state) => {
    if (measured(state, 'arrow-speed') === undefined) return null;
    if (measured(state, 'second-mass') === undefined) return more(state);
    return secondIsTooLight(state) ? ['figure-second-light', { mass: asRead(measured(state, 'second-mass') ?? 0) }] : null;
  },
  'second-speed': more,
  'holding-weight': (state) => {
    const hold = holdingOf(state);
    if (hold === null) return null;
    return hold === 'more than the peak' ? ['figure-hold-misread']
      : ['figure-hold', { holding: asRead(hold.holding), peak: asRead(hold.peak), letOff: toWhole(hold.letOff) }];
  },
  'draw-mark': (state) => {
    const draw = drawOf(state);
    return draw === null ? null : ['figure-draw', { standard: asRead(draw.standard) }];
  },
  'rated-speed': (state) => {
    const range = speedByPapers(state);
    return range === null ? null : ['figure-rated', { low: toWhole(range.low), high: toWhole(range.high) }];
  },
  'spine-printed': spine,
  'spine-older': spine,
};

function balance(state: State): Sentence | null {
  const found = balanceOf(state);
  if (found === null) return null;
  if (found === 'beyond') return ['figure-balance-misread'];
  return found.ahead <= 0 ? ['figure-balance-behind'] : ['figure-balance', { ahead: toTenth(found.ahead), foc: toTenth(found.foc) }];
}

function carries(state: State): Sentence | null {
  const arrow = carriedBy(state);
  if (arrow === null) return null;
  const { mass, speed, energy, momentum } = arrow;
  return ['figure-speed', { mass: toWhole(mass), speed: toWhole(speed), energy: toWhole(energy.footPounds), momentum: momentum.slugFeetPerSecond.toFixed(2) }];
}

function more(state: State): Sentence | null {
  const told = withMore(state);
  if (told === null) return null;
  if (typeof told === 'string') return [`figure-readings-${told.replaceAll(' ', '-')}`];
  const holes = { more: MORE, low: toWhole(told.range.low), high: toWhole(told.range.high) };
  return [told.readings === 1 ? 'figure-more-by-one' : 'figure-more-by-two', holes];
}

function spine(state: State): Sentence | null {
  const found = spineOf(state);
  if (found === null) return null;
  return found.older === null ? ['figure-spine', { sags: asSpine(found.sags) }] : ['figure-spine-older', { sags: asSpine(found.sags), older: asSpine(found.older) }];
}
