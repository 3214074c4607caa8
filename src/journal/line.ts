// One fact as one line of the journal: JSON, and last in the object a short checksum of everything before it.
//   {"seq":2,"time":"…","kind":"noted","note":"…","decided":{…},"sum":"1f0c9a3e"}
// The sum is over the text, not over the meaning, so one changed byte anywhere is noticed.

import { createHash } from 'node:crypto';
import { CodedError } from '../errors.ts';
import type { Fact } from '../machine/types.ts';
import { factSchema } from './schema.ts';
import { upgrade, VERSIONS, type Versions } from './versions.ts';

/** Why a line cannot be read, in words that follow "line 7 cannot be read:". */
export class BadLine extends Error {
  override readonly name = 'BadLine';
}

const SUM_AT_END = /,"sum":"([0-9a-f]{8})"\}$/;

/** First eight hex digits of SHA-256 over the line without its sum. */
function sumOf(body: string): string {
  return createHash('sha256').update(body, 'utf8').digest('hex').slice(0, 8);
}

/** The line of a fact, with its newline. Throws CodedError('internal') rather than write what could not be read back. */
export function encodeLine(fact: Fact): string {
  return encodeAs(fact, fact, (line) => checkFact(parseLine(line)));
}

/** The line of an object that holds a fact; `check` reads it back. Throws as encodeLine does. */
export function encodeAs(fact: Fact, held: object, check: (line: string) => unknown): string {
  try {
    const body = JSON.stringify(held, refuseWhatJsonLoses);
    const line = `${body.slice(0, -1)},"sum":"${sumOf(body)}"}`;
    check(line);
    return `${line}\n`;
  } catch (cause) {
    throw new CodedError('internal', `Line ${fact.seq} (${fact.kind}) could not be put into words that can be read back: ${reasonOf(cause)}. Nothing was written.`);
  }
}

/** The fact of a finished line (without its newline) that was written under version `v`. Throws BadLine. */
export function decodeLine(line: string, v?: number, versions: Versions = VERSIONS): Fact {
  return factOf(parseLine(line), v, versions);
}

/** The fact that an object of version `v` is. Throws BadLine. */
export function factOf(raw: unknown, v?: number, versions: Versions = VERSIONS): Fact {
  const from = v ?? versions.current;
  try {
    return checkFact(upgrade(from, raw, versions));
  } catch (cause) {
    if (!(cause instanceof BadLine)) throw new BadLine(reasonOf(cause));
    throw from === versions.current ? cause : new BadLine(`${cause.message}; it was written under version ${from} of the journal and brought to version ${versions.current}`);
  }
}

/** The object in a line, its sum checked and taken off; its shape is not looked at. Throws BadLine. */
export function parseLine(line: string): unknown {
  if (line.trim() === '') throw new BadLine('it is empty');
  const found = SUM_AT_END.exec(line);
  if (found === null) throw new BadLine('it does not end with a checksum, so it was not written by this program or was changed');
  const body = `${line.slice(0, found.index)}}`;
  if (sumOf(body) !== found[1]) throw new BadLine('its checksum does not fit, so it was changed or damaged after it was written');
  try {
    return JSON.parse(body);
  } catch {
    throw new BadLine('it is not JSON');
  }
}

/** The same object as a fact. Not the schema's copy of it: the copy would leave out a key named `__proto__`. */
function checkFact(raw: unknown): Fact {
  const result = factSchema.safeParse(raw);
  if (!result.success) {
    const issue = result.error.issues[0];
    const where = issue === undefined || issue.path.length === 0 ? 'the line' : `"${issue.path.join('.')}"`;
    throw new BadLine(`${where} is not as it should be (${issue?.message ?? 'unknown'})`);
  }
  // oxlint-disable-next-line typescript/consistent-type-assertions -- its schema has passed it
  const fact = raw as Fact;
  const points = fact.kind === 'corrected' ? fact.of : fact.kind === 'wanted-back' ? fact.to : 0;
  if (points >= fact.seq) throw new BadLine(`it points at line ${points}, which does not come before it`);
  return fact;
}

/** JSON turns NaN into null and a Map into {} without a word; a fact must not change on its way to disk. */
function refuseWhatJsonLoses(key: string, value: unknown): unknown {
  const lost =
    (typeof value === 'number' && !Number.isFinite(value)) || typeof value === 'bigint' || typeof value === 'function' ||
    typeof value === 'symbol' || (typeof value === 'object' && value !== null && !isPlain(value));
  if (lost) throw new BadLine(`"${key}" holds ${String(value)}, which JSON cannot keep`);
  return value;
}

function isPlain(value: object): boolean {
  const proto: unknown = Object.getPrototypeOf(value);
  return Array.isArray(value) || proto === Object.prototype || proto === null;
}

function reasonOf(cause: unknown): string {
  return cause instanceof Error ? cause.message : String(cause);
}
