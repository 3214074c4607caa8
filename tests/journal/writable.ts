// All that version 1 of the journal can write, as names: kinds of lines, answers, events, verdicts, findings, advice, orders. The
// compiler holds the lists to the types of machine/types.ts, so that a new one has to be named here, and then be in a fixture.

import type { ArrowClass, LoopPatch, LoopNotes, SetKind } from '../../src/machine/notes.ts';
import type { Advice, Answer, Carried, Changed, Direction, Fact, Finding, KnobId, MachineEvent, MovedAnswer, Verdict } from '../../src/machine/types.ts';

type All<Union extends string> = Readonly<Record<Union, true>>;
type Of<Kind extends Finding['kind']> = Extract<Finding, { kind: Kind }>;

const KINDS: All<Fact['kind']> = { 'begun': true, 'answered': true, 'corrected': true, 'wanted-back': true, 'stopped': true, 'noted': true, 'moved': true, 'changed': true, 'resumed': true };
/** What may be the first line of a sitting: a finished tune takes notes only, and is not resumed. */
const SAYS: Readonly<Partial<All<Fact['kind']>>> = { begun: true, resumed: true, noted: true };
const ANSWERS: All<Answer['kind']> = { 'choice': true, 'number': true, 'confirm': true, 'text': true, 'shots': true, 'moved': true, 'not known': true };
const MOVED: All<Extract<MovedAnswer, string> | 'amount'> = { 'as told': true, 'not now': true, 'another': true, 'at its end': true, 'amount': true };
const SHOTS: All<'plain' | 'good' | 'bad' | 'missed' | 'several'> = { plain: true, good: true, bad: true, missed: true, several: true };
const EVENTS: All<MachineEvent['type']> = {
  'settled': true, 'skipped': true, 'farther': true, 'due': true, 'clear': true, 'stop': true, 'released': true, 'verdict': true, 'moved': true, 'looked': true,
  'chosen': true, 'put back': true, 'return': true,
};
const VERDICTS: All<Verdict> = {
  'inconsistent': true, 'gross': true, 'in tolerance': true, 'out': true, 'worse': true, 'cannot': true, 'borderline': true, 'returned': true, 'not returned': true,
  'odd arrows': true, 'many odd': true, 'set differs': true,
};
const CHOSEN: All<Extract<MachineEvent, { type: 'chosen' }>['choice']> = { 'accept': true, 'go on': true, 'finish step': true };
const RETURNS: All<Extract<MachineEvent, { type: 'return' }>['to']> = { paper: true, broadheads: true };
const GATES: All<Of<'gate'>['result']> = { passed: true, failed: true, unknown: true, noted: true };
const AXES: All<Of<'axis'>['result']> = { tuned: true, cannot: true, accepted: true, inconsistent: true };
const KNOB_ENDS: All<Of<'knob'>['result']> = { 'learned': true, 'no response': true, 'limit': true };
const CLASSES: All<ArrowClass> = { 'first choice': true, 'practice': true, 'repair': true, 'never again': true };
const CAUSES: All<Of<'cause'>['cause']> = { 'contact': true, 'grip': true, 'face': true, 'loose part': true, 'one arrow': true, 'tired archer': true, 'other': true };
const ADVICE: All<Advice['kind']> = { 'adjust': true, 'put-back': true, 'inspect': true, 'shop': true };
const KNOBS: All<KnobId | 'nock-turn' | 'nock-swap'> = {
  'rest-height': true, 'nock-height': true, 'rest-side': true, 'yoke': true, 'cam-spacers': true, 'cam-screw': true, 'cam-sync': true, 'limb-bolts': true, 'point-weight': true, 'drop-cord': true,
  'nock-turn': true, 'nock-swap': true,
};
const DIRECTIONS: All<Direction> = { left: true, right: true, up: true, down: true, in: true, out: true, add: true, remove: true };
const CHANGES: All<Changed> = { string: true, rest: true, arrow: true, release: true, loop: true, sight: true, fell: true, other: true, place: true };
const ORDERS: All<Exclude<keyof LoopPatch, keyof LoopNotes>> = {
  newSet: true, told: true, tags: true, arrowTold: true, stop: true, suggest: true, rewindTo: true, setAside: true,
};
const SHOOTING: All<SetKind> = { paper: true, unfletched: true, plumb: true, broadheads: true, arrows: true };
const CARRIED: All<keyof Carried> = { from: true, bow: true, bowId: true, archerId: true, answers: true, spread: true, gains: true, besides: true };

const GROUPS = {
  'line': KINDS, 'version said by': SAYS, 'answer': ANSWERS, 'moved': MOVED, 'shot': SHOTS, 'event': EVENTS, 'verdict': VERDICTS, 'chosen': CHOSEN, 'return to': RETURNS, 'gate': GATES,
  'axis': AXES, 'knob': KNOB_ENDS, 'arrow': CLASSES, 'cause': CAUSES, 'advice': ADVICE, 'advice about': KNOBS, 'direction': DIRECTIONS, 'changed': CHANGES,
  'order': ORDERS, 'shooting': SHOOTING, 'carried': CARRIED,
} as const;
type Group = keyof typeof GROUPS;

/** Every name, `verdict: worse`. */
export const WRITABLE: readonly string[] = (Object.keys(GROUPS) as Group[]).flatMap((group) => Object.keys(GROUPS[group]).map((name) => `${group}: ${name}`));

/** The names of what these facts hold. */
export function writtenIn(facts: readonly Fact[]): ReadonlySet<string> {
  const found = new Set<string>();
  const add = (group: Group, name: string): void => { found.add(`${group}: ${name}`); };
  for (const fact of facts) {
    add('line', fact.kind);
    if (fact.v !== undefined) add('version said by', fact.kind);
    if (fact.kind === 'changed') add('changed', fact.what);
    if (fact.kind === 'begun') for (const one of fact.known) for (const key of Object.keys(one)) add('carried', key);
    if (fact.kind === 'answered' || fact.kind === 'corrected') ofAnswer(fact.answer, add);
    const { events, findings, advice, loop = {} } = fact.decided;
    events.forEach((event) => ofEvent(event, add));
    findings.forEach((finding) => ofFinding(finding, add));
    if (advice !== undefined && advice !== null) ofAdvice(advice, add);
    for (const order of Object.keys(ORDERS)) if (order in loop) add('order', order);
    if (loop.of !== undefined) add('shooting', loop.of);
    // What a tune begins with is not said.
    if (fact.kind === 'begun') add('shooting', 'paper');
  }
  return found;
}

type Add = (group: Group, name: string) => void;

function ofAnswer(answer: Answer, add: Add): void {
  add('answer', answer.kind);
  if (answer.kind === 'moved') add('moved', typeof answer.moved === 'string' ? answer.moved : 'amount');
  if (answer.kind !== 'shots') return;
  if (answer.shots.length > 1) add('shot', 'several');
  for (const shot of answer.shots) add('shot', 'missed' in shot ? 'missed' : (shot.called ?? 'plain'));
}

function ofEvent(event: MachineEvent, add: Add): void {
  add('event', event.type);
  if (event.type === 'verdict') add('verdict', event.verdict);
  if (event.type === 'chosen') add('chosen', event.choice);
  if (event.type === 'return') add('return to', event.to);
}

function ofFinding(finding: Finding, add: Add): void {
  if (finding.kind === 'arrow') add('arrow', finding.class);
  else if (finding.kind === 'cause') add('cause', finding.cause);
  else add(finding.kind, finding.result);
}

function ofAdvice({ kind, knob, direction }: Advice, add: Add): void {
  add('advice', kind);
  if (knob !== undefined) add('advice about', knob);
  if (direction !== undefined) add('direction', direction);
}
