// Plants each fault, walks until a promise is broken, and tells which one caught it.

import { rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { shippedContent } from '../tunes/play.ts';
import { bundle, type Patch } from './bundle.ts';
import { FAULTS, type Fault } from './faults.ts';
import { hunt, type Found, type HuntOptions } from './hunt.ts';
import { INVARIANTS } from './invariants.ts';

/** Walks before a fault counts as not caught. */
const MOST_WALKS = 400;
const SEED = 41;

export interface Caught { readonly fault: Fault; readonly found: Found | null; readonly walks: number }

export async function plant(fault: Fault, walks = MOST_WALKS, seed = fault.at?.seed ?? SEED): Promise<Caught> {
  const sound = shippedContent();
  const options: HuntOptions = { sound, content: fault.spoil?.(sound) ?? sound, walks, seed, ...(fault.at === undefined ? {} : { only: fault.at }) };
  const walker = fault.patch === undefined ? { hunt } : await faulty(fault.id, fault.patch);
  const { found, tally } = walker.hunt(options);
  return { fault, found, walks: tally.walks };
}

// The whole explorer with the fault in it: what is held against it must not be spoiled as well, so books and promises take
// nothing from the sources but types and closed lists of names.
async function faulty(id: string, patch: Patch): Promise<{ hunt: typeof hunt }> {
  const file = await bundle('tests/explore/hunt.ts', `fault-${id}`, [patch]);
  const loaded = await import(pathToFileURL(file).href) as { hunt: typeof hunt };
  rmSync(file, { force: true });
  return loaded;
}

export const isCaught = ({ fault, found }: Caught): boolean => found?.invariants.includes(fault.breaks) === true;

export function inWords(caught: Caught): string {
  const { fault, found, walks } = caught;
  const by = isCaught(caught) ? fault.breaks : (found?.invariants.join(', ') ?? 'nothing');
  return `${isCaught(caught) ? 'caught' : 'MISSED'} by ${by.padEnd(28)} in walk ${String(walks).padStart(3)}: ${fault.what} (${fault.id})`;
}

/** The whole table; true where every fault was caught by its promise and every promise catches one. */
export async function faultTable(tell: (line: string) => void): Promise<boolean> {
  let good = 0;
  for (const fault of FAULTS) {
    const caught = await plant(fault);
    if (isCaught(caught)) good++;
    tell(inWords(caught));
  }
  const idle = INVARIANTS.filter(({ id }) => !FAULTS.some((fault) => fault.breaks === id));
  for (const { id } of idle) tell(`MISSED  no fault is planted for ${id}`);
  tell(`faults   ${good} of ${FAULTS.length} caught by the promise that they break; ${INVARIANTS.length - idle.length} of ${INVARIANTS.length} promises catch one`);
  return good === FAULTS.length && idle.length === 0;
}
