// A practice bow from its number alone: the same each time, whatever else is asked of it; and its mirror shoots the mirrored shot, exactly.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knobEntries } from '../../src/content/types.ts';
import { feet, yards } from '../../src/maths/units.ts';
import { AS_FOUND, moved, type Condition } from '../../src/practice/condition.ts';
import { HEADS } from '../../src/practice/flight.ts';
import { LESSONS } from '../../src/practice/lesson-names.ts';
import { lessonBow } from '../../src/practice/lessons.ts';
import { read, shoot, type Asked } from '../../src/practice/shoot.ts';
import { truth } from '../../src/practice/truth.ts';
import { bowByNumber, mirrored, mirroredSettings, type World } from '../../src/practice/world.ts';
import { KNOBS } from './play.ts';

const SEEDS = fc.integer({ min: 0, max: 2 ** 31 });
const anyWorld = fc.record({ seed: SEEDS, lesson: fc.constantFrom(null, ...LESSONS) })
  .map(({ seed, lesson }): World => (lesson === null ? bowByNumber(seed, KNOBS) : lessonBow(lesson, seed, KNOBS)));
const anyAsked = fc.record({
  arrow: fc.constantFrom(null, '1', '2', '5'), nockTurn: fc.integer({ min: 0, max: 2 }),
  flying: fc.constantFrom(...HEADS),
  at: fc.oneof(fc.double({ min: 5, max: 30, noNaN: true }).map((d) => ({ paper: feet(d) })), fc.constantFrom(20, 30, 40).map((d) => ({ target: yards(d) }))),
});
const MOVED = fc.double({ min: -0.2, max: 0.2, noNaN: true });
const anyCondition = fc.record({
  shots: fc.nat(120), rested: fc.nat(40), contactCured: fc.boolean(), handRelaxed: fc.boolean(), tightened: fc.boolean(),
  newNocks: fc.constantFrom<readonly string[]>([], ['2']),
  settings: fc.record({ 'rest-height': MOVED, 'rest-side': MOVED, 'yoke': fc.integer({ min: -4, max: 4 }) }),
}).map((some): Condition => ({ ...AS_FOUND, ...some }));

const toOtherSide = <T extends { readonly x: number; readonly y: number }>(point: T): T => ({ ...point, x: 0 - point.x });
const withoutSign = (value: number): number => value + 0;

describe('a practice bow', () => {
  it('is the same from the same number, and another from another', () => {
    for (const lesson of LESSONS) expect(lessonBow(lesson, 7, KNOBS)).toEqual(lessonBow(lesson, 7, KNOBS));
    expect(bowByNumber(7, KNOBS)).toEqual(bowByNumber(7, KNOBS));
    expect(bowByNumber(7, KNOBS).bow).not.toEqual(bowByNumber(8, KNOBS).bow);
    expect(() => bowByNumber(1.5, KNOBS)).toThrow(RangeError);
    expect(() => lessonBow('one bad arrow', -1, KNOBS)).toThrow(RangeError);
  });

  it('says of itself that it is for practice', () => {
    expect([bowByNumber(3, KNOBS).practice, truth(bowByNumber(3, KNOBS)).practice, lessonBow('one bad arrow', 3, KNOBS).lesson]).toEqual([true, true, 'one bad arrow']);
  });

  it('shoots the same shot under the same number and condition, whatever was shot before', () => {
    fc.assert(fc.property(anyWorld, anyCondition, anyAsked, (world, condition, asked) => {
      const first = shoot(world, condition, asked);
      shoot(world, { ...condition, shots: condition.shots + 1 }, asked);
      expect(shoot(world, condition, asked)).toEqual(first);
    }), { numRuns: 40 });
  });

  it('has the same luck whatever trouble is taken away', () => {
    const world = bowByNumber(11, KNOBS);
    const asked: Asked = { arrow: '1', nockTurn: 0, flying: 'field', at: { paper: feet(7) } };
    const noisy = shoot({ ...world, bow: { ...world.bow, contact: { often: 1, push: { x: 0.1, y: 0 } } } }, AS_FOUND, asked);
    const calm = shoot({ ...world, bow: { ...world.bow, contact: null } }, AS_FOUND, asked);
    expect(noisy.departure.side.rate - calm.departure.side.rate).toBeCloseTo(0.735, 9);
    expect(noisy.departure.height).toEqual(calm.departure.height);
  });
});

describe('its mirror', () => {
  it('shoots and reads the mirrored shot, to the last bit', () => {
    fc.assert(fc.property(anyWorld, anyCondition, anyAsked, (world, condition, asked) => {
      const there = { ...condition, settings: mirroredSettings(condition.settings) };
      // In the mirror a nock turns the other way.
      const { vanes } = world.set;
      const turned = { ...asked, nockTurn: (vanes - asked.nockTurn) % vanes };
      const [here, other] = [shoot(world, condition, asked), shoot(mirrored(world), there, turned)];
      expect(toOtherSide(other.hole)).toEqual(toOtherSide(toOtherSide(here.hole)));
      expect([other.called, other.contact, other.flier]).toEqual([here.called, here.contact, here.flier]);
      const [told, toldThere] = [read(world, condition, here, asked.at), read(mirrored(world), there, other, asked.at)];
      expect('missed' in toldThere ? toldThere : toOtherSide(toldThere)).toEqual('missed' in told ? told : toOtherSide(toOtherSide(told)));
    }), { numRuns: 80 });
  });

  it('is moved to the mirrored setting', () => {
    fc.assert(fc.property(anyWorld, fc.constantFrom('rest-side', 'rest-height', 'yoke'), fc.double({ min: -0.1, max: 0.1, noNaN: true }), (world, knob, change) => {
      const here = moved(world, AS_FOUND, knob, change).settings;
      const there = moved(mirrored(world), AS_FOUND, knob, knob === 'rest-height' ? change : 0 - change).settings;
      for (const [id, value] of knobEntries(mirroredSettings(here))) expect(withoutSign(there[id] ?? NaN)).toBe(withoutSign(value));
    }), { numRuns: 40 });
  });

  it('of a mirror is the bow itself', () => {
    const flat = (world: World): string => JSON.stringify(world);
    for (const seed of [1, 2, 3, 4, 5]) expect(flat(mirrored(mirrored(bowByNumber(seed, KNOBS))))).toBe(flat(bowByNumber(seed, KNOBS)));
  });
});
