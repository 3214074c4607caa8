// The figures that are worked out for the card: no gate, no adjustment and no judgement hangs on any of them.

import type { Trigger } from '../../content/types.ts';
import { oneOf } from '../../maths/closed.ts';

export const FIGURES = [
  'arrow-length', 'balance-point', 'arrow-speed', 'second-mass', 'second-speed', 'holding-weight', 'draw-mark', 'rated-speed', 'spine-printed', 'spine-older',
] as const;
export type Figure = (typeof FIGURES)[number];
export const isFigure = oneOf(FIGURES);

const OF_ARROW: readonly Figure[] = ['arrow-length', 'balance-point', 'arrow-speed', 'spine-printed', 'spine-older'];
const OF_PULL: readonly Figure[] = ['arrow-speed', 'second-mass', 'second-speed', 'holding-weight'];
const OF_DRAW: readonly Figure[] = [...OF_PULL, 'draw-mark'];

/** What no longer holds of them once this happened: they become suggestions, and are asked anew where they are wanted. */
const GONE_WITH: Partial<Record<Trigger, readonly Figure[]>> = {
  'arrow-changed': OF_ARROW,
  'limb-bolts': OF_PULL,
  'yoke': OF_DRAW, 'cam-spacers': OF_DRAW, 'cam-sync': OF_DRAW, 'string-replaced': OF_DRAW, 'part-replaced': OF_DRAW, 'released-by-dealer': OF_DRAW,
};

export const figuresGoneWith = (trigger: Trigger): readonly Figure[] => GONE_WITH[trigger] ?? [];
