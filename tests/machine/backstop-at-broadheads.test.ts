// "No paper frame" is an answer to what stops the arrow where a frame might stand: at a target for broadheads nobody is asked about one.

import { expect, it } from 'vitest';
import { play } from '../tunes/play.ts';

it('no paper frame is offered in front of the first tear, and not where broadheads are shot', () => {
  const bow = { start: { x: 0, y: 0.0625 }, gain: {}, sd: 0.05, seed: 1, groups: { start: { x: 0, y: 0 }, gain: {}, sd: 0.3 }, answers: { 'broadheads-wanted': 'fixed', 'broadheads-farther': 'farther', 'group-at-20': 1 } };
  const { views } = play(bow, { most: 500 });
  const offered = views.flatMap(({ ask, chapter }) => (ask?.about === 'gate:backstop' && ask.kind === 'choice' ? [`${chapter}: ${ask.options.map(({ value }) => value).join(' ')}`] : []));
  expect(offered[0]).toBe('safety: solid no-paper doubtful');
  expect(offered.filter((one) => one.startsWith('broadheads'))).not.toEqual([]);
  expect(offered.filter((one) => one.startsWith('broadheads') && one.includes('no-paper'))).toEqual([]);
});
