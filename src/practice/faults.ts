// Which adjustments of a practice bow stand where they should not, how far off, and now and then so far that nothing which the archer has can mend it.

import type { Axis, Content, KnobId } from '../content/types.ts';
import { knobEntries } from '../content/types.ts';
import { sum } from '../maths/sum.ts';
import type { Random } from '../maths/random.ts';
import type { Adjustment, Settings } from './adjustment.ts';
import { offBy, ownWorth, soundAdjustments, type PracticeBow } from './bow.ts';
import { between, chanceOf, eitherSide, happens } from './chance.ts';
import { TEAR_PER_INCH } from './departure.ts';
import { sidewaysOf, type Hardware } from './hardware.ts';
import { OFTEN } from './often.ts';

type Adjustments = PracticeBow['adjustments'];
type Culprits = readonly (readonly [KnobId, number])[];

/** Which adjustments may be the one that is off, on each axis, and how often each. */
const CULPRITS: Readonly<Record<Axis, (cams: Hardware['cams']) => Culprits>> = {
  height: () => knobEntries(OFTEN.bow.height),
  side: (cams) => [['rest-side', OFTEN.bow.side['rest-side']], [sidewaysOf(cams), OFTEN.bow.side['of the cams']]],
};

/** How large the tear is where something is off: from and to, inches at 7 ft from the point (assumed). */
const TEARS = [0.25, 0.9] as const;
/** Nobody sets an adjustment farther off than this share of the coach's hard limit and does not see it. */
const FARTHEST_OFF = 1.25;
/** Quarter turns by which both bolts stand off: from and to (assumed). */
const BOLTS_OFF = [1, 4] as const;

/** Topics of chance of a bow's own: no adjustment is numbered so high. */
const FAULTS = 100;
const BOLTS = 101;
const BEYOND = 102;

/** Its adjustments as anybody may bring them: some of them off. */
export const adjustmentsBy = (seed: number, knobs: Content['knobs'], hardware: Hardware): Adjustments =>
  withFaults(seed, knobs, hardware, soundAdjustments(seed, knobs, hardware));

/** Adjustments that are right as found, some of them put off by this number. */
export function withFaults(seed: number, knobs: Content['knobs'], hardware: Hardware, sound: Adjustments): Adjustments {
  const chance = chanceOf(seed, 'bow', FAULTS);
  const height = faultBy(chance, knobs, CULPRITS.height(hardware.cams), sound);
  const side = faultBy(chance, knobs, CULPRITS.side(hardware.cams), sound);
  const bolts = chanceOf(seed, 'bow', BOLTS);
  const [boltsOff, turns] = [happens(bolts, OFTEN.bow.bolts), (eitherSide(bolts) * Math.round(between(bolts, ...BOLTS_OFF))) / 4];
  const off = offBy(sound, { ...height, ...side, ...(boltsOff ? { 'limb-bolts': turns } : {}) });
  const beyond = chanceOf(seed, 'bow', BEYOND);
  return happens(beyond, OFTEN.bow.beyondReach) ? beyondReachBy(beyond, knobs, hardware, off) : off;
}

function faultBy(chance: Random, knobs: Content['knobs'], culprits: Culprits, adjustments: Adjustments): Settings {
  const [inOrder, which, size, side] = [happens(chance, OFTEN.bow.inOrder), chance.uniform(), between(chance, ...TEARS), eitherSide(chance)];
  const own = (id: KnobId): number => ownWorth(knobs[id].axis, adjustments[id]);
  // What does nothing cannot be at fault.
  const able = culprits.filter(([id]) => own(id) !== 0);
  const total = sum(able.map(([, share]) => share));
  let at = which * total;
  const culprit = able.find(([, share]) => (at -= share) < 0);
  if (inOrder || culprit === undefined) return {};
  const [id] = culprit;
  const most = knobs[id].hard * FARTHEST_OFF;
  return { [id]: Math.max(-most, Math.min(most, (side * size) / (TEAR_PER_INCH * own(id)))) };
}

/** Of a bow beyond mending: tears (in, 7 ft from the point), and the share of it that all adjustments of the axis together can take away. */
const LARGE = [0.65, 1] as const;
const SHARE = [0.1, 0.35] as const;

/**
 * One axis is off, and all that moves it together takes away a third at the most: the screws end too early that way, or inside their limits they answer too
 * weakly. As it was where nothing moves that axis.
 */
export function beyondReachBy(chance: Random, knobs: Content['knobs'], hardware: Hardware, adjustments: Adjustments): Adjustments {
  const axis: Axis = happens(chance, 1 / 2) ? 'height' : 'side';
  const [ends, size, side, share] = [happens(chance, OFTEN.bow.screwsEnd), between(chance, ...LARGE), eitherSide(chance), between(chance, ...SHARE)];
  const own = (id: KnobId): number => ownWorth(axis, adjustments[id]);
  const live = knobEntries(adjustments).flatMap(([id]) => (knobs[id].axis === axis && own(id) !== 0 ? [id] : []));
  // A rest sideways counts its limit from the maker's figure, which is where it should stand: only its screw can end too early.
  const mayBe = [...CULPRITS[axis](hardware.cams)].toReversed().map(([id]) => id).filter((id) => live.includes(id));
  const culprit = mayBe.find((id) => id !== 'rest-side') ?? mayBe[0];
  if (culprit === undefined) return adjustments;
  const needed = (side * size) / TEAR_PER_INCH;
  const each = (share * needed) / live.length;
  const spoilt = knobEntries(adjustments).map(([id, one]): readonly [KnobId, Adjustment] => {
    if (!live.includes(id)) return [id, one];
    const right = { ...one, optimum: 0 };
    return [id, ends || culprit === 'rest-side' ? endingAt(right, each / own(id)) : weakened(right, Math.abs(each / (own(id) * one.limit)))];
  });
  const left = Object.fromEntries(spoilt);
  return offBy(left, { [culprit]: needed / ownWorth(axis, left[culprit]) });
}

/** Its screw ends at this setting. */
function endingAt(one: Adjustment, setting: number): Adjustment {
  const { low, high } = one.travel;
  return { ...one, travel: setting > 0 ? { low, high: Math.min(high, setting) } : { low: Math.max(low, setting), high } };
}

/** It answers less, where the share is below 1. */
function weakened(one: Adjustment, share: number): Adjustment {
  const less = Math.min(1, share);
  return { ...one, worth: { x: less * one.worth.x, y: less * one.worth.y } };
}
