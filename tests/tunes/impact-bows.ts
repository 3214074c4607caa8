// Bows that are in tune on paper, or shot without it, and where their broadheads or unfletched shafts land. All invented.
// Gains are inches at 20 yd for an inch of the adjustment; a plumb line's are inches for each yard beyond 20.

import type { StoryBow } from './numbered-archer.ts';

/** On paper it needs nothing; the archer hunts, shoots broadheads now, and goes back as far as the coach offers. */
const HUNTER = {
  'use': 'hunting', 'broadheads-wanted': 'fixed', 'broadheads-farther': 'farther', 'group-at-20': 1, 'cams': 'yoke', 'press': 'shop',
} as const;
const STEADY = 0.25;

const hunter = (seed: number, groups: NonNullable<StoryBow['groups']>, answers: StoryBow['answers'] = {}): StoryBow =>
  ({ seed, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {}, groups, answers: { ...HUNTER, ...answers } });

/** Broadheads low and right of the field points; two steps of 1/32 in each way bring them together. */
export const lowAndRight = (seed: number): StoryBow =>
  hunter(seed, { start: { x: 1.6, y: -2 }, gain: { 'rest-height': { x: 0, y: 30 }, 'rest-side': { x: 24, y: 0 } }, sd: STEADY });

/** Four times as wide as the field points, centre with theirs. */
export const wildHeads = (seed: number): StoryBow =>
  hunter(seed, { start: { x: 0, y: 0 }, gain: { 'rest-height': { x: 0, y: 30 } }, sd: 0.4, sdSecond: 1.6 });

export const together = (seed: number): StoryBow => hunter(seed, { start: { x: 0.1, y: -0.15 }, gain: {}, sd: STEADY });

/** Both kinds land 4 in low and 1.5 in left of their dots: the sight's affair, not the tune's. */
export const bothLow = (seed: number): StoryBow => hunter(seed, { start: { x: 0, y: -0.1 }, gain: {}, sd: STEADY, both: { x: -1.5, y: -4 } });

/** Low by what blades brake, and a little more. */
export const draggedLow = (seed: number): StoryBow => hunter(seed, { start: { x: 0, y: -0.15 }, gain: {}, sd: STEADY });

/** Heads that open, held shut: nothing brakes more than a field point, so that the same 0.1 in low is all that is left. */
export const heldShut = (seed: number): StoryBow => hunter(seed, { start: { x: 0.1, y: -0.1 }, gain: {}, sd: STEADY }, { 'broadheads-wanted': 'mechanical' });

/** The rest does nothing to where the broadheads land. */
export const deafRest = (seed: number): StoryBow => hunter(seed, { start: { x: 1.8, y: 0 }, gain: {}, sd: STEADY });

const noPaper = (seed: number, method: string, more: Partial<StoryBow>, answers: StoryBow['answers'] = {}): StoryBow => ({
  seed, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {}, ...more,
  answers: { 'use': 'target', 'cams': 'two-track', 'press': 'none', 'gate:backstop': 'no-paper', method, 'group-at-20': 1.5, ...answers },
});

/** Unfletched shafts low and right of the fletched ones. */
export const unfletchedLow = (seed: number): StoryBow => noPaper(seed, 'unfletched', {
  groups: { start: { x: 2.2, y: -2.4 }, gain: { 'rest-height': { x: 0, y: 36 }, 'rest-side': { x: 32, y: 0 } }, sd: 0.4, sdSecond: 0.5 },
});

/** Drifts to the right of the line, and the rest must go right: the first guess is wrong. */
export const slanted = (seed: number): StoryBow => noPaper(seed, 'plumb-line', { plumb: { drift: 0.2, gain: { 'rest-side': -3.2 }, sd: 0.3 } }, { 'group-at-20': 1 });

export const straight = (seed: number): StoryBow => noPaper(seed, 'plumb-line', { plumb: { drift: 0.01, gain: {}, sd: 0.3 } }, { 'group-at-20': 1 });
