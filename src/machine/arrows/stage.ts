// One sentence after each round: how it stands, and what comes next.

import type { Deciding } from '../deciding.ts';
import { blameOf, judgeRounds } from './judge.ts';
import { FEWEST_ROUNDS, roundsOf, stageOf, standOutAtOnce, type Stage } from './plan.ts';
import { arrowsInPlay, roundShots } from './shots.ts';
import { arrowsInWords, offInWords } from './words.ts';

const nameOf = (stage: Stage): string => (stage.kind === 'round' ? `round ${stage.round}` : stage.kind);

/** Says how it stands where a round was just completed; true then. */
export function sayStage(d: Deciding): boolean {
  const { arrows } = d.state.notes;
  const rounds = roundsOf(d.state);
  const shots = roundShots(d.state);
  const stage = stageOf(rounds, shots);
  const name = nameOf(stage);
  if (name === arrows.told) return false;
  d.add({ loop: { arrows: { ...arrows, told: name } } });
  if (arrows.told === '') return false;
  const suspects = standOutAtOnce(rounds.play, shots, rounds.near);
  if (arrows.told === 'round 1') firstRound(d, suspects);
  else if (arrows.told === 'again' && judgeRounds(d.state)?.tooMany !== true) for (const arrow of suspects) shotAgain(d, arrow);
  else if (arrows.told === 'round 2') secondRound(d, stage);
  return true;
}

function firstRound(d: Deciding, suspects: readonly string[]): void {
  if (suspects.length === 0) d.say('arrows-first-near', { near: roundsOf(d.state).near.toFixed(2) });
  else if (suspects.length === 1) d.say('arrows-first-one', { which: arrowsInWords(d.content, suspects), off: offInWords(judgeRounds(d.state)?.off(suspects[0] ?? '') ?? { x: 0, y: 0 }) });
  else d.say('arrows-first-some', { which: arrowsInWords(d.content, suspects) });
}

function shotAgain(d: Deciding, arrow: string): void {
  const verdict = blameOf(d.state, arrow);
  if (verdict !== null) d.say(AGAIN[verdict], { arrow });
}

const AGAIN = { 'the arrow': 'arrow-again-arrow', 'not the arrow': 'arrow-again-archer', 'reference moved': 'arrow-again-reference' } as const;

// Whether a third follows, and why: it is shot only where it can tell something.
function secondRound(d: Deciding, stage: Stage): void {
  const judged = judgeRounds(d.state);
  const farthest = arrowsInPlay(d.state).toSorted((a, b) => size(judged?.off(b)) - size(judged?.off(a)))[0];
  if (judged === null || farthest === undefined) return;
  const holes = { round: FEWEST_ROUNDS, arrow: farthest, off: offInWords(judged.off(farthest)) };
  if (stage.kind === 'round') d.say('arrows-round', holes);
  else if (stage.kind === 'shot') d.say('arrows-two-enough', holes);
}

const size = (off: { readonly x: number; readonly y: number } | undefined): number => Math.hypot(off?.x ?? 0, off?.y ?? 0);
