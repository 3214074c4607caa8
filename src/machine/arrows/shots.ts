// Which arrows are in the set, and which of their shots count: those at the bow's present settings, since the set was begun.

import { oneOf } from '../../maths/closed.ts';
import { chosen, measured } from '../guards.ts';
import { settingKey } from '../loop/sets.ts';
import { once } from '../../maths/once.ts';
import type { ArrowNotes } from '../notes.ts';
import { settingsOf, type ShotSet, type State } from '../state.ts';
import type { Tear } from '../types.ts';

/** The three that the bow was tuned with: here they watch the archer, and are compared like any other. */
export const TUNING = ['1', '2', '3'] as const;
export const isTuningArrow = oneOf(TUNING);

/** One shot of one numbered arrow; `tear` is missing where it is only planned. */
export interface ArrowShot {
  readonly arrow: string;
  readonly turn: number;
  readonly reference: boolean;
  readonly good: boolean;
  readonly seq: number;
  /** The set that it was shot in: another day begins another one. */
  readonly sitting: number;
  readonly tear: Tear | null;
}

/** Sets of single arrows that count now; what is shot in the rounds and in mending is kept apart by its purpose. */
const setsNow = (state: State, purpose: ShotSet['purpose']): readonly ShotSet[] => {
  const here = settingKey(settingsOf(state.moves));
  const { arrows } = state.notes;
  return countingSets(state, purpose).filter((set) => set.id > arrows.after && settingKey(set.settings) === here && !turnedSince(arrows, set.id));
};

const countingSets = ({ sets, notes: { epoch, scattered } }: State, purpose: ShotSet['purpose']): readonly ShotSet[] =>
  sets.filter((set) => set.of === 'arrows' && set.purpose === purpose && set.epoch === epoch && !scattered.includes(set.id));

/** Shot with nocks otherwise than they stand: before all were turned together, or while they were and are not any more. */
function turnedSince({ together }: ArrowNotes, set: number): boolean {
  if (together === undefined) return false;
  const { how, before: [, last], until } = together;
  if (how === 'turned' || how === 'kept') return set <= last;
  return how === 'back' && set > last && set <= until;
}

const shotsOf = (sets: readonly ShotSet[]): readonly ArrowShot[] =>
  sets.flatMap(({ id, shots }) => shots.flatMap(({ x, y, good, seq, tag }) => {
    if (tag === undefined || tag.arrow === null) return [];
    return [{ arrow: tag.arrow, turn: tag.nockTurn, reference: tag.reference === true, good, seq, sitting: id, tear: { x, y } }];
  }));

/** Every arrow against the others: all shots of the rounds, good and bad, oldest first. */
export const roundShots: (state: State) => readonly ArrowShot[] = once((state: State) => shotsOf(setsNow(state, 'judge')));
/** The rounds as they were shot before all nocks were turned together, at the settings of then; none where nothing was turned. */
export const roundsBefore: (state: State) => readonly ArrowShot[] = once((state: State) => {
  const [after, last] = state.notes.arrows.together?.before ?? [0, 0];
  const sets = countingSets(state, 'judge').filter(({ id }) => id > after && id <= last);
  const there = settingKey(sets.at(-1)?.settings ?? {});
  return shotsOf(sets.filter(({ settings }) => settingKey(settings) === there));
});
/** The newest set with a shot in it; 0 before any. */
export const lastShotSet = ({ sets }: State): number => sets.findLast(({ shots, missed }) => shots.length + missed > 0)?.id ?? 0;

/** Shots of arrows that are being mended, and of the references in between. */
export const mendingShots: (state: State) => readonly ArrowShot[] = once((state: State) => shotsOf(setsNow(state, 'prove')));

/** Numbers of the arrows that are still compared: those that have no class yet. */
export function arrowsInPlay(state: State): readonly string[] {
  const { inSet, classes } = state.notes.arrows;
  return Array.from({ length: inSet }, (_, i) => `${i + 1}`).filter((arrow) => classes[arrow] === undefined);
}

/** The arrows that watch the archer: the tuning arrows, but for those that may be odd themselves, as long as not all may be. */
export function references(play: readonly string[], doubtful: readonly string[]): readonly string[] {
  const sure = play.filter((arrow) => !doubtful.includes(arrow));
  const sound = sure.length > 0 ? sure : play;
  const tuning: readonly string[] = sound.filter(isTuningArrow);
  return tuning.length > 0 ? tuning : sound.slice(0, TUNING.length);
}

/** How many arrows are numbered for this; null where that is to be asked. */
export function arrowsCounted(state: State): number | null {
  const seq = (step: string): number => state.answers[step]?.seq ?? 0;
  const count = measured(state, 'arrow-count');
  const aside = measured(state, 'arrows-set-aside');
  const told = measured(state, 'arrows-in-set');
  const asked = seq('arrows-in-set') > Math.max(seq('arrow-bench'), seq('arrow-count'), seq('arrows-set-aside'));
  if (told !== undefined && asked) return told;
  // Left out at the bench, or set aside on an earlier day: what was counted then may no longer add up.
  const addsUp = aside === undefined || chosen(state, 'arrows-flexed') === 'some-bad';
  if (count === undefined || !addsUp || !allPassedTheBench(state)) return null;
  return count - (aside ?? 0);
}

function allPassedTheBench(state: State): boolean {
  const bench = state.answers['arrow-bench']?.answer;
  return bench?.kind === 'choice' && bench.values[0] === 'all true';
}
