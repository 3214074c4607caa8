// What a practice bow's archer knows or reads off: every question whose answer does not change with what is tried. By the name of the
// fact (`about`). Gates that nothing is wrong with are passed; they need no line here.

import { massOf } from './arrows.ts';
import type { World } from './world.ts';

export type Said = string | number | boolean | readonly string[];

/** In inches, from a tape: what a measure reads with the rest or the nock moved by so much. */
const HAND = { right: -1, left: 1 } as const;

export const FACTS: Readonly<Record<string, (world: World, moved: { readonly side: number; readonly nock: number }) => Said>> = {
  'bow': () => 'another', 'which-bow': () => 'another', 'place': () => 'same',
  'release': () => 'release-aid', 'growing': () => 'grown',
  'hand': ({ bow }) => bow.hardware.hand,
  'cams': ({ bow }) => bow.hardware.cams, 'rest': ({ bow }) => bow.hardware.rest,
  'press': ({ bow }) => bow.hardware.press, 'rest-scale': ({ bow }) => bow.hardware.restScale,
  'gate:history': () => 'nothing', 'axle-clips': () => 4,
  'rated-weight': ({ bow }) => bow.measures.ratedWeight, 'peak-weight': ({ bow }) => bow.measures.peakWeight, 'scale-error': () => 1,
  'bolts-top': ({ bow }) => bow.measures.boltsOut, 'bolts-bottom': ({ bow }) => bow.measures.boltsOut, 'bolt-limit': ({ bow }) => bow.measures.boltLimit,
  'axle-to-axle': ({ bow }) => bow.measures.axleToAxle, 'brace-height': ({ bow }) => bow.measures.braceHeight,
  'nock-height': ({ bow }, { nock }) => bow.measures.nockHeight + nock,
  'centre-shot': ({ bow }, { side }) => bow.measures.centreShot + HAND[bow.hardware.hand] * side,
  'centre-shot-figure': ({ bow }) => bow.measures.centreShotFigure ?? 'not known',
  'shaft-ahead': ({ bow }) => bow.measures.shaftAhead, 'blades-ahead': () => 2,
  'arrow-count': ({ set }) => set.arrows.length, 'gate:arrows-flexed': () => 'all',
  'arrows-in-set': ({ set }) => set.arrows.length, 'arrows-set-aside': () => 0,
  'arrow-mass': ({ set }) => Math.round(massOf(set.parts, set.vanes)), 'mass-way': () => 'weigh',
  'shaft-grains': ({ set }) => set.parts.shaftGrains, 'shaft-length': ({ set }) => set.parts.length, 'point-grains': ({ set }) => set.parts.point,
  'insert-grains': ({ set }) => set.parts.insert, 'nock-grains': ({ set }) => set.parts.nock,
  'vane-count': ({ set }) => set.vanes, 'vane-grains': ({ set }) => set.parts.vane, 'wrap-grains': () => 0,
  'vanes': ({ set }) => (set.vanes === 4 ? 'four-even' : 'three'), 'nock-turns': () => 'turns', 'turned-clears': () => 'clears',
  'turn-the-set': () => 'done', 'nock-stays': () => 1, 'paper-again': () => 'now',
  'method': () => 'unfletched',
  'use': ({ archer }) => archer.use, 'broadheads-wanted': ({ archer }) => archer.heads, 'broadheads-farther': () => 'enough',
  // Three arrows at 20 yd lie within some 2.4 spreads of one shot, by the widest pair; an ordinary archer's is 0.93 in.
  'group-at-20': ({ archer }) => Math.max(1, Math.round(4 * 2.4 * 0.93 * archer.noise) / 4),
  'arrows-wanted': ({ archer }) => (archer.shootsAll ? 'all' : 'later'),
  'face': () => 'same', 'cam-range': () => 'known',
  'finishing': () => 'leave', 'accept': () => 'accept',
  'what-happened': () => 'nothing', 'what-was-changed': () => 'nothing',
  'figures-wanted': () => 'no',
  'arrow-length': ({ set }) => set.parts.length, 'balance-point': ({ set }) => Math.round(set.parts.length * 0.61 * 8) / 8,
  'arrow-speed': () => 'not known', 'second-mass': () => 'not known', 'second-speed': () => 'not known',
  'holding-weight': () => 'not known', 'draw-mark': () => 'not known',
  'rated-speed': () => 'not known', 'spine-printed': () => 'not known', 'spine-older': () => 'not known',
  'bow-name': ({ seed }) => `Practice bow ${seed}`, 'archer-name': () => 'not known',
};
