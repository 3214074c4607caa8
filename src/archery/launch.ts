// Angle and turning of an arrow as it leaves the bow, from tears in paper at two distances. A tear mixes both: at one distance
// alone they cannot be told apart, for the same hole comes from many pairs. At another distance they mix otherwise.
// Signs: angle and rate are those of the arrow's nose, right and up above 0. A nose to the right leaves the tail to the left, a tear
// below 0. On a target an arrow goes where its nose pointed, broadheads more than field points.
// Source: derived with a rigid-arrow flight model (28.5 in, 395 gr, 280 fps, three vanes of 2.1 in; wavelength 71 ft). A shaft also
// bends, which the model leaves out, so close distances tell less than they promise. Nothing here foretells one bow's figures.

import { mustBeFinite, mustBePositive } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { degrees, feet, fps, inches, radiansPerSecond, yards, type Degrees, type Feet, type Fps, type Inches, type RadiansPerSecond } from '../maths/units.ts';
import { dragShare } from './impact-angle.ts';

export type LaunchAxis = 'side' | 'height';

/** A mean tear (in; right or high above 0) at one distance from the bow hand, and the standard error of that mean (in). */
export interface TearAt { readonly distance: Feet; readonly tear: Inches; readonly error: Inches }

/** Standard deviations known beforehand. */
export interface LaunchPrior { readonly angle: Degrees; readonly rate: RadiansPerSecond }

/**
 * A bow not yet tuned: tears of about 1 in at 7 ft, with angle to rate as they scatter from shot to shot (0.25 deg to 0.22 rad/s; derived:
 * 1.38 deg and 1.22 rad/s).
 */
export const USUAL_LAUNCH: LaunchPrior = { angle: degrees(1.4), rate: radiansPerSecond(1.2) };

/** Where the point is when the arrow leaves the string, ahead of the bow hand (ft): 28.5 in of arrow less 7 in of brace height (derived). */
const POINT_AHEAD = 1.8;
const MODEL_SPEED = 280;

/** Feet from the point; inches of tear for 1 degree and for 1 rad/s. */
const BASIS = [
  [3, -0.447, -0.421], [5, -0.402, -0.583], [6, -0.376, -0.655], [7, -0.347, -0.721], [8, -0.316, -0.779], [10, -0.248, -0.874],
  [15, -0.058, -0.968], [18, 0.056, -0.928], [24, 0.251, -0.666], [30, 0.36, -0.248],
] as const;

export const NEAREST = feet(3 + POINT_AHEAD);
export const FARTHEST = feet(30 + POINT_AHEAD);

export interface Launch {
  readonly angle: Degrees;
  readonly rate: RadiansPerSecond;
  readonly errors: { readonly angle: Degrees; readonly rate: RadiansPerSecond };
  readonly correlation: number;
}

/** Angle and rate on one axis. */
export function launchFrom(tears: readonly TearAt[], axis: LaunchAxis, speed: Fps = fps(MODEL_SPEED), prior: LaunchPrior = USUAL_LAUNCH): Launch {
  mustBePositive(prior.angle, 'launchFrom: the angle known beforehand', true);
  mustBePositive(prior.rate, 'launchFrom: the rate known beforehand', true);
  const rows = tears.map(({ distance, tear, error }) => {
    mustBeFinite(tear, 'launchFrom: a tear');
    mustBePositive(error, "launchFrom: a tear's standard error");
    return { ...basisAt('launchFrom', distance, speed), tear: tear - gravityAt(distance, axis), weight: 1 / error ** 2 };
  });
  const aa = sum([1 / prior.angle ** 2, ...rows.map((r) => r.weight * r.angle ** 2)]);
  const rr = sum([1 / prior.rate ** 2, ...rows.map((r) => r.weight * r.rate ** 2)]);
  const ar = sum(rows.map((r) => r.weight * r.angle * r.rate));
  const at = sum(rows.map((r) => r.weight * r.angle * r.tear));
  const rt = sum(rows.map((r) => r.weight * r.rate * r.tear));
  const det = aa * rr - ar ** 2;
  return {
    angle: degrees((rr * at - ar * rt) / det), rate: radiansPerSecond((aa * rt - ar * at) / det),
    errors: { angle: degrees(Math.sqrt(rr / det)), rate: radiansPerSecond(Math.sqrt(aa / det)) },
    correlation: -ar / Math.sqrt(aa * rr),
  };
}

/** Inches at 20 yd for 1 degree and for 1 rad/s: broadhead (three fixed blades) less field point. */
const APART = { angle: 0.79 - 0.18, rate: 4.75 - 1.7 } as const;
const APART_YARDS = 20;

/** What is left for the target: where broadheads strike against field points at 20 yd, inches, and its standard deviation. */
export function broadheadsApart(launch: Launch, axis: LaunchAxis, speed: Fps = fps(MODEL_SPEED)): { readonly apart: Inches; readonly error: Inches } {
  const rate = (APART.rate * MODEL_SPEED) / speed;
  const [a, r] = [APART.angle * launch.errors.angle, rate * launch.errors.rate];
  return {
    apart: inches(APART.angle * launch.angle + rate * launch.rate + (axis === 'height' ? dragShare(yards(APART_YARDS)) : 0)),
    error: inches(Math.sqrt(a ** 2 + r ** 2 + 2 * launch.correlation * a * r)),
  };
}

/** The tear (in) that a launch leaves in paper at a distance from the bow hand. */
export function tearFrom(launch: Pick<Launch, 'angle' | 'rate'>, distance: Feet, axis: LaunchAxis, speed: Fps = fps(MODEL_SPEED)): Inches {
  const basis = basisAt('tearFrom', distance, speed);
  return inches(basis.angle * launch.angle + basis.rate * launch.rate + gravityAt(distance, axis));
}

function basisAt(caller: string, distance: Feet, speed: Fps): { readonly angle: number; readonly rate: number } {
  mustBePositive(speed, `${caller}: the arrow's speed`);
  if (!(distance >= NEAREST && distance <= FARTHEST)) throw new RangeError(`${caller}: the paper is ${distance} ft from the bow hand; the model reaches from ${NEAREST} to ${FARTHEST} ft`);
  return { angle: between(distance - POINT_AHEAD, 1), rate: (between(distance - POINT_AHEAD, 2) * MODEL_SPEED) / speed };
}

function between(d: number, column: 1 | 2): number {
  const next = Math.max(1, BASIS.findIndex(([at]) => at >= d));
  const [low, high] = [BASIS[next - 1] ?? BASIS[0], BASIS[next] ?? BASIS[0]];
  return low[column] + ((high[column] - low[column]) * (d - low[0])) / (high[0] - low[0]);
}

const gravityAt = (distance: Feet, axis: LaunchAxis): number =>
  axis === 'side' ? 0 : -(0.085 + ((0.126 - 0.085) * (distance - POINT_AHEAD - 7)) / 8);
