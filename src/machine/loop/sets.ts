// Which shots belong together: the same thing shot, same epoch, same distance, same settings.

import type { Axis, KnobId } from '../../content/types.ts';
import { once } from '../../maths/once.ts';
import { feet, type Feet } from '../../maths/units.ts';
import { settingsOf, type Shot, type ShotSet, type State } from '../state.ts';
import type { SetKind } from '../notes.ts';
import type { Tear } from '../types.ts';

/** Bow hand to paper in feet: where moves are decided, and where they are confirmed. */
export const FIRST_DISTANCE = feet(7);
export const SECOND_DISTANCE = feet(9);

export const otherAxis = (axis: Axis): Axis => (axis === 'height' ? 'side' : 'height');

export const on = (axis: Axis, tear: Tear): number => (axis === 'height' ? tear.y : tear.x);

export const goodShots: (set: ShotSet) => readonly Shot[] = once((set: ShotSet) => set.shots.filter((shot) => shot.good));

export const settingKey = (settings: Readonly<Partial<Record<KnobId, number>>>, except?: KnobId): string =>
  Object.entries(settings).filter(([knob, value]) => knob !== except && value !== 0).map(([k, v]) => `${k}=${v}`).sort().join(' ');

/** The set being shot; null before its first shot is asked for at these settings. */
export function currentSet(state: State): ShotSet | null {
  const last = state.sets.at(-1);
  const { of, distance, epoch } = state.notes;
  return last !== undefined && last.of === of && last.distance === distance && last.epoch === epoch ? last : null;
}

/** What is measured now. Single arrows are read from paper, too. */
export const subjectOf = (state: State): Exclude<SetKind, 'arrows'> => (state.notes.of === 'arrows' ? 'paper' : state.notes.of);

/** Sets of what is measured that count: not from before something was replaced or found, and not scattered. */
export const countingSets = (state: State, of: SetKind = subjectOf(state)): readonly ShotSet[] =>
  state.sets.filter((set) => set.of === of && set.epoch > state.notes.forgetBefore && !state.notes.scattered.includes(set.id));

/** Good shots at the present setting and distance, of this epoch; `without` leaves one set out. */
export const shotsHere = (state: State, without?: number): readonly Shot[] => shotsFrom(state, state.notes.distance, subjectOf(state), without);

/** The same from another distance, or of another kind. */
export function shotsFrom(state: State, distance: Feet, of: SetKind, without?: number): readonly Shot[] {
  const key = settingKey(settingsOf(state.moves));
  return countingSets(state, of)
    .filter((s) => s.epoch === state.notes.epoch && s.distance === distance && s.id !== without && settingKey(s.settings) === key)
    .flatMap(goodShots);
}

export const settingNow = (state: State, knob: KnobId): number => settingsOf(state.moves)[knob] ?? 0;
