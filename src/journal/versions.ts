// Versions of the journal. The first line says which one (`v`); older ones are lifted line by line as they are read.
// A change to an old line's meaning gets a new number and one entry here; lines on disk are never rewritten by reading.

/** The version that this program writes. */
export const CURRENT_VERSION = 1;

/** Lifts one raw line by one version. It gets what JSON.parse gave and must not change it in place. */
export type Lift = (raw: unknown) => unknown;

/** `LIFTS[v]` makes a line of version v into one of version v + 1. Version 1 is the first: nothing to lift yet. */
const LIFTS: Readonly<Record<number, Lift>> = {};

/** A raw line written under version `v`, as the current version would have written it. */
export function upgrade(
  v: number,
  raw: unknown,
  lifts: Readonly<Record<number, Lift>> = LIFTS,
  current: number = CURRENT_VERSION,
): unknown {
  let lifted = raw;
  for (let from = v; from < current; from += 1) {
    const lift = lifts[from];
    if (lift === undefined) throw new RangeError(`no way is known from journal version ${from} to ${from + 1}`);
    lifted = lift(lifted);
  }
  return lifted;
}

/** The version that a first line claims, or null where it claims none that makes sense. */
export function claimedVersion(raw: unknown): number | null {
  if (typeof raw !== 'object' || raw === null || !('v' in raw)) return null;
  return typeof raw.v === 'number' && Number.isInteger(raw.v) && raw.v >= 1 ? raw.v : null;
}
