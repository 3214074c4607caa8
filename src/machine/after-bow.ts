// What follows once it is told which bow it is: what is carried over is said, and what another archer must show is asked.

import { knobEntries } from '../content/types.ts';
import type { Deciding } from './deciding.ts';
import { knownBows, pickedBow } from './known-bow.ts';
import { carriedGains, carriedSpread } from './loop/carried.ts';
import { amountInWords } from './words.ts';

export function bowPicked(d: Deciding, step: 'bow' | 'which-bow', value: string): void {
  if (step === 'bow' && (value === 'replaced' || value === 'other-archer') && knownBows(d.state).length > 1) {
    d.add({ due: ['which-bow'] });
    return;
  }
  const picked = pickedBow(d.state);
  if (picked === null) { d.say('bow-new'); return; }
  d.say(picked.as === 'same' ? 'bow-known' : `bow-known-${picked.as}`);
  // Somebody else draws it for the first time.
  if (picked.as === 'other-archer') d.add({ due: ['slow-draw'] });
  sayCarried(d);
}

function sayCarried(d: Deciding): void {
  const spread = carriedSpread(d.state);
  const gains = knobEntries(carriedGains(d.state));
  if (spread !== null) d.say('known-carried-spread', { sd: spread.sd.toFixed(2) });
  for (const [id, { mean }] of gains) {
    const knob = d.content.knobs[id];
    d.say('known-carried-gain', { knob: knob.name, step: amountInWords({ value: knob.first, unit: knob.unit }), change: Math.abs(mean * knob.first).toFixed(2) });
  }
  if (spread === null && gains.length === 0) d.say('known-nothing-carried');
}
