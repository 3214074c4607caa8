import { describe, expect, it } from 'vitest';
import { checks } from '../../src/maths/check.ts';

const must = checks('f', 'g');

describe('checks', () => {
  it('let pass what is asked for, ends included', () => {
    must.f.number(Infinity, 'a');
    must.f.finite(-1e300, 'a');
    for (const n of [-1e30, 0, 1e30]) must.f.measure(n, 'a');
    for (const n of [5e-324, 1e308]) must.f.positive(n, 'a');
    must.f.positive(Infinity, 'a', true);
    for (const n of [1e-30, 1e30]) must.f.size(n, 'a');
    must.f.size(Infinity, 'a', true);
    for (const n of [0, 1e308]) must.f.notNegative(n, 'a');
    for (const n of [2, 3]) must.f.whole(n, 'a', 2);
    for (const n of [0, 0.5, 1]) must.f.chance(n, 'a');
  });
  it.each<[string, () => void]>([
    ['f: a is NaN; a number is needed', () => must.f.number(NaN, 'a')],
    ['g: a is NaN; a finite number is needed', () => must.g.finite(NaN, 'a')],
    ['g: b is Infinity; a finite number is needed', () => must.g.finite(Infinity, 'b')],
    ['f: a is -Infinity; a finite number is needed', () => must.f.measure(-Infinity, 'a')],
    ['f: a is 1.1e+30; a number up to 1e+30 is needed', () => must.f.measure(1.1e30, 'a')],
    ['f: a is -1.1e+30; a number up to 1e+30 is needed', () => must.f.measure(-1.1e30, 'a')],
    ['f: a is 0; a number above 0 is needed', () => must.f.positive(0, 'a')],
    ['f: a is NaN; a number above 0 is needed', () => must.f.positive(NaN, 'a', true)],
    ['f: a is Infinity; a number above 0 is needed', () => must.f.positive(Infinity, 'a')],
    ['f: a is 0; a number above 0 is needed', () => must.f.size(0, 'a')],
    ['f: a is Infinity; a number above 0 is needed', () => must.f.size(Infinity, 'a')],
    ['f: a is 9e-31; a number from 1e-30 to 1e+30 is needed', () => must.f.size(9e-31, 'a', true)],
    ['f: a is 1.1e+30; a number from 1e-30 to 1e+30 is needed', () => must.f.size(1.1e30, 'a', true)],
    ['f: a is -1; a finite number, 0 or more, is needed', () => must.f.notNegative(-1, 'a')],
    ['f: a is Infinity; a finite number, 0 or more, is needed', () => must.f.notNegative(Infinity, 'a')],
    ['f: a is 1; a whole number, 2 or more, is needed', () => must.f.whole(1, 'a', 2)],
    ['f: a is 2.5; a whole number, 2 or more, is needed', () => must.f.whole(2.5, 'a', 2)],
    ['f: a is -0.1; a chance lies between 0 and 1', () => must.f.chance(-0.1, 'a')],
    ['f: a is 1.1; a chance lies between 0 and 1', () => must.f.chance(1.1, 'a')],
    ['f: a is NaN; a chance lies between 0 and 1', () => must.f.chance(NaN, 'a')],
    ['g: why', () => { throw must.g.error('why'); }],
  ])('%s', (message, act) => expect(act).toThrow(new RangeError(message)));
});
