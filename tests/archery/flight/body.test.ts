// An arrow as a body in the air.

import { describe, expect, it } from 'vitest';
import { FIELD_POINT, FIXED_BLADES, MECHANICAL, unfletched, USUAL_ARROW, type FlightArrow } from '../../../src/archery/flight/arrow.ts';
import { bodyOf } from '../../../src/archery/flight/body.ts';
import { balanceOfParts, focOfParts, massOfParts } from '../../../src/archery/arrow-parts.ts';
import { GRAIN, INCH } from '../../../src/maths/exact.ts';
import { grains, inches } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { said } from '../said.ts';
import { must, PLAIN, printed, usualBody, withVanes } from './oracle.ts';

describe('the usual arrow, by simulation', () => {
  it('395 gr, FOC 11.1 percent, 1.650e-3 kg m2; with a point of 150 gr FOC 15.2', () => {
    printed(usualBody().mass / GRAIN, 395, 0);
    printed(focOfParts(USUAL_ARROW), 11.1, 1);
    printed(usualBody().inertia * 1e3, 1.65, 3);
    printed(focOfParts({ ...USUAL_ARROW, point: grains(150) }), 15.2, 1);
  });
  it('brakes by 2.2, with fixed blades 2.9, folded ones 2.4, without vanes 1.5 (guesses; 1.56 and 2.05 were measured with small and large vanes, read)', () => {
    const drag = (arrow: FlightArrow): number => bodyOf(must, arrow).drag;
    expect(drag(USUAL_ARROW)).toBeCloseTo(2.2, 12);
    expect(drag({ ...USUAL_ARROW, head: FIXED_BLADES })).toBeCloseTo(2.9, 12);
    expect(drag({ ...USUAL_ARROW, head: MECHANICAL })).toBeCloseTo(2.4, 12);
    expect(drag(unfletched(USUAL_ARROW))).toBe(1.5);
  });
  it('weighs, balances and measures as its parts say, in SI units', () => {
    const body = usualBody();
    near(body.mass, massOfParts(USUAL_ARROW) * GRAIN, 1e-12);
    near(body.toNock, balanceOfParts(USUAL_ARROW) * INCH, 1e-12);
    near(body.toTip + body.toNock, 28.5 * INCH, 1e-12);
    near(body.diameter, 0.246 * INCH, 1e-12);
    near(body.section, Math.PI * (0.123 * INCH) ** 2, 1e-12);
  });
  it('its vanes push by 21.3 at 26.1 in from the tip, its nose by 2 at 0.35', () => {
    // No vane, and a nock of their mass where both weigh together: the balance stays.
    const bald = { ...withVanes({ count: 0 }), nock: grains(30), places: { ...USUAL_ARROW.places, nock: inches((2.19 * 21 + 0.25 * 9) / 30) } };
    const [body, bare] = [usualBody(), bodyOf(must, bald)];
    expect(bare.slope).toBe(2);
    printed(body.slope - 2, 21.3, 1);
    printed(((body.lever - bare.lever) / (body.slope - 2) + body.toTip) / INCH, 26.1, 1);
    near((bare.lever / 2 + bare.toTip) / INCH, 0.35, 1e-9);
    near(bare.damping, 2 * (0.35 * INCH - bare.toTip) ** 2, 1e-12);
  });
  it('is cut into twelve equal pieces, each taken at its middle', () => {
    const { strips, strip, toTip, toNock } = usualBody();
    expect(strips).toHaveLength(12);
    near(strip, (28.5 * INCH) / 12, 1e-12);
    near((strips[0] ?? NaN) - strip / 2, -toTip, 1e-12);
    near((strips[11] ?? NaN) + strip / 2, toNock, 1e-12);
    near((strips[5] ?? NaN) - (strips[4] ?? NaN), strip, 1e-12);
  });
});

describe('heads and tails', () => {
  it('vanes taken off leave the shaft as it was, without their mass', () => {
    expect(unfletched(USUAL_ARROW)).not.toHaveProperty('vanes');
    near((usualBody().mass - bodyOf(must, unfletched(USUAL_ARROW)).mass) / GRAIN, 21, 1e-9);
    expect(unfletched(unfletched(USUAL_ARROW))).toEqual(unfletched(USUAL_ARROW));
  });
  it('what a head lifts counts at its place: 3 by radian at 0.5 in (a guess)', () => {
    const [folded, plain] = [bodyOf(must, { ...USUAL_ARROW, head: MECHANICAL }), usualBody()];
    near(folded.slope - plain.slope, 3, 1e-12);
    near(folded.lever - plain.lever, 3 * (0.5 * INCH - plain.toTip), 1e-12);
  });
  it('an arrow by another program: 395.25 gr, 1.73171e-3 kg m2 about its balance point, 32.37 by radian (derived)', () => {
    const body = bodyOf(must, PLAIN);
    near(body.mass / GRAIN, 395.25, 1e-9);
    near(body.inertia, 1.73171e-3, 1e-5);
    near(Math.sqrt(body.inertia / body.mass), 0.26003, 1e-4);
    printed(body.slope, 32.37, 2);
  });
});

describe('refuses by the name that it is handed', () => {
  const refusal = (change: object): string => said(() => bodyOf(must, { ...USUAL_ARROW, ...change }));
  const vane = (change: object): object => ({ vanes: { ...withVanes({}).vanes, ...change } });
  const head = (change: object): object => ({ head: { ...FIELD_POINT, ...change } });
  it.each<[object, string]>([
    [{ diameter: 0 }, "the shaft's diameter is 0; a number above 0 is needed"],
    [{ drag: -1 }, "the shaft's drag is -1; a finite number, 0 or more, is needed"],
    [{ drag: 1e31 }, "the shaft's drag is 1e+31; a number up to 1e+30 is needed"],
    [{ length: NaN }, "the arrow's length is NaN; a number above 0 is needed"],
    [vane({ ahead: NaN }), 'the place of the vanes is NaN; a finite number is needed'],
    [vane({ drag: -1 }), "the vanes' drag is -1; a finite number, 0 or more, is needed"],
    [vane({ drag: 1e31 }), "the vanes' drag is 1e+31; a number up to 1e+30 is needed"],
    [vane({ each: NaN }), 'the mass of a vane is NaN; a finite number, 0 or more, is needed'],
    [vane({ height: 0 }), 'the height of a fin is 0; a number above 0 is needed'],
    [head({ nose: NaN }), "the place of the head's nose is NaN; a finite number is needed"],
    [head({ drag: NaN }), "the head's drag is NaN; a finite number, 0 or more, is needed"],
    [head({ lift: { slope: -1, behind: 0 } }), "the head's lift is -1; a finite number, 0 or more, is needed"],
    [head({ lift: { slope: 1, behind: NaN } }), "the place of the head's lift is NaN; a finite number is needed"],
    [head({ blades: { ...FIXED_BLADES.blades, behind: NaN } }), 'the place of the fins is NaN; a finite number is needed'],
    [head({ lift: { slope: 1e20, behind: 1e20 } }), 'what pushes the arrow across is 2.54e+38; a number up to 1e+30 is needed'],
  ])('%j', (change, reason) => expect(refusal(change)).toBe(`oracle: ${reason}`));
});
