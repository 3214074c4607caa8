// Cases that end in a step to a side, in a mirror: the other hand, every shot on the other side. Each turn is the mirror of the same turn:
// the same questions, the same adjustment by the same amount, as far to the other side.

import { readdirSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { View } from '../../src/machine/types.ts';
import { otherSide } from '../properties/mirrored.ts';
import { readCases } from './case.ts';
import { Played } from './play-case.ts';

const files = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.yaml'));
const toASide = files.flatMap((file) => readCases(`./${file}`)).filter(({ next }) => 'way' in next && otherSide(next.way) !== next.way);

/** What mirrors, turned back, and what does not. */
const turn = ({ type, ask, advice }: View, mirrored: boolean): readonly unknown[] => {
  const way = advice?.direction ?? '';
  return [type, ask?.about, ask?.kind === 'tear' ? [ask.shots, ask.distance, ask.arrow] : null, advice?.kind, advice?.knob, mirrored ? otherSide(way) : way, advice?.amount, advice?.trial];
};

it('there are enough of them for this to mean anything', () => expect(toASide.length).toBeGreaterThan(25));

it.each(toASide.map((given) => [given.situation, given] as const))('%s: for the other hand it is the mirror', (_situation, given) => {
  const [one, other] = [new Played(given), new Played(given, true)];
  one.run();
  other.run();
  expect(other.views.map((view) => turn(view, true))).toEqual(one.views.map((view) => turn(view, false)));
});
