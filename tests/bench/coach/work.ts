// A piece of the bench's work: some bows of one world and one seed, each played by everybody. Workers do nothing else.

import type { Content } from '../../../src/content/types.ts';
import type { Fact } from '../../../src/machine/types.ts';
import { Coach, TUNED, type CoachOutcome } from './coach.ts';
import type { Outcome } from './hands.ts';
import { playRival, RIVAL_NAMES, type RivalName } from './rules.ts';
import { knobBow, WORLDS, type WorldName } from './world.ts';

export interface Piece { readonly world: WorldName; readonly seed: number; readonly from: number; readonly to: number }

export type ByRival = ReadonlyMap<RivalName, readonly Outcome[]>;

export interface Done {
  readonly coach: readonly CoachOutcome[];
  readonly rivals: ByRival;
}

/** What all pieces share: content as it is shipped, the lines up to the first shot, and who plays beside the coach. */
export interface Given { readonly content: Content; readonly prepared: readonly Fact[]; readonly rivals: readonly RivalName[] }

export function doPiece({ content, prepared, rivals: names }: Given, { world: name, seed, from, to }: Piece): Done {
  const world = WORLDS[name];
  const coach = new Coach(content, prepared, world);
  const bows = Array.from({ length: to - from }, (_, i) => knobBow(world, seed, from + i));
  return { coach: bows.map((bow) => coach.play(bow)), rivals: new Map(names.map((rival) => [rival, bows.map((bow) => playRival(rival, world, bow, TUNED))])) };
}

/** One after the other, whichever was done first. */
export const together = (pieces: readonly Done[]): Done => ({
  coach: pieces.flatMap(({ coach }) => coach),
  rivals: joined(pieces.map(({ rivals }) => rivals)),
});

const joined = (parts: readonly ByRival[]): ByRival =>
  new Map(RIVAL_NAMES.flatMap((rival) => (parts.some((part) => part.has(rival)) ? [[rival, parts.flatMap((part) => part.get(rival) ?? [])] as const] : [])));
