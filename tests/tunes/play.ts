// Plays a whole tune through the session on a memory store, in this process.

import { readFileSync } from 'node:fs';
import { openSession } from '../../src/session.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Content } from '../../src/content/types.ts';
import type { Carried, Intent, SessionLike, Store, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow, type Played } from './archer.ts';

/** The built content, read once a worker: what follows from it is worked out once, as in the program. Nobody can write into it. */
export const shippedContent = (): Content => {
  shipped ??= frozen(JSON.parse(readFileSync(new URL('../../dist/content.json', import.meta.url), 'utf8')) as Content);
  return shipped;
};
let shipped: Content | undefined;

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen);
  return value;
}

export const NOON = Date.parse('2026-03-02T12:00:00Z');
const MINUTE = 60_000;

/** A minute after the last line of this journal: when the next thing is said. */
export const nextMinute = ({ facts }: Pick<Store, 'facts'>): Date => new Date(Date.parse(facts.at(-1)?.time ?? '') + MINUTE);

export interface PlayOptions {
  readonly content?: Content;
  readonly store?: Store;
  /** Stops the walk early. */
  readonly until?: (view: View) => boolean;
  /** Sent instead of the archer's answer where it gives one. */
  readonly instead?: (view: View, turn: number) => Intent | null;
  readonly most?: number;
  readonly startAt?: number;
  /** Its own name, and bows that were tuned before. */
  readonly tune?: string;
  readonly known?: readonly Carried[];
}

export function play(bow: Bow, options: PlayOptions = {}): Played & { readonly session: SessionLike; readonly store: Store } {
  const content = options.content ?? shippedContent();
  const store = options.store ?? memoryStore();
  const startAt = options.startAt ?? NOON;
  const session = openSession({ content, store, startAt: new Date(startAt), engine: 'test', tune: options.tune ?? 'test-tune', known: options.known ?? [] });
  const archer = new TestArcher(bow);
  const views: View[] = [session.view()];
  const asked: string[] = [];
  for (let turn = 0; turn < (options.most ?? 400); turn++) {
    const view = session.view();
    if (view.type === 'done' || options.until?.(view) === true) break;
    const now = new Date(startAt + (turn + 1) * MINUTE);
    const intent = options.instead?.(view, turn) ?? { kind: 'answer' as const, answer: archer.answer(view) };
    asked.push(view.ask?.about ?? '');
    const reply = session.send(intent, now);
    if (reply.error !== undefined) throw new Error(`${view.ask?.about ?? ''}: ${reply.error.code}: ${reply.error.message} (sent ${JSON.stringify(intent)})`);
    views.push(reply.view);
  }
  return { views, findings: views.flatMap((v) => v.findings), asked, last: session.view(), session, store };
}

/** Opens the answer of this line and gives another one. Throws where that is refused. */
export function correct({ session, store }: { readonly session: SessionLike; readonly store: Store }, seq: number, answer: unknown): View {
  const now = nextMinute(store);
  session.send({ kind: 'back', to: seq }, now);
  const { view, error } = session.send({ kind: 'answer', answer }, now);
  if (error !== undefined) throw new Error(`${view.step}: ${error.message}`);
  return view;
}
