// Which ways round a nock may stand so that the vanes stand as before, and still pass the rest.

import { chosen } from '../guards.ts';
import type { State } from '../state.ts';

/** A nock's turns are counted in vanes; it may be turned by `step` vanes at a time, `vanes` of them are once round. */
export interface Ways { readonly vanes: number; readonly step: number }

const ONE_WAY: Ways = { vanes: 1, step: 1 };
const BY_VANES: Readonly<Record<string, Ways>> = {
  'three': { vanes: 3, step: 1 }, 'four-even': { vanes: 4, step: 1 },
  // Unevenly spaced, only half a turn brings them back to where they were.
  'four-uneven': { vanes: 4, step: 2 },
};
/** Rests between whose parts the vanes pass. Others drop away, or hold the shaft from all sides. */
const STAYS_UP = ['blade', 'prong', 'unknown'];

export const waysCount = ({ vanes, step }: Ways): number => vanes / step;

/** The ways, or the question that must be answered first. */
export function waysOf(state: State): Ways | { readonly ask: string } {
  const mayTurn = chosen(state, 'nock-turns');
  if (mayTurn === undefined) return { ask: 'nock-turns' };
  if (mayTurn !== 'turns') return ONE_WAY;
  const vanes = chosen(state, 'vanes');
  if (vanes === undefined) return { ask: 'vanes' };
  const ways = BY_VANES[vanes] ?? ONE_WAY;
  if (waysCount(ways) === 1) return ONE_WAY;
  const rest = chosen(state, 'rest');
  if (rest === undefined) return { ask: 'rest' };
  if (!STAYS_UP.includes(rest)) return ways;
  const clears = chosen(state, 'turned-clears');
  if (clears === undefined) return { ask: 'turned-clears' };
  return clears === 'clears' ? ways : ONE_WAY;
}

/** A count of vanes as a turn: 0 up to, not including, once round. */
export const asTurn = ({ vanes, step }: Ways, count: number): number => (((Math.round(count / step) * step) % vanes) + vanes) % vanes;
