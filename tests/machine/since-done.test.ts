// What the record claims, and of when: the kind of heads that landed together, and a word of danger that comes after the end.

import { describe, expect, test } from 'vitest';
import type { BowRecord, Intent, View } from '../../src/machine/types.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { openSession, recordOf } from '../../src/session.ts';
import { heldShut, together } from '../tunes/impact-bows.ts';
import { nextMinute, NOON, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const rows = (record: BowRecord | null | undefined): readonly string[] => (record?.sections[0]?.rows ?? []).map(({ name, value }) => `${name}: ${value}`);

describe('a finished tune', () => {
  const { facts } = play({ start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.06, seed: 3 }).store;
  function finished() {
    const store = memoryStore(facts);
    const session = openSession({ content, store, startAt: new Date(NOON), engine: 'test', tune: 'test', known: [] });
    expect(session.view().type).toBe('done');
    return { store, session, send: (intent: Intent) => session.send(intent, nextMinute(store)) };
  }
  const first = (view: View): string => rows(view.record)[0] ?? '';

  test.each<Intent>([
    { kind: 'note', note: 'dry fire after it' }, { kind: 'stop', words: 'a limb cracked' }, { kind: 'say', words: 'it dry-fired' },
    { kind: 'changed', what: 'other', note: 'limb cracked' }, { kind: 'stop', words: '' },
  ])('keeps %o, says whose matter it is, and its record is of before', (intent) => {
    const { send, store } = finished();
    const said = send(intent);
    expect([said.error, said.noted, said.view.type]).toEqual([undefined, true, 'done']);
    expect(said.view.say.join(' ')).toMatch(/of before that.*do not draw it.*authorised dealer/s);
    expect(first(said.view)).toMatch(/^State: since this record something was said: .* not drawn, pressed or shot until an authorised dealer/);
    expect(rows(recordOf(content, store.facts))[0]).toBe(first(said.view));
  });

  test('a harmless note is a note; anything else is refused, and nothing is written', () => {
    const { send, store } = finished();
    const noted = send({ kind: 'note', note: 'new arrows next month' });
    expect([noted.view.say, first(noted.view).startsWith('State')]).toEqual([[content.phrases['noted']], false]);
    const { length } = store.facts;
    for (const intent of [{ kind: 'say', words: 'hello' }, { kind: 'changed', what: 'string' }, { kind: 'answer', answer: 1 }] satisfies Intent[]) {
      expect(send(intent).error?.code).toBe('walk-is-done');
    }
    expect(store.facts).toHaveLength(length);
  });

  test('a word said on the way, and cleared, is no matter of the record as it stands', () => {
    let once = false;
    const { session } = play({ start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.06, seed: 3 }, {
      instead: (view) => {
        if (once || view.ask?.kind !== 'tear') return null;
        once = true;
        return { kind: 'stop', words: 'it cracked' };
      },
    });
    expect([once, first(session.view()).startsWith('State')]).toEqual([true, false]);
  });
});

test.each([
  ['fixed', together(3), /land together at \d+ yd, .* sure; shot with fixed blades$/],
  ['held shut', heldShut(3), /land together at \d+ yd, .* sure; shot with heads that open, .*held shut/],
] as const)('that broadheads land together is said of the kind that was shot: %s', (_name, bow, words) => {
  const { last } = play(bow);
  const said = rows(last.record).filter((row) => row.includes('land together'));
  expect(said).toHaveLength(2);
  for (const row of said) expect(row).toMatch(words);
});
