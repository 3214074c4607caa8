// The words for units: what is understood when written, and what is written back.

import { UNITS, type Unit } from './units.ts';

/** Singular, plural, and whatever else is understood. Short forms of measures have no plural. */
const WORDS: Readonly<Record<Unit, readonly [string, string, ...string[]]>> = {
  in: ['in', 'in', 'in.', 'inch', 'inches', '"', "''"],
  mm: ['mm', 'mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  ft: ['ft', 'ft', 'ft.', 'foot', 'feet', "'"],
  yd: ['yd', 'yd', 'yd.', 'yds', 'yard', 'yards'],
  m: ['m', 'm', 'metre', 'metres', 'meter', 'meters'],
  lb: ['lb', 'lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds'],
  kg: ['kg', 'kg', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  gr: ['gr', 'gr', 'gr.', 'grain', 'grains'],
  g: ['g', 'g', 'gram', 'grams', 'gramme', 'grammes'],
  'gr/in': ['gr/in', 'gr/in', 'gr per in', 'gr per inch', 'grain per inch', 'grains per inch', 'grains an inch', 'gpi'],
  turn: ['turn', 'turns'],
  'half-twist': ['half-twist', 'half-twists', 'half twist', 'half twists'],
  'half-twist-pair': [
    'half-twist pair', 'half-twist pairs', 'half-twist-pair', 'half-twist-pairs', 'half twist pair', 'half twist pairs', 'pair', 'pairs',
  ],
  size: ['size', 'sizes'],
  click: ['click', 'clicks'],
  count: ['', ''],
  shots: ['shot', 'shots'],
  months: ['month', 'months'],
  percent: ['%', '%', 'percent', 'per cent'],
  fps: ['fps', 'fps', 'ft/s'],
};

const BY_WORD = new Map<string, Unit>(UNITS.flatMap((unit) => WORDS[unit].filter((w) => w !== '').map((w) => [w, unit] as const)));

/** The unit that a word stands for, capitals or not; null where it is none of ours. */
// Example: unitFromWord('Inches') is 'in'; unitFromWord('stone') is null.
export function unitFromWord(word: string): Unit | null {
  return BY_WORD.get(word.toLowerCase()) ?? null;
}

/** The word to write after `value`: singular for 1, a fraction of 1 and their negatives; plural for 0 and from there on. '' for a count. */
// Example: unitWord('half-twist', 0.5) is 'half-twist'; unitWord('half-twist', 2) is 'half-twists'.
export function unitWord(unit: Unit, value: number): string {
  const [one, many] = WORDS[unit];
  const size = Math.abs(value);
  return size > 0 && size <= 1 ? one : many;
}
