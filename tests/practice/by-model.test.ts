// The quick table of flight and the rigid arrow itself: the same shot where pushes are small, and the model's own beyond.

import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/archery/shots.ts';
import { degrees, feet, fps, radiansPerSecond, yards } from '../../src/maths/units.ts';
import { byModel } from '../../src/practice/by-model.ts';
import { STRAIGHT, type Departure } from '../../src/practice/departure.ts';
import { byTable, HEADS, type Flight } from '../../src/practice/flight.ts';
import { lessonBow } from '../../src/practice/lessons.ts';
import { KNOBS, playPractice } from './play.ts';

const model = byModel();
const leaves = (angle: number, rate: number): Departure => ({
  side: { angle: degrees(angle), rate: radiansPerSecond(rate) }, height: { angle: degrees(-angle / 2), rate: radiansPerSecond(rate / 2) },
});
const SMALL = [[0.3, 0], [0, 0.3], [-0.2, 0.3], [0.3, 0.2]] as const;
const near = (told: Point, flown: Point, give: number, share: number): void => {
  for (const axis of ['x', 'y'] as const) expect(Math.abs(told[axis] - flown[axis])).toBeLessThan(give + share * Math.abs(flown[axis]));
};

describe('a small push', () => {
  it.each([7, 9, 15])('tears alike at %i ft from the bow hand', (distance) => {
    for (const speed of [265, 280, 295]) for (const [angle, rate] of SMALL) {
      const tears = (flight: Flight) => flight.tear(leaves(angle, rate), fps(speed), feet(distance));
      near(tears(byTable), tears(model), 0.005, 0.03);
    }
  });

  // The table is straight where the arrow is not: it takes small pushes for 5 to 10 % more than they are, those of a bare shaft for 20 % more or less.
  it.each(HEADS)('lands alike with %s, from 20 to 40 yd', (flying) => {
    const share = flying === 'unfletched' ? 0.2 : 0.11;
    for (const distance of [20, 30, 40]) for (const [angle, rate] of SMALL) {
      const lands = (flight: Flight) => flight.impact(leaves(angle, rate), flying, fps(280), fps(280), yards(distance));
      near(lands(byTable), lands(model), 0.04, share);
    }
  });

  it('a sight is set so that what leaves straight lands on its dot', () => {
    for (const distance of [20, 40]) {
      const { x, y } = model.impact(STRAIGHT, 'field', fps(280), fps(280), yards(distance));
      expect([Math.abs(x) < 1e-6, Math.abs(y) < 1e-6]).toEqual([true, true]);
    }
  });
});

it('a large push goes farther aside than the table says', () => {
  const aside = (flight: Flight): number => flight.impact(leaves(0, 2.5), 'field', fps(280), fps(280), yards(20)).x;
  expect(aside(model) / aside(byTable)).toBeGreaterThan(1.1);
});

it('a lesson says the same by either', () => {
  const world = lessonBow('it is the archer', 1, KNOBS);
  const told = (flight: Flight): readonly string[] => playPractice(world, { flight }).findings.map((finding) => `${finding.kind} ${'result' in finding ? finding.result : ''}`);
  expect(told(byModel())).toEqual(told(byTable));
});
