// The closed list of conditions that content may name, each over the facts so far. No expressions in content.

import type { GuardName, Step } from '../content/types.ts';
import { arrowMass, arrowParts, isAddedUp, isNotWeighed } from './figures/arrow-mass.ts';
import { asShot, secondIsTooLight } from './figures/reckon.ts';
import { MASS_FLOOR, massRatio, worstMassRatio } from './limits.ts';
import type { State } from './state.ts';
import { chosen, measured, notKnown } from './told.ts';
import { placeUnder } from './walk.ts';

export { chosen, measured } from './told.ts';

const knownBow = (s: State): boolean => {
  const bow = chosen(s, 'bow');
  // With a part replaced it is looked at and measured like a new one.
  return bow !== undefined && bow !== 'another' && bow !== 'replaced' && chosen(s, 'which-bow') !== 'another';
};
const cams = (...kinds: string[]) => (s: State): boolean => kinds.includes(chosen(s, 'cams') ?? '');
const rest = (...kinds: string[]) => (s: State): boolean => kinds.includes(chosen(s, 'rest') ?? '');
const press = (kind: string) => (s: State): boolean => pressAtHand(s) === kind;

/** A press counts only for an adult; somebody still growing is never offered one. */
export function pressAtHand(state: State): 'trained' | 'shop' | 'none' {
  const value = chosen(state, 'press');
  if (chosen(state, 'growing') === 'growing') return 'shop';
  return value === 'trained' || value === 'shop' ? value : 'none';
}

/**
 * The backstop is looked at again each day and at each distance, and there "no paper" may be said of a target for
 * broadheads: once shots were read from paper, or another way was chosen, that answer alone changes nothing.
 */
function withoutPaper(state: State): boolean {
  if (state.sets.some((set) => set.of === 'paper' && set.shots.length > 0)) return false;
  const way = chosen(state, 'method');
  return chosen(state, 'backstop') === 'no-paper' || way === 'unfletched' || way === 'plumb-line';
}

/** Where broadheads are shot no frame stands, and nobody is asked about one. */
function atBroadheads({ walk, notes: { of, backTo } }: State): boolean {
  if (backTo !== null) return backTo === 'broadheads';
  const [chapter] = placeUnder(walk).split('.');
  return chapter === 'broadheads' || (chapter === 'finish' && of === 'broadheads');
}
const method = (s: State): string | undefined => (withoutPaper(s) ? chosen(s, 'method') : undefined);

/** Paper, or what stood in for it, left nothing that adjustments or shots could not settle: only then broadheads say more. */
function launchSettled({ notes: { axis } }: State): boolean {
  const ends = Object.values(axis).map(({ result }) => result);
  return ends.length > 0 && !ends.includes('cannot') && !ends.includes('inconsistent');
}

function shootsBroadheads(state: State): boolean {
  const wanted = chosen(state, 'broadheads-wanted');
  return wanted === 'fixed' || wanted === 'mechanical';
}

function massIsClose(state: State): boolean {
  const least = arrowMass(state)?.least;
  const peak = measured(state, 'peak-weight');
  if (least === undefined || peak === undefined) return false;
  return massRatio(least, peak) >= MASS_FLOOR && worstMassRatio(least, peak, undefined) < MASS_FLOOR;
}

/** Arrows (by number) whose nock was turned or replaced and that are shot on. */
export const changedNocks = (state: State): readonly string[] =>
  Object.entries(state.notes.arrows.cases)
    .filter(([arrow, one]) => (one.turn !== 0 || one.swapped !== null) && ['first choice', 'practice'].includes(state.notes.arrows.classes[arrow]?.class ?? ''))
    .map(([arrow]) => arrow);

// One arrow is told from another by paper, and only where the shots have not scattered. Once the arrows are done with, nothing
// of them is asked that was not asked before.
function arrowsByPaper(state: State): boolean {
  const { axis, arrows } = state.notes;
  if (chosen(state, 'release') !== 'release-aid' || withoutPaper(state)) return false;
  if (axis.height?.result === 'inconsistent' || axis.side?.result === 'inconsistent') return false;
  return !arrows.done || state.answers['arrows-wanted'] !== undefined;
}

export const GUARDS_BY_NAME: Readonly<Record<GuardName, (state: State) => boolean>> = {
  'release-aid': (s) => chosen(s, 'release') === 'release-aid',
  'fingers': (s) => chosen(s, 'release') === 'fingers',
  'growing': (s) => chosen(s, 'growing') === 'growing',
  'adult': (s) => chosen(s, 'growing') !== 'growing',
  'new-bow': (s) => !knownBow(s),
  'known-bow': knownBow,
  'right-handed': (s) => chosen(s, 'hand') === 'right',
  'left-handed': (s) => chosen(s, 'hand') === 'left',
  'bolts-turned-out': (s) => Math.max(measured(s, 'bolts-top') ?? 0, measured(s, 'bolts-bottom') ?? 0) > 0,
  'arrow-set-aside': (s) => chosen(s, 'arrows-flexed') === 'some-bad',
  'mass-not-weighed': isNotWeighed,
  'mass-added-up': isAddedUp,
  'mass-is-close': massIsClose,
  'peak-not-measured': (s) => measured(s, 'peak-weight') === undefined,
  'drop-away': rest('drop-away-cable', 'drop-away-limb'),
  'cable-driven': rest('drop-away-cable'),
  'limb-driven': rest('drop-away-limb'),
  'blade': rest('blade'),
  'containment': rest('containment'),
  'prong': rest('prong'),
  'yoke-bow': cams('yoke', 'single-cam'),
  'two-cams': cams('yoke', 'hybrid', 'two-track', 'screw-adjust'),
  'spacer-bow': cams('hybrid', 'two-track'),
  'screw-bow': cams('screw-adjust'),
  'press-trained': press('trained'),
  'press-at-shop': press('shop'),
  'no-press': press('none'),
  'was-adjusted': (s) => s.moves.length > 0,
  // A nock that was turned or replaced, on an arrow that is shot on.
  'nock-was-turned': (s) => changedNocks(s).length > 0,
  'needs-shop': (s) => s.notes.shop.length > 0,
  'arrows-by-paper': arrowsByPaper,
  'figures-wanted': (s) => chosen(s, 'figures-wanted') === 'yes',
  'length-not-told': (s) => arrowParts(s) === null,
  'speed-told': (s) => measured(s, 'arrow-speed') !== undefined,
  'second-arrow-told': (s) => measured(s, 'second-mass') !== undefined && !secondIsTooLight(s),
  'papers-tell-speed': (s) => notKnown(s, 'arrow-speed') && asShot(s) !== null,
  'spine-not-printed': (s) => notKnown(s, 'spine-printed'),
  'all-arrows': (s) => chosen(s, 'arrows-wanted') === 'all',
  'paper': (s) => !withoutPaper(s) && !atBroadheads(s),
  'no-paper': withoutPaper,
  'not-at-broadheads': (s) => !atBroadheads(s),
  'unfletched': (s) => method(s) === 'unfletched',
  'plumb-line': (s) => method(s) === 'plumb-line',
  'hunts': (s) => chosen(s, 'use') === 'hunting',
  'launch-settled': launchSettled,
  'shoots-broadheads': shootsBroadheads,
  'shoots-groups': (s) => shootsBroadheads(s) || method(s) === 'unfletched' || method(s) === 'plumb-line',
};

/** Whether this archer may choose this option of a step; what is no option of its own (a known bow) may be. */
export const mayChoose = (state: State, step: Step, value: string | undefined): boolean =>
  holds(state, (step.kind === 'choice' ? step.options.find((one) => one.value === value)?.when : undefined) ?? []);

export const holds = (state: State, names: readonly GuardName[]): boolean =>
  names.every((name) => GUARDS_BY_NAME[name](state));
