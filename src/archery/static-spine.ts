// Static spine: how far a shaft bends under a weight hung from its middle. Two set-ups are in use, and a beam's law leads from one
// to the other. The figure on a carbon shaft is the newer one's, in thousandths of an inch.
// Sources: ASTM F2031 (28 in between supports, 1.94 lb) and the older AMO test for wood (26 in, 2 lb), both after secondary pages; the
// law of a beam on two supports with a weight in the middle from any text on strength of materials (from memory).

import { mustBePositive } from '../maths/check.ts';
import { INCH, POUND_FORCE } from '../maths/exact.ts';
import { inches, inUnit, pounds, type Inches, type Measured, type Pounds } from '../maths/units.ts';

/** Bending stiffness EI. */
export type PoundsInchesSquared = Measured<'lbf in2'>;
export type NewtonMetresSquared = Measured<'N m2'>;

const ASTM = { span: 28, weight: 1.94 } as const;
const AMO = { span: 26, weight: 2 } as const;

/** Of the same shaft in the two set-ups: deflection goes with weight and the cube of the span. */
const RATIO = (AMO.weight * AMO.span ** 3) / (ASTM.weight * ASTM.span ** 3);

/** Deflection (in) in the AMO set-up of a shaft with this deflection in the ASTM one. Throws RangeError unless above 0.
 *  Example: amoDeflection(inches(0.5)) is 0.4127. */
export function amoDeflection(astm: Inches): Inches {
  mustBePositive(astm, 'amoDeflection: the deflection');
  return inches(astm * RATIO);
}

/** Deflection (in) in the ASTM set-up of a shaft with this deflection in the AMO one. Throws RangeError unless above 0.
 *  Example: astmDeflection(inches(0.4127)) is 0.5000. */
export function astmDeflection(amo: Inches): Inches {
  mustBePositive(amo, 'astmDeflection: the deflection');
  return inches(amo / RATIO);
}

/** Spine in pounds, as wooden shafts are sorted: 26 over the deflection (in) in the AMO set-up. Throws RangeError unless above 0.
 *  Example: amoPounds(inches(0.52)) is 50. */
export function amoPounds(amo: Inches): Pounds {
  mustBePositive(amo, 'amoPounds: the deflection');
  return pounds(AMO.span / amo);
}

/** Bending stiffness EI, lbf in2 and N m2, from the deflection (in) in the ASTM set-up. Throws RangeError unless above 0.
 *  Example: bendingStiffness(inches(0.4)).poundsInchesSquared is 2218.067. */
export function bendingStiffness(
  astm: Inches,
): { readonly poundsInchesSquared: PoundsInchesSquared; readonly newtonMetresSquared: NewtonMetresSquared } {
  mustBePositive(astm, 'bendingStiffness: the deflection');
  const stiffness = (ASTM.weight * ASTM.span ** 3) / (48 * astm);
  return { poundsInchesSquared: inUnit(stiffness, 'lbf in2'), newtonMetresSquared: inUnit(stiffness * POUND_FORCE * INCH ** 2, 'N m2') };
}
