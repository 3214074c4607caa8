// The finish: tighten, prove that tightening moved nothing, then the sight and the calendar.

import { adoptJudgement } from './adopt-judgement.ts';
import type { Deciding } from './deciding.ts';
import { differs, judgeReturn } from './loop/compare.ts';
import { taken } from './loop/gauge.ts';
import { currentSet, shotsHere } from './loop/sets.ts';
import { startAnew } from './turn-loop.ts';

/** One automatic step of the finish; false where a question stands. */
export function turnFinish(d: Deciding, place: string): boolean {
  if (place === 'finish.tightening') {
    const hardware = ['cams', 'rest'].filter((id) => d.state.answers[id] === undefined);
    if (hardware.length > 0) { d.add({ due: hardware }); return true; }
    d.add({ loop: { newSet: true, purpose: 'tightened', wanted: 3 } });
    return d.event({ type: 'settled' });
  }
  if (place === 'finish.proof') return turnProof(d);
  if (place === 'finish.closing') return d.event({ type: 'settled' });
  return false;
}

// Tightening can move a rest: three shots against the last ones at this setting. Nothing to hold them against, nothing to prove.
function turnProof(d: Deciding): boolean {
  if (shotsHere(d.state).length === 0) return d.event({ type: 'settled' });
  startAnew(d);
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (taken(d.state) < d.state.notes.wanted) return false;
  if (differs(d.state) === null) return d.event({ type: 'settled' });
  return adoptJudgement(d, judgeReturn(d.content, d.state));
}
