// A verdict that the walk stands under is worked out again where a figure of it was corrected: an inspection that a slip of the pen
// brought about is left, a put-back that it brought about is not made, and what was advised or offered is judged anew.

import type { Deciding } from './deciding.ts';
import { judgeReturn } from './loop/compare.ts';
import { gaugeOf, taken } from './loop/gauge.ts';
import { judgeAxis } from './loop/judge.ts';
import { judgeSet } from './loop/judge-set.ts';
import type { State } from './state.ts';
import { missedTooOften } from './turn-missed.ts';
import { thenOf } from './then.ts';
import { axisOf, partOfPlace, phaseOfPlace, placeUnder } from './walk.ts';

/** Under a question or a stop, too: then it comes to pass once the walk goes on. */
export function judgeVerdict(d: Deciding, of: number): void {
  const under = placeUnder(d.state.walk);
  // The arrows judge their rounds anew by themselves.
  if (!['paper', 'broadheads', 'finish'].includes(partOfPlace(under))) return;
  const phase = phaseOfPlace(under);
  if (phase === 'inspecting') inspectionAgain(d, of);
  else if (phase === 'puttingBack') putBackAgain(d, of);
  else if (phase === 'offering') d.add({ loop: { reshoot: true } });
  else if (phase === 'shooting') moreAgain(d);
}

// More shots than the set began with were asked for by the old figures: the corrected ones may be enough.
function moreAgain(d: Deciding): void {
  const begun = d.state.facts.findLast(({ decided: { loop } }) => loop?.newSet === true)?.decided.loop?.wanted ?? gaugeOf(d.state).first;
  const shot = taken(d.state);
  if (shot >= begun && d.state.notes.wanted > shot) d.add({ loop: { wanted: shot } });
}

function inspectionAgain(d: Deciding, of: number): void {
  const id = d.state.notes.inspection;
  const then = id === null ? null : thenOf(d, of, d.state.facts.findLast(({ decided: { loop } }) => loop?.inspection === id), true);
  if (then === null) return;
  const stands = id === 'missed' ? missedTooOften(d.state) : id === 'not-returned' ? judgeReturn(d.content, then).verdict === 'not returned' : judgeSet(d.content, then)?.notes.inspection === id;
  if (stands) return;
  const { inspections, scattered, grossSeen, strayed } = then.notes;
  d.add({ advice: null, loop: { inspection: null, inspections, scattered, grossSeen, strayed } });
  d.say('nothing-to-look-for');
}

// "Worse", or "this adjustment cannot", and nothing was put back yet.
function putBackAgain(d: Deciding, of: number): void {
  const { facts, moves, notes } = d.state;
  const said = facts.findLast(({ decided }) => decided.events.some((event) => event.type === 'verdict'));
  if (notes.undo.length === 0 || notes.bringing !== 0 || moves.some((move) => move.seq > (said?.seq ?? 0))) return;
  const then = thenOf(d, of, said, true);
  const verdicts = said?.decided.events.flatMap((event) => (event.type === 'verdict' ? [event.verdict] : [])) ?? [];
  const verdict = verdicts.at(-1);
  if (then === null || (verdict !== 'worse' && verdict !== 'cannot') || judgedThen(d, then) === verdict) return;
  const { worse, ended } = then.notes;
  d.add({ advice: null, loop: { undo: [], undoing: [], worse, ended } });
  d.say('no-put-back');
}

function judgedThen(d: Deciding, then: State): string | null {
  const judged = judgeSet(d.content, then) ?? judgeAxis(d.content, then, axisOf(placeUnder(d.state.walk)) ?? 'height');
  return judged.verdict;
}
