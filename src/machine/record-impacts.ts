// Rows of the bow record for what was shot at a target: broadheads, and what stood in for paper.

import { yardsIn } from '../maths/units.ts';
import { AXES, type Axis, type Content } from '../content/types.ts';
import type { LoopNotes, SetKind } from './notes.ts';
import { gaugeAt } from './loop/gauge.ts';
import { FIRST_YARDS } from './loop/gauge-groups.ts';
import { PLUMB_YARDS } from './loop/gauge-plumb.ts';
import { countingSets, FIRST_DISTANCE, goodShots, settingKey } from './loop/sets.ts';
import { spreadOver } from './loop/pooled.ts';
import { openUpTo, percent, upTenths } from './loop/summary.ts';
import { movedSince } from './record-moved.ts';
import { effectiveFacts, settingsOf, type ShotSet, type State } from './state.ts';
import type { RecordRow } from './types.ts';
import { differenceInWords, phrase, sideInWords } from './words.ts';

type Impacts = Exclude<SetKind, 'paper' | 'arrows'>;

/** By what the tail was seen last: paper, unfletched shafts or a plumb line. */
export function seenBy(state: State): Exclude<SetKind, 'arrows' | 'broadheads'> {
  const last = state.sets.findLast((set) => set.shots.length > 0 && set.of !== 'broadheads' && set.of !== 'arrows');
  return last?.of === 'unfletched' || last?.of === 'plumb' ? last.of : 'paper';
}

type AxisEnd = NonNullable<LoopNotes['axis']['height']>;

export function resultInWords(content: Content, by: SetKind, { result, chance }: AxisEnd): string {
  if (result === 'tuned' && by === 'plumb') return phrase(content, 'result-straight', { from: PLUMB_YARDS[0], to: PLUMB_YARDS[2], chance: percent(chance) });
  if (result === 'tuned' && by !== 'paper') return phrase(content, 'result-agree', { distance: FIRST_YARDS, chance: percent(chance) });
  return phrase(content, `result-${result}`, { chance: percent(chance), distance: FIRST_DISTANCE });
}

export function impactRows(content: Content, state: State): readonly RecordRow[] {
  return [...readRows(content, state, 'unfletched'), ...readRows(content, state, 'plumb'), ...broadheadRows(content, state)];
}

function broadheadRows(content: Content, state: State): readonly RecordRow[] {
  const { broadAxis, broadReached } = state.notes;
  const name = phrase(content, 'record-broadheads');
  const rows = readRows(content, state, 'broadheads');
  // Shot, and every set scattered: there is no reading, but that it was not judged is told.
  if (rows.length === 0 && Object.keys(broadAxis).length === 0) return [];
  const ends = AXES.map((axis): RecordRow => {
    const end = broadAxis[axis];
    const agree = (chance: number): string => phrase(content, 'result-agree', { distance: broadReached > 0 ? broadReached : FIRST_YARDS, chance: percent(chance) }) + withHeads(content, state);
    const open = end?.result === 'accepted' ? openInWords(content, state, 'broadheads', axis) : '';
    const words = end === undefined ? phrase(content, 'result-broad-none') : end.result === 'tuned' ? agree(end.chance) : phrase(content, `result-broad-${end.result}`) + open;
    // Judged at paper again, and moved there: that they landed together was said of another setting.
    const value = end?.result === 'tuned' && movedSince(content, state, axis, 'broadheads') ? phrase(content, 'result-moved-since', { was: words }) : words;
    return { name: `${name}, ${phrase(content, `axis-${axis}`).toLowerCase()}`, value };
  });
  return [...ends, ...rows];
}

/** What the shots at the present setting leave open on an axis that was left as it is; nothing where they show nothing. */
export function openInWords(content: Content, state: State, of: Impacts, axis: Axis): string {
  const sets = setsHere(state, of);
  const distance = sets.at(-1)?.distance;
  if (distance === undefined) return '';
  const gauge = gaugeAt(state, of, distance);
  const largest = openUpTo(gauge, sets.filter((set) => set.distance === distance).flatMap(goodShots), axis, spreadOver(gauge, countingSets(state, of)));
  return largest === null ? '' : phrase(content, of === 'plumb' ? 'record-open-plumb' : 'record-open-groups', { largest: upTenths(largest) });
}

/** Which kind of heads that is said of: of heads that open, held shut, it says little about how they fly open. */
function withHeads(content: Content, state: State): string {
  const told = effectiveFacts(state.facts).flatMap((fact) =>
    (fact.kind === 'answered' && fact.step === 'broadheads-wanted' && fact.answer.kind === 'choice' ? [{ seq: fact.seq, kind: fact.answer.values[0] }] : []));
  const blades = countingSets(state, 'broadheads').flatMap(goodShots).filter(({ tag }) => tag?.head === 'broadhead');
  const kinds = new Set(blades.map((shot) => told.findLast(({ seq }) => seq < shot.seq)?.kind));
  return (['fixed', 'mechanical'] as const).filter((kind) => kinds.has(kind)).map((kind) => phrase(content, `record-heads-${kind}`)).join('');
}

/** What the newest shots at the present setting showed, at each distance. */
function readRows(content: Content, state: State, of: Impacts): readonly RecordRow[] {
  return readingsOf(state, of, setsHere(state, of)).map((reading) => ({ name: phrase(content, `record-${of}`), value: impactsInWords(content, of, reading) }));
}

function setsHere(state: State, of: Impacts): readonly ShotSet[] {
  const key = settingKey(settingsOf(state.moves));
  return countingSets(state, of).filter((set) => settingKey(set.settings) === key && set.shots.length > 0);
}

function impactsInWords(content: Content, of: Impacts, { distance, diff, give, shots }: Reading): string {
  if (of === 'plumb') return phrase(content, 'record-plumb-value', { from: PLUMB_YARDS[0], to: PLUMB_YARDS[2], drift: diff, give: give.toFixed(1), shots });
  return phrase(content, of === 'broadheads' ? 'record-broadheads-value' : 'record-unfletched-value', { distance, diff, shots });
}

interface Reading {
  /** Yards. */
  readonly distance: number;
  /** The difference of the groups, or the drift, in words. */
  readonly diff: string;
  /** Of the difference sideways, or the drift: two standard errors, inches. */
  readonly give: number;
  readonly shots: number;
}

/** What sets of one kind show together, one reading for each distance at which they show anything. */
export function readingsOf(state: State, of: Impacts, sets: readonly ShotSet[]): readonly Reading[] {
  const distances = [...new Set(sets.map((set) => set.distance))];
  return distances.flatMap((distance) => {
    const gauge = gaugeAt(state, of, distance);
    const here = sets.filter((set) => set.distance === distance);
    const shots = here.flatMap(goodShots);
    const { sd } = gauge.spread(here);
    const centre = gauge.read(shots, sd);
    if (centre === null) return [];
    const give = (2 * sd) / Math.sqrt(centre.count.x);
    const diff = of === 'plumb' ? sideInWords(centre.mean.x, 'right', 'left', 1) : differenceInWords(centre.mean);
    return [{ distance: yardsIn(distance), diff, give, shots: gauge.count(shots) }];
  });
}
