// The bows of the tunes and their archers, all invented. Gains are inches of tear for an inch, or for a half-twist pair.

import type { StoryBow } from './numbered-archer.ts';

/** A good shot's spread, inches on each axis. */
const STEADY = 0.04;

/** A yoke bow whose rest works the other way than the first guess, and not far enough: the yoke is the shop's. */
export const wrongSide = (seed: number): StoryBow => ({
  seed, sd: STEADY, start: { x: -0.75, y: 0.06 }, gain: { 'rest-side': { x: 7, y: 0 } },
  answers: { cams: 'yoke', press: 'shop' },
});

/**
 * A yoke bow on its archer's own press: a little high, its rest 3/32 in from the maker's figure, and after the first two
 * half-twist pairs some 0.17 in left, which is in tolerance and worth a finishing step.
 */
export const ownPress = (seed: number): StoryBow => ({
  seed, sd: STEADY, start: { x: -0.48, y: 0.5 },
  gain: { 'rest-side': { x: -1, y: 0 }, 'rest-height': { x: 0, y: -7 }, 'yoke': { x: -0.2, y: 0.02 } },
  answers: { 'cams': 'yoke', 'press': 'trained', 'centre-shot': '29/32', 'centre-shot-figure': '13/16', 'finishing': 'one more step' },
});

/** A left-handed archer's two-track bow: its rest answers as the first guess says, and does not reach; no press. */
export const twoTrackLeft = (seed: number): StoryBow => ({
  seed, sd: STEADY, start: { x: 0.75, y: 0.06 }, gain: { 'rest-side': { x: -4, y: 0 } },
  answers: { hand: 'left', cams: 'two-track', press: 'none' },
});

export const inTune = (seed: number): StoryBow => ({
  seed, sd: STEADY, start: { x: 0.03, y: 0.06 }, gain: {}, answers: { cams: 'screw-adjust', press: 'none' },
});

/** Brought with three faults, one after the other: derailed string, a loop that does not hold, unequal bolts. Then in tune. */
export const mended = (seed: number): StoryBow => ({
  ...inTune(seed),
  answers: { cams: 'hybrid', press: 'shop' },
  inTurn: {
    'gate:history': ['derailed', 'nothing'],
    'gate:bow-at-rest': [['bow-loop'], 'all true'],
    'gate:bow-loop': ['false', 'true'],
    'bolts-bottom': [2, 1],
  },
});

/** An archer whose hand tears every shot another way, much further than the bow does. */
export const scatters = (seed: number): StoryBow => ({
  seed, sd: 0.15, start: { x: -0.05, y: 0.1 }, gain: { 'rest-side': { x: -4, y: 0 }, 'rest-height': { x: 0, y: -6 } },
  hand: [{ x: -1, y: 0.7 }, { x: 0.9, y: 0.3 }, { x: 0.1, y: -1 }],
  answers: { cams: 'yoke', press: 'shop' },
});
