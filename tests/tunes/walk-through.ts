// Walks a tune from the first line to the record over any pipe, and tells what was decided, in order, in short words.

import type { Advice, Ask, Finding, Ledger } from '../../src/machine/types.ts';
import type { OutLine } from '../../src/screens/pipe-schema.ts';
import { toFractionText } from './fraction-text.ts';
import type { NumberedArcher } from './numbered-archer.ts';
import type { Talk } from './pipe-talk.ts';

export type WalkLine = Extract<OutLine, { type: 'ask' | 'stop' | 'done' }>;

/** A tune walked to its record. */
export interface Walked {
  readonly lines: readonly WalkLine[];
  /** What was asked, in order, with what was answered. */
  readonly asked: readonly { readonly about: string; readonly step: string; readonly answer: unknown; readonly stopped: boolean }[];
  readonly last: WalkLine;
}

/** Takes up the tune after an answer: a new pipe to the same journal, or null where nothing happened. */
export type Interrupt = (answers: number, line: WalkLine) => Promise<Talk | null>;

export async function walkThrough(first: Talk, archer: NumberedArcher, interrupt: Interrupt = async () => null): Promise<Walked> {
  let talk = first;
  const lines: WalkLine[] = [asWalkLine(await talk.hear())];
  const asked: { about: string; step: string; answer: unknown; stopped: boolean }[] = [];
  for (;;) {
    const line = lines.at(-1);
    if (line === undefined || line.type === 'done') break;
    if (asked.length > 400) throw new Error(`400 answers and no end: ${JSON.stringify(line)}`);
    const ask = line.ask as Ask;
    const answer = archer.reply(ask, line.bow as Ledger);
    asked.push({ about: ask.about, step: ask.step, answer, stopped: line.type === 'stop' });
    const next = asWalkLine(await talk.say({ answer }), { about: ask.about, answer });
    lines.push(next);
    const other = next.type === 'done' ? null : await interrupt(asked.length, next);
    if (other === null) continue;
    talk = other;
    lines.push(asWalkLine(await talk.hear()));
  }
  return { lines, asked, last: lines.at(-1) as WalkLine };
}

function asWalkLine(line: OutLine, sent: unknown = null): WalkLine {
  if (line.type === 'error' || line.type === 'left') throw new Error(`${JSON.stringify(line)} (sent ${JSON.stringify(sent)})`);
  return line;
}

export const advicesOf = (lines: readonly WalkLine[]): readonly Advice[] => {
  let shown = '';
  return lines.flatMap(({ advice }) => {
    const text = JSON.stringify(advice);
    const fresh = text !== shown && advice !== null;
    shown = text;
    return fresh ? [advice as Advice] : [];
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

/** The course of the loop: shots in a row under one heading, advice, findings other than gates, stops. */
export function courseOf({ lines, asked }: Walked): readonly string[] {
  const course: string[] = [];
  let row = { step: '', shots: 0 };
  const endRow = (): void => {
    if (row.shots > 0) course.push(`${row.step} x${row.shots}`);
    row = { step: '', shots: 0 };
  };
  let shown = '';
  for (const [i, { about, step }] of asked.entries()) {
    if (about === 'tear') {
      if (row.step !== step) endRow();
      row = { step, shots: row.shots + 1 };
    }
    const line = lines[i + 1];
    if (line === undefined) break;
    const found = otherThanGates(line.findings as readonly Finding[]);
    const text = JSON.stringify(line.advice);
    const advised = line.advice !== null && text !== shown;
    shown = text;
    if (found.length > 0 || advised) endRow();
    course.push(...found.map(findingInShort));
    if (advised) course.push(adviceInShort(line.advice as Advice));
  }
  endRow();
  return course;
}
