// The demo where there is no terminal: the same story through the program's plain face, printed without a wait.

import { Readable, type Writable } from 'node:stream';
import type { Content } from '../../src/content/types.ts';
import type { Fact } from '../../src/machine/types.ts';
import { runPlain } from '../../src/screens/plain.ts';
import { Actor } from './actor.ts';
import { FIRST, minutesFrom, NIGHT, OVER } from './days.ts';
import { openDay } from './invented.ts';
import type { Story } from './story.ts';

/** The plain face reads ahead, so a day is answered on one session first and then shown on another, which sees the same lines. */
export async function plainDemo(content: Content, story: Story, output: Writable): Promise<readonly Fact[]> {
  const actor = new Actor(story);
  let facts: readonly Fact[] = [];
  output.write(`${FIRST}\n`);
  for (const [at, morning] of story.mornings.entries()) {
    if (at > 0) output.write(`\n${NIGHT}\n\n`);
    const lines = linesOfDay(content, story, actor, at, facts);
    const day = openDay(content, morning, facts);
    await runPlain(day.session, { input: Readable.from(lines.map((line) => `${line}\n`)), output, now: minutesFrom(morning), echo: true });
    facts = day.facts;
  }
  output.write(`\n${OVER}\n`);
  return facts;
}

function linesOfDay(content: Content, story: Story, actor: Actor, at: number, before: readonly Fact[]): readonly string[] {
  const morning = story.mornings[at] ?? story.mornings[0];
  const { session } = openDay(content, morning, before);
  const now = minutesFrom(morning);
  const lines: string[] = [];
  for (let view = session.view(); view.type !== 'done'; view = session.view()) {
    if (at === 0 && story.night(view)) return [...lines, 'quit'];
    const { line, intent } = actor.act(view, () => false);
    const { error } = session.send(intent, now());
    if (error !== undefined) throw new Error(`the demo's answer about ${view.ask?.about ?? ''} was not taken: ${error.message}`);
    lines.push(line);
  }
  return lines;
}
