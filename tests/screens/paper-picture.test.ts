import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawPaper, pictureWords } from '../../src/screens/paper-picture.ts';
import { formatTail } from '../../src/screens/words.ts';
import { cut, cutFront, textWidth, wrap } from '../../src/screens/text-width.ts';

const ROWS = { rows: 9, braille: false };
const at = (lines: readonly string[], mark: string): { row: number; column: number } => {
  const row = lines.findIndex((line) => line.includes(mark));
  return { row, column: lines[row]?.indexOf(mark) ?? -1 };
};

describe('the paper', () => {
  it('shows high above and left to the left of the point', () => {
    const lines = drawPaper({ tail: { x: -0.5, y: 0.75 } }, ROWS);
    expect(`\n${lines.join('\n')}\n`).toBe(`
.----------+----------.
|                     |
|      T              |
|       \\             |
|         \\           |
+          @          +
|                     |
|                     |
|                     |
|                     |
'----------+----------'
`);
  });

  it('mirrors with the sheet: what is right on one is left on the other', () => {
    const coordinate = fc.integer({ min: -64, max: 64 }).map((n) => n / 16);
    fc.assert(fc.property(coordinate, coordinate, (x, y) => {
      fc.pre(x !== 0 || y !== 0);
      const one = at(drawPaper({ tail: { x, y } }, ROWS), 'T');
      const other = at(drawPaper({ tail: { x: -x, y } }, ROWS), 'T');
      const point = at(drawPaper({}, ROWS), '@');
      expect(one.row).toBe(other.row);
      expect(one.column - point.column).toBe(point.column - other.column);
      if (Math.abs(y) >= 1) expect(Math.sign(point.row - one.row)).toBe(Math.sign(y));
    }), { seed: 3 });
  });

  it('has one size for one number of rows, whatever is in it, and finds a scale for everything', () => {
    const tear = fc.record({ x: fc.double({ min: -4, max: 4, noNaN: true }), y: fc.double({ min: -4, max: 4, noNaN: true }) });
    fc.assert(fc.property(fc.array(tear, { maxLength: 8 }), tear, tear, fc.constantFrom(3, 5, 9, 11), fc.boolean(), (shots, mean, likely, rows, braille) => {
      const drawing = { shots: shots.map((shot, i) => ({ ...shot, counted: i % 2 === 0 })), mean, likely: { x: Math.abs(likely.x), y: Math.abs(likely.y) } };
      const lines = drawPaper(drawing, { rows, braille });
      expect(lines).toHaveLength(rows + 2);
      expect(new Set(lines.map(textWidth)).size).toBe(1);
      expect(lines.join('').includes('@')).toBe(true);
    }), { seed: 5 });
  });

  it('draws the likely region in dots, in braille only where it is asked for', () => {
    const drawing = { shots: [], mean: { x: 0, y: 0.5 }, likely: { x: 0.375, y: 0.375 } };
    expect(drawPaper(drawing, ROWS).join('\n')).toMatch(/\./);
    expect(drawPaper(drawing, ROWS).join('\n')).not.toMatch(/[\u2800-\u28ff]/);
    expect(drawPaper(drawing, { rows: 9, braille: true }).join('\n')).toMatch(/[\u2801-\u28ff]/);
  });

  it('says the same in words', () => {
    expect(pictureWords({ shots: [{ x: -0.375, y: 0.4375, counted: true }, { x: 1, y: 0, counted: false }], mean: { x: -0.4, y: 0.47 }, likely: { x: 0.2, y: 0.1 } })).toEqual([
      'o: 7/16 in high, 3/8 in left',
      'x: called bad, not counted: 1 in right of the point, level up and down',
      '+: the middle, 0.47 in high, 0.40 in left',
      'dots: it likely lies within 0.10 in up or down and 0.20 in sideways of that',
      '@: the point',
    ]);
    expect(formatTail({ x: -1 / 8, y: 1 / 2 })).toBe('the tail is 1/2 in high, 1/8 in left of the point');
    expect(formatTail({ x: 0, y: -0.44 })).toBe('the tail is 0.44 in low, level sideways with the point');
    expect(formatTail({ x: 0, y: 0 })).toBe('a clean hole: the tail went where the point did');
  });
});

describe('text in columns', () => {
  it('counts what a terminal counts', () => {
    expect(['abc', '\u00e9', 'e\u0301', '\u5f13\u77e2', '\u{1f3f9}', '\u{1f44d}\u{1f3fd}', '\u2800', '\u2026'].map(textWidth)).toEqual([3, 1, 1, 4, 2, 2, 1, 1]);
  });

  it('cuts at the end or the front, and says so', () => {
    expect([cut('abcdef', 4), cut('abcd', 4), cut('\u5f13\u77e2\u5f13', 4), cutFront('abcdef', 4)]).toEqual(['abc\u2026', 'abcd', '\u5f13\u2026', '\u2026def']);
  });

  it('wraps at spaces, breaks what is too long, and loses no letter', () => {
    expect(wrap('one two three', 7)).toEqual(['one two', 'three']);
    expect(wrap('abcdefghij kl', 4)).toEqual(['abcd', 'efgh', 'ij', 'kl']);
    fc.assert(fc.property(fc.string({ unit: 'grapheme', maxLength: 80 }), fc.integer({ min: 2, max: 30 }), (text, width) => {
      const lines = wrap(text, width);
      for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
      expect(lines.join('').replace(/[ \t\r\n]/g, '')).toBe(text.replace(/[ \t\r\n]/g, ''));
    }), { seed: 11 });
  });
});
