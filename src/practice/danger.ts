// What may be wrong with a practice bow so that it must not be shot, or not before it is mended: what a truthful answer to a gate says then.

import type { Random } from '../maths/random.ts';
import { oneOfThese } from './chance.ts';

export interface Danger {
  /** The gate or figure that tells, as an ask names it (`about`), or a check of a list of checks (`check`). */
  readonly at: { readonly about: string } | { readonly check: string };
  /** What is answered there; a check says no. */
  readonly says: string | number;
  /** Who mends it: an authorised dealer, or the archer on the spot. */
  readonly mends: 'dealer' | 'archer';
}

/** All of these are found undrawn, and none is left by anything but a dealer's word. */
export const FOR_THE_DEALER = [
  { at: { about: 'gate:history' }, says: 'dry-fire', mends: 'dealer' },
  { at: { about: 'gate:history' }, says: 'derailed', mends: 'dealer' },
  { at: { about: 'gate:limbs' }, says: 'found', mends: 'dealer' },
  { at: { about: 'axle-clips' }, says: 3, mends: 'dealer' },
  { at: { check: 'bow-strands' }, says: 'false', mends: 'dealer' },
  { at: { check: 'bow-cams' }, says: 'false', mends: 'dealer' },
  { at: { check: 'bow-riser' }, says: 'false', mends: 'dealer' },
] as const satisfies readonly Danger[];

/** The archer mends these, and says so when asked again. */
export const FOR_THE_ARCHER = [
  { at: { check: 'bow-loop' }, says: 'false', mends: 'archer' },
  { at: { check: 'bow-rest-holds' }, says: 'false', mends: 'archer' },
  { at: { check: 'arrows-nock' }, says: 'false', mends: 'archer' },
  { at: { about: 'arrow-mass' }, says: 270, mends: 'archer' },
] as const satisfies readonly Danger[];

export const deadlyBy = (chance: Random): Danger => oneOfThese(chance, FOR_THE_DEALER);
export const mendableBy = (chance: Random): Danger => oneOfThese(chance, FOR_THE_ARCHER);
