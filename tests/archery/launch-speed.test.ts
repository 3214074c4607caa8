import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kineticEnergy } from '../../src/archery/arrow-energy.ts';
import {
  CHRONOGRAPH_ERROR, speedFor, speedFromRating, speedRange, throwFrom, VIRTUAL_MASS, type AsShot, type Rating, type Reading, type Throw,
} from '../../src/archery/launch-speed.ts';
import { footPounds, fps, grains, inches, pounds } from '../../src/maths/units.ts';
import { said } from './said.ts';

const reading = (mass: number, speed: number): Reading => ({ mass: grains(mass), speed: fps(speed) });
const bow = (energy: number, own: number): Throw => ({ energy: footPounds(energy), virtualMass: grains(own) });
const shot = (by: Throw, mass: number, off = 1): Reading => reading(mass, speedFor(by, grains(mass)) * off);

const believable = fc.record({ energy: fc.double({ min: 20, max: 150, noNaN: true }), own: fc.double({ min: VIRTUAL_MASS.low, max: VIRTUAL_MASS.high, noNaN: true }) })
  .map(({ energy, own }) => bow(energy, own));
const masses = fc.double({ min: 200, max: 900, noNaN: true });
const off = fc.double({ min: 1 - CHRONOGRAPH_ERROR, max: 1 + CHRONOGRAPH_ERROR, noNaN: true });

describe('speed of an arrow from a known bow', () => {
  it('arrow and virtual mass carry the energy of the bow together (by the arrow\'s own energy)', () => {
    fc.assert(fc.property(believable, masses, (by, mass) => {
      const speed = speedFor(by, grains(mass));
      expect(kineticEnergy(grains(mass + by.virtualMass), speed).footPounds).toBeCloseTo(by.energy, 9);
    }));
  });
  it('a heavier arrow is slower and carries more; one part in 100 of the moving mass is half a part of the speed', () => {
    fc.assert(fc.property(believable, masses, fc.double({ min: 1, max: 100, noNaN: true }), (by, mass, more) => {
      const [light, heavy] = [speedFor(by, grains(mass)), speedFor(by, grains(mass + more))];
      expect(heavy).toBeLessThan(light);
      expect(kineticEnergy(grains(mass + more), heavy).joules).toBeGreaterThan(kineticEnergy(grains(mass), light).joules);
      const little = 1e-4 * (mass + by.virtualMass);
      expect((speedFor(by, grains(mass + little)) / light - 1) / 1e-4).toBeCloseTo(-0.5, 3);
    }));
  });
  it('with no virtual mass the arrow gets it all', () => {
    expect(kineticEnergy(grains(400), speedFor(bow(70, 0), grains(400))).footPounds).toBeCloseTo(70, 10);
  });
});

describe('the bow behind two readings', () => {
  it('is found again from readings without error, whichever comes first', () => {
    fc.assert(fc.property(believable, masses, fc.double({ min: 1.3, max: 2, noNaN: true }), (by, mass, ratio) => {
      const pair = [shot(by, mass), shot(by, mass * ratio)] as const;
      const found = throwFrom(...pair, 0);
      if (typeof found === 'string') {
        // Only at the very edge of what is believable, by rounding.
        expect(found).toBe('not believable');
        expect(Math.min(by.virtualMass / VIRTUAL_MASS.low - 1, 1 - by.virtualMass / VIRTUAL_MASS.high)).toBeLessThan(1e-9);
        return;
      }
      expect(found.virtualMass / by.virtualMass).toBeCloseTo(1, 7);
      expect(found.energy / by.energy).toBeCloseTo(1, 7);
      expect(throwFrom(pair[1], pair[0], 0)).toEqual(found);
      // Readings without error leave no room.
      expect(found.low / found.virtualMass).toBeCloseTo(1, 5);
      expect(found.high / found.virtualMass).toBeCloseTo(1, 5);
    }));
  });
  it('1 in 100 on each of 350 and 450 gr leaves it from 30 to 193 gr (derived: a search over all virtual masses)', () => {
    const found = throwFrom(reading(350, 300), reading(450, 270.22));
    expect(found).toEqual({ virtualMass: expect.closeTo(80, 1), energy: expect.closeTo(85.9, 1), low: expect.closeTo(30, 6), high: expect.closeTo(192.8, 1) });
  });
  it('holds the true one between least and most, however the chronograph errs', () => {
    fc.assert(fc.property(believable, masses, fc.double({ min: 1.2, max: 2, noNaN: true }), off, off, (by, mass, ratio, first, second) => {
      const found = throwFrom(shot(by, mass, 1 / first), shot(by, mass * ratio, 1 / second));
      if (typeof found === 'string') return;
      expect(found.low).toBeLessThanOrEqual(by.virtualMass * (1 + 1e-6));
      expect(found.high).toBeGreaterThanOrEqual(by.virtualMass * (1 - 1e-6));
      expect(found.low).toBeLessThanOrEqual(found.virtualMass);
      expect(found.high).toBeGreaterThanOrEqual(found.virtualMass);
    }));
  });
  it('says why it cannot be told', () => {
    const by = bow(85, 80);
    // 350 and 385 gr: any believable virtual mass fits, though the two speeds alone give one.
    expect(throwFrom(shot(by, 350), shot(by, 385))).toBe('masses too close');
    expect(throwFrom(shot(by, 350), shot(by, 385), 0.001)).toEqual({ virtualMass: expect.closeTo(80, 6), energy: expect.closeTo(85, 6), low: expect.any(Number), high: expect.any(Number) });
    expect(throwFrom(reading(350, 300), reading(351, 301))).toBe('masses too close');
    expect(throwFrom(reading(350, 300), reading(350, 300))).toBe('masses too close');
    expect(throwFrom(reading(350, 300), reading(350, 250))).toBe('masses too close');
    expect(throwFrom(reading(350, 300), reading(500, 300))).toBe('heavier not slower');
    expect(throwFrom(reading(350, 300), reading(500, 310))).toBe('heavier not slower');
    expect(throwFrom(reading(500, 310), reading(350, 300))).toBe('heavier not slower');
    // 350 to 500 gr with K = 10 and K = 400: v2 = v1 sqrt((m1 + K) / (m2 + K)).
    expect(throwFrom(reading(350, 300), reading(500, 300 * Math.sqrt(360 / 510)))).toBe('not believable');
    expect(throwFrom(reading(350, 300), reading(500, 300 * Math.sqrt(750 / 900)))).toBe('not believable');
  });
  it('is believable from 30 to 250 gr (from memory, and published)', () => {
    expect(VIRTUAL_MASS).toEqual({ low: 30, high: 250 });
    const from = (own: number): unknown => throwFrom(reading(350, 300), reading(700, 300 * Math.sqrt((350 + own) / (700 + own))), 1e-6);
    expect(from(29.99)).toBe('not believable');
    expect(from(250.01)).toBe('not believable');
    // By hand, exactly at both ends: (370 100^2 - 70 200^2) / (200^2 - 100^2) is 30, and with 1350 and 150 gr it is 250.
    expect(throwFrom(reading(70, 200), reading(370, 100))).toMatchObject({ virtualMass: 30 });
    expect(throwFrom(reading(150, 200), reading(1350, 100))).toMatchObject({ virtualMass: 250 });
    for (const own of [30.01, 249.99]) expect(from(own)).toMatchObject({ virtualMass: expect.closeTo(own, 6) });
  });
  it('masses are too close only where both ends fit, not one', () => {
    // With K = 60 the least believable fits as well, the most does not; with K = 200 the other way round. The other ends by hand: the ratio of
    // the speeds' squares is off by (1.01 / 0.99)^2.
    const ends = (own: number): readonly number[] => {
      const found = throwFrom(shot(bow(85, own), 350), shot(bow(85, own), 450));
      return typeof found === 'string' ? [] : [found.low, found.high];
    };
    expect(ends(60)).toEqual([expect.closeTo(30, 6), expect.closeTo(162.487, 3)]);
    expect(ends(200)).toEqual([expect.closeTo(84.687, 3), expect.closeTo(250, 6)]);
  });
});

describe('range of speeds from readings', () => {
  // Every virtual mass in turn, a hundredth of a grain apart: an independent way to the same ends.
  const searched = (readings: readonly Reading[], mass: number, error: number): { low: number; high: number } | null => {
    let [low, high] = [Infinity, 0];
    for (let own = 30; own <= 250; own += 0.05) {
      const least = Math.max(...readings.map((r) => (r.mass + own) * (r.speed * (1 - error)) ** 2));
      const most = Math.min(...readings.map((r) => (r.mass + own) * (r.speed * (1 + error)) ** 2));
      if (least > most) continue;
      [low, high] = [Math.min(low, Math.sqrt(least / (mass + own))), Math.max(high, Math.sqrt(most / (mass + own)))];
    }
    return high === 0 ? null : { low, high };
  };
  it.each<[readonly Reading[], number]>([
    [[reading(350, 300)], 350], [[reading(350, 300)], 450], [[reading(350, 300)], 300], [[reading(350, 300), reading(450, 270.22)], 400],
    [[reading(350, 300), reading(450, 270.22)], 550], [[reading(350, 300), reading(550, 247.85)], 450], [[reading(420, 280), reading(350, 303), reading(500, 259)], 610],
  ])('%j to %d gr: the ends that a search over all virtual masses finds', (readings, mass) => {
    const [found, right] = [speedRange(readings, grains(mass)), searched(readings, mass, 0.01)];
    expect(found?.low).toBeCloseTo(right!.low, 2);
    expect(found?.high).toBeCloseTo(right!.high, 2);
  });
  it('one reading: at its own mass the chronograph\'s error, and no more', () => {
    expect(speedRange([reading(400, 280)], grains(400))).toEqual({ low: expect.closeTo(277.2, 9), high: expect.closeTo(282.8, 9) });
    expect(speedRange([reading(400, 280)], grains(400), 0)).toEqual({ low: expect.closeTo(280, 5), high: expect.closeTo(280, 5) });
    expect(speedRange([reading(400, 280)], grains(400), 0.05)).toEqual({ low: expect.closeTo(266, 9), high: expect.closeTo(294, 9) });
  });
  it('holds the true speed, however the chronograph errs, and is narrower the more was shot', () => {
    fc.assert(fc.property(believable, masses, fc.array(fc.tuple(masses, off), { minLength: 1, maxLength: 4 }), (by, mass, shots) => {
      const readings = shots.map(([m, error]) => shot(by, m, 1 / error));
      const truth = speedFor(by, grains(mass));
      const range = speedRange(readings, grains(mass));
      expect(range?.low).toBeLessThanOrEqual(truth * (1 + 1e-6));
      expect(range?.high).toBeGreaterThanOrEqual(truth * (1 - 1e-6));
      const fewer = speedRange(readings.slice(0, 1), grains(mass));
      expect(range?.low).toBeGreaterThanOrEqual(fewer!.low * (1 - 1e-6));
      expect(range?.high).toBeLessThanOrEqual(fewer!.high * (1 + 1e-6));
    }));
  });
  it('depends neither on the order of the readings nor on the unit of mass and speed', () => {
    fc.assert(fc.property(believable, masses, masses, masses, (by, first, second, mass) => {
      const readings = [shot(by, first), shot(by, second)];
      const range = speedRange(readings, grains(mass))!;
      const turned = speedRange(readings.toReversed(), grains(mass))!;
      expect(turned.low / range.low).toBeCloseTo(1, 6);
      expect(turned.high / range.high).toBeCloseTo(1, 6);
      const metric = speedRange(readings.map((r) => reading(r.mass, r.speed * 0.3048)), grains(mass))!;
      expect(metric.low / 0.3048 / range.low).toBeCloseTo(1, 6);
      expect(metric.high / 0.3048 / range.high).toBeCloseTo(1, 6);
    }));
  });
  it('is null where no believable bow gives all readings', () => {
    expect(speedRange([reading(350, 300), reading(500, 305)], grains(400))).toBeNull();
    expect(speedRange([reading(350, 300), reading(350, 280)], grains(400))).toBeNull();
    expect(speedRange([reading(350, 300), reading(350, 299)], grains(400))).not.toBeNull();
    // A heavier arrow that is slower than a bow without any mass of its own would make it.
    expect(speedRange([reading(350, 300), reading(700, 200)], grains(400))).toBeNull();
  });
});

describe('range of speeds from the papers of a bow', () => {
  const rating: Rating = { speed: fps(330), peak: pounds(70), draw: inches(30) };
  const asRated: AsShot = { peak: pounds(70), draw: inches(30), brace: inches(6.5), mass: grains(350) };
  it('shot as it was rated: what the papers say at the most, 8 in 100 less at the least (from memory)', () => {
    const { low, high } = speedFromRating(rating, asRated);
    expect(high).toBeCloseTo(330, 9);
    expect(low).toBeCloseTo(330 * 0.92, 9);
  });
  it('a lighter peak with an arrow of 5 gr a pound is nearly as fast (by hand: K 30 and 250 gr)', () => {
    const { low, high } = speedFromRating(rating, { ...asRated, peak: pounds(50), mass: grains(250) });
    expect(high).toBeCloseTo(330 * Math.sqrt((50 / 70) * (380 / 280)), 9);
    expect(low).toBeCloseTo(330 * Math.sqrt((50 / 70) * (600 / 500)) * 0.92, 9);
  });
  it('an inch less of draw costs 8 to 12 fps (by hand; 10 from memory), an inch more gives as much', () => {
    const [less, more] = [29, 31].map((draw) => speedFromRating(rating, { ...asRated, draw: inches(draw) }));
    expect(less!.high).toBeCloseTo(330 * Math.sqrt(20.75 / 21.75), 9);
    expect(less!.low).toBeCloseTo(330 * (20.75 / 21.75) ** 0.75 * 0.92, 9);
    expect(more!.high).toBeCloseTo(330 * (22.75 / 21.75) ** 0.75, 9);
    expect(more!.low).toBeCloseTo(330 * Math.sqrt(22.75 / 21.75) * 0.92, 9);
    expect(330 - less!.high).toBeGreaterThan(7);
    expect(330 - less!.low / 0.92).toBeLessThan(12);
  });
  it('a bow rated at another draw counts from there', () => {
    const { high } = speedFromRating({ ...rating, draw: inches(28) }, { ...asRated, draw: inches(28) });
    expect(high).toBeCloseTo(330, 9);
  });
  it('holds whatever two readings of the same bow say', () => {
    fc.assert(fc.property(believable, masses, (by, mass) => {
      const rated: Rating = { ...rating, speed: speedFor(by, grains(350)) };
      const { low, high } = speedFromRating(rated, { ...asRated, mass: grains(mass) });
      const truth = speedFor(by, grains(mass));
      expect(low).toBeLessThanOrEqual(truth * (1 + 1e-9));
      expect(high).toBeGreaterThanOrEqual(truth * (1 - 1e-9));
    }));
  });
  it('refuses what cannot be meant, by name', () => {
    const by = (change: Partial<AsShot>, papers: Partial<Rating> = {}): string => said(() => speedFromRating({ ...rating, ...papers }, { ...asRated, ...change }));
    for (const bad of [NaN, Infinity, 0, -1]) {
      const told = `is ${bad}; a number above 0 is needed`;
      expect(by({}, { speed: fps(bad) })).toBe(`speedFromRating: the rated speed ${told}`);
      expect(by({}, { peak: pounds(bad) })).toBe(`speedFromRating: the rated peak ${told}`);
      expect(by({}, { draw: inches(bad) })).toBe(`speedFromRating: the rated draw length ${told}`);
      expect(by({ peak: pounds(bad) })).toBe(`speedFromRating: the peak draw weight ${told}`);
      expect(by({ draw: inches(bad) })).toBe(`speedFromRating: the draw length ${told}`);
      expect(by({ brace: inches(bad) })).toBe(`speedFromRating: the brace height ${told}`);
      expect(by({ mass: grains(bad) })).toBe(`speedFromRating: the arrow's mass ${told}`);
    }
    expect(by({ draw: inches(8.25) })).toBe('speedFromRating: the draw length is 8.25 in, the brace height 6.5 in; the string has no way to go');
    expect(by({}, { draw: inches(8) })).toBe('speedFromRating: the rated draw length is 8 in, the brace height 6.5 in; the string has no way to go');
    expect(by({ draw: inches(8.5) })).toBe('no error');
  });
});

describe('refuse what cannot be meant, by name', () => {
  it('speedFor', () => {
    for (const bad of [NaN, Infinity, 0, -1]) {
      expect(said(() => speedFor(bow(bad, 80), grains(400)))).toBe(`speedFor: the bow's energy is ${bad}; a number above 0 is needed`);
      expect(said(() => speedFor(bow(80, 80), grains(bad)))).toBe(`speedFor: the arrow's mass is ${bad}; a number above 0 is needed`);
    }
    for (const bad of [NaN, Infinity, -1]) expect(said(() => speedFor(bow(80, bad), grains(400)))).toBe(`speedFor: the virtual mass is ${bad}; a finite number, 0 or more, is needed`);
  });
  it('throwFrom and speedRange', () => {
    const good = reading(350, 300);
    for (const [name, act] of [
      ['throwFrom', (r: Reading, error?: number) => throwFrom(good, r, error)], ['speedRange', (r: Reading, error?: number) => speedRange([good, r], grains(400), error)],
    ] as const) {
      for (const bad of [NaN, Infinity, 0, -1]) {
        expect(said(() => act(reading(bad, 300)))).toBe(`${name}: the mass of a reading is ${bad}; a number above 0 is needed`);
        expect(said(() => act(reading(350, bad)))).toBe(`${name}: the speed of a reading is ${bad}; a number above 0 is needed`);
      }
      for (const bad of [NaN, -0.01, 1, Infinity]) {
        expect(said(() => act(good, bad))).toBe(`${name}: the chronograph's error is ${bad}; a share from 0 to below 1 is needed`);
      }
    }
    for (const bad of [NaN, Infinity, 0, -1]) expect(said(() => speedRange([good], grains(bad)))).toBe(`speedRange: the arrow's mass is ${bad}; a number above 0 is needed`);
    expect(said(() => speedRange([], grains(400)))).toBe('speedRange: there is no reading; give at least one');
  });
});
