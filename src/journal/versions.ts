// Versions of the journal. A line that carries `v` says under which one it and all lines after it were written; the first
// line of every sitting does. Older lines are lifted one by one as they are read, and never rewritten on disk.
//
// What every later version must keep, or an older program could not say what is wrong: lines end with a newline, and the first
// line that is written under a new version is a JSON object with that number under `v`.

/** The version that this program writes. */
export const CURRENT_VERSION = 1;

/** Lifts one raw line by one version. It gets what JSON.parse gave and must not change it in place. Its `v` is seen to. */
export type Lift = (raw: unknown) => unknown;

/** `LIFTS[v]` makes a line of version v into one of version v + 1. Version 1 is the first: nothing to lift yet. */
export const LIFTS: Readonly<Record<number, Lift>> = {};

/** What a program knows of versions; another one is handed in by tests. */
export interface Versions {
  readonly current: number;
  readonly lifts: Readonly<Record<number, Lift>>;
}
export const VERSIONS: Versions = { current: CURRENT_VERSION, lifts: LIFTS };

/** A raw line written under version `v`, as the current version would have written it. Throws an Error whose message can follow "cannot be read:". */
export function upgrade(v: number, raw: unknown, { current, lifts }: Versions = VERSIONS): unknown {
  let lifted = raw;
  for (let from = v; from < current; from += 1) {
    const lift = lifts[from];
    if (lift === undefined) throw new RangeError(`no way is known from journal version ${from} to ${from + 1}`);
    lifted = withClaim(lifted, liftOnce(lift, lifted, from), from + 1);
  }
  return lifted;
}

function liftOnce(lift: Lift, raw: unknown, from: number): unknown {
  try {
    return lift(raw);
  } catch (cause) {
    const said = (cause instanceof Error ? cause.message : String(cause)).split('\n')[0];
    throw new Error(`it was written under version ${from} of the journal and could not be brought to version ${from + 1} (${said})`, { cause });
  }
}

/** A line that says its version says the new one after it was lifted. */
function withClaim(before: unknown, after: unknown, v: number): unknown {
  return claimedVersion(before) === null || typeof after !== 'object' || after === null ? after : { ...after, v };
}

/** The version that a line claims, or null where it claims none that makes sense. */
export function claimedVersion(raw: unknown): number | null {
  if (typeof raw !== 'object' || raw === null || !('v' in raw)) return null;
  return typeof raw.v === 'number' && Number.isSafeInteger(raw.v) && raw.v >= 1 ? raw.v : null;
}

/** The same from the text of a line, whatever else is in it: a newer program may keep checksum and shape otherwise. */
export function claimIn(line: string): number | null {
  if (!line.includes('"v"')) return null;
  try {
    return claimedVersion(JSON.parse(line));
  } catch {
    return null;
  }
}
