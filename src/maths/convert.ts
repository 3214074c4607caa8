// Between units of length and between units of mass, by their exact definitions.
// Source: NIST SP 811, appendix B.8 (1 in = 25.4 mm, 1 ft = 12 in, 1 yd = 3 ft, 1 lb = 0.45359237 kg = 7000 gr).
// Draw weight in lb and arrow mass in lb share the word, as in the trade.

import { checks } from './check.ts';
import type { Unit } from './units.ts';

const must = checks('convert');

// Whole numbers, so that a conversion rounds no more than a multiplication and a division do.
const TENTHS_OF_MM: Partial<Record<Unit, number>> = { mm: 10, cm: 100, m: 10_000, in: 254, ft: 3048, yd: 9144 };
const TENS_OF_NANOGRAMS: Partial<Record<Unit, number>> = { gr: 6_479_891, g: 1e8, kg: 1e11, lb: 45_359_237_000 };

/** `value` in another unit; null where the two units do not measure the same kind of thing. Throws RangeError unless finite. */
// Example: convert(1, 'in', 'mm') is 25.4; convert(1, 'in', 'lb') is null.
export function convert(value: number, from: Unit, to: Unit): number | null {
  must.convert.finite(value, 'the value to convert');
  if (from === to) return value;
  for (const kind of [TENTHS_OF_MM, TENS_OF_NANOGRAMS]) {
    const a = kind[from];
    const b = kind[to];
    if (a !== undefined && b !== undefined) return (value * a) / b;
  }
  return null;
}
