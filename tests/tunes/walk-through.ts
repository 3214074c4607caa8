// Walks a tune from the first line to the record over any pipe, and tells what was decided, in order, in short words.

import type { Advice, Ask, Finding } from '../../src/machine/types.ts';
import type { OutLine } from '../../src/screens/pipe-schema.ts';
import { toFractionText } from './fraction-text.ts';
import type { NumberedArcher } from './numbered-archer.ts';
import type { Talk } from './pipe-talk.ts';

export type WalkLine = Extract<OutLine, { type: 'ask' | 'stop' | 'done' }>;

/** One question and what came of its answer. */
export interface Turn {
  readonly line: WalkLine;
  readonly ask: Ask;
  readonly answer: unknown;
  readonly reply: WalkLine;
}

/** A tune walked to its record. */
export interface Walked {
  readonly turns: readonly Turn[];
  /** Every line that was heard, those that open a sitting too. */
  readonly lines: readonly WalkLine[];
  /** Where a later sitting began: the index of its first turn. */
  readonly sittings: readonly number[];
  readonly last: WalkLine;
}

/** Called after each answer but the last: a new pipe to the same journal, or null where nothing happened. */
export type Interrupt = (answers: number, line: WalkLine) => Promise<Talk | null>;

/** A line that is said instead of an answer, or null where the archer simply answers. */
export type Instead = (line: WalkLine) => unknown;

export async function walkThrough(first: Talk, archer: NumberedArcher, interrupt: Interrupt = async () => null, instead: Instead = () => null): Promise<Walked> {
  let talk = first;
  let line = asWalkLine(await talk.hear());
  const lines = [line];
  const turns: Turn[] = [];
  const sittings: number[] = [];
  while (line.type !== 'done') {
    if (turns.length > 400) throw new Error(`400 answers and no end: ${JSON.stringify(line)}`);
    const ask = line.ask as Ask;
    const said = instead(line) ?? { answer: archer.reply(ask, line.bow) };
    const reply = asWalkLine(await talk.say(said), { about: ask.about, said });
    const answer = (said as { readonly answer?: unknown }).answer ?? said;
    lines.push(reply);
    turns.push({ line, ask, answer, reply });
    line = reply;
    const other = reply.type === 'done' ? null : await interrupt(turns.length, reply);
    if (other === null) continue;
    talk = other;
    line = asWalkLine(await talk.hear());
    lines.push(line);
    sittings.push(turns.length);
  }
  return { turns, lines, sittings, last: line };
}

function asWalkLine(line: OutLine, sent: unknown = null): WalkLine {
  if (line.type === 'error' || line.type === 'left') throw new Error(`${JSON.stringify(line)} (sent ${JSON.stringify(sent)})`);
  return line;
}

/** Advice as it came up, each once, however often a line repeated it. */
export const advicesOf = (lines: readonly WalkLine[]): readonly Advice[] => {
  let shown = '';
  return lines.flatMap(({ advice }) => {
    if (advice === null || JSON.stringify(advice) === shown) return [];
    shown = JSON.stringify(advice);
    return [advice as Advice];
  });
};

export const findingsOf = (lines: readonly WalkLine[]): readonly Finding[] => lines.flatMap((line) => line.findings as readonly Finding[]);

export const otherThanGates = (findings: readonly Finding[]): readonly Finding[] => findings.filter(({ kind }) => kind !== 'gate');

/** `adjust rest-side left 1/32 in, trial`. */
export function adviceInShort({ kind, knob, direction, amount, trial }: Advice): string {
  if (knob === undefined || amount === undefined) return kind;
  return `${kind} ${knob} ${direction ?? ''} ${toFractionText(amount.value)} ${amount.unit}${trial === true ? ', trial' : ''}`;
}

export const findingInShort = (finding: Finding): string => {
  switch (finding.kind) {
    case 'gate': return `gate ${finding.gate} ${finding.result}`;
    case 'axis': return `${finding.axis} ${finding.result}`;
    case 'knob': return `${finding.knob} ${finding.result}`;
    case 'arrow': return `arrow ${finding.arrow} ${finding.class}`;
    case 'cause': return `cause ${finding.cause}`;
  }
};

/** The course of the loop: shots in a row under one heading, advice, findings other than gates. */
export function courseOf({ turns }: Walked): readonly string[] {
  const course: string[] = [];
  let row = { step: '', shots: 0 };
  const endRow = (): void => {
    if (row.shots > 0) course.push(`${row.step} x${row.shots}`);
    row = { step: '', shots: 0 };
  };
  let shown = 'null';
  for (const { ask, reply } of turns) {
    if (ask.kind === 'tear') {
      if (row.step !== ask.step) endRow();
      row = { step: ask.step, shots: row.shots + 1 };
    }
    const found = otherThanGates(reply.findings as readonly Finding[]);
    const advised = reply.advice !== null && JSON.stringify(reply.advice) !== shown;
    shown = JSON.stringify(reply.advice);
    if (found.length > 0 || advised) endRow();
    course.push(...found.map(findingInShort));
    if (advised) course.push(adviceInShort(reply.advice as Advice));
  }
  endRow();
  return course;
}
