// A session that says on every view that it is an invented demo, and marks its record so. It is kept in memory and nowhere else.

import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Content } from '../../src/content/types.ts';
import type { Fact, SessionLike, View } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';

const marked = (view: View): View => ({
  ...view,
  where: { ...view.where, title: `Invented demo: ${view.where.title}` },
  ...(view.record === undefined ? {} : { record: { ...view.record, invented: true as const } }),
});

export interface Day { readonly session: SessionLike; readonly facts: readonly Fact[] }

/** A day of the demo, begun or taken up after `before`. */
export function openDay(content: Content, startAt: Date, before: readonly Fact[]): Day {
  const store = memoryStore(before);
  const session = openSession({ content, store, startAt, engine: 'demo', tune: 'invented-demo', known: [] });
  return {
    facts: store.facts,
    session: {
      view: () => marked(session.view()),
      send: (intent, now) => {
        const reply = session.send(intent, now);
        return { ...reply, view: marked(reply.view) };
      },
      preview: (answer) => session.preview(answer),
      history: () => session.history(),
      answers: () => session.answers(),
      transcript: () => session.transcript(),
      glossary: () => session.glossary(),
      subscribe: (listener) => session.subscribe(listener),
      close: () => session.close(),
    },
  };
}
