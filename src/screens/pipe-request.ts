// One line of the pipe to one intent. What cannot be understood is told with what would be, and where.

import type { Intent } from '../machine/types.ts';
import type { ErrorCode } from '../errors.ts';
import { namesOf } from '../maths/closed.ts';
import { LONGEST_LINE, type Line } from './lines.ts';
import { REQUESTS, type RequestName } from './pipe-schema.ts';

export type Request =
  | { readonly kind: 'blank' }
  | { readonly kind: 'quit' }
  | { readonly kind: 'intent'; readonly intent: Intent }
  | { readonly kind: 'error'; readonly code: ErrorCode; readonly message: string };

const NAMES: readonly RequestName[] = namesOf(REQUESTS);
const error = (code: ErrorCode, message: string): Request => ({ kind: 'error', code, message });
const intent = (value: Intent): Request => ({ kind: 'intent', intent: value });

export function readRequest(line: Line): Request {
  if (line.kind === 'too long') return error('line-too-long', `The line is longer than ${LONGEST_LINE} bytes and was thrown away. Send it in parts, or shorter.`);
  if (line.kind === 'not UTF-8') return error('not-json', 'The line has bytes that are not UTF-8. Send JSON in UTF-8.');
  if (line.text.trim() === '') return { kind: 'blank' };
  let value: unknown;
  try {
    value = JSON.parse(line.text);
  } catch {
    return error('not-json', 'The line is not JSON. Send one JSON object a line, for example {"answer":"not known"}.');
  }
  if (!isObject(value)) {
    return error('not-json', 'The line is JSON but not an object. Send for example {"answer":1.5} or {"note":"..."}.');
  }
  return readObject(value);
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);

function readObject(value: Record<string, unknown>): Request {
  // A note may go with a change, so `note` alone decides only when nothing else does.
  const found = NAMES.filter((name) => Object.hasOwn(value, name) && !(name === 'note' && Object.hasOwn(value, 'changed')));
  const name = found[0];
  if (name === undefined || found.length > 1) {
    const what = name === undefined ? 'has none' : `has ${found.length}`;
    return error('not-understood', `An object has exactly one of ${NAMES.join(', ')}; this one ${what}.`);
  }
  // The session reads an answer against the ask, so that its error can say what this very question takes.
  if (name === 'answer') {
    const other = Object.keys(value).find((key) => key !== 'answer' && !(key === 'hands' && value[key] === 'still'));
    if (other === undefined && 'hands' in value) return intent({ kind: 'answer', answer: value['answer'], hands: 'still' });
    return other === undefined ? intent({ kind: 'answer', answer: value['answer'] }) : error('not-understood', `"${other}" does not go with "answer". Send it by itself.`);
  }
  return readOther(name, value);
}

function readOther(name: Exclude<RequestName, 'answer'>, value: Record<string, unknown>): Request {
  const { success, data, error: problem } = REQUESTS[name].safeParse(value);
  if (!success) {
    const issue = problem.issues[0];
    const where = issue?.path.join('.') || name;
    return error('not-understood', `"${where}": ${issue?.message ?? 'not understood'}. "--pipe --schema" prints what is taken.`);
  }
  if ('back' in data) return intent(data.back === false ? { kind: 'keep' } : { kind: 'back', ...(data.back === true ? {} : { to: data.back }) });
  if ('putBack' in data) return intent({ kind: 'putBack', ...(data.putBack === true ? {} : { to: data.putBack }) });
  // A stop without words is still a stop.
  if ('stop' in data) return intent({ kind: 'stop', words: data.stop.trim() || 'stop' });
  if ('turned' in data) return intent({ kind: 'turned', ...data.turned });
  if ('debrief' in data) return intent({ kind: 'debrief' });
  if ('moved' in data) return intent({ kind: 'moved', ...data.moved });
  if ('changed' in data) return intent({ kind: 'changed', what: data.changed, ...(data.note === undefined ? {} : { note: data.note }) });
  if ('note' in data) return intent({ kind: 'note', note: data.note });
  return { kind: 'quit' };
}
