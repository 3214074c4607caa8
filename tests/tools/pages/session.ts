// A stretch of a real conversation, for the README: the shipped content, the plain face, and an invented bow.

import { PassThrough } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { checkContent } from '../../../src/content/lint.ts';
import { sayProblem } from '../../../src/content/problem.ts';
import type { Content } from '../../../src/content/types.ts';
import { memoryStore } from '../../../src/journal/memory-store.ts';
import type { View } from '../../../src/machine/types.ts';
import { formatInches } from '../../../src/maths/fractions.ts';
import { runPlain } from '../../../src/screens/plain.ts';
import { openSession } from '../../../src/session.ts';
import { TestArcher, type Bow } from '../../tunes/archer.ts';
import { contentFiles } from '../compile-content.mjs';

const BOW: Bow = { start: { x: 0, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -13 } }, sd: 0.05, seed: 3 };
const NOON = Date.parse('2026-03-02T12:00:00Z');

const inWords = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `${y < 0 ? 'low' : 'high'} ${formatInches(Math.abs(y))} ${x < 0 ? 'left' : 'right'} ${formatInches(Math.abs(x))}`;

function typed(answer: unknown): string {
  if (typeof answer === 'object' && answer !== null && 'x' in answer && 'y' in answer) return inWords(answer as { x: number; y: number });
  return answer === true ? 'yes' : String(answer);
}

/** Everything that the plain face prints while the archer answers, until `enough`. */
async function converse(content: Content, enough: (view: View) => boolean): Promise<string> {
  const session = openSession({ content, store: memoryStore(), startAt: new Date(NOON), engine: 'example', tune: 'example', known: [] });
  const archer = new TestArcher(BOW);
  const input = new PassThrough();
  const output = new PassThrough();
  let text = '';
  let minute = 0;
  output.on('data', (data: Buffer) => { text += data.toString('utf8'); });
  const said = (): void => {
    const view = session.view();
    if (view.type === 'done' || enough(view)) input.end();
    else input.write(`${typed(archer.answer(view))}\n`);
  };
  // The first question stands before any line was taken.
  setImmediate(said);
  session.subscribe(() => setImmediate(said));
  await runPlain(session, { input, output, now: () => new Date(NOON + 60_000 * (minute += 1)), echo: true });
  return text;
}

/** What stands in the README: the last shot as found, the advice, and the shot that settles it. Throws where one is not found. */
export async function session(): Promise<string> {
  const { content, problems } = checkContent(contentFiles(fileURLToPath(new URL('../../..', import.meta.url))));
  if (content === null) throw new Error(`the content has mistakes: ${problems.map(sayProblem).join('; ')}`);
  const whole = await converse(content, (view) => view.where.shots > 3 && view.findings.some((finding) => finding.kind === 'axis' && finding.result === 'tuned'));
  const paragraphs = whole.split('\n\n');
  const advised = find(paragraphs, 0, /^next: /m);
  const lastAsFound = find(paragraphs, 0, /^Shot 3 of 3 /m);
  const tuned = paragraphs.findLastIndex((paragraph) => /^coach: /m.test(paragraph));
  const settled = paragraphs.slice(0, tuned + 1).findLastIndex((paragraph) => /^Shot \d+ of \d+ /m.test(paragraph));
  if (tuned === -1 || settled <= advised) throw new Error('the invented bow was not tuned after the advice; mend tests/tools/pages/session.ts');
  return [
    ...paragraphs.slice(lastAsFound, lastAsFound + 2), '[what the bow is made of, and how its rest is moved]',
    ...paragraphs.slice(advised, advised + 2), '[the rest is looked at, and shots are taken]',
    ...paragraphs.slice(settled, tuned + 1),
  ].join('\n\n').trim();
}

function find(paragraphs: readonly string[], from: number, what: RegExp): number {
  const at = paragraphs.findIndex((paragraph, i) => i >= from && what.test(paragraph));
  if (at === -1) throw new Error(`the conversation has no paragraph like ${what}; mend tests/tools/pages/session.ts`);
  return at;
}
