// What is done about the folder of practices: begin one, go on with one, list them, tell a record or a debrief. It is a folder of its own, and
// nothing of it is ever offered for a real bow.

import { readFileSync } from 'node:fs';
import type { Practising } from './arguments.ts';
import { practiceList, when } from './commands.ts';
import type { Content } from './content/types.ts';
import type { PracticeWords } from './content/practice-words.ts';
import { CodedError } from './errors.ts';
import { openPracticeStore } from './journal/file-store.ts';
import { newTunePath, practiceFolder } from './journal/home.ts';
import { OF_A_PRACTICE } from './journal/kinds.ts';
import { latestUnfinished, listTunes, type TuneInfo } from './journal/list.ts';
import type { PracticeOf } from './journal/practice-mark.ts';
import { readJournal } from './journal/read.ts';
import type { SessionLike } from './machine/types.ts';
import { recordMarkdown } from './report/markdown.ts';
import { recordOf } from './session.ts';
import { debriefIn } from './training/debrief.ts';
import { openLobby } from './training/lobby.ts';
import { openPractice } from './training/practice-session.ts';
import { asPractice } from './training/shown.ts';
import { bowNumber, lessonNamed, nameOf } from './training/world-of.ts';

export interface Practices {
  readonly content: Content;
  readonly words: PracticeWords;
  /** The folder of the tunes; practices lie in one below it. */
  readonly home: string;
  readonly engine: string;
}

export interface Opened { readonly session: SessionLike; readonly notices: readonly string[] }

const all = ({ home }: Practices): TuneInfo[] => listTunes(practiceFolder(home), OF_A_PRACTICE);

/** The session that this command asks for. Throws CodedError. */
export function openWanted(practices: Practices, wanted: Practising, now: Date): Opened {
  switch (wanted.what) {
    case 'bow': return begin(practices, { lesson: null, seed: bowNumber(wanted.name) }, now);
    case 'lesson': {
      const lesson = lessonNamed(wanted.name);
      return begin(practices, { lesson, seed: nextOf(all(practices), lesson) }, now);
    }
    case 'resume': return goOn(practices, pick(all(practices), wanted.id, 'open').id, now);
    case 'menu': return { session: lobby(practices), notices: [] };
    case 'list': case 'record': case 'debrief': throw new CodedError('internal', `"practice ${wanted.what}" opens nothing.`);
  }
}

/** What this command tells. Throws CodedError. */
export function tellWanted(practices: Practices, wanted: Practising): string {
  const known = all(practices);
  if (wanted.what === 'list') return practiceList(known, practices.home, (of) => nameOf(of, practices.words));
  if (wanted.what !== 'record' && wanted.what !== 'debrief') throw new CodedError('internal', `"practice ${wanted.what}" tells nothing.`);
  const tune = pick(known, wanted.id, wanted.what === 'debrief' ? 'over' : 'any');
  return wanted.what === 'record' ? recordText(practices, tune) : debriefText(practices, tune);
}

function lobby(practices: Practices): SessionLike {
  const known = all(practices);
  const halfDone = known.flatMap(({ id, practice, shots, last, finished, bad }) =>
    (finished || bad !== undefined || practice === undefined ? [] : [{ id, of: practice, shots, when: when(last) }]));
  return openLobby({
    content: practices.content, words: practices.words, halfDone, next: (lesson) => nextOf(known, lesson),
    open: (choice, now) => ('id' in choice ? goOn(practices, choice.id, now) : begin(practices, choice.of, now)),
  });
}

/** Each time that a lesson is taken it is another bow. */
function nextOf(known: readonly TuneInfo[], lesson: string): number {
  return Math.max(0, ...known.flatMap(({ practice }) => (practice?.lesson === lesson ? [practice.seed] : []))) + 1;
}

function begin(practices: Practices, of: PracticeOf, now: Date): Opened {
  const { id, path } = newTunePath(practiceFolder(practices.home), now);
  return openAt(practices, id, path, of, now);
}

function goOn(practices: Practices, id: string, now: Date): Opened {
  const tune = all(practices).find((one) => one.id === id);
  if (tune?.practice === undefined) throw new CodedError('no-tune', `There is no practice "${id}". "quarterturn practice list" shows the names.`);
  return openAt(practices, id, tune.path, tune.practice, now);
}

function openAt({ content, words, engine }: Practices, id: string, path: string, of: PracticeOf, now: Date): Opened {
  const store = openPracticeStore(path, { now });
  try {
    return { session: openPractice({ content, words, store, of, startAt: now, engine, tune: id }), notices: store.notices };
  } catch (error) {
    store.close();
    throw error;
  }
}

/** The practice named, or the latest that fits. Throws CodedError with what to do. */
function pick(known: readonly TuneInfo[], id: string | null, must: 'open' | 'over' | 'any'): TuneInfo {
  const latest = must === 'open' ? latestUnfinished(known) : (known.find(({ bad, finished }) => bad === undefined && (must === 'any' || finished)) ?? null);
  const found = id === null ? latest : (known.find((one) => one.id === id) ?? null);
  if (found?.refusal !== undefined) throw found.refusal;
  if (found === null) {
    throw new CodedError('no-tune', id === null ? `No practice is there for that yet. "quarterturn practice list" shows all, "quarterturn practice" begins one.` : `There is no practice "${id}". "quarterturn practice list" shows the names.`);
  }
  if (must === 'over' && !found.finished) {
    throw new CodedError('no-tune', `The practice ${found.id} is not over yet, and its debrief would spoil it. Go on with it: quarterturn practice resume ${found.id}. There "debrief" (on the screen: d) ends it and tells all.`);
  }
  return found;
}

function recordText({ content, words }: Practices, { id, path, practice }: TuneInfo): string {
  const record = recordOf(content, readJournal(readFileSync(path), undefined, OF_A_PRACTICE).facts);
  if (record === null || practice === undefined) throw new CodedError('no-tune', `The practice ${id} has no record yet: nothing was measured.`);
  return recordMarkdown(asPractice(record, nameOf(practice, words)));
}

function debriefText({ content, words }: Practices, { id, path, practice }: TuneInfo): string {
  const { facts, marks } = readJournal(readFileSync(path), undefined, OF_A_PRACTICE);
  if (practice === undefined) throw new CodedError('no-tune', `The practice ${id} was not begun.`);
  return recordMarkdown(debriefIn(content, words, practice, facts.map((fact) => ({ fact, hands: marks.get(fact.seq) ?? null }))));
}
