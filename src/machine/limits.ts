// Safety limits that hang on more than one answer. Fixed limits stand in content.
// 5 gr/lb: the usual floor of the trade (3-D body rules; rating tests of ASTM F1544 use 5 gr/lb). Other figures: common practice.

export const MASS_FLOOR = 5.0;
/** Below this the ratio is told as a warning: scale errors eat it. */
export const MASS_WARN = 5.5;
/** Peak weight may read this much over the limbs' rating (scale error); also the scale error assumed until told. */
export const PEAK_ALLOWANCE = 2;
/** Shaft front ahead of the foremost part of the rest at full draw, inches. */
export const AHEAD = { stop: 0.5, want: 1, growing: 2 } as const;
/** Sound arrows of one kind that tuning needs. */
export const TUNING_ARROWS = 3;
/** After this many shots the archer is asked whether to go on. */
export const SHOTS_TO_REST = 40;

/** The peak weight to hold arrow mass against: the worst that the scale may hide. */
export const peakForMass = (peak: number, scaleError: number | undefined): number => peak + (scaleError ?? PEAK_ALLOWANCE);
