// What the figures for the card come to. Each is worked out where all that it needs was told, and makes sense together; else it
// is left out, or the reason is told.

import { kineticEnergy, momentum, type Energy, type Momentum } from '../../archery/arrow-energy.ts';
import { foc, focOfParts } from '../../archery/arrow-parts.ts';
import { drawLength, letOff } from '../../archery/bow-figures.ts';
import { speedFromRating, speedRange, throwFrom, type AsShot, type Reading, type SpeedRange, type Unknown } from '../../archery/launch-speed.ts';
import { astmDeflection } from '../../archery/static-spine.ts';
import { grains, inches, pounds, type Fps, type Grains, type Inches, type Percent, type Pounds } from '../../maths/units.ts';
import { MASS_FLOOR, worstMassRatio } from '../limits.ts';
import { measured, type Told } from '../told.ts';
import { arrowMass, arrowParts } from './arrow-mass.ts';

/** Of the arrow, from nock groove to shaft end: as a part of its mass, or for the card. */
export const arrowLength = (state: Told): Inches | undefined => arrowParts(state)?.length ?? measured(state, 'arrow-length');

/** Where the arrow balances: from the groove, ahead of the middle, and that as a share of the length. Beyond the shaft it was misread. */
export type Balance = { readonly at: Inches; readonly ahead: Inches; readonly foc: Percent } | 'beyond';

export function balanceOf(state: Told): Balance | null {
  const [length, at] = [arrowLength(state), measured(state, 'balance-point')];
  if (length === undefined || at === undefined) return null;
  return at >= length ? 'beyond' : { at, ahead: inches(at - length / 2), foc: foc(length, at) };
}

/** By its parts, where nobody balanced it: good to about half a percent where they lie as usual. */
export function balanceByParts(state: Told): Percent | null {
  const parts = arrowParts(state);
  return parts === null || measured(state, 'balance-point') !== undefined ? null : focOfParts(parts);
}

/** What the arrow carries as it leaves. */
export interface Carried { readonly mass: Grains; readonly speed: Fps; readonly energy: Energy; readonly momentum: Momentum }

export function carriedBy(state: Told): Carried | null {
  const [mass, speed] = [arrowMass(state)?.likely, measured(state, 'arrow-speed')];
  return mass === undefined || speed === undefined ? null : { mass, speed, energy: kineticEnergy(mass, speed), momentum: momentum(mass, speed) };
}

/** So much more arrow is a common change of point or insert, gr. */
export const MORE = grains(25);

/** How fast this arrow would leave with so much more mass, by how many readings; or why two readings cannot both be right. */
export type WithMore = { readonly range: SpeedRange; readonly readings: 1 | 2 } | Exclude<Unknown, 'masses too close'>;

export function withMore(state: Told): WithMore | null {
  const first = carriedBy(state);
  if (first === null) return null;
  const second = secondReading(state);
  const found = second === null ? null : throwFrom(first, second);
  // Two masses close together tell little of the string, and still bound how fast another arrow leaves.
  if (found === 'heavier not slower' || found === 'not believable') return found;
  const range = speedRange(second === null ? [first] : [first, second], grains(first.mass + MORE));
  return range === null ? 'not believable' : { range, readings: second === null ? 1 : 2 };
}

export function secondReading(state: Told): Reading | null {
  const [mass, speed] = [measured(state, 'second-mass'), measured(state, 'second-speed')];
  return mass === undefined || speed === undefined || secondIsTooLight(state) ? null : { mass, speed };
}

/** Such an arrow is not shot from this bow, whoever did it once. */
export function secondIsTooLight(state: Told): boolean {
  const [mass, pull] = [measured(state, 'second-mass'), measured(state, 'peak-weight') ?? measured(state, 'rated-weight')];
  return mass !== undefined && pull !== undefined && worstMassRatio(mass, pull, measured(state, 'scale-error')) < MASS_FLOOR;
}

/** What speeds in the papers of a bow are mostly told for (ASTM F1544-11). */
const RATED = { peak: pounds(70), draw: inches(30) } as const;

/** The bow and arrow that a speed from papers is brought to; null where something of it is not told, or misread. */
export function asShot(state: Told): AsShot | null {
  const [peak, brace, toGrip, mass] = [measured(state, 'peak-weight'), measured(state, 'brace-height'), measured(state, 'draw-mark'), arrowMass(state)?.likely];
  if (peak === undefined || brace === undefined || toGrip === undefined || mass === undefined || toGrip <= brace) return null;
  return { peak, brace, draw: drawLength(toGrip), mass };
}

/** How fast this arrow may leave by the bow's papers, where no chronograph was at hand. */
export function speedByPapers(state: Told): SpeedRange | null {
  const [speed, shot] = [measured(state, 'rated-speed'), asShot(state)];
  return speed === undefined || shot === null || measured(state, 'arrow-speed') !== undefined ? null : speedFromRating({ speed, ...RATED }, shot);
}

export type Holding = { readonly holding: Pounds; readonly peak: Pounds; readonly letOff: Percent } | 'more than the peak';

export function holdingOf(state: Told): Holding | null {
  const [holding, peak] = [measured(state, 'holding-weight'), measured(state, 'peak-weight')];
  if (holding === undefined || peak === undefined) return null;
  return holding > peak ? 'more than the peak' : { holding, peak, letOff: letOff(peak, holding) };
}

/** As draw lengths are sold: by 1 3/4 in more than to the grip. */
export function drawOf(state: Told): { readonly toGrip: Inches; readonly standard: Inches } | null {
  const toGrip = measured(state, 'draw-mark');
  return toGrip === undefined ? null : { toGrip, standard: drawLength(toGrip) };
}

/** Static deflection by the present test, and by the older one where that was measured. */
export function spineOf(state: Told): { readonly sags: Inches; readonly older: Inches | null } | null {
  const [printed, older] = [measured(state, 'spine-printed'), measured(state, 'spine-older')];
  if (printed !== undefined) return { sags: inches(printed / 1000), older: null };
  return older === undefined ? null : { sags: astmDeflection(older), older };
}
