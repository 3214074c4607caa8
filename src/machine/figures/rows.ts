// The figures as rows of the bow record: what was told, and what it comes to; nothing where nothing was told.

import { formatQuantity } from '../../maths/fractions.ts';
import type { Content } from '../../content/types.ts';
import { MASS_FLOOR, massRatio, massRatioInWords, PEAK_ALLOWANCE, worstMassRatio } from '../limits.ts';
import { pickedBow } from '../known-bow.ts';
import type { State } from '../state.ts';
import { measured } from '../told.ts';
import type { RecordRow } from '../types.ts';
import { phrase } from '../words.ts';
import { arrowMass, arrowParts } from './arrow-mass.ts';
import type { Figure } from './list.ts';
import { arrowLength, balanceByParts, balanceOf, carriedBy, drawOf, holdingOf, MORE, secondReading, speedByPapers, spineOf, withMore } from './reckon.ts';
import { asRead, asSpine, toTenth, toWhole } from './words.ts';

type Rows = readonly RecordRow[];

/** In the place of "not known", where the arrow was added up instead. */
export function addedUpMass(content: Content, state: State): string | null {
  const mass = arrowMass(state);
  if (mass?.by !== 'parts') return null;
  return carriedOn(content, state, 'shaft-grains', phrase(content, 'record-mass-added-up', { sum: toWhole(mass.likely), least: toWhole(Math.floor(mass.least)) }));
}

export function massRows(content: Content, state: State): Rows {
  const mass = arrowMass(state);
  const [peak, error] = [measured(state, 'peak-weight'), measured(state, 'scale-error')];
  if (mass === null) return [];
  // The worst case is what the gate was held against, so it is what the card shows beside the plain figure.
  const ratio = peak === undefined ? [] : [row(content, 'record-mass-ratio', phrase(content, 'record-mass-ratio-value', {
    ratio: massRatioInWords(massRatio(mass.least, peak)), worst: massRatioInWords(worstMassRatio(mass.least, peak, error)),
    error: error ?? PEAK_ALLOWANCE, floor: MASS_FLOOR.toFixed(1),
  }))];
  return [...partsRow(content, state), ...ratio];
}

function partsRow(content: Content, state: State): Rows {
  const parts = arrowParts(state);
  if (parts === null) return [];
  const { shaft, length, point = 0, insert = 0, nock = 0, wrap = 0, vanes } = parts;
  return [row(content, 'card-arrow-parts', phrase(content, 'record-arrow-parts', {
    shaft, length: formatQuantity({ value: length, unit: 'in' }), point, insert, nock, wrap, count: vanes?.count ?? 0, each: vanes?.each ?? 0,
  }))];
}

/** Of the arrow: length, balance, what it carries, how fast a heavier one leaves, how far the shaft sags. */
export function arrowFigureRows(content: Content, state: State): Rows {
  const [length, balance, carries, spine] = [arrowLength(state), balanceOf(state), carriedBy(state), spineOf(state)];
  const [byParts, byPapers] = [balanceByParts(state), speedByPapers(state)];
  return [
    ...(length === undefined || arrowParts(state) !== null ? [] : [told(content, state, 'arrow-length', formatQuantity({ value: length, unit: 'in' }))]),
    ...(balance === null || balance === 'beyond' ? [] : [told(content, state, 'balance-point', phrase(content, balance.ahead <= 0 ? 'record-balance-behind' : 'record-balance', {
      at: formatQuantity({ value: balance.at, unit: 'in' }), ahead: toTenth(Math.abs(balance.ahead)), foc: toTenth(balance.foc),
    }))]),
    ...(byParts === null ? [] : [row(content, 'card-balance-point', phrase(content, 'record-balance-by-parts', { foc: toWhole(byParts) }))]),
    ...(byPapers === null ? [] : [told(content, state, 'rated-speed', phrase(content, 'record-rated', { low: toWhole(byPapers.low), high: toWhole(byPapers.high) }))]),
    ...(carries === null ? [] : [
      told(content, state, 'arrow-speed', phrase(content, 'record-speed', { speed: asRead(carries.speed), mass: toWhole(carries.mass) })),
      row(content, 'card-energy', phrase(content, 'record-energy', { energy: toTenth(carries.energy.footPounds), joules: toTenth(carries.energy.joules) })),
      row(content, 'card-momentum', phrase(content, 'record-momentum', { momentum: carries.momentum.slugFeetPerSecond.toFixed(3), newton: carries.momentum.newtonSeconds.toFixed(2) })),
    ]),
    ...moreRows(content, state),
    ...(spine === null ? [] : [told(content, state, spine.older === null ? 'spine-printed' : 'spine-older', spine.older === null
      ? phrase(content, 'record-spine', { sags: asSpine(spine.sags) }) : phrase(content, 'record-spine-older', { sags: asSpine(spine.sags), older: asSpine(spine.older) }))]),
  ];
}

function moreRows(content: Content, state: State): Rows {
  const [second, more] = [secondReading(state), withMore(state)];
  return [
    ...(second === null ? [] : [told(content, state, 'second-speed', phrase(content, 'record-speed', { speed: asRead(second.speed), mass: toWhole(second.mass) }))]),
    ...(more === null || typeof more === 'string' ? [] : [{
      name: phrase(content, 'card-more', { more: MORE }),
      value: phrase(content, more.readings === 1 ? 'record-more-by-one' : 'record-more-by-two', { low: toWhole(more.range.low), high: toWhole(more.range.high) }),
    }]),
  ];
}

/** Of the bow: what is held at full draw, and its draw length as it is sold. */
export function bowFigureRows(content: Content, state: State): Rows {
  const [hold, draw] = [holdingOf(state), drawOf(state)];
  return [
    ...(hold === null || hold === 'more than the peak' ? [] : [told(content, state, 'holding-weight', phrase(content, 'record-hold', { holding: asRead(hold.holding), letOff: toWhole(hold.letOff) }))]),
    ...(draw === null ? [] : [told(content, state, 'draw-mark', phrase(content, 'record-draw', {
      standard: formatQuantity({ value: draw.standard, unit: 'in' }), toGrip: formatQuantity({ value: draw.toGrip, unit: 'in' }),
    }))]),
  ];
}

/** What this coach never measures, and was not told either: `timing at full draw, tiller, ...`. */
export function notByNumber(content: Content, state: State): string {
  const known: Readonly<Record<string, boolean>> = {
    'holding-weight': measured(state, 'holding-weight') !== undefined, 'draw-length': drawOf(state) !== null,
    'spine': spineOf(state) !== null, 'balance-point': balanceOf(state) !== null,
  };
  const left = ['timing', 'tiller', 'holding-weight', 'draw-length', 'string-age', 'loop-to-peep', 'spine', 'balance-point'].filter((id) => known[id] !== true);
  return left.map((id) => phrase(content, `by-number-${id}`)).join(', ');
}

const row = (content: Content, id: string, value: string): RecordRow => ({ name: phrase(content, id), value });

const told = (content: Content, state: State, step: Figure, value: string): RecordRow => row(content, `card-${step}`, carriedOn(content, state, step, value));

// A figure of an earlier tune says so, like every other one on the card.
function carriedOn(content: Content, state: State, step: string, value: string): string {
  const from = pickedBow(state)?.carried ?? null;
  const own = state.facts.some((fact) => fact.kind === 'answered' && fact.step === step);
  return from === null || own ? value : phrase(content, 'record-carried', { value, tune: from.from });
}
