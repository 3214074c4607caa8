// The way to a mass that nobody knows: weighed or added up, and then part by part. The walk stands still meanwhile, and asks
// nothing of it that is not needed any more.

import type { Deciding } from '../deciding.ts';
import { stopNow } from '../stop-now.ts';
import { withoutQuestions } from '../stops.ts';
import { isNotWeighed, isPart, MASS_WAY, openForMass, PARTS } from './arrow-mass.ts';

/** What an answer about the mass opens and closes, before it is ruled on. */
export function seeToMass(d: Deciding, step: string): void {
  if (step === 'arrow-mass') partsAnew(d);
  if (step !== 'arrow-mass' && step !== MASS_WAY && !isPart(step)) return;
  closeQuestions(d);
  if (step === MASS_WAY) askOn(d);
}

// Asked once more, the mass may be that of another arrow: what was told of its parts is offered to be told again, and counts no more.
function partsAnew(d: Deciding): void {
  const told = [MASS_WAY, ...PARTS].filter((id) => d.state.answers[id] !== undefined);
  if (told.length > 0) d.add({ loop: { suggest: told } });
}

function closeQuestions(d: Deciding): void {
  const { stop } = d.state;
  if (stop === null) return;
  const open = openForMass(d.state);
  const ofMass = (id: string): boolean => id === MASS_WAY || isPart(id) || (id === 'arrow-mass' && isNotWeighed(d.state));
  const left = withoutQuestions(stop, (id) => ofMass(id) && !open.includes(id));
  if (left !== stop) d.add({ loop: { stop: left } });
}

// In the name of the answer that did not know: who corrects that one is asked nothing more.
function askOn(d: Deciding): void {
  const ask = openForMass(d.state);
  const line = d.state.answers['arrow-mass']?.seq;
  if (ask.length === 0 || line === undefined) return;
  const stood = d.isAt('stopped');
  stopNow(d, { cause: 'gate', ask, from: 'arrow-mass', line });
  if (!stood) d.say('stop-here');
}
