// Two kinds of journal that are never taken for one another, whoever copies which file where: the tune of a real bow, and a practice.
//
// A practice says a version from a series of its own: 1000 more than the version of the lines that it holds. A program that knows nothing of
// practices takes that for a newer version, says so in one line and leaves the file alone. This one knows it by the number, before anything else is read.

import type { Fact } from '../machine/types.ts';
import { BadLine, decodeLine, encodeAs, encodeLine, factOf, parseLine } from './line.ts';
import { practiceMark, type PracticeMark } from './practice-mark.ts';
import type { Versions } from './versions.ts';

/** Versions above this are of practices. */
export const PRACTICE_FROM = 1000;

interface OtherKind { readonly code: 'practice-journal' | 'not-practice'; readonly reason: string }
interface Decoded { readonly fact: Fact; readonly mark: PracticeMark | null }

export interface JournalKind {
  /** The version of the lines from one that claims this number on; or that the journal is of the other kind. */
  readonly versionIn: (claim: number) => number | OtherKind;
  /** Throws BadLine. */
  readonly decode: (line: string, version: number, versions: Versions) => Decoded;
  /** Throws CodedError('internal'). */
  readonly encode: (fact: Fact, mark: PracticeMark | null) => string;
}

export const OF_A_TUNE: JournalKind = {
  versionIn: (claim) => (claim > PRACTICE_FROM ? { code: 'practice-journal', reason: 'it is a practice on an invented bow, and no tune' } : claim),
  decode: (line, version, versions) => ({ fact: decodeLine(line, version, versions), mark: null }),
  encode: (fact) => encodeLine(fact),
};

export const OF_A_PRACTICE: JournalKind = {
  versionIn: (claim) => (claim > PRACTICE_FROM ? claim - PRACTICE_FROM : { code: 'not-practice', reason: 'it is the tune of a real bow, and no practice' }),
  decode: (line, version, versions) => decodePractice(parseLine(line), version, versions),
  encode: (fact, mark) => {
    const held = { ...fact, ...(fact.v === undefined ? {} : { v: PRACTICE_FROM + fact.v }), ...(mark === null ? {} : { practice: mark }) };
    return encodeAs(fact, held, parseLine);
  },
};

function decodePractice(raw: unknown, version: number, versions: Versions): Decoded {
  if (typeof raw !== 'object' || raw === null) throw new BadLine('it is no JSON object');
  const { practice, ...held }: { practice?: unknown; v?: unknown } = raw;
  const fact = factOf(typeof held.v === 'number' ? { ...held, v: held.v - PRACTICE_FROM } : held, version, versions);
  const mark = markOf(practice);
  if ((fact.kind === 'begun') !== (mark?.of !== undefined)) throw new BadLine('the first line of a practice says which bow it is of, and no other line does');
  return { fact, mark };
}

function markOf(practice: unknown): PracticeMark | null {
  if (practice === undefined) return null;
  const read = practiceMark.safeParse(practice);
  if (!read.success) throw new BadLine(`"practice.${read.error.issues[0]?.path.join('.') ?? ''}" is not as it should be`);
  return read.data;
}
