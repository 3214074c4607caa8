// Lengths of the bow that come out otherwise after work in a press: equal twists do not change them, so it is told.

import { describe, expect, it } from 'vitest';
import { play } from '../tunes/play.ts';

/** What is said in a tune with a yoke and a press, where `length` is told as these values one after the other. */
function said(length: string, values: readonly unknown[], more: Readonly<Record<string, unknown>> = {}): readonly string[] {
  let nth = 0;
  const told = (): unknown => values[Math.min(nth++, values.length - 1)];
  const { views } = play(
    { seed: 2, sd: 0.05, start: { x: -0.5, y: 0.05 }, gain: { yoke: { x: -0.2, y: 0 } }, answers: { cams: 'yoke', press: 'trained', [length]: told, ...more } },
    { until: (view) => view.chapter === 'broadheads' },
  );
  expect(nth, 'how often it was measured').toBeGreaterThan(1);
  return views.flatMap(({ say }) => say).filter((line) => line.includes('before the next draw') && line.includes('half twists'));
}

describe('a length that is measured again', () => {
  it.each([['axle-to-axle', '33 1/8', '33 3/8', 'Axle to axle: 33 1/8 in before, 33 3/8 in now.'], ['brace-height', '6 5/8', '6 3/8', 'Brace height: 6 5/8 in before, 6 3/8 in now.']])(
    '%s: is told where it lies more than 1/8 in away', (length, was, is, words) => {
      const lines = said(length, [was, is]);
      expect(lines.length).toBeGreaterThan(0);
      expect(lines[0]).toContain(words);
    });

  it('is not told within 1/8 in, nor where it was not known', () => {
    expect(said('axle-to-axle', ['33 1/8', '33 1/4'])).toEqual([]);
    expect(said('axle-to-axle', ['not known', '33 1/4'])).toEqual([]);
    expect(said('axle-to-axle', ['33 1/8', 'not known'])).toEqual([]);
  });
});
