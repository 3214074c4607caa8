// Barrowman's fins (1967; the forms from memory).

import { describe, expect, it } from 'vitest';
import { FIN_EFFICIENCY, finLift, type Fins } from '../../../src/archery/flight/fins.ts';
import { inches } from '../../../src/maths/units.ts';
import { near } from '../../sources/near.ts';
import { said } from '../said.ts';
import { must, printed } from './oracle.ts';

const fins = (count: number, height: number, chord: number, tip: number, sweep: number, efficiency = 1): Fins =>
  ({ count, height: inches(height), chord: inches(chord), tip: inches(tip), sweep: inches(sweep), efficiency });

describe('fins', () => {
  it('three vanes of 50.8 by 12.7 mm, 25 mm at the edge and square behind, on 6 mm: 30.37 by radian (derived by a separate program)', () => {
    printed(finLift(must, fins(3, 12.7, 50.8, 25, 25.8), 6).slope, 30.37, 2);
  });
  it('vanes of 2.1 in are worth 21.3, blades of 1.1 in 14.3 (by simulation, its figures)', () => {
    printed(finLift(must, fins(3, 0.48, 2.1, 0.9, 0.9, 0.8), 0.246).slope, 21.3, 1);
    printed(finLift(must, fins(3, 0.44, 1.1, 0, 1.1, 0.8), 0.246).slope, 14.3, 1);
  });
  it('by hand: square plates of 2 by 2 on a shaft of 2: 4 n, half more for the shaft between them, over 1 and the root of 2', () => {
    near(finLift(must, fins(3, 2, 2, 2, 0), 2).slope, (12 * (1 + 1 / 3)) / (1 + Math.SQRT2), 1e-12);
    near(finLift(must, fins(1, 2, 2, 2, 0, 0.5), 2).slope, (0.5 * 4 * (1 + 1 / 3)) / (1 + Math.SQRT2), 1e-12);
  });
  it('by hand: a plate pushes at its quarter, a triangle swept whole at its half, a triangle square in front at a sixth', () => {
    near(finLift(must, fins(3, 1, 4, 4, 0), 1).centre, 1, 1e-12);
    near(finLift(must, fins(3, 1, 4, 0, 4), 1).centre, 2, 1e-12);
    near(finLift(must, fins(3, 1, 4, 0, 0), 1).centre, 4 / 6, 1e-12);
  });
  it('by hand: a midline that leans is longer by Pythagoras', () => {
    // Swept by 3 at a height of 4: 5 long, over the mean length of 2.
    near(finLift(must, fins(1, 4, 2, 2, 3), 1).slope, ((1 + 0.5 / 4.5) * 64) / (1 + Math.hypot(1, 2.5)), 1e-12);
  });
  it('work to 0.8 where nothing is said (a guess)', () => {
    const { efficiency: _, ...plain } = fins(3, 0.48, 2.1, 0.9, 0.9);
    expect(FIN_EFFICIENCY).toBe(0.8);
    near(finLift(must, plain, 0.246).slope / finLift(must, { ...plain, efficiency: 1 }, 0.246).slope, 0.8, 1e-12);
  });
  it('refuse what is no fin', () => {
    const by = (change: Partial<Record<keyof Fins, number>>, diameter = 0.25): string => {
      const all = { count: 3, height: 0.5, chord: 2, tip: 1, sweep: 1, efficiency: 0.8, ...change };
      return said(() => finLift(must, fins(all.count, all.height, all.chord, all.tip, all.sweep, all.efficiency), diameter));
    };
    expect(by({ count: 2.5 })).toBe('oracle: the count of fins is 2.5; a whole number, 0 or more, is needed');
    expect(by({ height: 0 })).toBe('oracle: the height of a fin is 0; a number above 0 is needed');
    expect(by({ chord: NaN })).toBe('oracle: the length of a fin is NaN; a number above 0 is needed');
    expect(by({ tip: -1 })).toBe("oracle: the length of a fin's outer edge is -1; a finite number, 0 or more, is needed");
    expect(by({ sweep: 1e31 })).toBe('oracle: the sweep of a fin is 1e+31; a number up to 1e+30 is needed');
    expect(by({ efficiency: 1.1 })).toBe("oracle: a fin's efficiency is 1.1; a chance lies between 0 and 1");
    expect(by({}, 0)).toBe("oracle: the shaft's diameter is 0; a number above 0 is needed");
    expect([by({ count: 0 }), by({ tip: 0, sweep: 0, efficiency: 0 })]).toEqual(['no error', 'no error']);
  });
});
