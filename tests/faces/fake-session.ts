// A session with a script instead of a walk: enough to hold the faces to their promises.

import { Readable, Writable } from 'node:stream';
import { CodedError } from '../../src/errors.ts';
import type { Advice, Ask, HistoryEntry, Intent, Reply, SessionLike, TranscriptEntry, View } from '../../src/machine/types.ts';

const base = { step: 'a-step', short: 'Which?', text: ['Which is it?'], why: ['Because it matters.'], caution: [] } as const;

export const ASKS = {
  choice: { ...base, about: 'hand', kind: 'choice', options: [{ value: 'right', label: 'Right hand' }, { value: 'left', label: 'Left hand' }], unknown: true },
  many: { ...base, about: 'press', kind: 'choice', many: true, noDefault: true, options: [{ value: 'a', label: 'First' }, { value: 'b', label: 'Second', pass: true }, { value: 'c', label: 'Third' }] },
  number: { ...base, about: 'peak-weight', kind: 'number', unit: 'lb', min: 20, max: 90, pass: { max: 70 }, caution: ['Mind your fingers.'] },
  tear: {
    ...base, about: 'tear', kind: 'tear', distance: { value: 6, unit: 'ft' }, shaft: 'fletched', head: 'field', arrow: '2', nockTurn: 0,
    shots: { taken: 1, wanted: 3 }, axis: 'height',
  },
  amount: { ...base, about: 'moved', kind: 'amount', unit: 'in', max: 0.125 },
  confirm: { ...base, about: 'contact', kind: 'confirm', correcting: 3 },
  text: { ...base, about: 'bow', kind: 'text', suggestion: { kind: 'text', value: 'the old one' } },
} as const satisfies Record<string, Ask>;

export const ADVICE: Advice = {
  kind: 'adjust', knob: 'rest-height', direction: 'up', amount: { value: 0.03125, unit: 'in' }, to: { value: 0.0625, unit: 'in' },
  expect: { x: 0.1, y: 0.2, sdX: 0.1, sdY: 0.1 }, trial: true, press: false,
  what: 'REST UP 1/32 in', why: 'The tail is high.', wrongIf: 'the tail is above 0.35', undo: 'REST DOWN 1/32 in', caution: ['Let down first.'],
};

const RECORD = { title: 'Bow record', sections: [{ title: 'Settings', rows: [{ name: 'rest', value: '1/32 in up' }] }] } as const;

function viewFor(ask: Ask | null, seq: number): View {
  return {
    type: ask === null ? 'done' : 'ask', seq, chapter: ask === null ? 'record' : 'paper', step: ask?.step ?? 'end',
    where: { title: 'paper', part: 'up and down', day: 1, shots: 4 },
    say: [`Line ${seq} was taken.`], ask, bow: { 'rest-height': { value: 0.03125, unit: 'in' } },
    advice: ask?.kind === 'amount' ? ADVICE : null, findings: [{ kind: 'gate', gate: 'backstop', result: 'passed' }],
    ...(ask === null ? { record: RECORD } : {}), may: { back: true, putBack: 'nothing was moved' },
  };
}

export interface FakeSession extends SessionLike { readonly intents: Intent[] }

/** Asks in order; each answer that is not the word "bad" or "crash" moves on; then done. */
export function fakeSession(asks: readonly Ask[]): FakeSession {
  const intents: Intent[] = [];
  let at = 0;
  const view = (): View => viewFor(asks[at] ?? null, at + 1);
  return {
    intents, view,
    send(intent: Intent): Reply {
      if (intent.kind === 'say') return { view: view(), error: { code: 'not-understood', message: 'No word of danger.' } };
      intents.push(intent);
      if (intent.kind === 'note') return { view: { ...view(), findings: [] }, noted: true };
      if (intent.kind === 'putBack') return { view: view(), error: { code: 'nothing-to-put-back', message: 'No adjustment is there to put back.' } };
      if (intent.kind === 'answer' && intent.answer === 'wrong') return { view: view(), error: { code: 'not-an-option', message: 'That is not one of the options.' } };
      if (intent.kind === 'answer' && intent.answer === 'full disk') throw new CodedError('cannot-write', 'The disk is full; nothing was taken.');
      if (intent.kind === 'answer' && intent.answer === 'crash') throw new Error('boom');
      if (intent.kind === 'answer') at += 1;
      return { view: intent.kind === 'stop' ? { ...view(), type: 'stop', chapter: 'stopped' } : view() };
    },
    answers: () => [],
    preview: (answer) => typeof answer === 'string' && answer.startsWith('high')
      ? { ok: true, answer: { kind: 'shots', shots: [{ x: -0.125, y: 0.5 }] }, words: 'high 1/2, left 1/8' }
      : { ok: false, code: 'not-a-tear', message: 'A tear needs up or down.' },
    history: (): HistoryEntry[] => [{ seq: 7, time: '2026-01-01T10:00:00Z', what: 'REST UP 1/32 in', came: 'better', bow: {}, back: { to: 7, steps: ['REST DOWN 1/32 in'] } }],
    transcript: (): TranscriptEntry[] => [],
    glossary: () => ({ tear: 'the hole that the arrow leaves in the paper', paper: 'a sheet in a frame' }),
    subscribe: () => () => undefined,
    close: () => undefined,
  };
}

/** A stream that keeps what was written. */
export function sink(): Writable & { text(): string; lines(): string[] } {
  const parts: Buffer[] = [];
  const stream = new Writable({ highWaterMark: 64, write(chunk: Buffer, _encoding, done) { parts.push(chunk); setImmediate(done); } });
  const text = (): string => Buffer.concat(parts).toString('utf8');
  return Object.assign(stream, { text, lines: () => text().split('\n').filter((line) => line !== '') });
}

export const input = (...chunks: (string | Buffer)[]): Readable => Readable.from(chunks.map((chunk) => Buffer.from(chunk)), { objectMode: false });
export const now = (): Date => new Date('2026-01-01T10:00:00Z');
