import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatInches, formatQuantity, parseQuantity } from '../../src/maths/fractions.ts';
import { unitFromWord, unitWord } from '../../src/maths/unit-words.ts';
import { UNITS, type Unit } from '../../src/maths/units.ts';
import { anyText } from '../tools/any-text.ts';

describe('parseQuantity reads what archers write', () => {
  it.each<[string, Unit, number]>([
    ['1/32', 'in', 1 / 32], ['1 1/8 in', 'in', 1.125], ['1-1/8"', 'in', 1.125], ['1 - 1/8', 'in', 1.125], ['33 1/8', 'in', 33.125],
    ['.5', 'in', 0.5], ['0,5', 'in', 0.5], ['0,125', 'in', 0.125], ['5.', 'in', 5], ['3 mm', 'in', 3 / 25.4], ['3,5 mm', 'in', 3.5 / 25.4],
    ['-1/64', 'in', -1 / 64], ['- 1/64', 'in', -1 / 64], ['-1 1/8', 'in', -1.125], ['\u22121/4', 'in', -0.25], ['+2', 'half-twist', 2],
    ['58.5 lb', 'lb', 58.5], ['58.5LBS', 'lb', 58.5], ['26 g', 'gr', 26e8 / 6_479_891], ['400 grains', 'gr', 400],
    ['1/8 inch', 'in', 0.125], ['2 inches', 'in', 2], ['7 feet', 'in', 84], ["7'", 'ft', 7], ['6,5', 'mm', 6.5], ['1/2in', 'in', 0.5],
    ['\u00bd', 'turn', 0.5], ['1\u00bd', 'turn', 1.5], ['-\u00bc in', 'in', -0.25], ['1/2 half twist', 'half-twist', 0.5],
    ['2 pairs', 'half-twist-pair', 2], ['95%', 'percent', 95], ['280 ft/s', 'fps', 280], ['12', 'count', 12], ['  1/4  ', 'in', 0.25], ['0/4', 'in', 0],
    // Signs that word processors and telephones put in.
    ['2\u2033', 'ft', 1 / 6], ['2\u201d', 'ft', 1 / 6], ['2\u201c', 'ft', 1 / 6], ['1\u20448', 'in', 0.125], ['1\u00a01/8', 'in', 1.125], ['1\u20091/8', 'in', 1.125],
    ['1\u202f1/8', 'in', 1.125], ['\u20131/4', 'in', -0.25], ['\u00be', 'in', 0.75], ['1\u215b', 'in', 1.125], ['1\u215c', 'in', 1.375], ['\u215d', 'in', 0.625], ['\u215e', 'in', 0.875],
    ['1   1/8', 'in', 1.125], [`${'0'.repeat(63)}5`, 'in', 5], ['1234,125', 'in', 1234.125], ['1,1250', 'in', 1.125], ['0,125', 'in', 0.125],
  ])('%j as %s is %d', (text, unit, value) => {
    const read = parseQuantity(text, unit);
    expect(read).toMatchObject({ ok: true });
    expect(read.ok && read.value).toBeCloseTo(value, 12);
  });

  it.each<[string, string]>([
    ['1/0', '0 below its line'], ['1 1/0', '0 below its line'], ['1/2/3', 'more than one number'], ['1/2 1/4', 'more than one number'],
    ['1 -1/8', 'more than one number'], ['1.2.3', 'more than one number'], ['half', 'not a number'], ['about 1/2', 'not a number'],
    ['NaN', 'not a number'], ['Infinity', 'not a number'], ['--3', 'not a number'], ['/2', 'not a number'],
    ['1e999', 'in digits'], ['1e3', 'in digits'], ['1e+3', 'in digits'], ['1e-3', 'in digits'], ['1 we3', 'not a unit'], ['1 8/8', 'less than 1'], ['12,125', 'write 12125 or 12.125'], ['0x10', 'not a unit'], ['58 #', 'not a unit'], ['2 twists', 'not a unit'], ['5 ft 3 in', 'not a unit'],
    ['2 lb', '"lb" cannot be turned into in'], ['1 turn', '"turn" cannot be turned into in'], ['1,125', 'write 1125 or 1.125'], ['1 9/8', 'less than 1'],
    ['1\u00072', 'cannot be read'], ['1\n2', 'cannot be read'], ['\u202e1', 'cannot be read'], ['\ud800', 'cannot be read'], ['9'.repeat(65), 'longer than 64'],
  ])('%j is refused: %s', (text, why) => {
    const read = parseQuantity(text, 'in');
    expect(read).toMatchObject({ ok: false, code: 'not-a-number' });
    expect(!read.ok && read.why).toContain(why);
  });
  it.each<[string, Unit, string]>([
    ['half', 'in', 'write it as 1/32 or 1 1/8'], ['half', 'turn', 'write it as 1/2 turn'], ['half', 'half-twist', 'write it as 1/2 half-twist'], ['half', 'lb', 'write it as 3 lb'],
    ['half', 'count', 'write it as 3'], ['2 lb', 'count', '"lb" cannot be turned into a count; write it as 3'], ['2 in', 'turn', '"in" cannot be turned into turns; write it as 1/2 turn'],
    ['', 'fps', 'nothing was written; a number is needed, like 3 fps'], ['1/2/3', 'lb', 'there is more than one number; write one, like 3 lb'],
  ])('%j as %s says what to write: %s', (text, unit, why) => {
    const read = parseQuantity(text, unit);
    expect(!read.ok && read.why.endsWith(why)).toBe(true);
  });
  it('nothing is no less than nothing', () => {
    for (const text of ['-0', '- 0/4', '-.0 in']) expect(parseQuantity(text, 'in')).toEqual({ ok: true, value: 0 });
  });
  it.each(['', '   ', '\t'])('%j is empty', (text) => expect(parseQuantity(text, 'lb')).toMatchObject({ ok: false, code: 'empty' }));
});

describe('whatever is typed', () => {
  const piece = fc.constantFrom('1', '12', '/', '-', '+', '.', ',', ' ', '0', 'in', '"', 'mm', 'e9', '\u00bd', 'Infinity', 'lb', '\u0000', '\u2212');
  const text = fc.oneof(anyText.map((all) => all.slice(0, 70)), fc.array(piece, { maxLength: 9 }).map((p) => p.join('')));
  it('gives a finite number, or one plain line that says what to write', () => {
    fc.assert(fc.property(text, fc.constantFrom(...UNITS), (t, unit) => {
      const read = parseQuantity(t, unit);
      if (read.ok) expect(Number.isFinite(read.value) && !Object.is(read.value, -0)).toBe(true);
      else expect(read.why).toMatch(/^[ -~]{10,160}$/);
    }), { numRuns: 2000 });
  });
  it('a number never comes from text without a digit, and a minus turns the sign', () => {
    fc.assert(fc.property(text, (t) => {
      const read = parseQuantity(t, 'in');
      if (read.ok) expect(t).toMatch(/[0-9\u00bc-\u00be\u215b-\u215e]/);
    }));
    fc.assert(fc.property(fc.integer({ min: 1, max: 64 * 40 }), (n) => {
      expect(parseQuantity(`-${formatInches(n / 64)}`, 'in')).toEqual({ ok: true, value: -n / 64 });
    }));
  });
});

describe('formatInches', () => {
  it.each([[1 / 32, '1/32'], [1.125, '1 1/8'], [0, '0'], [-3 / 16, '-3/16'], [2, '2'], [-2.5, '-2 1/2'], [0.118, '1/8'], [0.001, '0'], [-0.001, '0'], [0.999, '1']])(
    '%d is %s', (value, words) => expect(formatInches(value)).toBe(words));
  it('rounds to the part that is asked for', () => {
    expect([formatInches(0.44, 16), formatInches(0.44, 8), formatInches(0.44, 1), formatInches(1 / 3, 3), formatInches(1 / 32, 16), formatInches(-1 / 32, 16)])
      .toEqual(['7/16', '1/2', '0', '1/3', '1/16', '-1/16']);
  });
  it('is read back as what it says, never further off than half a part', () => {
    fc.assert(fc.property(fc.double({ min: -100, max: 100, noNaN: true }), fc.constantFrom(1, 2, 8, 16, 32, 64), (x, part) => {
      const read = parseQuantity(formatInches(x, part), 'in');
      expect(read.ok && Math.abs(read.value - x)).toBeLessThanOrEqual(0.5 / part + 1e-12);
    }));
  });
  it('refuses what is no length or no part', () => {
    expect(() => formatInches(NaN)).toThrow(RangeError);
    expect(() => formatInches(1, 0)).toThrow('1/0');
    expect(() => formatInches(1, 1.5)).toThrow(RangeError);
    expect(() => formatQuantity({ value: Infinity, unit: 'lb' })).toThrow(RangeError);
  });
});

describe('formatQuantity', () => {
  it.each<[number, Unit, string]>([
    [1 / 32, 'in', '1/32 in'], [2, 'half-twist', '2 half-twists'], [0.5, 'turn', '1/2 turn'], [1.5, 'turn', '1 1/2 turns'], [0, 'turn', '0 turns'],
    [58.5, 'lb', '58.5 lb'], [1, 'half-twist-pair', '1 half-twist pair'], [-0.5, 'half-twist-pair', '-1/2 half-twist pair'], [3, 'size', '3 sizes'],
    [33.4, 'in', '33.4 in'], [1, 'click', '1 click'], [-2, 'click', '-2 clicks'], [7, 'count', '7'], [1, 'shots', '1 shot'], [6, 'months', '6 months'], [95, 'percent', '95 %'], [402.44, 'gr', '402.44 gr'],
    [-0.00001, 'lb', '0 lb'], [2_000_000.5, 'in', '2000000 1/2 in'], [1 / 64 + 0.0002, 'in', '1/64 in'], [1 / 64 + 0.0004, 'in', '0.016 in'],
  ])('%d %s is %s', (value, unit, words) => expect(formatQuantity({ value, unit })).toBe(words));

  it('is read back in every unit, on its marks exactly', () => {
    fc.assert(fc.property(fc.integer({ min: -800, max: 800 }), fc.constantFrom(...UNITS), (n, unit) => {
      expect(parseQuantity(formatQuantity({ value: n / 8, unit }), unit)).toEqual({ ok: true, value: n / 8 || 0 });
    }), { numRuns: 500 });
  });
});

describe('unit words', () => {
  // Common spellings, British and American; marks of feet and inches.
  it.each<[Unit, string]>([
    ['in', `in in. inch inches " ''`], ['mm', 'mm millimetre millimetres millimeter millimeters'], ['cm', 'cm centimetre centimetres centimeter centimeters'],
    ['ft', "ft ft. foot feet '"], ['yd', 'yd yd. yds yard yards'], ['m', 'm metre metres meter meters'], ['lb', 'lb lb. lbs lbs. pound pounds'],
    ['kg', 'kg kilo kilos kilogram kilograms'], ['gr', 'gr gr. grain grains'], ['g', 'g gram grams gramme grammes'], ['turn', 'turn turns'],
    ['half-twist', 'half-twist half-twists'], ['half-twist-pair', 'half-twist-pair half-twist-pairs pair pairs'], ['size', 'size sizes'], ['click', 'click clicks'],
    ['shots', 'shot shots'], ['months', 'month months'], ['percent', '% percent'], ['fps', 'fps ft/s'], ['gr/in', 'gr/in gpi'],
  ])('%s is understood from %s', (unit, words) => expect(words.split(' ').map(unitFromWord)).toEqual(words.split(' ').map(() => unit)));
  it('words of two are understood too, capitals or not', () => {
    expect(['half twist', 'half twists', 'half-twist pair', 'half-twist pairs', 'half twist pair', 'half twist pairs', 'per cent', 'LBS', 'Inch'].map(unitFromWord)).toEqual(
      ['half-twist', 'half-twist', 'half-twist-pair', 'half-twist-pair', 'half-twist-pair', 'half-twist-pair', 'percent', 'lb', 'in']);
  });
  it('a mass for each inch in words', () => expect(['gr per in', 'gr per inch', 'grain per inch', 'grains per inch', 'grains an inch'].map(unitFromWord)).toEqual(Array.from({ length: 5 }, () => 'gr/in')));
  it('nothing else is', () => expect(['', 'inchs', 'hands', 'lb in', ' in'].map(unitFromWord)).toEqual([null, null, null, null, null]));
  it('are of one for 1 and its parts, of many for 0 and from there on', () => {
    expect([0, 0.5, -0.5, 1, -1, 1.001, 2].map((n) => unitWord('turn', n))).toEqual(['turns', 'turn', 'turn', 'turn', 'turn', 'turns', 'turns']);
    const many = UNITS.map((unit) => unitWord(unit, 2));
    expect(many).toEqual(UNITS.map((unit) => unit === 'count' ? '' : unit === 'percent' ? '%' : unit === 'half-twist-pair' ? 'half-twist pairs' : ['turn', 'half-twist', 'size', 'click'].includes(unit) ? `${unit}s` : unit));
    expect(UNITS.map((unit) => unitWord(unit, 1))).toEqual(UNITS.map((unit) => unit === 'count' ? '' : unit === 'percent' ? '%' : unit === 'half-twist-pair' ? 'half-twist pair' : unit.replace(/^(shot|month)s$/, '$1')));
  });
  it('every word written is understood as its own unit', () => {
    for (const unit of UNITS.filter((u) => u !== 'count')) for (const n of [0, 0.5, 1, 2]) expect(unitFromWord(unitWord(unit, n))).toBe(unit);
  });
});
