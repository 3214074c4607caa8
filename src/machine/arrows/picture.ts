// The arrows side by side, for the picture: where each one's tail goes, and which of them stands out.

import type { State } from '../state.ts';
import type { ArrowsPicture, Tear } from '../types.ts';
import { judgeRounds, standingOf } from './judge.ts';
import { mendingShots, roundShots } from './shots.ts';

/** Null before the first shot at a numbered arrow that counts. */
export function arrowsPicture(state: State): ArrowsPicture | null {
  const shots = [...roundShots(state), ...mendingShots(state)].filter((shot) => shot.good);
  if (shots.length === 0) return null;
  const judged = judgeRounds(state);
  const arrows = [...new Set(shots.map(({ arrow }) => arrow))].toSorted((a, b) => Number(a) - Number(b));
  return {
    kind: 'arrows',
    typical: judged?.typical ?? null,
    arrows: arrows.map((arrow) => {
      const own = standingOf(state, arrow, undefined, judged);
      // An arrow whose nock was just changed is drawn as it was, until it is shot again.
      const all = shots.filter((shot) => shot.arrow === arrow).flatMap(({ tear }) => (tear === null ? [] : [tear]));
      return { arrow, mean: own?.mean ?? meanOf(all), shots: own?.shots ?? all.length, standsOut: judged?.odd.includes(arrow) === true && own?.near !== true };
    }),
  };
}

const meanOf = (tears: readonly Tear[]): Tear => ({
  x: tears.reduce((sum, tear) => sum + tear.x, 0) / Math.max(1, tears.length),
  y: tears.reduce((sum, tear) => sum + tear.y, 0) / Math.max(1, tears.length),
});
