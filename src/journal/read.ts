// A whole journal, read as bytes: the facts that are whole, and what stands in the way of the rest.
// Nothing is thrown and nothing is touched here; who opens the file decides what follows from it.

import { CodedError, type ErrorCode } from '../errors.ts';
import type { Fact } from '../machine/types.ts';
import { OF_A_TUNE, type JournalKind } from './kinds.ts';
import { BadLine } from './line.ts';
import type { PracticeMark } from './practice-mark.ts';
import { claimedVersion, claimIn, VERSIONS, type Versions } from './versions.ts';

export interface Reading {
  /** Facts of the finished lines, oldest first, up to the first that cannot be read. */
  readonly facts: readonly Fact[];
  /** What the lines of a practice say besides, by number; none in a tune. */
  readonly marks: ReadonlyMap<number, PracticeMark>;
  /** Bytes up to and with the newline of the last fact that was read. */
  readonly good: number;
  /** The version that the last of them was written under; that of this program where there is none. */
  readonly version: number;
  /** What follows the last newline: a line whose writing was cut short. Empty in a whole file. */
  readonly torn: Buffer;
  /** The first finished line that cannot be read. Everything after it is not looked at. */
  readonly bad: { readonly code: Extract<ErrorCode, 'bad-journal' | 'newer-journal' | 'practice-journal' | 'not-practice'>; readonly line: number; readonly reason: string } | null;
}

const NEWLINE = 0x0a;
const strictUtf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

/** Reads a journal's bytes: a tune's, where no other kind is said. Every finished line must be whole and carry its own number, from 1 on. */
export function readJournal(bytes: Buffer, versions: Versions = VERSIONS, kind: JournalKind = OF_A_TUNE): Reading {
  const facts: Fact[] = [];
  const marks = new Map<number, PracticeMark>();
  const torn = bytes.subarray(bytes.lastIndexOf(NEWLINE) + 1);
  let version = versions.current;
  let good = 0;
  const upTo = (bad: Reading['bad']): Reading => ({ facts, marks, good, version, torn, bad });
  for (let end = bytes.indexOf(NEWLINE, good); end !== -1; end = bytes.indexOf(NEWLINE, good)) {
    const line = facts.length + 1;
    try {
      const text = textOf(bytes.subarray(good, end));
      // Looked at before checksum and shape, since a newer program may keep both otherwise.
      const said = claimIn(text);
      const claim = said === null ? null : kind.versionIn(said);
      if (claim !== null && typeof claim !== 'number') return upTo({ ...claim, line });
      if (claim !== null && claim > versions.current) {
        return upTo({ code: 'newer-journal', line, reason: `it is of version ${claim} of the journal, and this program knows up to version ${versions.current}` });
      }
      const { fact, mark } = kind.decode(text, claim ?? version, versions);
      facts.push(inItsPlace(fact, line));
      if (mark !== null) marks.set(line, mark);
      version = claim ?? version;
    } catch (cause) {
      if (!(cause instanceof BadLine)) throw cause;
      return upTo({ code: 'bad-journal', line, reason: cause.message });
    }
    good = end + 1;
  }
  return upTo(null);
}

/** What a line is written with besides its fact and its number. */
export interface Preparing {
  /** The version of the lines before it. */
  readonly before?: number;
  readonly versions?: Versions;
  readonly kind?: JournalKind;
  readonly mark?: PracticeMark | null;
}

/**
 * A fact on its way in as line number `line`, after lines of version `before`: its text, and the fact as a later reading will see
 * it. Throws CodedError('internal'), also where it would be read under another version than it was written under.
 */
export function prepareLine(
  fact: Fact, line: number, { before, versions = VERSIONS, kind = OF_A_TUNE, mark = null }: Preparing = {},
): { readonly text: string; readonly fact: Fact } {
  const text = kind.encode(fact, mark);
  const version = claimedVersion(fact) ?? before ?? versions.current;
  try {
    if (version !== versions.current) throw new BadLine(`it would be read as one of version ${version}, and was written under version ${versions.current}`);
    return { text, fact: inItsPlace(kind.decode(text.slice(0, -1), version, versions).fact, line) };
  } catch (cause) {
    throw new CodedError('internal', `A line does not belong at place ${line}: ${cause instanceof Error ? cause.message : String(cause)}. Nothing was written.`);
  }
}

/** Throws BadLine unless the fact may stand at this line: numbers run without a gap, and the first line alone begins the tune. */
function inItsPlace(fact: Fact, line: number): Fact {
  if (fact.seq !== line) throw new BadLine(`it carries the number ${fact.seq} where ${line} was due, so a line is missing or stands twice`);
  if ((fact.kind === 'begun') !== (line === 1)) {
    throw new BadLine(line === 1 ? 'the first line of a journal says what was begun, and this one does not' : 'it begins a tune in the middle of another');
  }
  return fact;
}

function textOf(bytes: Buffer): string {
  try {
    return strictUtf8.decode(bytes);
  } catch {
    throw new BadLine('it holds bytes that are not text (UTF-8)');
  }
}
