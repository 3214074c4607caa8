// An arrow as a rigid body in the air, in SI units: what its forces and moments are reckoned with. Places are metres behind the balance point.
// Whatever pushes as the slant at which it meets the air (nose, vanes, blades) adds up to three figures; the shaft, which pushes as the
// square of it, is cut into pieces.

import type { Checks } from '../../maths/check.ts';
import { GRAIN, INCH } from '../../maths/exact.ts';
import { sum } from '../../maths/sum.ts';
import { massProperties } from '../arrow-parts.ts';
import type { FlightArrow, Head, Vanes } from './arrow.ts';
import { finLift, type Fins } from './fins.ts';

export interface Body {
  /** kg and kg m2. */
  readonly mass: number;
  readonly inertia: number;
  /** From the balance point to the tip, and to the nock's throat, m. */
  readonly toTip: number;
  readonly toNock: number;
  /** m and m2. */
  readonly diameter: number;
  readonly section: number;
  /** Drag along the arrow, on that section. */
  readonly drag: number;
  /** On that section, by radian: push for a slant; moment for a slant, and push for a turning (m); moment for a turning (m2). */
  readonly slope: number;
  readonly lever: number;
  readonly damping: number;
  /** The middles of equal pieces of the shaft, and the length of each, m. */
  readonly strips: readonly number[];
  readonly strip: number;
}

/** A slender body's nose pushes by so much for a radian of slant (from memory). */
const NOSE_SLOPE = 2;

/** Pieces of the shaft: with ten times as many no tear changes by 0.001 in, no impact by 0.01 in. */
const STRIPS = 12;

/** Throws RangeError in the name that `must` carries unless each figure of the arrow can be meant. */
// Example: bodyOf(checks('bodyOf').bodyOf, { length: 28, shaft: 10, diameter: 0.25, drag: 1.5, head: { nose: 0.35, drag: 0 } }).toTip is 0.3556.
export function bodyOf(must: Checks, { diameter, drag, vanes, head, ...parts }: FlightArrow): Body {
  const { length } = parts;
  must.size(diameter, "the shaft's diameter");
  must.amount(drag, "the shaft's drag");
  const { mass, balance, inertia } = massProperties(must, vanes === undefined ? parts : { ...parts, vanes });
  const toTip = (length - balance) * INCH;
  const section = (Math.PI * (diameter * INCH) ** 2) / 4;
  const surfaces = [...headLift(must, head, diameter), ...vanesLift(must, vanes, diameter, length)]
    .map(({ slope, behindTip }) => ({ slope, at: behindTip * INCH - toTip }));
  const lift = (power: number): number => {
    const total = surfaces.map(({ slope, at }) => slope * at ** power);
    for (const one of total) must.measure(one, 'what pushes the arrow across');
    return sum(total);
  };
  return {
    mass: mass * GRAIN, inertia: inertia * GRAIN * INCH ** 2, toTip, toNock: balance * INCH, diameter: diameter * INCH, section,
    drag: drag + head.drag + (vanes?.drag ?? 0), slope: lift(0), lever: lift(1), damping: lift(2),
    strips: Array.from({ length: STRIPS }, (_, i) => ((i + 0.5) * length * INCH) / STRIPS - toTip), strip: (length * INCH) / STRIPS,
  };
}

/** Something that pushes across by `slope` for a radian of slant, so far behind the tip (in). */
interface Surface { readonly slope: number; readonly behindTip: number }

function headLift(must: Checks, { nose, drag, blades, lift }: Head, diameter: number): readonly Surface[] {
  must.measure(nose, "the place of the head's nose");
  must.amount(drag, "the head's drag");
  const surfaces: Surface[] = [{ slope: NOSE_SLOPE, behindTip: nose }];
  if (blades !== undefined) surfaces.push(finned(must, blades, diameter, blades.behind));
  if (lift !== undefined) {
    must.amount(lift.slope, "the head's lift");
    must.measure(lift.behind, "the place of the head's lift");
    surfaces.push({ slope: lift.slope, behindTip: lift.behind });
  }
  return surfaces;
}

function vanesLift(must: Checks, vanes: Vanes | undefined, diameter: number, length: number): readonly Surface[] {
  if (vanes === undefined) return [];
  must.measure(vanes.ahead, 'the place of the vanes');
  must.amount(vanes.drag, "the vanes' drag");
  return [finned(must, vanes, diameter, length - vanes.ahead - vanes.chord)];
}

function finned(must: Checks, fins: Fins, diameter: number, behindTip: number): Surface {
  must.measure(behindTip, 'the place of the fins');
  const { slope, centre } = finLift(must, fins, diameter);
  return { slope, behindTip: behindTip + centre };
}
