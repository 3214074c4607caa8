// Numbers that were measured and that the machine reckons with, each by the step that asks for it and in the unit that it is
// asked in: a mass can not be taken for a weight, nor turns of a bolt for inches. Content is held to these units by a test.

import { oneOf, namesOf } from '../maths/closed.ts';
import { inUnit, type Measured, type Unit } from '../maths/units.ts';

export const MEASURED_IN = {
  'arrow-mass': 'gr',
  // What an arrow is added up from where nobody has a scale.
  'shaft-grains': 'gr/in', 'shaft-length': 'in', 'point-grains': 'gr', 'insert-grains': 'gr', 'nock-grains': 'gr', 'vane-count': 'count', 'vane-grains': 'gr', 'wrap-grains': 'gr',
  'peak-weight': 'lb', 'rated-weight': 'lb', 'scale-error': 'lb',
  'bolts-top': 'turn', 'bolts-bottom': 'turn', 'bolt-limit': 'turn',
  'shaft-ahead': 'in', 'brace-height': 'in', 'nock-height': 'in', 'centre-shot': 'in', 'centre-shot-figure': 'in', 'group-at-20': 'in',
  // For the card alone: nothing is judged by them.
  'arrow-length': 'in', 'balance-point': 'in', 'arrow-speed': 'fps', 'second-mass': 'gr', 'second-speed': 'fps', 'holding-weight': 'lb', 'draw-mark': 'in', 'rated-speed': 'fps',
  'spine-printed': 'count', 'spine-older': 'in',
  'arrow-count': 'count', 'arrows-set-aside': 'count', 'arrows-in-set': 'count', 'arrow-out': 'count', 'nock-stays': 'count',
} as const satisfies Readonly<Record<string, Unit>>;

export type Measure = keyof typeof MEASURED_IN;
/** What is measured there, in its own unit. */
export type MeasureOf<M extends Measure> = Measured<(typeof MEASURED_IN)[M]>;

export const isMeasure = oneOf(namesOf(MEASURED_IN));

/** A number that was answered there. */
export const asMeasured = <M extends Measure>(step: M, value: number): MeasureOf<M> => inUnit(value, MEASURED_IN[step]);
