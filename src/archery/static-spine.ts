// Static spine: how far a shaft sags under a weight hung from its middle. Two set-ups are in use, and a beam's law leads from one to
// the other. The number on a carbon shaft is the ASTM one in thousandths of an inch; all deflections here are inches, so .500, not 500.
// Sources: ASTM F2031 (28 in between supports, 1.94 lb) and the older AMO test of wooden shafts (26 in, 2 lb), both read on secondary
// pages; the law of a beam on two supports, deflection = P L^3 / 48 EI, from memory of any text on strength of materials.

import { checks } from '../maths/check.ts';
import { INCH, POUND_FORCE } from '../maths/exact.ts';
import { inches, inUnit, pounds, type Inches, type Measured, type Pounds } from '../maths/units.ts';

const must = checks('amoDeflection', 'astmDeflection', 'amoPounds', 'bendingStiffness');

const ASTM = { span: 28, weight: 1.94 } as const;
const AMO = { span: 26, weight: 2 } as const;

/** One shaft in both set-ups: deflection goes with the weight and the cube of the span. 0.825419. */
const RATIO = (AMO.weight * AMO.span ** 3) / (ASTM.weight * ASTM.span ** 3);

/** Deflection (in) under the AMO test of a shaft with deflection `astm` (in) under the ASTM test. Throws RangeError unless above 0. */
// Example: amoDeflection(0.5) is 0.41271.
export function amoDeflection(astm: Inches): Inches {
  must.amoDeflection.size(astm, 'the deflection');
  return inches(astm * RATIO);
}

/** Deflection (in) under the ASTM test of a shaft with deflection `amo` (in) under the AMO test. Throws RangeError unless above 0. */
// Example: astmDeflection(0.41271) is 0.50000.
export function astmDeflection(amo: Inches): Inches {
  must.astmDeflection.size(amo, 'the deflection');
  return inches(amo / RATIO);
}

/** Spine in pounds, by which wooden shafts are sorted: 26 over the deflection (in) under the AMO test. Throws RangeError unless above 0. */
// Example: amoPounds(0.52) is 50.
export function amoPounds(amo: Inches): Pounds {
  must.amoPounds.size(amo, 'the deflection');
  return pounds(AMO.span / amo);
}

export interface BendingStiffness { readonly poundInchesSquared: Measured<'lbf in2'>; readonly newtonMetresSquared: Measured<'N m2'> }

/** Bending stiffness EI, lbf in2 and N m2, from the deflection (in) under the ASTM test. Throws RangeError unless above 0. */
// Example: bendingStiffness(0.4) is { poundInchesSquared: 2218.067, newtonMetresSquared: 6.36544 }.
export function bendingStiffness(astm: Inches): BendingStiffness {
  must.bendingStiffness.size(astm, 'the deflection');
  const stiffness = (ASTM.weight * ASTM.span ** 3) / (48 * astm);
  return { poundInchesSquared: inUnit(stiffness, 'lbf in2'), newtonMetresSquared: inUnit(stiffness * POUND_FORCE * INCH ** 2, 'N m2') };
}
