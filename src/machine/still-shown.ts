// What stands of the tune and rests on a corrected figure is judged again, as on the line that said it. Where it would no longer be
// said, it no longer stands: that is told once, and the walk goes back to where it is shot and judged.

import { AXES, type Axis } from '../content/types.ts';
import { backAtPaper, chapterToJudge } from './after-happening.ts';
import { seenBy } from './record-impacts.ts';
import { subjectIn } from './bring-back.ts';
import type { Deciding } from './deciding.ts';
import { judgeReturn, judgeSecond } from './loop/compare.ts';
import { evidenceOn } from './loop/evidence.ts';
import { gaugeOf, taken } from './loop/gauge.ts';
import { judgeAxis } from './loop/judge.ts';
import { judgeSet } from './loop/judge-set.ts';
import { tunedAxes, withoutAxis } from './loop/results.ts';
import { NOT_REACHED, type LoopNotes } from './notes.ts';
import { movedSince } from './record-moved.ts';
import { thenOf } from './then.ts';
import { placeUnder } from './walk.ts';
import { phrase } from './words.ts';

type Judged = 'paper' | 'broadheads';
const NOTES_OF = { paper: 'axis', broadheads: 'broadAxis' } as const satisfies Readonly<Record<Judged, keyof LoopNotes>>;

/** Judges again all that line `of`, now corrected, went into. */
export function judgeStanding(d: Deciding, of: number): void {
  const proof = proofFails(d, of);
  const gone = (chapter: Judged): readonly Axis[] =>
    AXES.filter((axis) => d.state.notes[NOTES_OF[chapter]][axis]?.result === 'tuned' && (proof || !stillTuned(d, of, chapter, axis)));
  const [paper, broadheads] = [gone('paper'), gone('broadheads')];
  if (paper.length + broadheads.length > 0) takeBack(d, paper, broadheads, proof);
  secondAgain(d, of);
}

function stillTuned(d: Deciding, of: number, chapter: Judged, axis: Axis): boolean {
  const said = d.state.facts.findLast(({ decided }) => decided.findings.some((f) => f.kind === 'axis' && f.axis === axis && f.chapter === chapter && f.result === 'tuned'));
  const then = thenOf(d, of, said);
  if (then === null) return true;
  // With a shot too few it would not have been judged yet.
  if (taken(then) < Math.min(then.notes.wanted, gaugeOf(then).first) || judgeSet(d.content, then) !== null) return false;
  const { verdict, notes } = judgeAxis(d.content, then, axis);
  if (verdict !== 'in tolerance') return false;
  // How sure it is, is told from the corrected figures too.
  const kept = NOTES_OF[chapter];
  const end = notes[kept]?.[axis];
  if (end !== undefined) d.add({ loop: { [kept]: { ...d.state.notes[kept], [axis]: end } } });
  return true;
}

// Shots after tightening that lie elsewhere than those before it: all that was said of the bow was said of it as it was before.
function proofFails(d: Deciding, of: number): boolean {
  if (placeUnder(d.state.walk) !== 'finish.closing') return false;
  const then = thenOf(d, of, d.state.facts.findLast(({ decided }) => decided.events.some((event) => event.type === 'verdict')));
  return then !== null && then.notes.purpose === 'tightened' && judgeReturn(d.content, then).verdict === 'not returned';
}

function takeBack(d: Deciding, paper: readonly Axis[], broadheads: readonly Axis[], proof: boolean): void {
  const { axis, broadAxis, offeredFor } = d.state.notes;
  const words = (axes: readonly Axis[]): string => axes.map((one) => phrase(d.content, `axis-${one}`).toLowerCase()).join(', ');
  if (proof) d.say('not-shown-tightened');
  else {
    if (paper.length > 0) d.say(`not-shown-${seenBy(d.state)}`, { axes: words(paper) });
    if (broadheads.length > 0) d.say('not-shown-broadheads', { axes: words(broadheads) });
  }
  // What was moved since is judged by what came after it: of that, only the word about the old setting falls.
  const atPaper = paper.some((one) => proof || !movedSince(d.content, d.state, one));
  const goesBack = atPaper || broadheads.length > 0;
  d.add({ loop: {
    axis: paper.reduce(withoutAxis, axis),
    ...(goesBack ? { broadAxis: atPaper ? {} : broadheads.reduce(withoutAxis, broadAxis), broadReached: NOT_REACHED } : {}),
    ...(atPaper ? { secondDistance: null } : {}),
    offeredFor: Object.fromEntries(Object.entries(offeredFor).filter(([one]) => ![...paper, ...broadheads].some((lost) => lost === one))),
  } });
  if (goesBack) goBack(d, atPaper);
}

// The shots count on as they now read: where they are enough, they are judged at once. A change that is on its way back goes
// back, and is proved, first.
function goBack(d: Deciding, atPaper: boolean): void {
  const backTo = chapterToJudge(d, true, atPaper);
  if (backTo === null) return;
  const { undo, purpose } = d.state.notes;
  d.add({
    ...(undo.length > 0 ? {} : { advice: null }),
    loop: { backTo, inspection: null, offered: null, ...(purpose === 'tightened' ? { purpose: 'judge' } : {}), ...subjectIn(d.state, backTo) },
  });
  d.add({ loop: { wanted: gaugeOf(d.state).first } });
  if (backTo === 'paper') backAtPaper(d);
  d.say('judged-again');
}

// The second distance never drives a move: what the corrected shots show there takes the place of what was said.
function secondAgain(d: Deciding, of: number): void {
  const was = d.state.notes.secondDistance;
  if (was === null) return;
  const then = thenOf(d, of, d.state.facts.findLast(({ decided: { loop } }) => typeof loop?.secondDistance === 'string'));
  if (then === null) return;
  const evidence = tunedAxes(then).flatMap((axis) => evidenceOn(d.content, then, axis, null) ?? []);
  const shown = evidence.length > 0 && judgeSet(d.content, then) === null && judgeSecond(d.content, evidence, then).verdict === 'in tolerance';
  const is = shown ? 'confirmed' : 'not confirmed';
  if (is === was) return;
  d.add({ loop: { secondDistance: is } });
  d.say(shown ? 'second-confirmed' : 'second-not-confirmed');
}
