// Where walks begin: new tunes, of new bows and of known ones, and tunes that are under way in each chapter. Each is played by a
// sensible archer first, and kept.

import type { Content } from '../../src/content/types.ts';
import type { Ask, Carried, Fact, View } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import type { Bow } from '../tunes/archer.ts';
import { play } from '../tunes/play.ts';

const ADDED_UP: Bow['answers'] = {
  'arrow-mass': 'not known', 'point-grains': ({ suggestion }: Partial<Ask>) => (suggestion === undefined ? 25 : 100), 'figures-wanted': 'yes', 'second-mass': 'not known',
};

export const BOWS: readonly Bow[] = [
  { start: { x: 0.3, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 }, 'nock-height': { x: 0, y: 6 } }, sd: 0.1, seed: 3, answers: { 'centre-shot': '25/32', 'arrows-set-aside': 2, method: 'unfletched' }, groups: { start: { x: 0, y: -2 }, gain: { 'rest-height': { x: 0, y: 24 } }, sd: 0.8 } },
  { start: { x: -0.6, y: -0.4 }, gain: { 'rest-height': { x: 0, y: -4 }, 'yoke': { x: -0.1, y: 0.05 } }, sd: 0.08, seed: 5, answers: { press: 'trained', hand: 'left', 'arrows-set-aside': 1, method: 'plumb-line' }, plumb: { drift: 0.15, gain: {}, sd: 1 } },
  // Nobody has a scale: the arrow is added up. With its first point the sum would pass, and the least that it may be does not; with a
  // heavier one it does. And the figures for the card are wanted.
  { start: { x: 0.7, y: 0.1 }, gain: { 'cam-screw': { x: 0.3, y: 0 } }, sd: 0.15, seed: 8, answers: { ...ADDED_UP, 'cams': 'screw-adjust', 'rest-scale': 'coarse', 'bolts-top': 0, 'bolts-bottom': 0, 'arrows-set-aside': 1, method: 'none' }, groups: { start: { x: 3, y: 0 }, gain: { 'rest-side': { x: 20, y: 0 } }, sd: 0.6 } },
  { start: { x: 0.02, y: 0.05 }, gain: {}, sd: 0.06, seed: 13, answers: { 'centre-shot': '23/32', 'nock-height': '-1/16', 'arrows-set-aside': 1, method: 'unfletched', 'broadheads-wanted': 'fixed', 'arrows-wanted': 'all' }, arrows: { 3: { error: { x: 0.6, y: 0 }, turns: { vanes: 3 } }, 5: { error: { x: 0, y: 0.7 }, look: 'crack' } }, groups: { start: { x: 0.5, y: -0.5 }, gain: {}, sd: 0.7, sdSecond: 1 } },
  // Still growing, with a short draw: everything that is not offered must stay away.
  { start: { x: 0.4, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 } }, sd: 0.1, seed: 21, answers: { growing: 'growing', 'shaft-ahead': 2.5, press: 'trained', 'arrows-set-aside': 1, method: 'plumb-line', 'arrows-wanted': 'all' }, plumb: { drift: 0.1, gain: {}, sd: 1 } },
];

/** Arrows that all err by as much, each to another side; half of the errors go round with the nock. */
const UNLIKE: NonNullable<Bow['arrows']> = Object.fromEntries(Array.from({ length: 12 }, (_, i) => {
  const error = { x: 0.16 * Math.cos(2.4 * i), y: 0.16 * Math.sin(2.4 * i) };
  return [`${i + 1}`, i % 2 === 0 ? { error, turns: { vanes: 3 } } : { error }];
}));

/** The same bow with an archer who shoots broadheads now, and does not wait for a frame. */
const atTarget = (bow: Bow, answers: Bow['answers'] = {}): Bow =>
  ({ ...bow, start: { x: 0.03, y: 0.06 }, answers: { ...bow.answers, 'broadheads-wanted': 'fixed', ...(bow.answers?.['method'] === 'none' ? { method: 'plumb-line' } : {}), ...answers } });

interface Begin { readonly name: string; readonly play: (bow: Bow, content: Content) => readonly Fact[] }

const played = (name: string, until: (view: View) => boolean, as: (bow: Bow) => Bow = (bow) => bow): Begin =>
  ({ name, play: (bow, content) => play(as(bow), { until, content }).store.facts });

export const BEGINS: readonly Begin[] = [
  { name: 'a new bow', play: () => [] },
  { name: 'a known bow', play: () => [] },
  played('the first sheet', (v) => v.ask?.kind === 'tear'),
  played('the first advice', (v) => v.advice?.kind === 'adjust'),
  played('after a first change', (v) => (Object.keys(v.bow).length > 0 && v.ask?.kind === 'tear') || v.chapter === 'finish'),
  played('the side', (v) => (v.ask?.kind === 'tear' && v.ask.axis === 'side') || v.chapter === 'finish'),
  played('the first put-back', (v) => v.advice?.kind === 'put-back' || v.chapter === 'finish'),
  played('a target, or the finish', (v) => v.chapter === 'broadheads' || v.chapter === 'finish'),
  played('broadheads', (v) => v.ask?.kind === 'impact' || v.chapter === 'finish', (bow) => atTarget(bow)),
  played('broadheads, sideways', (v) => (v.chapter === 'broadheads' && v.ask?.kind === 'amount' && v.advice?.knob === 'rest-side') || v.chapter === 'finish', (bow) => ({ ...atTarget(bow), groups: { start: { x: 3, y: 0 }, gain: { 'rest-side': { x: 20, y: 0 } }, sd: 0.4 } })),
  played('the yoke, told', (v) => (v.ask?.kind === 'amount' && v.advice?.knob === 'yoke') || v.chapter === 'finish', (bow) => ({ ...bow, start: { x: -0.9, y: 0.05 }, gain: { yoke: { x: 0.15, y: 0.1 } }, answers: { ...bow.answers, cams: 'yoke', press: 'trained' } })),
  played('no paper', (v) => v.ask?.kind === 'impact', (bow) => atTarget(bow, { 'gate:backstop': 'no-paper' })),
  played('each arrow', (v) => v.ask?.kind === 'tear' && v.ask.arrow !== null, (bow) => ({ ...bow, start: { x: 0.03, y: 0.06 }, answers: { ...bow.answers, 'arrows-wanted': 'all', 'broadheads-wanted': 'never' } })),
  played('all nocks', (v) => v.ask?.step === 'turn-the-set' || v.chapter === 'finish', (bow) => ({
    ...bow, start: { x: 0.03, y: 0.06 }, sd: 0.05, arrows: UNLIKE, answers: { ...bow.answers, 'arrows-wanted': 'all', 'broadheads-wanted': 'never' },
  })),
  played('the finish', (v) => v.chapter === 'finish'),
];

const kept = new Map<string, readonly Fact[]>();

/** The lines that a walk of this bow begins with. */
export function beginning(content: Content, bow: number, at: number): readonly Fact[] {
  const key = `${bow} ${at}`;
  const known = kept.get(key) ?? BEGINS[at]?.play(BOWS[bow]!, content) ?? [];
  kept.set(key, known);
  return known;
}

/** What the bow of the second beginning brings along. */
export function knownOf(content: Content, bow: number): readonly Carried[] {
  const carried = carriedOf(content, beginning(content, bow, BEGINS.length - 1));
  return carried === null ? [] : [carried];
}
