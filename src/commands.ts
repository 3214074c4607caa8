// What is done about a folder of tunes besides walking: list them, tell a record, gather what earlier tunes learned.

import { readFileSync } from 'node:fs';
import { CodedError } from './errors.ts';
import { clean } from './screens/clean.ts';
import type { Content } from './content/types.ts';
import type { PracticeOf } from './journal/practice-mark.ts';
import type { TuneInfo } from './journal/list.ts';
import { readJournal } from './journal/read.ts';
import { OF_THE_ARCHER } from './machine/known-bow.ts';
import type { BowRecord, Carried, Fact } from './machine/types.ts';

/** A short day and time on this machine's clock. */
export function when(iso: string): string {
  const date = new Date(iso);
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())} ${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** The same for practices, each with its bow. */
export function practiceList(practices: readonly TuneInfo[], home: string, nameOf: (of: PracticeOf) => string): string {
  if (practices.length === 0) return `Nothing was practised in ${clean(home)} yet. "quarterturn practice" begins.\n`;
  const rows = practices.map(({ id, last, finished, shots, practice, bad }) => {
    const state = bad === undefined ? (finished ? 'over' : 'not over') : `cannot be opened: ${bad}`;
    return clean(`PRACTICE ${id}  last ${when(last)}  ${shots} ${shots === 1 ? 'shot' : 'shots'}  ${state}${practice === undefined ? '' : `  ${nameOf(practice)}`}`);
  });
  return `${rows.join('\n')}\n`;
}

export function tuneList(tunes: readonly TuneInfo[], home: string): string {
  if (tunes.length === 0) return `No tune is kept in ${clean(home)} yet. "quarterturn new" begins one.\n`;
  const rows = tunes.map(({ id, begun, last, finished, shots, bow, bad }) => {
    const state = bad === undefined ? (finished ? 'finished' : 'not finished') : `cannot be opened: ${bad}`;
    return clean(`${id}  begun ${when(begun)}  last ${when(last)}  ${shots} ${shots === 1 ? 'shot' : 'shots'}  ${state}${bow === null ? '' : `  ${bow}`}`);
  });
  return `${rows.join('\n')}\n`;
}

/**
 * The tune named, or the one to take when none is named. Throws CodedError('no-tune'), and 'newer-journal' or 'bad-journal' where
 * a finished line of it cannot be read: then not even a lock is touched, and no record is told that may be an old one.
 */
export function pickTune(tunes: readonly TuneInfo[], id: string | null, otherwise: () => TuneInfo | null): TuneInfo {
  const found = id === null ? otherwise() : (tunes.find((tune) => tune.id === id) ?? null);
  if (found?.refusal !== undefined) throw found.refusal;
  if (found !== null) return found;
  if (id !== null) throw new CodedError('no-tune', `There is no tune "${clean(id)}". "quarterturn list" shows the names.`);
  const newer = tunes.find(isNewer);
  if (newer?.refusal !== undefined) throw newer.refusal;
  throw new CodedError('no-tune', tunes.length === 0 ? 'There is no tune yet. "quarterturn new" begins one.' : 'No tune is left to go on with. "quarterturn list" shows all, "quarterturn new" begins one.');
}

const isNewer = ({ refusal }: TuneInfo): boolean => refusal?.code === 'newer-journal';

/** One line where tunes of a newer program lie in the folder: nothing else would tell why one is not gone on with, or its bow not offered. */
export function leftToNewer(tunes: readonly TuneInfo[]): readonly string[] {
  const [newest, ...more] = tunes.filter(isNewer);
  if (newest === undefined) return [];
  const others = more.length === 0 ? '' : ` The same holds of ${more.length === 1 ? 'one more' : `${more.length} more`}: "quarterturn list" shows all.`;
  return [clean(`The tune ${newest.id} is left as it is and not used here: ${newest.bad ?? ''}.${others}`)];
}

/** The lines of a journal without taking its lock, as far as they can be read. */
export function factsOf(tune: TuneInfo): readonly Fact[] {
  return readJournal(readFileSync(tune.path)).facts;
}

/** As many as can be chosen from with one digit, beside "with a part replaced", "another archer" and "another bow". */
const MOST_KNOWN = 6;

/**
 * What other finished tunes kept here hand over: each bow with each of its archers once, the latest first. The bow is as
 * its latest tune left it, whoever shot that. A tune of it that was left unfinished since hands on what it learned, and
 * nothing that was looked at or measured. A tune that cannot be read hands over nothing.
 */
export function carriedFrom(
  tunes: readonly TuneInfo[], except: string, content: Content,
  carriedOf: (content: Content, facts: readonly Fact[], tune: string) => Carried | null,
): Carried[] {
  const all = tunes
    .filter(({ id, bad }) => id !== except && bad === undefined)
    .map((tune): Handed => ({ finished: tune.finished, carried: carriedOf(content, factsOf(tune), tune.id) }));
  return withLearnedSince(all).slice(0, MOST_KNOWN);
}

/** What one tune hands over; null where it never got to shoot, or stands stopped. */
export interface Handed { readonly finished: boolean; readonly carried: Carried | null }

/** Of all tunes, the latest first: finished ones by bow and archer, each with what unfinished ones of that bow have learned since. */
export function withLearnedSince(tunes: readonly Handed[]): Carried[] {
  const handed = tunes.flatMap(({ finished, carried }) => (carried === null ? [] : [{ finished, carried }]));
  const finished = handed.filter((one) => one.finished).map(({ carried }) => carried);
  return latestOfEach(finished).map((one) => {
    const latest = handed.findIndex((other) => other.finished && bowOf(other.carried) === bowOf(one));
    const since = handed.slice(0, latest).map(({ carried }) => carried).filter((other) => bowOf(other) === bowOf(one));
    const [bow] = since;
    if (bow === undefined) return one;
    const own = since.find((other) => archerOf(other) === archerOf(one));
    const { besides: _before, ...kept } = one;
    return { ...kept, spread: own?.spread ?? one.spread, gains: bow.gains, ...(bow.besides === undefined ? {} : { besides: bow.besides }) };
  });
}

const bowOf = ({ bowId, from }: Carried): string => bowId ?? from;
const archerOf = ({ archerId, from }: Carried): string => archerId ?? from;

/** Of tunes handed over, the latest first: one for each bow and archer, with what the bow's latest tune says of the bow. */
export function latestOfEach(all: readonly Carried[]): Carried[] {
  const pairOf = (one: Carried): string => `${bowOf(one)} ${archerOf(one)}`;
  return all
    .filter((one, i) => all.findIndex((other) => pairOf(other) === pairOf(one)) === i)
    .map((one) => {
      const latest = all.find((other) => bowOf(other) === bowOf(one)) ?? one;
      if (latest === one) return one;
      const own = Object.fromEntries(OF_THE_ARCHER.flatMap((id) => (one.answers[id] === undefined ? [] : [[id, one.answers[id]]])));
      const answers = Object.fromEntries(Object.entries(latest.answers).filter(([id]) => !OF_THE_ARCHER.includes(id)));
      return { ...one, answers: { ...answers, ...own }, gains: latest.gains, ...(latest.besides === undefined ? {} : { besides: latest.besides }) };
    });
}

/** Throws CodedError('no-tune') where the tune has not come as far as a record. */
export function recordOrSay(record: BowRecord | null, tune: TuneInfo): BowRecord {
  if (record !== null) return record;
  throw new CodedError('no-tune', `The tune ${tune.id} has no record yet: nothing was measured. "quarterturn resume ${tune.id}" goes on with it.`);
}
