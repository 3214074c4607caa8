// The tunes in the folder, each in one row. A journal that cannot be read is a row too, never the end of the list.

import { readFileSync, statSync } from 'node:fs';
import type { CodedError } from '../errors.ts';
import type { Answer, Fact } from '../machine/types.ts';
import { tuneIds, tunePath } from './home.ts';
import { OF_A_TUNE, type JournalKind } from './kinds.ts';
import type { PracticeOf } from './practice-mark.ts';
import { readJournal, type Reading } from './read.ts';
import { inWords, refusalOf } from './troubles.ts';

export interface TuneInfo {
  readonly id: string;
  readonly path: string;
  /** Times of the first and the last line (ISO); of the file where no line could be read. */
  readonly begun: string;
  readonly last: string;
  readonly finished: boolean;
  /** Arrows shot, misses and shots called bad among them. */
  readonly shots: number;
  /** The bow's name, once it was told or carried over. */
  readonly bow: string | null;
  /** Which invented bow, where it is a practice. */
  readonly practice?: PracticeOf;
  /** Why the tune cannot be gone on with. What could be read up to there is in the other fields. */
  readonly bad?: string;
  /** What opening it ends in, where a finished line of it cannot be read. */
  readonly refusal?: CodedError;
}

/** What an answer must be about to name the bow. */
const NAMES_BOW: ReadonlySet<string> = new Set(['bow', 'bow-name']);

/** All tunes in a folder, the one with the latest line first. It takes no lock and changes nothing. */
export function listTunes(home: string, kind: JournalKind = OF_A_TUNE): TuneInfo[] {
  return tuneIds(home)
    .map((id) => infoOf(id, tunePath(home, id), kind))
    .sort((a, b) => Date.parse(b.last) - Date.parse(a.last) || (a.id < b.id ? 1 : -1));
}

/** The tune to go on with when none is named: the latest that is whole and not finished. */
export function latestUnfinished(list: readonly TuneInfo[]): TuneInfo | null {
  return list.find((tune) => !tune.finished && tune.bad === undefined) ?? null;
}

function infoOf(id: string, path: string, kind: JournalKind): TuneInfo {
  const nothing = { id, path, begun: id.slice(0, 10), last: id.slice(0, 10), finished: false, shots: 0, bow: null };
  try {
    const touched = statSync(path).mtime.toISOString();
    const reading = readJournal(readFileSync(path), undefined, kind);
    const { facts, marks } = reading;
    const refusal = refusalOf(path, reading);
    const refused = refusal === null ? {} : { refusal };
    const [first, last] = [facts[0], facts.at(-1)];
    const reason = reasonOf(reading);
    const practice = marks.get(1)?.of;
    if (first === undefined || last === undefined) {
      return { ...nothing, begun: touched, last: touched, bad: reason ?? 'nothing was kept in it yet', ...refused };
    }
    return {
      id, path, begun: first.time, last: last.time,
      finished: isFinished(facts) || [...marks.values()].some(({ ended }) => ended === true), shots: shotsIn(facts), bow: bowOf(facts),
      ...(practice === undefined ? {} : { practice }),
      ...(reason === undefined ? {} : { bad: reason }), ...refused,
    };
  } catch (cause) {
    return { ...nothing, bad: `it cannot be opened: ${inWords(cause)}` };
  }
}

function reasonOf({ bad }: Reading): string | undefined {
  switch (bad?.code) {
    case undefined: return undefined;
    case 'newer-journal': return `line ${bad.line} was written by a newer quarterturn: ${bad.reason}; open it with the newer one`;
    case 'bad-journal': return `line ${bad.line}: ${bad.reason}`;
    case 'practice-journal': case 'not-practice': return bad.reason;
  }
}

/** The latest word on it stands: a finished tune that was opened again is not finished. */
function isFinished(facts: readonly Fact[]): boolean {
  return facts.findLast((fact) => fact.decided.loop?.['done'] !== undefined)?.decided.loop?.['done'] === true;
}

/** Every answer as it stands after corrections, by the line that first gave it. */
function answersIn(facts: readonly Fact[]): Map<number, { about: string; answer: Answer }> {
  const answers = new Map<number, { about: string; answer: Answer }>();
  for (const fact of facts) {
    if (fact.kind === 'answered') answers.set(fact.seq, { about: fact.about, answer: fact.answer });
    const old = fact.kind === 'corrected' ? answers.get(fact.of) : undefined;
    if (fact.kind === 'corrected' && old !== undefined) answers.set(fact.of, { about: old.about, answer: fact.answer });
  }
  return answers;
}

function shotsIn(facts: readonly Fact[]): number {
  let shots = 0;
  for (const { answer } of answersIn(facts).values()) if (answer.kind === 'shots') shots += answer.shots.length;
  return shots;
}

function bowOf(facts: readonly Fact[]): string | null {
  const told = [...answersIn(facts).values()].findLast(({ about, answer }) => NAMES_BOW.has(about) && answer.kind === 'text');
  if (told?.answer.kind === 'text') return told.answer.value;
  const first = facts[0];
  if (first?.kind !== 'begun') return null;
  // A bow tuned here before is chosen by its earlier tune's id.
  const chosen = (step: string): string | undefined => {
    const answer = [...answersIn(facts).values()].findLast(({ about }) => about === step)?.answer;
    return answer?.kind === 'choice' ? answer.values[0] : undefined;
  };
  const how = chosen('bow');
  const [only] = first.known;
  const from = how !== 'replaced' && how !== 'other-archer' ? how : first.known.length === 1 ? only?.from : chosen('which-bow');
  return first.known.find((bow) => bow.from === from)?.bow ?? null;
}
