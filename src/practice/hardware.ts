// What a practice bow is built of, and so which adjustments it has. Cord and points are left out: no ladder moves them, and what is moved by
// hand all the same changes nothing here.

import type { KnobId } from '../content/types.ts';
import { happens, oneOfThese } from './chance.ts';
import { OFTEN } from './often.ts';
import type { Random } from '../maths/random.ts';

export const CAMS = ['yoke', 'single-cam', 'hybrid', 'two-track', 'screw-adjust'] as const;
export const RESTS = ['drop-away-cable', 'drop-away-limb', 'blade', 'containment', 'prong'] as const;
export const PRESSES = ['trained', 'shop', 'none'] as const;

export interface Hardware {
  readonly hand: 'right' | 'left';
  readonly cams: (typeof CAMS)[number];
  readonly rest: (typeof RESTS)[number];
  readonly press: (typeof PRESSES)[number];
  readonly restScale: 'fine-screw' | 'coarse';
}

const OF_CAMS: Readonly<Record<Hardware['cams'], readonly KnobId[]>> = {
  'yoke': ['yoke', 'cam-sync'],
  'single-cam': ['yoke'],
  'hybrid': ['cam-spacers', 'cam-sync'],
  'two-track': ['cam-spacers', 'cam-sync'],
  'screw-adjust': ['cam-screw', 'cam-sync'],
};

/** The adjustments of a bow with such cams. */
// Example: adjustmentsOf('single-cam') is ['rest-height', 'rest-side', 'nock-height', 'limb-bolts', 'yoke'].
export const adjustmentsOf = (cams: Hardware['cams']): readonly KnobId[] => ['rest-height', 'rest-side', 'nock-height', 'limb-bolts', ...OF_CAMS[cams]];

/** The sideways adjustment that lies in the cams or their cables. */
// Example: sidewaysOf('two-track') is 'cam-spacers'.
export const sidewaysOf = (cams: Hardware['cams']): KnobId => OF_CAMS[cams][0] ?? 'rest-side';

export const hardwareBy = (chance: Random): Hardware => ({
  hand: happens(chance, OFTEN.hardware.rightHand) ? 'right' : 'left',
  cams: oneOfThese(chance, CAMS),
  rest: oneOfThese(chance, RESTS),
  press: oneOfThese(chance, PRESSES),
  restScale: happens(chance, OFTEN.hardware.fineScrew) ? 'fine-screw' : 'coarse',
});
