// A shot is told by its tear in paper, or by where it landed from the dot that it was aimed at: what differs between the two.

import type { Ask, Tear } from '../machine/types.ts';
import { formatImpact, formatTail } from './words.ts';

export interface ShotKind {
  /** Inches that an arrow key moves it, that Shift and an arrow key move it, and as far as they go. */
  readonly step: number;
  readonly bigStep: number;
  readonly edge: number;
  readonly bigWords: string;
  /** What the arrow keys move. */
  readonly moved: string;
  /** Said when it is to be called. */
  readonly beforeLooking: string;
  readonly seen: string;
  readonly like: string;
  readonly onTheSpot: string;
  readonly format: (at: Tear) => string;
}

const TEAR: ShotKind = {
  step: 1 / 16, bigStep: 1 / 4, edge: 4, bigWords: 'by 1/4', moved: 'tail', beforeLooking: 'Before you look at the hole',
  seen: 'Read it from the shooter\'s side', like: 'high 1/2 left 1/8', onTheSpot: 'For a clean hole type 0 0', format: formatTail,
};

const IMPACT: ShotKind = {
  step: 1 / 4, bigStep: 1, edge: 24, bigWords: 'by 1 in', moved: 'star', beforeLooking: 'Before you look where it is',
  seen: 'Inches from its own aiming dot', like: 'high 3 left 1 1/2', onTheSpot: 'On the dot itself: type 0 0', format: formatImpact,
};

export const shotKind = (ask: Ask | null): ShotKind => (ask?.kind === 'impact' ? IMPACT : TEAR);
