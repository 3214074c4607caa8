// What follows from a cause that was found: what it voids, what is looked at again, and the fresh set that judges it.

import { NOT_REACHED } from './notes.ts';
import type { Inspection, Trigger } from '../content/types.ts';
import { judgeAnew } from './after-happening.ts';
import type { Deciding } from './deciding.ts';
import { gaugeOf } from './loop/gauge.ts';
import { freshAfterScatter } from './loop/judge-set.ts';
import type { Finding } from './types.ts';

type Cause = Extract<Finding, { kind: 'cause' }>['cause'];
const CAUSES: readonly Cause[] = ['contact', 'grip', 'face', 'loose part', 'one arrow', 'tired archer', 'other'];

// Tears shot with contact, or with something loose, say nothing of the bow: they no longer count.
const VOIDS: readonly Cause[] = ['contact', 'loose part'];

// A cause that was put right gives another tear: one that is still gross is looked into again, before any adjustment.
export function causeFound(d: Deciding, cause: Cause, again: readonly string[], voids = VOIDS.includes(cause)): void {
  const { epoch } = d.state.notes;
  d.add({
    findings: [{ kind: 'cause', cause }], due: again, advice: null,
    loop: { newSet: true, wanted: gaugeOf(d.state).first, purpose: 'judge', reshoot: true, epoch: epoch + 1, grossSeen: false, strayed: [], ...(voids ? { forgetBefore: epoch } : {}) },
  });
  d.say(`cause-${cause.replace(' ', '-')}`);
}

/** What was found and is now put right is looked at again before the next shot, like any other work of its kind. */
const AFTER_MENDING: Readonly<Record<string, readonly Trigger[]>> = {
  // A new nock may sit in a split shaft, or not hold on the string: the arrows are looked at as well as the loop.
  'nock-fit': ['clash', 'nock-height'],
  'shafts': ['arrow-changed'], 'one-arrow': ['clash'], 'rest-timing': ['drop-cord'], 'centre-shot': ['something-moved'],
  'head-wobbles': ['clash'], 'insert-loose': ['clash'], 'vanes-small': ['arrow-changed'],
};

export function afterInspection(d: Deciding, id: Inspection['id'], value: string): void {
  const inspection = d.content.inspections[id];
  const option = inspection.options.find((o) => o.value === value);
  const cause = CAUSES.find((c) => c === option?.cause);
  if (option !== undefined && option.say !== '') d.add({ say: [option.say] });
  if (cause === 'contact') causeFound(d, cause, ['rest-check', 'contact']);
  else if (cause === 'loose part') { causeFound(d, cause, []); d.trigger('something-moved'); }
  else if (cause === 'tired archer') { causeFound(d, cause, []); d.trigger('forty-shots'); }
  else if (cause !== undefined) causeFound(d, cause, [], value === 'shafts');
  else if (id === 'not-returned') { d.trigger('something-moved'); d.add({ loop: { epoch: d.state.notes.epoch + 1 } }); }
  // Nothing was found: then these shots are how the archer shoots, and count like any others.
  if (cause === undefined && id === 'scatter' && gaugeOf(d.state).of === 'paper') d.add({ loop: { scattered: [], strayed: [...d.state.notes.strayed, ...d.state.notes.scattered] } });
  for (const mended of AFTER_MENDING[value] ?? []) d.trigger(mended);
  // A large tear that several shots agree on, and no cause for it: they need not be shot again.
  const stands = cause === undefined && id === 'gross';
  const { first, of } = gaugeOf(d.state);
  const fresh = { newSet: true, wanted: cause === undefined && id === 'scatter' && of === 'paper' ? freshAfterScatter(d.state) : first } as const;
  d.where('looked').event({ type: 'looked' }, { advice: null, loop: { ...(stands ? {} : fresh), purpose: 'judge', inspection: null, reshoot: false } });
  if (cause !== undefined && VOIDS.includes(cause)) voidEarlier(d);
}

// What was called tuned before rests on shots that no longer count: it is judged again, from paper on.
export function voidEarlier(d: Deciding): void {
  const { axis, broadAxis } = d.state.notes;
  if (Object.keys(axis).length === 0 && Object.keys(broadAxis).length === 0) return;
  judgeAnew(d, { axis: {}, broadAxis: {}, broadReached: NOT_REACHED, secondDistance: null, offeredFor: {} }, true);
}
