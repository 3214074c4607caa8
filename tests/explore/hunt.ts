// Runs walks until one breaks a promise, or all have kept them.

import fc from 'fast-check';
import type { Content } from '../../src/content/types.ts';
import { Violation } from './invariants.ts';
import { noTally, type Tally } from './tally.ts';
import { inWords, walkIt, walks, type Narrowed, type Walk } from './walks.ts';

export interface Found {
  /** The promises that were broken at that moment; "crash" where the program threw instead. */
  readonly invariants: readonly string[];
  readonly how: string;
  readonly walk: Walk;
  /** With these, `WALKS_SEED=seed WALKS_PATH=path` walks it again. */
  readonly seed: number;
  readonly path: string;
}

export interface Hunted { readonly tally: Tally; readonly found: Found | null }

export interface HuntOptions {
  readonly content: Content;
  readonly sound: Content;
  readonly walks: number;
  readonly seed: number;
  readonly path?: string;
  /** Shortens a walk that breaks a promise; takes its time. */
  readonly shrink?: boolean;
  readonly only?: Narrowed;
  readonly tell?: (tally: Tally) => void;
}

export function hunt({ content, sound, walks: most, seed, path, shrink = false, only, tell }: HuntOptions): Hunted {
  const tally = noTally();
  let broken: Pick<Found, 'invariants' | 'how'> = { invariants: [], how: '' };
  const result = fc.check(fc.property(walks(only), (walk) => {
    try {
      walkIt(walk, content, sound, tally);
    } catch (error) {
      broken = error instanceof Violation ? { invariants: error.broken.map(({ invariant }) => invariant), how: error.message } : { invariants: ['crash'], how: crashInWords(error) };
      throw error;
    }
    tell?.(tally);
  }), { numRuns: most, seed, unbiased: true, endOnFailure: !shrink, ...(path === undefined ? {} : { path }) });
  const [walk] = result.counterexample ?? [];
  if (walk === undefined) return { tally, found: null };
  return { tally, found: { ...broken, how: `${inWords(walk)}: ${broken.how}`, walk, seed, path: result.counterexamplePath ?? '' } };
}

const crashInWords = (error: unknown): string => (error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 4).join(' ') : String(error));
