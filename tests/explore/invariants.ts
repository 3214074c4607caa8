// Every promise that keeps people whole, in one list. `npm run explore` holds them after every event of every walk, and
// tests/explore/faults.ts shows for each of them a fault that it catches: a promise that nothing can break is none.

import type { Invariant, Moment } from './moment.ts';
import { insideTheLimits, movedOnlyOnShots, oneChangeAtATime, pressOnlyWhereAllowed, sightStays } from './invariants/advice.ts';
import { journalTellsAll, linesAreInOrder, noAnswerIsLost, refusalChangesNothing } from './invariants/answers.ts';
import { nothingBeyondALimit } from './invariants/beyond.ts';
import { cautionStandsThere, pickedOnPurpose } from './invariants/asking.ts';
import { fingersAreNotRead, gatesBeforeShots, lookedAtBeforeDrawn, lookedAtFromElsewhere, notKnownNeverPasses, onlyWhatIsTheirs, ownGateOfEachShot } from './invariants/gates.ts';
import { ledgerIsWhatWasDone, provedAfterPutBack, putBackIsExact } from './invariants/ledger.ts';
import { notCheckedIsSaid, tunedOnlyByShots } from './invariants/record.ts';
import { headsChangeShafts, judgedByEqualNumbers, missesAreLookedFor, nockStandsAsTold } from './invariants/shots.ts';
import { alwaysAWayOn, stopIsLeftByItsGate, stopShowsItsWayOut, stopWordIsHeard } from './invariants/stops.ts';

export const INVARIANTS: readonly Invariant[] = [
  gatesBeforeShots, lookedAtBeforeDrawn, lookedAtFromElsewhere, notKnownNeverPasses, ownGateOfEachShot, onlyWhatIsTheirs, fingersAreNotRead,
  stopWordIsHeard, stopIsLeftByItsGate, stopShowsItsWayOut, alwaysAWayOn,
  pickedOnPurpose, cautionStandsThere,
  oneChangeAtATime, insideTheLimits, nothingBeyondALimit, pressOnlyWhereAllowed, movedOnlyOnShots, sightStays,
  ledgerIsWhatWasDone, putBackIsExact, provedAfterPutBack,
  noAnswerIsLost, refusalChangesNothing, journalTellsAll, linesAreInOrder,
  headsChangeShafts, judgedByEqualNumbers, nockStandsAsTold, missesAreLookedFor,
  tunedOnlyByShots, notCheckedIsSaid,
];

export interface Broken { readonly invariant: string; readonly how: string }

/** Every promise that this moment breaks. */
export const brokenBy = (moment: Moment): readonly Broken[] => INVARIANTS.flatMap(({ id, broken }) => {
  const how = broken(moment);
  return how === null ? [] : [{ invariant: id, how }];
});

export class Violation extends Error {
  override readonly name = 'Violation';
  /** Never empty. */
  constructor(readonly broken: readonly Broken[]) {
    super(broken.map(({ invariant, how }) => `${invariant}: ${how}`).join('; '));
  }
}
