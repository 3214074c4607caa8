// Safety limits that hang on more than one answer. Fixed limits stand in content.
// 5 gr/lb: the usual floor of the trade (3-D body rules; rating tests of ASTM F1544 use 5 gr/lb). Other figures: common practice.

import { grainsPerPound, worstGrainsPerPound } from '../archery/arrow-mass.ts';
import { pounds, type Grains, type Pounds } from '../maths/units.ts';

export const MASS_FLOOR = 5.0;
/** Below this the ratio is told as a warning: scale errors eat it. */
export const MASS_WARN = 5.5;
/** Peak weight may read this much over the limbs' rating (scale error); also the scale error assumed until told. */
export const PEAK_ALLOWANCE = pounds(2);
/** Shaft front ahead of the foremost part of the rest at full draw, inches. */
export const AHEAD = { stop: 0.5, want: 1, growing: 2 } as const;
/** Sound arrows of one kind that tuning needs. */
export const TUNING_ARROWS = 3;
/** After this many shots the archer is asked whether to go on. */
export const SHOTS_TO_REST = 40;

/** Grains of arrow for each pound of this pull. */
export const massRatio = (mass: Grains, pull: Pounds): number => grainsPerPound(mass, pull);

/** The same in the worst case that the scale may hide: its own error, or the allowance until that is told. */
export const worstMassRatio = (mass: Grains, peak: Pounds, scaleError: Pounds | undefined): number =>
  worstGrainsPerPound(mass, peak, scaleError ?? PEAK_ALLOWANCE);

/** Rounded down: 4.997 is never told as 5.00, which would pass. */
export const massRatioInWords = (ratio: number): string => (Math.floor(ratio * 100) / 100).toFixed(2);
