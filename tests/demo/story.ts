// The story that the demo plays: a bow, its archer and two days, all invented. None of it was measured, and none of it may be used as a check.

import type { View } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';

export interface Story {
  readonly bow: Bow;
  /** When the first day begins, and the second one. */
  readonly mornings: readonly [Date, Date];
  /** True at the question at which the archer goes home. */
  readonly night: (view: View) => boolean;
  /** True at the question at which somebody shouts, and what is called. */
  readonly shout: { readonly at: (view: View) => boolean; readonly words: string };
}

/** Tears high and left as found. The rest lifts the tail as books say; sideways it works against the first guess, which is put back. Arrow 4 has a bad nock. */
export const STORY: Story = {
  bow: {
    seed: 1, sd: 0.05, readsTo: 1 / 16,
    start: { x: -0.6, y: 0.7 },
    gain: { 'rest-height': { x: 0, y: -10 }, 'rest-side': { x: 9, y: 0 } },
    arrows: { 4: { nock: { x: 0.1, y: 0.7 } } },
    answers: {
      'what-happened': 'person', 'arrow-count': 6, 'arrows-wanted': 'all', 'broadheads-wanted': 'never',
      'bow-name': 'Invented demo bow', 'archer-name': 'Nobody (invented)',
    },
  },
  mornings: [new Date('2030-05-04T14:00:00Z'), new Date('2030-05-05T14:00:00Z')],
  // Both axes are tuned at 7 ft, and the frame would have to be moved for the second distance.
  night: ({ chapter, ask, where }) => chapter === 'paper' && ask?.about === 'gate:backstop' && where.day === 1 && where.shots > 12,
  shout: { at: ({ ask, where }) => ask?.kind === 'tear' && where.shots === 4, words: 'someone is in front' },
};
