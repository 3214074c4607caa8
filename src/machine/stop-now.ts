// The walk stops: from wherever it stands, or for one more reason where it stands still already.

import type { Deciding } from './deciding.ts';
import type { Stop } from './notes.ts';
import { stopOver } from './stops.ts';

export function stopNow(d: Deciding, stop: Stop): void {
  const reasons = { loop: { stop: stopOver(d.state.stop, stop) } };
  if (d.isAt('stopped')) d.add(reasons);
  else d.event({ type: 'stop' }, reasons);
}
