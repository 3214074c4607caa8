// The face for programs and tests: one JSON object a line, each way. Every line in gets exactly one line out.

import type { Readable, Writable } from 'node:stream';
import type { Ask, PracticeView, Reply, SessionLike, View } from '../machine/types.ts';
import { CodedError, type ErrorCode } from '../errors.ts';
import { readLines } from './lines.ts';
import { outputTo } from './output.ts';
import { asRead } from './plain-practice.ts';
import { readRequest, type Request } from './pipe-request.ts';
import { PIPE_VERSION, type OutLine } from './pipe-schema.ts';

export interface FaceStreams {
  readonly input: Readable;
  readonly output: Writable;
  readonly now: () => Date;
  /** What was noticed while opening, told once with the first line. */
  readonly notices?: readonly string[];
}

const v = PIPE_VERSION;

/** A program reads figures: the hole as a rule reads it, to the marks that an archer has. */
function practiceOf({ practice }: View): { readonly practice?: PracticeView } {
  if (practice?.shot === undefined) return practice === undefined ? {} : { practice };
  return { practice: { ...practice, shot: { ...practice.shot, hole: asRead(practice.shot.hole) } } };
}

/** `noDefault` is about keys, which a program does not have. */
function askOf(ask: Ask | null): Ask | null {
  if (ask === null) return null;
  const { noDefault: _screenOnly, ...rest } = ask;
  return rest;
}

function viewLine(view: View, extra: { readonly noted?: true }): OutLine {
  const { type, seq, chapter, step, say, bow, advice, findings, record } = view;
  return {
    v, type, seq, chapter, step, say, ask: askOf(view.ask), bow, advice, findings, ...practiceOf(view), ...extra,
    ...(type === 'done' && record ? { record } : {}),
  };
}

function errorLine(view: View, code: ErrorCode, message: string): OutLine {
  return { v, type: 'error', seq: view.seq, code, message, ask: askOf(view.ask) };
}

function replyLine({ view, error, noted }: Reply): OutLine {
  return error ? errorLine(view, error.code, error.message) : viewLine(view, noted ? { noted } : {});
}

function answerLine(session: SessionLike, request: Exclude<Request, { kind: 'quit' }>, now: Date): OutLine {
  const view = session.view();
  if (view.type === 'done') return errorLine(view, 'walk-is-done', view.practice === undefined ? 'The tune is finished; nothing more is taken. Begin another with "new".' : 'The practice is over; nothing more is taken. Begin another with "practice".');
  if (request.kind === 'error') return errorLine(view, request.code, request.message);
  // The findings were reached with an earlier line and are told once.
  if (request.kind === 'blank') return viewLine({ ...view, findings: [] }, {});
  try {
    return replyLine(session.send(request.intent, now));
  } catch (error) {
    if (error instanceof CodedError) return errorLine(session.view(), error.code, error.message);
    const what = error instanceof Error ? error.message : String(error);
    return errorLine(session.view(), 'internal', `A mistake in the program itself, and nothing was taken: ${what}`);
  }
}

/** Talks until the input ends, `quit` comes or the reader leaves. */
export async function runPipe(session: SessionLike, { input, output, now, notices = [] }: FaceStreams): Promise<void> {
  const out = outputTo(output);
  const put = (line: OutLine): Promise<void> => out.write(`${JSON.stringify(line)}\n`);

  const first = session.view();
  await put(viewLine({ ...first, say: [...notices, ...first.say] }, {}));
  for await (const line of readLines(input)) {
    if (out.closed()) return;
    const request = readRequest(line);
    if (request.kind === 'quit') break;
    await put(answerLine(session, request, now()));
  }
  await put({ v, type: 'left', seq: session.view().seq });
}
