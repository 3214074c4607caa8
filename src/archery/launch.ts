// How an arrow leaves the bow, from its tears in paper: at what angle to its flight, and how fast it turns. A tear mixes the two, and one
// and the same hole comes from many pairs; at another distance they mix otherwise, so two distances tell them apart, near ones badly.
//
// Signs: angle and rate are the nose's, above 0 to the archer's right and up. A nose to the right leaves the tail to the left, a tear
// below 0, and on a target lands to the right: broadheads much, field points little.
// Source: derived with a rigid-arrow flight model (28.5 in, 395 gr, vanes of 2.1 in, 280 fps; a full swing takes 71 ft). A test flies that
// arrow anew. Vanes of another size change these figures by a third, and broadheads by half: they are for sides and rough sizes.

import { checks, type Checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { degrees, feet, fps, inches, radiansPerSecond, type Degrees, type Feet, type Fps, type Inches, type RadiansPerSecond } from '../maths/units.ts';

const must = checks('launchFrom', 'tearFrom', 'broadheadsApart');

export type LaunchAxis = 'side' | 'height';

export interface Leaving { readonly angle: Degrees; readonly rate: RadiansPerSecond }

/** Mean tear (in; to the right or high above 0) in paper at `distance` from the bow hand (ft), and the standard error of that mean (in). */
export interface PaperTear { readonly distance: Feet; readonly tear: Inches; readonly error: Inches }

/** From the bow hand to the point when the arrow leaves the string, ft: 28.5 in of arrow less 7 in of brace height (derived). */
export const HAND_TO_POINT = feet(1.8);
const USUAL_SPEED = fps(280);

/** Distance of the paper from the point (ft): tear (in) for 1 degree, for 1 rad/s, and by gravity alone. At USUAL_SPEED. */
const TEARS = [
  [3, -0.447, -0.421, -0.047], [5, -0.402, -0.583, -0.067], [6, -0.376, -0.655, -0.077], [7, -0.347, -0.721, -0.085], [8, -0.316, -0.779, -0.093],
  [10, -0.248, -0.874, -0.107], [15, -0.058, -0.968, -0.126], [18, 0.056, -0.928, -0.127], [24, 0.251, -0.666, -0.106], [30, 0.36, -0.248, -0.063],
] as const;

/** Paper stands between these distances from the bow hand, or nothing is said. */
export const PAPER_REACH = { nearest: feet(3 + HAND_TO_POINT), farthest: feet(30 + HAND_TO_POINT) } as const;

/**
 * What is usual, as standard deviations, before anything was shot: tears of an inch at 7 ft, with angle and rate in the proportion in
 * which they scatter from shot to shot (0.25 degrees to 0.22 rad/s). Derived, rounded.
 */
export const USUAL_LEAVING: Leaving = { angle: degrees(1.4), rate: radiansPerSecond(1.2) };

/** A shaft that bends in flight until its ends swing by 1 mm shifts a tear by so much (in), otherwise at every distance (derived; the 1 mm is a guess). */
const BENDING = 1 / 16;

export type HowWell = 'well' | 'roughly' | 'badly';

export interface Launch extends Leaving {
  readonly errors: Leaving;
  /** Of the two errors. Near -1 only a mix of both is known. */
  readonly correlation: number;
  /** By what is left of the usual error: up to a quarter, up to a half, or more. */
  readonly known: { readonly angle: HowWell; readonly rate: HowWell };
}

/**
 * Angle (degrees) and rate (rad/s) on one axis, from tears at one distance or more and what is usual: where the tears do not tell the two apart, it
 * stays near 0. `speed` (fps) is the arrow's. With Infinity in `usual` the tears alone count. Throws RangeError where there is no tear, on
 * figures that cannot be meant, on paper out of PAPER_REACH, and where tears alone are to tell what they cannot.
 */
// Example: launchFrom([{ distance: 7, tear: -0.5, error: 0.1 }, { distance: 15, tear: -0.4, error: 0.1 }], 'side').rate is 0.33.
export function launchFrom(tears: readonly PaperTear[], axis: LaunchAxis, speed: Fps = USUAL_SPEED, usual: Leaving = USUAL_LEAVING): Launch {
  must.launchFrom.size(usual.angle, 'the usual angle', true);
  must.launchFrom.size(usual.rate, 'the usual rate', true);
  if (tears.length === 0) throw must.launchFrom.error('there is no tear; give at least one');
  const rows = tears.map(({ distance, tear, error }) => {
    const one = oneOf(must.launchFrom, distance, axis, speed);
    must.launchFrom.measure(tear, 'a tear');
    must.launchFrom.size(error, 'the error of a tear');
    return { ...one, left: tear - one.gravity, weight: 1 / (error ** 2 + BENDING ** 2) };
  });
  const total = (of: (row: (typeof rows)[number]) => number): number => sum(rows.map((row) => row.weight * of(row)));
  const angles = total((r) => r.angle ** 2) + 1 / usual.angle ** 2;
  const rates = total((r) => r.rate ** 2) + 1 / usual.rate ** 2;
  const both = total((r) => r.angle * r.rate);
  const [byAngle, byRate] = [total((r) => r.angle * r.left), total((r) => r.rate * r.left)];
  const det = angles * rates - both ** 2;
  if (det < ALIKE * angles * rates) throw must.launchFrom.error('tears at one distance tell angle and rate apart only with what is usual; give two distances');
  const errors = { angle: degrees(Math.sqrt(rates / det)), rate: radiansPerSecond(Math.sqrt(angles / det)) };
  return {
    angle: degrees((rates * byAngle - both * byRate) / det),
    rate: radiansPerSecond((angles * byRate - both * byAngle) / det),
    errors,
    correlation: -both / Math.sqrt(angles * rates),
    known: { angle: howWell(errors.angle / USUAL_LEAVING.angle), rate: howWell(errors.rate / USUAL_LEAVING.rate) },
  };
}

/** Below this share of what it could be a determinant is 0 but for rounding. */
const ALIKE = 1e-9;

const howWell = (left: number): HowWell => (left <= 1 / 4 ? 'well' : left <= 1 / 2 ? 'roughly' : 'badly');

/** Tear (in) in paper at `distance` from the bow hand (ft) of an arrow that leaves so. Throws RangeError on figures that cannot be meant and out of PAPER_REACH. */
// Example: tearFrom({ angle: 1, rate: 0 }, 8.8, 'side') is -0.347; tearFrom({ angle: 0, rate: 0 }, 8.8, 'height') is -0.085.
export function tearFrom({ angle, rate }: Leaving, distance: Feet, axis: LaunchAxis, speed: Fps = USUAL_SPEED): Inches {
  must.tearFrom.measure(angle, 'the angle');
  must.tearFrom.measure(rate, 'the rate');
  const one = oneOf(must.tearFrom, distance, axis, speed);
  return inches(one.angle * angle + one.rate * rate + one.gravity);
}

/** Impact (in) at 20 yd of a broadhead with three fixed blades less that of a field point, for 1 degree and for 1 rad/s: 0.79 - 0.18, 4.75 - 1.70. */
const APART = { angle: 0.61, rate: 3.05 } as const;
/** How much that differs from arrow to arrow, as a share: with vanes 0.4 and 0.6 in high it is 4.9 and 1.5 in for 1 rad/s (derived). */
const MODEL = 0.5;

export interface Apart {
  readonly apart: Inches;
  /** One standard deviation (in): by what the tears leave open, and with what the model does not know of this arrow. */
  readonly error: Inches;
  readonly errorInAll: Inches;
}

/**
 * What is left for the target: where broadheads are to be expected at 20 yd, against field points (in; right or up above 0). What sets them apart
 * after a perfect launch is not in it. Throws RangeError unless the speed (fps) is above 0, and on figures that cannot be meant.
 */
// Example: broadheadsApart({ angle: 1, rate: 1, errors: { angle: 0.1, rate: 0.1 }, correlation: 0 }).apart is 3.66.
export function broadheadsApart({ angle, rate, errors, correlation }: Omit<Launch, 'known'>, speed: Fps = USUAL_SPEED): Apart {
  must.broadheadsApart.size(speed, "the arrow's speed");
  must.broadheadsApart.measure(angle, 'the angle');
  must.broadheadsApart.measure(rate, 'the rate');
  must.broadheadsApart.notNegative(errors.angle, 'the error of the angle');
  must.broadheadsApart.notNegative(errors.rate, 'the error of the rate');
  if (!(Math.abs(correlation) <= 1)) throw must.broadheadsApart.error(`the correlation is ${correlation}; a number from -1 to 1 is needed`);
  const perRate = (APART.rate * USUAL_SPEED) / speed;
  const [a, r] = [APART.angle * errors.angle, perRate * errors.rate];
  const apart = APART.angle * angle + perRate * rate;
  const error = Math.hypot(a + correlation * r, r * Math.sqrt(1 - correlation ** 2));
  return { apart: inches(apart), error: inches(error), errorInAll: inches(Math.hypot(error, MODEL * apart)) };
}

/** Tear (in) for 1 degree and 1 rad/s, and by gravity. A faster arrow turns less on its way, and falls less: as 1 / V and 1 / V^2 (derived). */
function oneOf(by: Checks, distance: Feet, axis: LaunchAxis, speed: Fps): { readonly angle: number; readonly rate: number; readonly gravity: number } {
  by.size(speed, "the arrow's speed");
  const { nearest, farthest } = PAPER_REACH;
  if (!(distance >= nearest && distance <= farthest)) {
    throw by.error(`the paper is ${distance} ft from the bow hand; the model reaches from ${nearest} to ${farthest} ft`);
  }
  const [angle, rate, gravity] = rowAt(distance - HAND_TO_POINT);
  const slower = USUAL_SPEED / speed;
  return { angle, rate: rate * slower, gravity: axis === 'height' ? gravity * slower ** 2 : 0 };
}

/** Between the rows of TEARS by the cubic through the two on either side (Lagrange). */
function rowAt(d: number): readonly [number, number, number] {
  const from = Math.min(Math.max(TEARS.findLastIndex(([at]) => at <= d) - 1, 0), TEARS.length - 4);
  const near = TEARS.slice(from, from + 4);
  const shares = near.map(([at]) => near.reduce((share, [other]) => (other === at ? share : (share * (d - other)) / (at - other)), 1));
  const of = (column: 1 | 2 | 3): number => sum(near.map((row, i) => row[column] * (shares[i] ?? 0)));
  return [of(1), of(2), of(3)];
}
