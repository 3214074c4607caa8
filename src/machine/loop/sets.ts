// Which shots belong together: same epoch, same distance, same settings.

import type { Axis, KnobId } from '../../content/types.ts';
import { settingsOf, type Shot, type ShotSet, type State } from '../state.ts';
import type { Tear } from '../types.ts';

/** Bow hand to paper in feet: where moves are decided, and where they are confirmed. */
export const FIRST_DISTANCE = 7;
export const SECOND_DISTANCE = 9;

/** "Tuned" per axis, inches. Gravity alone reads a little low, and a little high is safe for the vanes. */
export const TOLERANCE: Readonly<Record<Axis, { readonly low: number; readonly high: number; readonly aim: number }>> = {
  height: { low: -1 / 8, high: 1 / 4, aim: 1 / 16 },
  side: { low: -1 / 4, high: 1 / 4, aim: 0 },
};

export const on = (axis: Axis, tear: Tear): number => (axis === 'height' ? tear.y : tear.x);

export const goodShots = (set: ShotSet): readonly Shot[] => set.shots.filter((shot) => shot.good);

export const settingKey = (settings: Readonly<Partial<Record<KnobId, number>>>, except?: KnobId): string =>
  Object.entries(settings).filter(([knob, value]) => knob !== except && value !== 0).map(([k, v]) => `${k}=${v}`).sort().join(' ');

/** The set being shot; null before its first shot is asked for at these settings. */
export function currentSet(state: State): ShotSet | null {
  const last = state.sets.at(-1);
  return last !== undefined && last.distance === state.notes.distance && last.epoch === state.notes.epoch ? last : null;
}

/** Good shots of the present set. */
export const taken = (state: State): number => {
  const set = currentSet(state);
  return set === null ? 0 : goodShots(set).length;
};

/** Sets that count: not from before something was replaced or found, and not scattered. */
export const countingSets = (state: State): readonly ShotSet[] =>
  state.sets.filter((set) => set.epoch > state.notes.forgetBefore && !state.notes.scattered.includes(set.id));

/** Good shots at the present setting and distance, of this epoch; `without` leaves one set out. */
export function shotsHere(state: State, without?: number): readonly Shot[] {
  const key = settingKey(settingsOf(state.moves));
  return countingSets(state)
    .filter((s) => s.epoch === state.notes.epoch && s.distance === state.notes.distance && s.id !== without && settingKey(s.settings) === key)
    .flatMap(goodShots);
}

export const settingNow = (state: State, knob: KnobId): number => settingsOf(state.moves)[knob] ?? 0;

/** Axes that were tuned at the first distance. */
export const tunedAxes = (state: State): readonly Axis[] =>
  (['height', 'side'] as const).filter((axis) => state.notes.axis[axis]?.result === 'tuned');
