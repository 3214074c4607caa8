// What vanes, and the blades of a broadhead, push across for the air that meets them at a slant.
// Source: J. S. Barrowman, thesis, Catholic University of America, 1967 (slope and centre of fins; the forms from memory). They are for
// rockets and small slants: on arrows nobody has measured them, and with vanes from 0.4 to 0.6 in high a full swing takes 57 to 85 ft.

import type { Checks } from '../../maths/check.ts';
import { inches, type Inches } from '../../maths/units.ts';

/** Like fins evenly round the shaft: how far they stand out, how long they are at the shaft and at the outer edge, how far that begins further back. */
export interface Fins {
  readonly count: number;
  readonly height: Inches;
  readonly chord: Inches;
  readonly tip: Inches;
  readonly sweep: Inches;
  /** What is left of it behind a shaft that stirs the air, and in vanes that give way. */
  readonly efficiency?: number;
}

/** A guess; 0.6 to 1 is defensible, and changes a full swing by a sixth. */
export const FIN_EFFICIENCY = 0.8;

/** Push across by radian of slant, on the shaft's section, and where it acts, inches behind the foremost place at which they stand on the shaft. */
export interface FinLift { readonly slope: number; readonly centre: Inches }

/** Of fins on a shaft of this diameter (in). Throws RangeError in the name that `must` carries unless each of these figures can be meant. */
// Example: finLift(checks('finLift').finLift, { count: 3, height: 0.48, chord: 2.1, tip: 0.9, sweep: 0.9 }, 0.246) is { slope: 21.27, centre: 0.785 }.
export function finLift(must: Checks, fins: Fins, diameter: number): FinLift {
  const { count, height, chord, tip, sweep, efficiency = FIN_EFFICIENCY } = fins;
  must.size(diameter, "the shaft's diameter");
  must.whole(count, 'the count of fins', 0);
  must.size(height, 'the height of a fin');
  must.size(chord, 'the length of a fin');
  must.amount(tip, "the length of a fin's outer edge");
  must.amount(sweep, 'the sweep of a fin');
  must.chance(efficiency, "a fin's efficiency");
  const radius = diameter / 2;
  const both = chord + tip;
  const midline = Math.hypot(height, sweep + (tip - chord) / 2);
  const body = 1 + radius / (radius + height);
  return {
    slope: (efficiency * body * 4 * count * (height / diameter) ** 2) / (1 + Math.hypot(1, (2 * midline) / both)),
    centre: inches((sweep * (chord + 2 * tip)) / (3 * both) + (both - (chord * tip) / both) / 6),
  };
}
