// What the practice bow's arrow left, drawn to be read. The promise: whoever reads the drawing by its rules, and knows nothing else, comes
// within 1/16 in of the tear, at every size of the screen; and within 1/4 in of where an arrow landed.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PracticeHole, Tear } from '../../src/machine/types.ts';
import { drawHole, MARKS, POINT, TORN } from '../../src/screens/hole-picture.ts';
import { asRead, holeWords } from '../../src/screens/plain-practice.ts';

const sheet = (x: number, y: number, vanes: 3 | 4 = 3): PracticeHole => ({ kind: 'sheet', tail: { x, y }, vanes });
const target = (x: number, y: number): PracticeHole => ({ kind: 'target', at: { x, y } });
const drawn = (hole: PracticeHole, columns: number, rows: number): string => drawHole(hole, { columns, rows }).join('\n');

describe('as frames', () => {
  it('a tear high and left', () => {
    expect(drawn(sheet(-0.4, 0.45), 64, 13)).toBe([
      '     |', '    1+                 |', '     |                 |', '  3/4+                 |', '     |                 |',
      '  1/2+                 o', '     |             /    : \\', '  1/4+          /        ::   \\', '     |                     ::', '    0+                       @',
      '     |', '     +---+---+---+---+---+---+---+---+-', '             1      1/2      0      1/2',
    ].join('\n'));
  });

  it('a clean hole, four vanes', () => {
    expect(drawHole(sheet(0, 0, 4), { columns: 37, rows: 9 })).toEqual([
      '     |',
      '  1/2+',
      '     |   \\           /',
      '  1/4+     \\       /',
      '     |       \\   /',
      '    0+         @',
      '     |       /   \\',
      '     +-+---+---+---+---+---+---+-',
      '      1/2      0      1/2      1',
    ]);
  });

  it('a large one, with a piece left out', () => {
    expect(drawn(sheet(1.2, -2.8), 64, 13)).toBe([
      '  1/2+', '  1/4+', '    0+     @', '  1/4+      :', '  1/2+       :', '    ~~~~~~~~~~~~~~~~~~~~~~~~~~~', '2 1/4+             : |', '2 1/2+              :|', '2 3/4+               .',
      '    3+           /      \\', '3 1/4+', '     +-+-+-+-+-+-+-+-+-+-+-+-+-', '           0       1       2',
    ].join('\n'));
  });

  it('an arrow in the target', () => {
    expect(drawHole(target(2.2, -1.2), { columns: 64, rows: 13 })).toEqual([
      '     |', '    1+', '     |', '    0+     @', '     |', '    1+              o', '     |', '    2+', '     |', '    3+', '     |', '     +-+---+---+---+---+---+--', '           0       2       4',
    ]);
  });

  it('nothing, where nothing was hit', () => {
    expect(drawHole({ kind: 'none' }, { columns: 70, rows: 13 })).toEqual([]);
  });
});

/** A figure of a rule, as it is written: 1 1/4 is 1.25. */
function figure(text: string): number {
  const [, whole = '0', , up, down] = /^(\d+)?( ?(\d+)\/(\d+))?$/.exec(text.trim()) ?? [];
  return (text.trim().startsWith(`${up ?? ''}/`) ? 0 : Number(/\//.test(whole) ? 0 : whole)) + (up === undefined ? 0 : Number(up) / Number(down));
}

/** Reads a drawing as an eye does: by its rules and its marks alone. `tick` is what lies between two + of a rule. */
function byEye(lines: readonly string[], tick: number): Tear {
  const paper = lines.slice(0, -2);
  const [rule = ''] = lines.slice(-2, -1);
  const pointRow = paper.findIndex((line) => line.slice(6).includes(POINT) || /^ {4}0\+/.test(line));
  const marks = `${MARKS.middle}${MARKS.high}${MARKS.low}`;
  const row = paper.findIndex((line) => new RegExp(`[${marks}]`).test(line.slice(6)));
  if (row === -1) return { x: 0, y: 0 };
  const column = Array.from(paper[row] ?? '').findIndex((cell, at) => at >= 6 && marks.includes(cell));
  const mark = paper[row]?.[column] ?? '';
  // Rows between two + of the upright rule.
  const marked = paper.flatMap((line, at) => (line[5] === '+' ? [at] : []));
  const gaps = marked.slice(1).flatMap((at, i) => (paper.slice(marked[i], at).some((line) => line[5] === TORN) ? [] : [at - (marked[i] ?? 0)]));
  const perTick = Math.min(...gaps, paper.some((line) => line[5] === '|') ? 2 : 1);
  const near = marked.reduce((best, at) => (Math.abs(at - row) < Math.abs(best - row) ? at : best), marked[0] ?? 0);
  const inRow = mark === MARKS.high ? 1 / 3 : mark === MARKS.low ? -1 / 3 : 0;
  const side = near <= pointRow ? 1 : -1;
  const y = side * figure((paper[near] ?? '').slice(0, 5)) + ((near - row + inRow) * tick) / perTick;
  return { x: alongRule(rule, lines.at(-1) ?? '', column, tick), y };
}

/** Counts along the lower rule from a figure that stands on the same piece of it. */
function alongRule(rule: string, figures: string, column: number, tick: number): number {
  const plus = Array.from(rule).flatMap((cell, at) => (cell === '+' && at >= 6 ? [at] : []));
  const perTick = Math.min(...plus.slice(1).map((at, i) => at - (plus[i] ?? 0)).filter((_, i) => !rule.slice(plus[i], plus[i + 1]).includes(TORN)));
  const named = [...figures.matchAll(/\d+(?: \d+\/\d+)?(?:\/\d+)?/g)].map((match) => ({ at: match.index + Math.floor(match[0].length / 2), value: figure(match[0]) }));
  const zero = named.find(({ value }) => value === 0)?.at ?? 0;
  const [from, to] = [rule.slice(0, column).lastIndexOf(TORN), rule.indexOf(TORN, column)];
  const same = named.filter(({ at }) => at > from && (to === -1 || at < to));
  const nearest = same.toSorted((a, b) => Math.abs(a.at - column) - Math.abs(b.at - column))[0];
  if (nearest === undefined) return NaN;
  return (nearest.at < zero ? -1 : 1) * nearest.value + ((column - nearest.at) * tick) / perTick;
}

describe('read by eye', () => {
  const SIZES = [{ columns: 48, rows: 13 }, { columns: 39, rows: 9 }, { columns: 39, rows: 7 }, { columns: 88, rows: 13 }] as const;
  const part = (most: number) => fc.double({ min: -most, max: most, noNaN: true });

  it.each(SIZES)('a tear comes within 1/16 in ($columns x $rows)', (size) => {
    fc.assert(fc.property(part(4), part(4), fc.constantFrom(3, 4), (x, y, vanes) => {
      const read = byEye(drawHole(sheet(x, y, vanes === 3 ? 3 : 4), size), 1 / 4);
      expect(Math.abs(read.x - x)).toBeLessThanOrEqual(1 / 16 + 1e-9);
      expect(Math.abs(read.y - y)).toBeLessThanOrEqual(1 / 16 + 1e-9);
    }), { numRuns: 400 });
  });

  it.each(SIZES)('an arrow in the target comes within 1/4 in ($columns x $rows)', (size) => {
    fc.assert(fc.property(part(24), part(24), (x, y) => {
      const read = byEye(drawHole(target(x, y), size), 1);
      expect(Math.abs(read.x - x)).toBeLessThanOrEqual(1 / 4 + 1e-9);
      expect(Math.abs(read.y - y)).toBeLessThanOrEqual(1 / 4 + 1e-9);
    }), { numRuns: 300 });
  });

  it('stays inside its room, and its mirror is the mirror', () => {
    fc.assert(fc.property(part(4), part(4), (x, y) => {
      for (const size of SIZES) {
        const lines = drawHole(sheet(x, y), size);
        expect(lines.length).toBeLessThanOrEqual(size.rows);
        expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(size.columns);
        expect(drawHole(sheet(-x, y), size)).toHaveLength(lines.length);
      }
    }), { numRuns: 200 });
  });
});

it('in words it is what a rule reads: to 1/16 in on paper, to 1/4 in at a target', () => {
  expect(holeWords(sheet(-0.4, 0.45))).toContain('reads 7/16 in up and 3/8 in to the left.');
  expect(holeWords(sheet(0.01, 0.02))).toContain('reads 0 and 0 sideways.');
  expect(holeWords(target(2.2, -1.2))).toContain('reads 1 1/4 in down and 2 1/4 in to the right.');
  expect(holeWords({ kind: 'none' })).toContain('missed');
  expect(asRead(sheet(-0.4, 0.45))).toEqual(sheet(-0.375, 0.4375));
  expect(asRead(target(0.1, -0.1))).toEqual(target(0, 0));
});
