// One cell in thirteen (which meets every hand, kind of cams, rest, press and tear), its mirror, and every ladder to its end.
// `npm run explore` plays all of them.

import { describe, expect, it } from 'vitest';
import { otherSide } from '../properties/mirrored.ts';
import { CAMS, CELLS, endOf, HANDS, mirrored, nameOf, PRESSES, RESTS, shopEndOf, TEARS, wrongIn } from './ladder-cells.ts';

const SOME = CELLS.filter((_, index) => index % 13 === 0);

describe('each cell of the ladder', () => {
  it('is one of 2,160, and those played here meet each of its sides', () => {
    expect(CELLS).toHaveLength(2 * 6 * 6 * 3 * 10);
    const met = { hand: HANDS, cams: CAMS, rest: RESTS, press: PRESSES, tear: Object.keys(TEARS) };
    for (const [side, all] of Object.entries(met)) expect([...new Set(SOME.map((cell) => cell[side as keyof typeof met]))].toSorted()).toEqual([...all].toSorted());
  });

  it('ends in the one next step that common practice has there', () => {
    const wrong = SOME.flatMap((cell) => wrongIn(cell, endOf(cell)).map((what) => `${nameOf(cell)}: ${what}`));
    expect(wrong).toEqual([]);
  });

  it('ends in the mirrored step for the other hand, as far to the other side, and as high', () => {
    for (const cell of SOME.filter((_, index) => index % 3 === 0)) {
      const [one, other] = [endOf(cell).advice, endOf(mirrored(cell)).advice];
      expect(other?.direction, nameOf(cell)).toBe(one?.direction === undefined ? undefined : otherSide(one.direction));
      expect([other?.kind, other?.knob, other?.amount], nameOf(cell)).toEqual([one?.kind, one?.knob, one?.amount]);
    }
  });

  it('tells what is not as common practice has it', () => {
    const [high, left] = ['high', 'left'].map((tear) => CELLS.find((cell) => cell.tear === tear && cell.cams === 'hybrid' && cell.press === 'none'));
    if (high === undefined || left === undefined) throw new Error('no such cell');
    expect(wrongIn(left, endOf(high))).toEqual([expect.stringContaining('rest-height instead of rest-side')]);
    expect(wrongIn({ ...high, tear: 'low' }, endOf(high))).toEqual(['the rest goes up']);
    expect(wrongIn({ ...high, tear: 'more than two inches high' }, endOf(high))).toEqual(['adjust instead of a look']);
  });
});

describe('a bow on which nothing does anything', () => {
  const ladders = CAMS.flatMap((cams) => PRESSES.map((press) => ({ cams, press })));
  const second = (cams: string): readonly string[] => (cams === 'hybrid' || cams === 'two-track' ? ['rest-side', 'cam-spacers'] : cams === 'unknown' ? ['rest-side'] : ['yoke', 'rest-side']);
  const sideways = (cams: string, press: string): readonly string[] => (cams === 'screw-adjust' ? ['cam-screw', 'rest-side'] : press === 'trained' ? second(cams) : ['rest-side']);

  it.each(ladders)('ends in a note for the shop: $cams, press $press', ({ cams, press }) => {
    const cell = { hand: 'right', rest: 'blade', cams, press } as const;
    for (const [tear, tried] of [['left', sideways(cams, press)], ['high', ['rest-height']]] as const) {
      const end = shopEndOf({ ...cell, tear });
      expect(end.tried).toEqual(tried);
      expect(end.view.advice).toMatchObject({ kind: 'shop' });
    }
  });
});
