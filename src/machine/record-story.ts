// The lower half of the bow record: every change with what came of it, and all that was noticed, stopped, released or told.

import type { Content } from '../content/types.ts';
import { lookUp } from './agenda.ts';
import { historyOf, pointBefore } from './history.ts';
import type { State } from './state.ts';
import type { Fact, RecordRow } from './types.ts';
import { sameSettings, settingsBefore } from './undo.ts';
import { phrase } from './words.ts';

export function changeRows(content: Content, state: State): readonly RecordRow[] {
  return historyOf(content, state).slice(1).map(({ time, what, came }, i) => ({
    name: phrase(content, 'record-line', { date: time.slice(0, 10), n: i + 1 }),
    value: came === undefined ? phrase(content, 'record-not-shot', { what }) : `${what}: ${came}`,
  }));
}

export function noticedRows(content: Content, state: State): readonly RecordRow[] {
  return state.facts.flatMap((fact) => {
    const date = fact.time.slice(0, 10);
    return noticedIn(content, state, fact).map(({ name, value }) => ({ name: `${date}, ${name}`, value }));
  });
}

function noticedIn(content: Content, state: State, fact: Fact): readonly RecordRow[] {
  const row = (id: string, value: string): RecordRow => ({ name: phrase(content, `noticed-${id}`), value });
  const found = fact.decided.findings.flatMap((finding): readonly RecordRow[] => {
    if (finding.kind === 'cause') return [row('cause', finding.cause)];
    if (finding.kind !== 'gate' || finding.result === 'passed') return [];
    const answered = fact.kind === 'answered' ? answerAt(content, fact) : '';
    const words = phrase(content, `gate-${finding.result}`, { gate: gateName(content, finding.gate), later: laterResult(content, state, finding.gate, fact.seq) });
    return [row('check', answered === '' ? words : `${words} (${answered})`)];
  });
  switch (fact.kind) {
    case 'noted':
      return [row('note', fact.note)];
    case 'stopped':
      return [row('stop', fact.words), ...found];
    case 'changed':
      return [row('changed', fact.note === '' ? fact.what : `${fact.what}: ${fact.note}`), ...found];
    case 'wanted-back':
      return [row('brought-back', broughtBack(content, state, fact)), ...found];
    case 'resumed':
      return fact.setAside === undefined ? found : [row('set-aside', `${fact.setAside.from} to ${fact.setAside.to}`), ...found];
    case 'answered': {
      if (fact.step === 'released' && fact.answer.kind === 'text') return [row('released', fact.answer.value), ...found];
      if (fact.step === 'what-happened') return [row('what-happened', answerAt(content, fact)), ...found];
      return found;
    }
    case 'begun':
    case 'corrected':
    case 'moved':
      return found;
  }
}

/** To which point, and how many changes that undid; or that it was left. */
function broughtBack(content: Content, state: State, { seq, to }: Extract<Fact, { kind: 'wanted-back' }>): string {
  const undone = state.moves.filter((move) => move.seq >= to && move.seq < seq);
  const next = state.facts.find((fact) => fact.kind === 'wanted-back' && fact.seq > seq)?.seq ?? Infinity;
  const wanted = settingsBefore(state, to);
  const reached = state.moves.some((move) => move.seq > seq && move.seq < next && sameSettings(settingsBefore(state, move.seq + 1), wanted));
  const point = pointBefore(content, state, to);
  if (!reached) return phrase(content, 'brought-back-not', { point });
  return phrase(content, undone.length === 1 ? 'brought-back-one' : 'brought-back', { point, n: undone.length });
}

/** The option that was picked, in its own words; a figure is on the card already. */
function answerAt(content: Content, fact: Extract<Fact, { kind: 'answered' }>): string {
  const { step: id, answer } = fact;
  const pending = lookUp(content, id);
  if (pending === null || pending.check !== undefined || pending.step.kind !== 'choice' || answer.kind !== 'choice') return '';
  const { options } = pending.step;
  return answer.values.map((value) => options.find((option) => option.value === value)?.label ?? value).join(', ');
}

function gateName(content: Content, gate: string): string {
  const step = content.steps[gate];
  if (step !== undefined) return step.short;
  const check = Object.values(content.steps).flatMap((one) => (one.kind === 'chunk' ? one.checks : [])).find((one) => one.id === gate);
  return check?.label ?? gate;
}

/** What became of it: a gate that was passed later says when, one that was not says so. */
function laterResult(content: Content, state: State, gate: string, seq: number): string {
  const passed = state.facts.find((fact) => fact.seq > seq && fact.decided.findings.some((f) => f.kind === 'gate' && f.gate === gate && (f.result === 'passed' || f.result === 'noted')));
  return passed === undefined ? phrase(content, 'gate-open') : phrase(content, 'gate-mended', { date: passed.time.slice(0, 10) });
}
