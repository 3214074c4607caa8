// The three promises as they reach the person, each as one function that throws where a face does not keep it:
// a stop is heard, a gate is picked, a caution is seen. `through` may put a faulty session between, to see that it throws.

import type { Ask, SessionLike, View } from '../../src/machine/types.ts';
import { runPipe } from '../../src/screens/pipe.ts';
import { runPlain } from '../../src/screens/plain.ts';
import { wrap } from '../../src/screens/text-width.ts';
import { input, now, sink } from './fake-session.ts';
import { screenOn } from './screen-on.ts';
import type { Standing } from './standing.ts';

export const SMALLEST = { columns: 40, rows: 20 };
export const SIZES = [{ columns: 80, rows: 24 }, SMALLEST, { columns: 120, rows: 40 }];
export const ESC = '\u001b';
export const DOWN = '\u001b[B';
export const UP = '\u001b[A';
export const TAB = '\t';

export type Through = (session: SessionLike) => SessionLike;
const honest: Through = (session) => session;

const flat = (text: string): string => text.replace(/\s+/g, ' ').trim();
const fail = (at: Standing, what: string): never => {
  throw new Error(`${at.name}: ${what}`);
};

// ---- a stop -------------------------------------------------------------------------------------------------------

/** Typed letter by letter on the screen, after the keys that led to where it is typed; then Enter, and once more where it asks. */
export function stopsOnScreen(at: Standing, before: readonly string[], words: string, through = honest): void {
  const session = at.session();
  const screen = screenOn(through(session));
  screen.press(...before, ...words, '\r');
  const where = JSON.stringify([...before, words]);
  if (screen.mistakes.length > 0) fail(at, `${where}: ${String(screen.mistakes[0])}`);
  if (session.view().type !== 'stop') fail(at, `the screen is not stopped by ${where}; it says: ${screen.words()}`);
  if (!screen.words().includes('STOPPED.')) fail(at, `after ${where} the screen does not say that it is stopped: ${screen.words()}`);
}

export async function stopsInPlain(at: Standing, lines: readonly string[], through = honest): Promise<void> {
  const session = at.session();
  const output = sink();
  await runPlain(through(session), { input: input(lines.map((line) => `${line}\n`).join('')), output, now, echo: false, notices: [] });
  if (session.view().type !== 'stop') fail(at, `the plain face is not stopped by ${JSON.stringify(lines)}`);
  if (at.view.type !== 'stop' && !output.text().includes('coach: The walk is stopped.')) fail(at, 'the plain face does not say that it is stopped');
}

export async function stopsInPipe(at: Standing, line: object, through = honest): Promise<void> {
  const session = at.session();
  const output = sink();
  await runPipe(through(session), { input: input(`${JSON.stringify(line)}\n`), output, now });
  const reply = JSON.parse(output.lines().at(-2) ?? '{}') as { readonly type?: string };
  if (session.view().type !== 'stop' || reply.type !== 'stop') fail(at, `the pipe is not stopped by ${JSON.stringify(line)}: ${output.lines().at(-2)}`);
}

// ---- nothing is answered by a careless thumb ------------------------------------------------------------------------

/** The line of the journal that stands; a question that was answered has a higher one. */
const untouched = (at: Standing, session: SessionLike): boolean => session.view().seq === at.view.seq;

/** Each of these is one read from the terminal. */
export function unansweredOnScreen(at: Standing, reads: readonly string[], through = honest): void {
  const session = at.session();
  screenOn(through(session)).press(...reads);
  if (!untouched(at, session)) fail(at, `answered on the screen by ${JSON.stringify(reads)}`);
}

export async function unansweredInLines(at: Standing, through = honest): Promise<void> {
  const session = at.session();
  await runPlain(through(session), { input: input('\n\n   \n\t\n'), output: sink(), now, echo: false, notices: [] });
  await runPipe(through(session), { input: input('\n\n  \n{"answer":null}\n{"answer":""}\n{"answer":[]}\n'), output: sink(), now });
  if (!untouched(at, session)) fail(at, 'answered by an empty line');
}

/** Picked on purpose: moved to, and then taken by an Enter of its own. */
export function answeredByPick(at: Standing): void {
  const session = at.session();
  screenOn(session).press(DOWN, '\r');
  if (untouched(at, session)) fail(at, 'not even a deliberate pick answers it');
}

// ---- a caution is seen ----------------------------------------------------------------------------------------------

/** What belongs to the step: of the question, and of an advice where the question is whether it was followed, or there is nothing to follow. */
export function cautionsOf({ ask, advice }: Pick<View, 'ask' | 'advice'>): readonly string[] {
  const own = advice !== null && (ask?.kind === 'amount' || advice.kind === 'inspect' || advice.kind === 'shop');
  return [...new Set([...(ask?.caution ?? []), ...(own ? advice.caution : [])])].map(flat);
}

export function cautionsOnScreen(at: Standing, keys: readonly string[], sizes = SIZES, through = honest): void {
  for (const size of sizes) {
    const screen = screenOn(through(at.session()), size);
    screen.press(...keys);
    const lines = screen.lines();
    const where = `${size.columns} x ${size.rows} after ${JSON.stringify(keys)}`;
    if (lines.length > size.rows - 3) fail(at, `${lines.length} lines at ${where}`);
    if (!/\b(enter|esc|good|space)\b/.test(lines.at(-1) ?? '')) fail(at, `no line of keys at ${where}: ${lines.at(-1)}`);
    for (const caution of cautionsOf(at.view)) if (!screen.words().includes(caution)) fail(at, `"${caution}" is not seen at ${where}:\n${lines.join('\n')}`);
  }
}

/** On the last rows of a terminal, counted as it wraps them, with the prompt below. */
export async function cautionsInPlain(at: Standing, typed: string, through = honest): Promise<void> {
  const output = sink();
  await runPlain(through(at.session()), { input: input(`${typed}\n`), output, now, echo: false, notices: [] });
  const shown = output.text().split('\n').slice(0, -3);
  for (const { columns, rows } of SIZES) {
    const seen = flat(shown.flatMap((line) => wrap(line, columns)).slice(1 - rows).join(' '));
    for (const caution of cautionsOf(at.view)) if (!seen.includes(caution)) fail(at, `"${caution}" has left a terminal of ${columns} x ${rows} after ${JSON.stringify(typed)}`);
  }
}

export async function cautionsInPipe(at: Standing, through = honest): Promise<void> {
  const output = sink();
  await runPipe(through(at.session()), { input: input('\nnonsense\n'), output, now });
  const [first, again, refused] = output.lines().map((line) => JSON.parse(line) as Pick<View, 'ask' | 'advice'>);
  for (const line of [first, again]) if (cautionsOf(line ?? { ask: null, advice: null }).join() !== cautionsOf(at.view).join()) fail(at, 'a caution is not on the line of the pipe');
  if ((refused?.ask?.caution ?? []).join() !== at.ask.caution.join()) fail(at, 'a caution is lost with a mistake on the pipe');
}

// ---- faults ---------------------------------------------------------------------------------------------------------

/** The session with another view, or deaf to some intents. */
function faulty(session: SessionLike, view: (view: View) => View, deaf: (intent: Parameters<SessionLike['send']>[0]) => boolean): SessionLike {
  return new Proxy(session, {
    get(target, name): unknown {
      if (name === 'view') return () => view(target.view());
      if (name === 'send') {
        return (...[intent, at]: Parameters<SessionLike['send']>) => {
          if (deaf(intent)) return { view: view(target.view()), error: { code: 'not-understood', message: 'It was not listened to.' } };
          const reply = target.send(intent, at);
          return { ...reply, view: view(reply.view) };
        };
      }
      const value: unknown = Reflect.get(target, name);
      return typeof value === 'function' ? (value as () => unknown).bind(target) : value;
    },
  });
}
const never = (): boolean => false;
const asIs = (view: View): View => view;
const withAsk = (change: (ask: Ask) => Ask) => (view: View): View => (view.ask === null ? view : { ...view, ask: change(view.ask) });

export const DEAF: Through = (session) => faulty(session, asIs, ({ kind }) => kind === 'stop' || kind === 'say' || kind === 'answer' || kind === 'note');
export const NO_CAUTION: Through = (session) => faulty(session, (view) => ({ ...withAsk((ask) => ({ ...ask, caution: [] }))(view), advice: view.advice && { ...view.advice, caution: [] } }), never);
/** As a slip in content would do it: no question that must be picked any more, and the first row stands chosen. */
export const PRESELECTED: Through = (session) => faulty(session, withAsk((given) => {
  const { noDefault: _, ...ask } = given;
  return ask.kind === 'choice' ? { ...ask, options: ask.options.map(({ value, label }) => ({ value, label })) } : ask;
}), never);
