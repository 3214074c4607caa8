// The finish: tighten, prove that tightening moved nothing, then the sight and the calendar.

import { adoptReturn } from './adopt-judgement.ts';
import type { Deciding } from './deciding.ts';
import { holds } from './guards.ts';
import { differs, judgeReturn } from './loop/compare.ts';
import { gaugeOf, wantsShots } from './loop/gauge.ts';
import { countingSets, currentSet, FIRST_DISTANCE, goodShots, settingKey, shotsHere } from './loop/sets.ts';
import type { LoopNotes, SetKind } from './notes.ts';
import type { PlaceIn } from './places.ts';
import { settingsOf, type ShotSet, type State } from './state.ts';
import { bladesOff, broadheadsAreOff } from './target.ts';
import { nothingToLookFor, startAnew } from './turn-loop.ts';

/** One automatic step of the finish; false where a question stands. */
export function turnFinish(d: Deciding<PlaceIn<'finish'>>): boolean {
  if (d.isAt('finish.tightening')) {
    const hardware = ['cams', 'rest'].filter((id) => d.state.answers[id] === undefined);
    if (hardware.length > 0) { d.add({ due: hardware }); return true; }
    beginProof(d);
    return d.event({ type: 'settled' });
  }
  if (d.isAt('finish.proof')) return turnProof(d);
  if (d.isAt('finish.closing')) return bladesOff(d) || d.event({ type: 'settled' });
  // inspecting: the archer chooses, unless there is nothing left to look for.
  return d.isAt('finish.inspecting') && nothingToLookFor(d);
}

function beginProof(d: Deciding): void {
  d.add({ loop: { ...proofBy(d.state), purpose: 'tightened' } });
  d.add({ loop: { newSet: true, wanted: gaugeOf(d.state).first } });
}

/** What last showed this very setting, and from where: that is what the shots after tightening can be held against. */
function proofBy(state: State): Pick<LoopNotes, 'of' | 'distance'> {
  const key = settingKey(settingsOf(state.moves));
  const at = (of: SetKind): ShotSet | undefined =>
    countingSets(state, of).findLast((set) => set.epoch === state.notes.epoch && settingKey(set.settings) === key && goodShots(set).length > 0);
  // Nobody is asked for a broadhead who does not shoot them any more.
  const kinds = (['paper', 'broadheads', 'unfletched', 'plumb'] as const).filter((of) => of !== 'broadheads' || holds(state, ['shoots-broadheads']));
  const last = kinds.flatMap((of) => at(of) ?? [])[0];
  return last === undefined ? { of: 'paper', distance: FIRST_DISTANCE } : { of: last.of, distance: last.distance };
}

// Tightening can move a rest: three shots against the last ones at this setting. Nothing to hold them against, nothing to prove.
function turnProof(d: Deciding<'finish.proof'>): boolean {
  if (broadheadsAreOff(d.state)) {
    d.say('broadheads-left');
    beginProof(d);
  }
  if (shotsHere(d.state).length === 0) return d.event({ type: 'settled' });
  startAnew(d);
  if (currentSet(d.state) === null) d.add({ loop: { newSet: true } });
  if (wantsShots(d.state)) return false;
  if (differs(d.state) === null) return d.event({ type: 'settled' });
  return adoptReturn(d, judgeReturn(d.content, d.state));
}
