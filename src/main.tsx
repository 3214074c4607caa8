#!/usr/bin/env node
// The only wiring: arguments, folders, content, which face. Each face is loaded only when it is the one that is used.

import { readFileSync } from 'node:fs';
import { chooseFace, HELP, readArguments, type Face, type Practising, type Telling, type Walking } from './arguments.ts';
import { CodedError, ERRORS } from './errors.ts';
import type { PracticeWords } from './content/practice-words.ts';
import type { Content } from './content/types.ts';
import type { SessionLike } from './machine/types.ts';

/** Put in at build time from package.json, the one source of the version. */
declare const __VERSION__: string;

const now = (): Date => new Date();
const { stdin, stdout, stderr, env } = process;

const loadContent = (): Content => loaded<Content>('./content.json');

function loaded<T>(name: string): T {
  try {
    const read: unknown = JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'));
    // oxlint-disable-next-line typescript/consistent-type-assertions -- the content beside the program was checked when it was built
    return read as T;
  } catch {
    throw new CodedError('bad-content', 'The content beside the program is missing or damaged. Install again, or run "npm run build".');
  }
}

/** Resolves when the text has left, so that the process may end. */
const print = (text: string): Promise<void> => new Promise((resolve) => { stdout.write(text, () => resolve()); });

function leave(error: unknown): never {
  if (error instanceof CodedError) {
    stderr.write(`quarterturn: ${error.message}\n`);
    process.exit(ERRORS[error.code].exit ?? 70);
  }
  const what = error instanceof Error ? error.message : String(error);
  stderr.write(`quarterturn: A mistake in the program itself (${what.split('\n')[0]}). Every answer up to here is kept; start again to go on.\n`);
  process.exit(ERRORS.internal.exit);
}

/** A reader or a terminal that went away is no mistake; all is on disk already. */
function gone(error: unknown): void {
  const code = error instanceof Error && 'code' in error ? error.code : null;
  if (['EPIPE', 'EIO', 'ECONNRESET', 'ERR_STREAM_PREMATURE_CLOSE'].some((known) => known === code)) process.exit(0);
  leave(error);
}

async function talk(face: Face, session: SessionLike, notices: readonly string[]): Promise<number> {
  if (face === 'screen') {
    const { runScreen } = await import('./screens/run.tsx');
    return runScreen(session, { stdin, stdout, now, notices });
  }
  if (face === 'pipe') {
    const { runPipe } = await import('./screens/pipe.ts');
    await runPipe(session, { input: stdin, output: stdout, now, notices });
  } else {
    const { runPlain } = await import('./screens/plain.ts');
    await runPlain(session, { input: stdin, output: stdout, now, notices, echo: !stdin.isTTY });
  }
  return 0;
}

/** Ink paints nothing under CI and knows no NO_COLOR; both are read when it is imported, so this comes first. */
function readyForScreen(): void {
  delete env['CI'];
  delete env['CONTINUOUS_INTEGRATION'];
  if (env['NO_COLOR']) env['FORCE_COLOR'] = '0';
}

/** However it ends, the lock is given back. */
function letGoAtTheEnd(face: Face, session: SessionLike): void {
  process.on('exit', () => session.close());
  if (face !== 'screen') for (const [signal, code] of [['SIGINT', 130], ['SIGTERM', 143], ['SIGHUP', 129]] as const) process.on(signal, () => process.exit(code));
}

async function practise(wanted: Practising): Promise<number> {
  const { homeFolder } = await import('./journal/home.ts');
  const { openWanted, tellWanted } = await import('./practise.ts');
  const practices = { content: loadContent(), words: loaded<PracticeWords>('./practice.json'), home: homeFolder(env, wanted.home), engine: __VERSION__ };
  if (wanted.what === 'list' || wanted.what === 'record' || wanted.what === 'debrief') {
    await print(tellWanted(practices, wanted));
    return 0;
  }
  const face = chooseFace(wanted.face, env['TERM'], stdin.isTTY === true, stdout.isTTY === true);
  if (face === 'screen') readyForScreen();
  const { session, notices } = openWanted(practices, wanted, now());
  letGoAtTheEnd(face, session);
  return talk(face, session, notices);
}

async function walk(wanted: Walking): Promise<number> {
  const { homeFolder, newTunePath } = await import('./journal/home.ts');
  const { latestUnfinished, listTunes } = await import('./journal/list.ts');
  const { openFileStore } = await import('./journal/file-store.ts');
  const { carriedFrom, leftToNewer, pickTune } = await import('./commands.ts');
  const { carriedOf, openSession } = await import('./session.ts');

  const content = loadContent();
  const home = homeFolder(env, wanted.home);
  const tunes = listTunes(home);
  const latest = latestUnfinished(tunes);
  const fresh = wanted.command === 'new' || (wanted.command === 'go-on' && latest === null);
  const { id, path } = fresh ? newTunePath(home, now()) : pickTune(tunes, wanted.command === 'resume' ? wanted.id : null, () => latest);
  const face = chooseFace(wanted.face, env['TERM'], stdin.isTTY === true, stdout.isTTY === true);
  if (face === 'screen') readyForScreen();

  const store = openFileStore(path, { now: now() });
  const session = openSession({
    content, store, startAt: now(), engine: __VERSION__, tune: id, known: carriedFrom(tunes, id, content, carriedOf),
  });
  letGoAtTheEnd(face, session);
  // Who names a tune wants that one; to all others it is told which tunes were passed over.
  const passedOver = wanted.command === 'resume' && wanted.id !== null ? [] : leftToNewer(tunes);
  return talk(face, session, [...store.notices, ...passedOver]);
}

async function tell(wanted: Telling): Promise<void> {
  const { homeFolder } = await import('./journal/home.ts');
  const { listTunes } = await import('./journal/list.ts');
  const { factsOf, pickTune, recordOrSay, tuneList } = await import('./commands.ts');
  const home = homeFolder(env, wanted.home);
  const tunes = listTunes(home);
  if (wanted.command === 'list') return print(tuneList(tunes, home));
  const { recordOf } = await import('./session.ts');
  const { recordMarkdown } = await import('./report/markdown.ts');
  const tune = pickTune(tunes, wanted.id, () => tunes[0] ?? null);
  return print(recordMarkdown(recordOrSay(recordOf(loadContent(), factsOf(tune)), tune)));
}

async function main(): Promise<number> {
  const wanted = readArguments(process.argv.slice(2));
  switch (wanted.command) {
    case 'help': await print(HELP); return 0;
    case 'version': await print(`${__VERSION__}\n`); return 0;
    case 'schema': {
      const { pipeSchema } = await import('./screens/pipe-schema.ts');
      const { aboutList } = await import('./session.ts');
      await print(`${JSON.stringify(pipeSchema(aboutList(loadContent())))}\n`);
      return 0;
    }
    case 'list': case 'record': await tell(wanted); return 0;
    case 'practice': return practise(wanted);
    case 'go-on': case 'new': case 'resume': return walk(wanted);
  }
}

stdout.on('error', (error: Error) => gone('code' in error && error.code === 'ENOSPC'
  ? new CodedError('cannot-write', 'What there is to show could not be written: the disk is full (ENOSPC). Every answer up to here is kept.') : error));
stdin.on('error', gone);
process.on('uncaughtException', leave);
process.on('unhandledRejection', leave);
// The explicit exit also ends what an open input would keep waiting.
main().then((code) => process.exit(code), gone);
