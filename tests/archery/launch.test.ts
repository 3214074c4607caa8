import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { broadheadsApart, launchFrom, PAPER_REACH, tearFrom, USUAL_LEAVING, type Leaving, type PaperTear } from '../../src/archery/launch.ts';
import { degrees, feet, fps, inches, radiansPerSecond } from '../../src/maths/units.ts';
import { fly } from './rigid-arrow.ts';
import { said } from './said.ts';

/** Distances in the model count from the point as the arrow leaves the string, 1.8 ft ahead of the bow hand. */
const hand = (model: number): number => model + 1.8;
const leaving = (angle: number, rate: number): Leaving => ({ angle: degrees(angle), rate: radiansPerSecond(rate) });
const tear = (distance: number, is: number, error = 0.1): PaperTear => ({ distance: feet(distance), tear: inches(is), error: inches(error) });
const tears = (of: Leaving, distances: readonly number[], axis: 'side' | 'height' = 'side', error = 0.1, speed = 280): readonly PaperTear[] =>
  distances.map((d) => tear(d, tearFrom(of, feet(d), axis, fps(speed)), error));
const NOTHING_USUAL = leaving(Infinity, Infinity);
/** No further from it than so much. */
const within = (found: number, right: number, error: number): void => expect(Math.abs(found - right), `${found} for ${right}`).toBeLessThanOrEqual(error);
const flip = (n: number): number => (n === 0 ? 0 : -n);

const angles = fc.double({ min: -4, max: 4, noNaN: true });
const rates = fc.double({ min: -4, max: 4, noNaN: true });
const distances = fc.double({ min: PAPER_REACH.nearest, max: PAPER_REACH.farthest, noNaN: true });

// Every distance of the table, and others between: the arrow is flown anew by a model written from its assumptions (rigid-arrow.ts).
describe('the tear of one launch', () => {
  const ROWS = [3, 5, 6, 7, 8, 10, 15, 18, 24, 30];
  const BETWEEN = [3.7, 4.5, 5.5, 6.3, 7.5, 9.1, 11, 12.5, 13.7, 16.2, 17, 20, 22, 26, 28.5];
  it.each([...ROWS, ...BETWEEN])('at %f ft from the point it is the one of the flight model, to 0.002 in', (d) => {
    within(tearFrom(leaving(1, 0), feet(hand(d)), 'side'), fly({ angle: 1 }, d).tear, 0.002);
    within(tearFrom(leaving(0, 1), feet(hand(d)), 'side'), fly({ rate: 1 }, d).tear, 0.002);
    within(tearFrom(leaving(0, 0), feet(hand(d)), 'height'), fly({ gravity: true }, d).tear, 0.001);
  });
  it('gravity alone reads 0.085 in low at 7 ft from the point and 0.126 at 15, and nothing to the side (derived)', () => {
    expect(tearFrom(leaving(0, 0), feet(hand(7)), 'height')).toBeCloseTo(-0.085, 12);
    expect(tearFrom(leaving(0, 0), feet(hand(15)), 'height')).toBeCloseTo(-0.126, 12);
    expect(tearFrom(leaving(0, 0), feet(hand(7)), 'side')).toBeCloseTo(0, 12);
  });
  it.each([220, 250, 320, 350])('at %d fps a rate tears as 280 to the speed, gravity as its square, an angle as ever', (speed) => {
    for (const d of [5, 7, 13]) {
      within(tearFrom(leaving(1, 0), feet(hand(d)), 'side', fps(speed)), fly({ angle: 1, fps: speed }, d).tear, 0.002);
      // To 1 in 100: across the shaft drag goes with the square.
      within(tearFrom(leaving(0, 1), feet(hand(d)), 'side', fps(speed)) / fly({ rate: 1, fps: speed }, d).tear, 1, 0.01);
      within(tearFrom(leaving(0, 0), feet(hand(d)), 'height', fps(speed)), fly({ gravity: true, fps: speed }, d).tear, 0.001);
    }
  });
  it('signs: a nose to the right tears to the left, a nose up tears low, near the bow', () => {
    for (const d of [5, 7, 9, 12]) {
      expect(tearFrom(leaving(1, 0), feet(d), 'side')).toBeLessThan(0);
      expect(tearFrom(leaving(0, 1), feet(d), 'height')).toBeLessThan(tearFrom(leaving(0, 0), feet(d), 'height'));
    }
  });
  it('adds up, and does not jump from row to row', () => {
    fc.assert(fc.property(angles, rates, distances, (angle, rate, d) => {
      const one = tearFrom(leaving(angle, 0), feet(d), 'side') + tearFrom(leaving(0, rate), feet(d), 'height');
      expect(tearFrom(leaving(angle, rate), feet(d), 'height')).toBeCloseTo(one, 9);
    }));
    for (const row of ROWS.slice(1, -1)) {
      const [before, after] = [hand(row) - 1e-7, hand(row) + 1e-7].map((d) => tearFrom(leaving(1, 1), feet(d), 'height'));
      expect(after).toBeCloseTo(before!, 5);
    }
  });
  it('reaches from 4.8 to 31.8 ft from the bow hand, both ends included', () => {
    expect(PAPER_REACH).toEqual({ nearest: 4.8, farthest: 31.8 });
    expect(tearFrom(leaving(1, 0), PAPER_REACH.nearest, 'side')).toBeCloseTo(-0.447, 6);
    expect(tearFrom(leaving(1, 0), PAPER_REACH.farthest, 'side')).toBeCloseTo(0.36, 6);
  });
});

describe('angle and rate from tears', () => {
  it('exact tears at two distances give them back, where nothing is held to be usual', () => {
    fc.assert(fc.property(angles, rates, fc.constantFrom('side', 'height'), fc.double({ min: 200, max: 350, noNaN: true }), (angle, rate, axis, speed) => {
      const found = launchFrom(tears(leaving(angle, rate), [hand(7), hand(15)], axis, 0.1, speed), axis, fps(speed), NOTHING_USUAL);
      expect(found.angle).toBeCloseTo(angle, 8);
      expect(found.rate).toBeCloseTo(rate, 8);
    }));
  });
  it('and so do the tears that the flight model leaves, at 7 and 15 ft from the bow hand', () => {
    const flown = [7, 15].map((d) => tear(d, fly({ angle: 0.6, rate: -0.8 }, d - 1.8).tear));
    const found = launchFrom(flown, 'side', fps(280), NOTHING_USUAL);
    within(found.angle, 0.6, 0.05);
    within(found.rate, -0.8, 0.02);
    // Upwards gravity is taken off first.
    const fallen = [7, 15].map((d) => tear(d, fly({ angle: 0.6, rate: -0.8, gravity: true }, d - 1.8).tear));
    const up = launchFrom(fallen, 'height', fps(280), NOTHING_USUAL);
    within(up.angle, 0.6, 0.05);
    within(up.rate, -0.8, 0.02);
  });
  it('7 and 15 ft from the point, tears alone: 4.1 degrees and 1.2 rad/s an inch of error, by an independent program', () => {
    // An inch in all, with what a bending shaft adds.
    const error = Math.sqrt(1 - (1 / 16) ** 2);
    const { errors } = launchFrom([tear(hand(7), 0.4, error), tear(hand(15), 0.1, error)], 'side', fps(280), NOTHING_USUAL);
    within(errors.angle, 4.11, 0.01);
    within(errors.rate, 1.2, 0.005);
  });
  it('a bending shaft adds 1/16 in to every error, and no less however many shots there are', () => {
    const sure = launchFrom([tear(7, 0.4, 1e-9), tear(15, 0.1, 1e-9)], 'side', fps(280), NOTHING_USUAL);
    const rough = launchFrom([tear(7, 0.4, Math.sqrt(3) / 16), tear(15, 0.1, Math.sqrt(3) / 16)], 'side', fps(280), NOTHING_USUAL);
    expect(rough.errors.angle / sure.errors.angle).toBeCloseTo(2, 9);
    expect(rough.errors.rate / sure.errors.rate).toBeCloseTo(2, 9);
  });
  it('the errors and their correlation are those of the least squares (by simulation, seedless: each tear moved by its error)', () => {
    // The estimate is linear in the tears, so its covariance follows from moving one tear at a time.
    const base = [tear(7, 0.3, 0.2), tear(11, 0.1, 0.1), tear(16, -0.2, 0.3)];
    const at = launchFrom(base, 'side', fps(300), NOTHING_USUAL);
    const moved = base.map((one, i) => {
      const by = Math.hypot(one.error, 1 / 16);
      const other = launchFrom(base.map((same, j) => (i === j ? tear(same.distance, same.tear + by, same.error) : same)), 'side', fps(300), NOTHING_USUAL);
      return { angle: other.angle - at.angle, rate: other.rate - at.rate };
    });
    const total = (of: (m: { angle: number; rate: number }) => number): number => moved.reduce((all, m) => all + of(m), 0);
    expect(Math.sqrt(total((m) => m.angle ** 2))).toBeCloseTo(at.errors.angle, 9);
    expect(Math.sqrt(total((m) => m.rate ** 2))).toBeCloseTo(at.errors.rate, 9);
    expect(total((m) => m.angle * m.rate) / (at.errors.angle * at.errors.rate)).toBeCloseTo(at.correlation, 9);
  });
  it('what is usual counts like a reading of 0: by hand, on one unknown at a time', () => {
    // A rate that cannot be: then the tear is the angle's alone. Weight of the tear 1 / 0.5^2, basis -0.347.
    const error = Math.sqrt(0.25 - (1 / 16) ** 2);
    const angle = launchFrom([tear(hand(7), 0.5, error)], 'side', fps(280), leaving(2, 1e-12));
    expect(angle.angle).toBeCloseTo((4 * -0.347 * 0.5) / (4 * 0.347 ** 2 + 1 / 4), 6);
    expect(angle.errors.angle).toBeCloseTo(1 / Math.sqrt(4 * 0.347 ** 2 + 1 / 4), 6);
    const rate = launchFrom([tear(hand(7), 0.5, error)], 'side', fps(280), leaving(1e-12, 2));
    expect(rate.rate).toBeCloseTo((4 * -0.721 * 0.5) / (4 * 0.721 ** 2 + 1 / 4), 6);
    expect(rate.errors.rate).toBeCloseTo(1 / Math.sqrt(4 * 0.721 ** 2 + 1 / 4), 6);
  });
  it('usual is a tear of an inch at 7 ft from the point, in the proportion of 0.25 degrees to 0.22 rad/s (derived)', () => {
    const share = 1 / Math.hypot(0.347 * 0.25, 0.721 * 0.22);
    expect(USUAL_LEAVING.angle).toBeCloseTo(0.25 * share, 1);
    expect(USUAL_LEAVING.rate).toBeCloseTo(0.22 * share, 1);
  });
  it('near distances do not blow up: what the tears do not tell stays usual', () => {
    for (const error of [0.03, 0.1]) {
      const [near, wide] = [[7, 9], [7, 15]].map((at) => launchFrom(at.map((d) => tear(d, 1, error)), 'side'));
      expect(near!.errors.angle).toBeLessThanOrEqual(USUAL_LEAVING.angle);
      expect(near!.errors.rate).toBeLessThanOrEqual(USUAL_LEAVING.rate);
      expect(Math.abs(near!.angle)).toBeLessThan(3 * USUAL_LEAVING.angle);
      expect(near!.errors.angle).toBeGreaterThan(1.5 * wide!.errors.angle);
      expect(near!.errors.rate).toBeGreaterThan(1.5 * wide!.errors.rate);
    }
  });
  it('three shots of 0.2 in: at 7 and 9 ft from the hand the angle is badly known, at 7 and 15 roughly, the rate roughly and well', () => {
    const known = (...at: readonly number[]): object => launchFrom(at.map((d) => tear(d, 0.5, 0.2 / Math.sqrt(3))), 'side').known;
    expect(known(7)).toEqual({ angle: 'badly', rate: 'badly' });
    expect(known(7, 9)).toEqual({ angle: 'badly', rate: 'roughly' });
    expect(known(7, 15)).toEqual({ angle: 'roughly', rate: 'well' });
  });
  it('well is up to a quarter of the usual error, roughly up to a half, however little is held to be usual', () => {
    const by = (name: 'angle' | 'rate', share: number): string => {
      // The error of one is handed in as what is usual, and one tear with an error of a mile says nothing.
      const usual = { ...leaving(1e-6, 1e-6), [name]: USUAL_LEAVING[name] * share };
      return launchFrom([tear(7, 0, 60_000)], 'side', fps(280), usual).known[name];
    };
    for (const name of ['angle', 'rate'] as const) {
      expect([0.2499, 0.2501, 0.4999, 0.5001, 2].map((share) => by(name, share))).toEqual(['well', 'roughly', 'roughly', 'badly', 'badly']);
    }
  });
  it('more papers never leave more open, and mirrored tears are a mirrored launch', () => {
    const list = fc.array(fc.tuple(distances, fc.double({ min: -2, max: 2, noNaN: true }), fc.double({ min: 0.02, max: 0.5, noNaN: true })), { minLength: 1, maxLength: 4 });
    fc.assert(fc.property(list, (papers) => {
      const all = papers.map(([d, is, error]) => tear(d, is, error));
      const found = launchFrom(all, 'side');
      const mirrored = launchFrom(all.map((t) => tear(t.distance, -t.tear, t.error)), 'side');
      expect([flip(mirrored.angle), flip(mirrored.rate)]).toEqual([flip(-found.angle), flip(-found.rate)]);
      expect(mirrored.errors).toEqual(found.errors);
      const turned = launchFrom(all.toReversed(), 'side');
      expect([turned.angle, turned.rate]).toEqual([found.angle, found.rate]);
      if (all.length > 1) {
        const fewer = launchFrom(all.slice(1), 'side');
        expect(found.errors.angle).toBeLessThanOrEqual(fewer.errors.angle * (1 + 1e-9));
        expect(found.errors.rate).toBeLessThanOrEqual(fewer.errors.rate * (1 + 1e-9));
      }
    }));
  });
});

describe('what is left for broadheads', () => {
  const none = { errors: leaving(0, 0), correlation: 0 };
  it('at 20 yd it is the difference of the impacts that the flight model gives', () => {
    for (const [launch, flown] of [[leaving(1, 0), { angle: 1 }], [leaving(0, 1), { rate: 1 }]] as const) {
      const model = fly({ ...flown, broadhead: true }, 60).point - fly(flown, 60).point;
      within(broadheadsApart({ ...launch, ...none }).apart, model, 0.015);
    }
    expect(broadheadsApart({ ...leaving(1, 0), ...none }).apart).toBeCloseTo(0.79 - 0.18, 12);
    expect(broadheadsApart({ ...leaving(0, 1), ...none }).apart).toBeCloseTo(4.75 - 1.7, 12);
    expect(broadheadsApart({ ...leaving(0, 1), ...none }, fps(350)).apart).toBeCloseTo((4.75 - 1.7) * 0.8, 12);
    expect(broadheadsApart({ ...leaving(1, 0), ...none }, fps(350)).apart).toBeCloseTo(0.61, 12);
  });
  it('signs: a nose to the right tears left and takes broadheads to the right; a tail high, broadheads low', () => {
    const left = launchFrom([tear(7, -0.5), tear(15, -0.5)], 'side');
    expect(left.rate).toBeGreaterThan(0);
    expect(broadheadsApart(left).apart).toBeGreaterThan(0);
    expect(broadheadsApart(launchFrom([tear(7, 0.5), tear(15, 0.5)], 'height')).apart).toBeLessThan(0);
  });
  it('its error is that of the sum, with the correlation (by hand)', () => {
    const at = (correlation: number): number => broadheadsApart({ ...leaving(0, 0), errors: leaving(1, 0.2), correlation }).error;
    // 0.61 by the angle and 0.61 by the rate: they double, cancel, or add as squares.
    expect([at(1), at(-1), at(0), at(0.5)]).toEqual([expect.closeTo(1.22, 12), expect.closeTo(0, 12), expect.closeTo(0.61 * Math.SQRT2, 12), expect.closeTo(0.61 * Math.sqrt(3), 12)]);
    expect(broadheadsApart({ ...leaving(0, 0), errors: leaving(1, 0.25), correlation: 0.5 }, fps(350)).error).toBeCloseTo(0.61 * Math.sqrt(3), 12);
  });
  it('in all it is half of what is foretold besides, for the model does not know this arrow (by hand)', () => {
    const { apart, error, errorInAll } = broadheadsApart({ ...leaving(0, 2), errors: leaving(0, 1), correlation: 0 });
    expect([apart, error]).toEqual([6.1, 3.05]);
    expect(errorInAll).toBeCloseTo(3.05 * Math.SQRT2, 12);
  });
  it('known from 7 and 15 ft far better than from 7 and 9', () => {
    const [near, wide] = [[7, 9], [7, 15]].map((at) => broadheadsApart(launchFrom(at.map((d) => tear(d, 0.2, 0.115)), 'side')));
    expect(near!.error).toBeGreaterThan(2 * wide!.error);
    expect(wide!.error).toBeLessThan(0.5);
  });
});

describe('refuse what cannot be meant, by name', () => {
  it('launchFrom', () => {
    const two = [tear(7, 0.5), tear(15, 0.5)];
    const by = (change: Partial<Record<keyof PaperTear, number>>, speed = 280, usual = USUAL_LEAVING): string =>
      said(() => launchFrom([tear(7, 0.5), tear(change.distance ?? 15, change.tear ?? 0.5, change.error ?? 0.1)], 'side', fps(speed), usual));
    expect(said(() => launchFrom([], 'side'))).toBe('launchFrom: there is no tear; give at least one');
    for (const bad of [NaN, Infinity, -Infinity]) expect(by({ tear: bad })).toBe(`launchFrom: a tear is ${bad}; a finite number is needed`);
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(by({ error: bad })).toBe(`launchFrom: the error of a tear is ${bad}; a number above 0 is needed`);
      expect(by({}, bad)).toBe(`launchFrom: the arrow's speed is ${bad}; a number above 0 is needed`);
    }
    for (const bad of [NaN, 0, -1]) {
      expect(by({}, 280, leaving(bad, 1))).toBe(`launchFrom: the usual angle is ${bad}; a number above 0 is needed`);
      expect(by({}, 280, leaving(1, bad))).toBe(`launchFrom: the usual rate is ${bad}; a number above 0 is needed`);
    }
    for (const bad of [NaN, 4.79, 31.81, Infinity, -7]) {
      expect(by({ distance: bad })).toBe(`launchFrom: the paper is ${bad} ft from the bow hand; the model reaches from 4.8 to 31.8 ft`);
    }
    const blind = 'launchFrom: tears at one distance tell angle and rate apart only with what is usual; give two distances';
    for (const one of [[tear(7, 0.5)], [tear(7, 0.5), tear(7, 0.4, 0.2), tear(7, 0.6, 0.3)]]) {
      expect(said(() => launchFrom(one, 'side', fps(280), NOTHING_USUAL))).toBe(blind);
      expect(said(() => launchFrom(one, 'side'))).toBe('no error');
    }
    expect(said(() => launchFrom(two, 'side', fps(280), NOTHING_USUAL))).toBe('no error');
    // Two distances tell them apart however little each tear says, in whatever unit, and one distance never does.
    for (const error of [1e-9, 1, 1e9]) {
      expect(said(() => launchFrom([tear(7, 0.5, error), tear(15, 0.5, error)], 'side', fps(280), NOTHING_USUAL))).toBe('no error');
      for (const at of [5, 6.1, 7, 8.3, 9, 12.7]) expect(said(() => launchFrom([tear(at, 0.5, error), tear(at, 0.4, error)], 'side', fps(280), NOTHING_USUAL))).toBe(blind);
    }
    // What is usual of one of the two is enough.
    expect(said(() => launchFrom([tear(7, 0.5)], 'side', fps(280), leaving(1, Infinity)))).toBe('no error');
    expect(said(() => launchFrom([tear(7, 0.5)], 'side', fps(280), leaving(Infinity, 1)))).toBe('no error');
  });
  it('tearFrom', () => {
    for (const bad of [NaN, Infinity]) {
      expect(said(() => tearFrom(leaving(bad, 0), feet(7), 'side'))).toBe(`tearFrom: the angle is ${bad}; a finite number is needed`);
      expect(said(() => tearFrom(leaving(0, bad), feet(7), 'side'))).toBe(`tearFrom: the rate is ${bad}; a finite number is needed`);
    }
    for (const bad of [NaN, 4.79, 31.81]) {
      expect(said(() => tearFrom(leaving(0, 0), feet(bad), 'side'))).toBe(`tearFrom: the paper is ${bad} ft from the bow hand; the model reaches from 4.8 to 31.8 ft`);
    }
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => tearFrom(leaving(0, 0), feet(7), 'side', fps(bad)))).toBe(`tearFrom: the arrow's speed is ${bad}; a number above 0 is needed`);
    }
  });
  it('broadheadsApart', () => {
    const good = { ...leaving(1, 1), errors: leaving(1, 1), correlation: 0 };
    for (const bad of [NaN, Infinity]) {
      expect(said(() => broadheadsApart({ ...good, angle: degrees(bad) }))).toBe(`broadheadsApart: the angle is ${bad}; a finite number is needed`);
      expect(said(() => broadheadsApart({ ...good, rate: radiansPerSecond(bad) }))).toBe(`broadheadsApart: the rate is ${bad}; a finite number is needed`);
    }
    for (const bad of [NaN, Infinity, -1]) {
      expect(said(() => broadheadsApart({ ...good, errors: leaving(bad, 1) }))).toBe(`broadheadsApart: the error of the angle is ${bad}; a finite number, 0 or more, is needed`);
      expect(said(() => broadheadsApart({ ...good, errors: leaving(1, bad) }))).toBe(`broadheadsApart: the error of the rate is ${bad}; a finite number, 0 or more, is needed`);
    }
    for (const bad of [NaN, -1.01, 1.01]) {
      expect(said(() => broadheadsApart({ ...good, correlation: bad }))).toBe(`broadheadsApart: the correlation is ${bad}; a number from -1 to 1 is needed`);
    }
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => broadheadsApart(good, fps(bad)))).toBe(`broadheadsApart: the arrow's speed is ${bad}; a number above 0 is needed`);
    }
  });
});
