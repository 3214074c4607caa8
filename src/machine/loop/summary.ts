// What the shots say, in words, for each thing that is measured: never with more certainty than they give.

import { largestNotExcluded } from '../../archery/two-groups.ts';
import type { Axis, Content } from '../../content/types.ts';
import type { Spread } from '../../archery/spread.ts';
import type { Shot, State } from '../state.ts';
import { differenceInWords, phrase, sideInWords, tearInWords } from '../words.ts';
import { readingHere, spreadOf, toleranceOn, type AxisEvidence } from './evidence.ts';
import { gaugeOf, type Gauge } from './gauge.ts';
import { secondKind } from './gauge-groups.ts';
import { lineOfShots, PLUMB_YARDS } from './gauge-plumb.ts';
import { countingSets, currentSet, goodShots, on, shotsHere } from './sets.ts';

export const AXIS_WORDS: Readonly<Record<Axis, readonly [string, string]>> = { height: ['high', 'low'], side: ['right', 'left'] };

/** Rounded down, and never 0 or 100: shots do not show certainty. */
export const percent = (value: number): string => (value < 0.01 ? 'under 1 %' : `${Math.min(99, Math.floor(value * 100 + 1e-9))} %`);

/** What the present set shows, or the way it is told where it shows nothing. */
export function readingInWords(content: Content, state: State): string {
  const gauge = gaugeOf(state);
  const set = currentSet(state);
  const centre = gauge.read(set === null ? [] : goodShots(set), spreadOf(state).sd);
  if (centre === null) return phrase(content, 'nothing-shown');
  if (gauge.of === 'paper') return phrase(content, 'reading-paper', { tear: tearInWords(centre.mean) });
  if (gauge.of === 'plumb') return phrase(content, 'reading-plumb', { drift: sideInWords(centre.mean.x, 'right', 'left', 1) });
  return phrase(content, 'reading-groups', { what: phrase(content, `what-${secondKind(gauge.of)}`), diff: differenceInWords(centre.mean) });
}

/** All axes at once. */
export function wholeSummary(content: Content, state: State, gauge: Gauge): readonly string[] {
  const centre = readingHere(state);
  if (centre === null) return [];
  if (gauge.of !== 'paper') return impactSummary(content, state, gauge);
  const { sd } = spreadOf(state);
  return [phrase(content, 'tear-summary', { shots: gauge.count(shotsHere(state)), tear: tearInWords(centre.mean), sd: sd.toFixed(2) })];
}

/** One axis, with what all settings so far say of it. */
export function axisSummary(content: Content, state: State, e: AxisEvidence): readonly string[] {
  const gauge = gaugeOf(state);
  if (gauge.of !== 'paper') return impactSummary(content, state, gauge);
  const centre = readingHere(state);
  const [plus, minus] = AXIS_WORDS[e.axis];
  return [phrase(content, 'axis-summary', {
    shots: e.shots,
    mean: sideInWords(centre === null ? e.mean : on(e.axis, centre.mean), plus, minus),
    from: sideInWords(e.mean - 2 * e.se, plus, minus),
    to: sideInWords(e.mean + 2 * e.se, plus, minus),
    chance: percent(e.within),
  })];
}

function impactSummary(content: Content, state: State, gauge: Gauge): readonly string[] {
  const centre = readingHere(state);
  if (centre === null || gauge.of === 'paper') return [];
  const spread = spreadOf(state);
  const { high, aim } = toleranceOn(content, state, gauge.axes[0] ?? 'side');
  const margin = (high - aim).toFixed(1);
  const shots = gauge.count(shotsHere(state));
  // Told with the first shots at a distance; later it is known.
  const first = shots <= gauge.first && countingSets(state).filter((set) => set.distance === state.notes.distance).length <= 1;
  if (gauge.of === 'plumb') {
    const give = (2 * spread.sd) / Math.sqrt(centre.count.x);
    const drift = (value: number): string => sideInWords(value, 'right', 'left', 1);
    return [
      phrase(content, 'plumb-summary', { ...BETWEEN, drift: drift(centre.mean.x), low: drift(centre.mean.x - give), high: drift(centre.mean.x + give), margin }),
      ...(first ? besideInWords(content, state, spread) : []),
    ];
  }
  const what = phrase(content, `what-${secondKind(gauge.of)}`);
  const low = toleranceOn(content, state, 'height').aim;
  return [
    phrase(content, 'groups-summary', { shots, what, diff: differenceInWords(centre.mean), margin }),
    ...(Math.abs(low) < WORTH_TELLING || !first ? [] : [phrase(content, 'drag-share', { low: Math.abs(low).toFixed(1) })]),
  ];
}

const BETWEEN = { from: PLUMB_YARDS[0], to: PLUMB_YARDS[2] };

/** The whole line beside the plumb line, beyond luck and more than this (in): that is how it was aimed, and says nothing of the tune. */
const BESIDE = 1 / 2;

function besideInWords(content: Content, state: State, spread: Spread): readonly string[] {
  const { mean, se } = lineOfShots(shotsHere(state), spread.sd).at(BETWEEN.from);
  return Math.abs(mean) < Math.max(BESIDE, 2 * se) ? [] : [phrase(content, 'plumb-beside', { ...BETWEEN, beside: sideInWords(mean, 'right', 'left', 1) })];
}

export function tunedWords(content: Content, state: State, axis: Axis, within: number): string {
  const { of } = gaugeOf(state);
  const chance = percent(within);
  if (of === 'plumb') return phrase(content, 'plumb-straight', { chance });
  if (of === 'paper') return phrase(content, axis === 'height' ? 'height-tuned' : 'side-tuned', { chance });
  return phrase(content, `${secondKind(of)}-${axis}-same`, { chance });
}

export function undecidedWords(content: Content, state: State, e: AxisEvidence): string {
  const gauge = gaugeOf(state);
  const largest = openUpTo(gauge, shotsHere(state), e.axis, e.spread);
  if (gauge.of === 'paper' || largest === null) return phrase(content, 'borderline', { shots: e.shots });
  return phrase(content, gauge.of === 'plumb' ? 'plumb-undecided' : 'groups-undecided', { ...BETWEEN, largest: upTenths(largest) });
}

/** What these shots leave open on an axis, inches from where it is wanted: more is excluded, and less is not proven. Null where they show nothing. */
export function openUpTo(gauge: Gauge, shots: readonly Shot[], axis: Axis, spread: Spread): number | null {
  const centre = gauge.read(shots, spread.sd);
  return centre === null || gauge.impacts === null ? null : largestNotExcluded(on(axis, centre.mean), on(axis, centre.count), spread, gauge.impacts.tolerance(axis, spread).aim);
}

/** Never less than it is. */
export const upTenths = (inches: number): string => (Math.ceil(inches * 10 - 1e-9) / 10).toFixed(1);

export const moreWanted = (content: Content, state: State): string => phrase(content, MORE[gaugeOf(state).of]);

/** Less than so many inches that blades brake is not told apart from nothing. */
const WORTH_TELLING = 0.15;
const MORE = { paper: 'one-more', broadheads: 'groups-more', unfletched: 'groups-more', plumb: 'plumb-more' } as const;
