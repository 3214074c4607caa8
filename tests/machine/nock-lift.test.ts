// A nock out of its range is set right from where it stands now: by the newest measure, and by what was moved after it.

import { describe, expect, test } from 'vitest';
import { choose } from '../../src/machine/loop/advise.ts';
import type { State } from '../../src/machine/state.ts';
import { content, stateOf } from './state-of.ts';

const HARDWARE = { cams: 'yoke', rest: 'drop-away-cable', press: 'shop', 'rest-scale': 'fine-screw' };

/** Measured at `height` after its first move, and moved again since. */
function measuredBetween(height: number, before: number, after: number): State {
  const state = stateOf({
    answers: { ...HARDWARE, 'nock-height': height }, moves: [['nock-height', before], ['nock-height', after]],
    sets: [{ shots: [[0, 0.6], [0, 0.6], [0, 0.6]] }],
  });
  const measured = state.answers['nock-height'];
  return { ...state, answers: { ...state.answers, ...(measured === undefined ? {} : { 'nock-height': { ...measured, seq: 1000 } }) } };
}

const told = (state: State) => {
  const choice = choose(content, state, 'height');
  return choice.kind === 'advice' ? [choice.knob, choice.advice.to?.value] : [choice.kind];
};

describe('a nock that was measured below level', () => {
  test('and was brought back since is not lifted once more', () => {
    expect(told(measuredBetween(-11 / 16, -3 / 4, 3 / 4))[0]).not.toBe('nock-height');
  });

  test('and stands there still is lifted to level', () => {
    expect(told(stateOf({ answers: { ...HARDWARE, 'nock-height': -3 / 32 }, sets: [{ shots: [[0, 0.6], [0, 0.6], [0, 0.6]] }] }))).toEqual(['nock-height', 3 / 32]);
  });
});
