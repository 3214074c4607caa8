import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ArrowsPicture, GroupsPicture } from '../../src/machine/types.ts';
import { arrowsShapes, arrowsWords, offOf, wayOf } from '../../src/screens/arrows-picture.ts';
import { drawGroups, groupMarks, groupsWords } from '../../src/screens/groups-picture.ts';
import { drawPlumb, plumbWords } from '../../src/screens/plumb-picture.ts';
import { pictureLines, takenLines } from '../../src/screens/plain-pictures.ts';
import { textWidth } from '../../src/screens/text-width.ts';
import { drive } from './driven.ts';
import { ARROWS, ASKS, GROUPS, PLUMB, VIEWS, viewOf } from './fake-session.ts';

const ROWS = { rows: 9, braille: false };
const widths = (lines: readonly string[]): Set<number> => new Set(lines.map(textWidth));

describe('two groups', () => {
  const apart: GroupsPicture = {
    kind: 'groups', names: { a: 'field point', b: 'broadhead' }, margin: 1,
    a: [{ x: -1, y: 1, counted: true }], b: [{ x: 2, y: -3, counted: true }, { x: -3, y: -3, counted: false }], means: { a: { x: -1, y: 1 }, b: { x: 2, y: -3 } },
  };

  it('are told by letters, their middles by capitals, and where they belong by dots', () => {
    expect(`\n${drawGroups(apart, ROWS).join('\n')}\n`).toBe(`
.----------+----------.
|                     |
|                     |
|      .....          |
|      . F .          |
+      ....@          +
|                     |
|                     |
|    x         B      |
|                     |
'----------+----------'
`);
    expect(drawGroups({ ...apart, means: {} }, ROWS).join('\n')).toMatch(/f[\s\S]*b/);
  });

  it('take letters of their names where these differ', () => {
    expect(groupMarks({ a: 'fletched arrow', b: 'unfletched shaft' })).toEqual({ a: 'f', b: 'u' });
    expect(groupMarks({ a: 'field point', b: 'fixed blade' })).toEqual({ a: 'a', b: 'b' });
    // x is a shot that does not count.
    expect(groupMarks({ a: 'x-ring', b: 'broadhead' })).toEqual({ a: 'a', b: 'b' });
  });

  it('are mirrored by a mirrored face', () => {
    const at = fc.integer({ min: -20, max: 20 }).map((n) => n / 2);
    fc.assert(fc.property(at, at, (x, y) => {
      fc.pre(x !== 0 || y !== 0);
      const star = (tear: { x: number; y: number }): number[] => drawGroups({ entered: tear }, ROWS).flatMap((line, row) => (line.includes('*') ? [row, line.indexOf('*') - 11] : []));
      const [row, column] = star({ x, y });
      expect(star({ x: -x, y })).toEqual([row, -(column ?? 0) + 0]);
    }), { seed: 9 });
  });

  it('find a scale for everything, and have one width', () => {
    const at = fc.record({ x: fc.double({ min: -24, max: 24, noNaN: true }), y: fc.double({ min: -24, max: 24, noNaN: true }), counted: fc.boolean() });
    fc.assert(fc.property(fc.array(at, { maxLength: 6 }), fc.array(at, { maxLength: 6 }), fc.constantFrom(3, 5, 9, 11), fc.boolean(), (a, b, rows, braille) => {
      const lines = drawGroups({ ...apart, a, b, means: a[0] === undefined ? {} : { a: a[0] } }, { rows, braille });
      expect(lines).toHaveLength(rows + 2);
      expect(widths(lines).size).toBe(1);
    }), { seed: 4 });
  });

  it('on a small screen give way to a sentence where the cautions leave no room, and come back when the shot is called', () => {
    const caution = ['Draw only with a checked arrow on, level, at the backstop, finger off the trigger or thumb behind it.'];
    const screen = drive([viewOf({ ...ASKS.impact, caution, text: ['Now a broadhead: its cap off only now, the others covered.'] }, { picture: apart })], { columns: 40, rows: 20 });
    expect(screen.words()).toContain('the middle of the broadheads lies 4.00 in below and 3.00 in right of that of the field points');
    expect(screen.frame()).not.toContain('.---');
    screen.press('g');
    expect(screen.frame()).toContain('.---');
    expect(screen.words()).toContain('f: field point, b: broadhead');
  });

  it('say the same in words, with what counts as together and what drag takes', () => {
    expect(groupsWords({ ...apart, aim: { x: 0, y: -0.5 } })).toEqual([
      'f: field point, 1 in high, 1 in left',
      'b: broadhead, 3 in low, 2 in right',
      'x: called bad, not counted: 3 in low, 3 in left',
      'F and B: the middles; B lies 4.00 in below and 3.00 in right of F',
      'dots: they land together where the middle of the broadheads lies within 1.00 in each way of the spot 0.50 in below the middle of the field points',
      '@: the dot that each arrow was aimed at',
    ]);
    expect(pictureLines(apart)).toEqual([
      '  field point, inches from the dot: high 1, left 1',
      '  broadhead, inches from the dot: low 3, right 2; low 3, left 3 (called bad, not counted)',
      '  the middle of the broadheads lies 4.00 in below and 3.00 in right of that of the field points',
      '  they land together where the middle of the broadheads lies within 1.00 in each way of the middle of the field points',
    ]);
  });
});

describe('the arrows of a set', () => {
  const arrow = (name: string, x: number, y: number, standsOut = false): ArrowsPicture['arrows'][number] => ({ arrow: name, mean: { x, y }, shots: 3, standsOut });
  const three: ArrowsPicture = { kind: 'arrows', typical: { x: 0, y: 0.25 }, arrows: [arrow('1', 0, 0.25), arrow('2', 0.125, 0.25), arrow('11', -0.5, 0.75, true)] };

  it('are measured from the typical one, with one of eight ways', () => {
    expect(three.arrows.map((one) => offOf(three, one))).toEqual([{ x: 0, y: 0 }, { x: 0.125, y: 0 }, { x: -0.5, y: 0.5 }]);
    expect([[0, 0], [0, 1], [1, 1], [1, 0], [1, -1], [0, -1], [-1, -1], [-1, 0], [-1, 1], [0.3, 1]].map(([x = 0, y = 0]) => wayOf({ x, y })))
      .toEqual(['', 'high', 'high right', 'right', 'low right', 'low', 'low left', 'left', 'high left', 'high']);
  });

  it('have a bar each, and what stands out has another one and says so', () => {
    expect(arrowsShapes(three, 70)[0]?.rows).toEqual([
      '   1  0.00 in',
      '   2  0.13 in right      ====',
      '* 11  0.71 in high left  ************************ stands out',
    ]);
  });

  it('stand beside one another where it is narrow: twelve on a screen of 40 by 20, all of them', () => {
    const screen = drive([VIEWS.arrows], { columns: 40, rows: 20 });
    for (let at = 1; at <= 12; at += 1) expect(screen.frame()).toMatch(new RegExp(`[ *]${String(at).padStart(2)} \\d\\.\\d\\d `));
    expect(screen.frame()).toContain('* 7 0.55 high left');
    expect(screen.frame()).toContain('*: stands out from the others');
  });

  it('are cut honestly where even that has no room: the odd ones by name, the others by their number', () => {
    const long = { ...ASKS.numbered, text: ['Now arrow 7. '.repeat(16)] };
    const words = drive([viewOf(long, { picture: ARROWS })], { columns: 40, rows: 16 }).words();
    expect(words).toContain('* stands out: arrow 7 0.55 in high left; the other 11 lie within 0.12 in of the typical one');
    expect(arrowsShapes({ ...three, arrows: three.arrows.slice(0, 2) }, 37).at(-1)?.words).toEqual(['all 2 arrows lie within 0.13 in of the typical one']);
    expect(arrowsShapes({ ...three, arrows: three.arrows.slice(2) }, 37).at(-1)?.words).toEqual(['* stands out: arrow 11 0.71 in high left']);
    expect(arrowsShapes({ ...three, typical: null, arrows: three.arrows.slice(0, 1) }, 37).at(-1)?.words).toEqual(['the only arrow so far lies within 0.25 in of a clean hole']);
  });

  it('are never wider than their place, however many and however named', () => {
    const one = fc.record({ arrow: fc.stringMatching(/^[1-9][0-9]{0,3}$/), mean: fc.record({ x: fc.double({ min: -4, max: 4, noNaN: true }), y: fc.double({ min: -4, max: 4, noNaN: true }) }), shots: fc.constant(3), standsOut: fc.boolean() });
    fc.assert(fc.property(fc.array(one, { minLength: 1, maxLength: 40 }), fc.constantFrom(37, 38, 70, 91), (arrows, width) => {
      for (const { rows } of arrowsShapes({ kind: 'arrows', typical: null, arrows }, width)) for (const row of rows) expect(textWidth(row)).toBeLessThanOrEqual(width);
    }), { seed: 6 });
  });

  it('say the same in words', () => {
    expect(arrowsWords(three)).toEqual([
      'how far each tail lies from the typical one; that one is 0.25 in high',
      'arrow 1: right on it, 3 shots', 'arrow 2: 0.13 in right, 3 shots', 'arrow 11: 0.71 in high left, 3 shots; it stands out',
    ]);
    expect(pictureLines({ ...three, typical: null })[0]).toBe('  where each arrow\'s tail goes; what is typical shows once all were shot');
  });
});

describe('a plumb line', () => {
  it('has the farthest distance on top, as one looks down the range', () => {
    expect(`\n${drawPlumb(PLUMB).join('\n')}\n`).toBe(`
      .------------+------------.
40 yd |            |         o  |
30 yd |            |    o       |
20 yd |            | o          |
      '------------+------------'
`);
  });

  it('says the same in words, the nearest first', () => {
    expect(plumbWords(PLUMB, true)).toEqual(['o 20 yd: 0.40 in right, 2 shots', 'o 30 yd: 1.30 in right, 2 shots', 'o 40 yd: 2.60 in right, 2 shots', '|: the line; a column is 1/4 in']);
    expect(pictureLines({ kind: 'plumb', points: [{ distance: { value: 20, unit: 'yd' }, x: 0, shots: 1 }] })).toEqual(['  from the plumb line, each distance on average', '  20 yd: on the line, 1 shot']);
  });

  it('keeps what lies too far at its edge, left and right', () => {
    const lines = drawPlumb({ kind: 'plumb', points: [{ distance: { value: 20, unit: 'yd' }, x: -90, shots: 1 }, { distance: { value: 40, unit: 'yd' }, x: 90, shots: 1 }] });
    expect(lines[1]).toMatch(/o\|$/);
    expect(lines[2]).toMatch(/^20 yd \|o/);
    expect(widths(lines).size).toBe(1);
  });
});

describe('in the plain face, a shot as it was taken', () => {
  const shots = (x: number, y: number) => ({ kind: 'shots' as const, shots: [{ x, y }] });
  it('stands beside what its own kind comes to', () => {
    expect(takenLines(ASKS.impact, shots(3.25, -2.5), GROUPS)).toEqual(['  taken: low 2 1/2, right 3 1/4; on average of 2 broadheads: low 2 3/4, right 2 5/8']);
    expect(takenLines({ ...ASKS.impact, head: 'field' }, shots(0, 0), GROUPS)[0]).toContain('taken: on the dot; on average of 3 field points');
    expect(takenLines(ASKS.plumb, shots(1.5, -4), PLUMB)).toEqual(['  taken: low 4, right 1 1/2; sideways on average of 2 shots from here: right 1 5/16']);
    expect(takenLines(ASKS.numbered, shots(-0.375, 0.5), ARROWS)).toEqual(['  taken: high 1/2, left 3/8; arrow 7 on average of 3 shots: high 17/32, left 13/32']);
    expect(takenLines(ASKS.impact, { kind: 'shots', shots: [{ missed: true }] }, GROUPS)).toEqual(['  taken: missed, and not counted']);
  });
});
