// Tunes killed at every tenth answer and taken up again end as if nothing had happened: same settings, same learned
// values, same findings. Two are the real program, killed by SIGKILL after it printed its reply. For the other four the
// session is dropped without closing and the same journal is opened again in this process, under the number of another
// sitting: that leaves the same bytes and the same stale lock on disk, and takes a tenth of the time.

import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openFileStore } from '../../src/journal/file-store.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { readJournal } from '../../src/journal/read.ts';
import type { Fact } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import { newHome } from '../cli/program.ts';
import { Talker } from '../cli/talker.ts';
import { mended, ownPress, twoTrackLeft } from './bows.ts';
import { NumberedArcher, type StoryBow } from './numbered-archer.ts';
import { Clock, talkInProcess, type Talk } from './pipe-talk.ts';
import { NOON, shippedContent } from './play.ts';
import { advicesOf, findingsOf, otherThanGates, walkThrough, type Interrupt, type Walked } from './walk-through.ts';

const EVERY = 10;
const STARTS_WITH = ['place', 'gate:backstop', 'gate:range', 'gate:history'];

interface Ended { readonly walk: Walked; readonly facts: readonly Fact[] }

async function uninterrupted(bow: StoryBow): Promise<Ended> {
  const store = memoryStore();
  return { walk: await walkThrough(talkInProcess(store, new Clock(NOON)), new NumberedArcher(bow)), facts: store.facts };
}

/** Everything that a tune came to, but for line numbers, times, and the questions of a new sitting. */
function outcome({ walk, facts }: Ended) {
  const gates: Record<string, string> = {};
  for (const finding of findingsOf(walk.lines)) if (finding.kind === 'gate') gates[finding.gate] = finding.result;
  const carried = carriedOf(shippedContent(), facts);
  const sections = walk.last.type === 'done' ? (walk.last.record?.sections ?? []) : [];
  const rows = sections.map(({ title, rows: list }) => ({ title, rows: list.map(({ name, value }) => `${name.replace(/\d{4}-\d\d-\d\d|line \d+/g, '')} ${value.replace(/\d{4}-\d\d-\d\d/g, '')}`) }));
  return {
    bow: walk.last.bow, findings: otherThanGates(findingsOf(walk.lines)), gates, learned: carried?.gains, spread: carried?.spread,
    advice: advicesOf(walk.lines), tears: walk.turns.filter(({ ask }) => ask.kind === 'tear').map(({ answer }) => answer),
    rows: rows.map((section) => ({ ...section, rows: section.rows.filter((row) => !/^(Same place|What stands)/.test(row)) })),
  };
}

/** After each kill: people and range, what happened to the bow, then the very question that stood. */
function holdsTakingUp({ turns, sittings }: Walked, kills: number): void {
  expect(sittings).toHaveLength(kills);
  for (const at of sittings) {
    const stood = turns[at - 1]!.reply;
    const asked = turns.slice(at).map(({ ask }) => ask);
    // A stop stands before everything: nothing else is asked until it is left.
    if (stood.type === 'stop') { expect(asked[0]).toEqual(stood.ask); continue; }
    expect(asked.slice(0, 4).map(({ about }) => about)).toEqual(STARTS_WITH);
    if (!STARTS_WITH.includes(stood.ask?.about ?? '')) expect(asked[4]).toEqual(stood.ask);
  }
}

function sameAsUninterrupted(killed: Ended, whole: Ended): void {
  const [one, other] = [outcome(killed), outcome(whole)];
  for (const key of Object.keys(other) as (keyof typeof other)[]) expect({ [key]: one[key] }).toEqual({ [key]: other[key] });
}

describe('killed by SIGKILL at every tenth answer', { timeout: 60_000 }, () => {
  it.each([['a press of one\'s own', ownPress(2)]])('%s', async (_name, bow) => {
    const home = newHome();
    let talker = new Talker(['new', '--pipe', '--home', home]);
    let kills = 0;
    const kill: Interrupt = async (answers) => {
      if (answers % EVERY !== 0) return null;
      talker.kill('SIGKILL');
      expect(await talker.ended).toBe(null);
      kills += 1;
      talker = new Talker(['resume', '--pipe', '--home', home]);
      return talker;
    };
    const walk = await walkThrough(talker, new NumberedArcher(bow), kill);
    talker.end();
    await talker.ended;
    const journals = readdirSync(home).filter((name) => name.endsWith('.jsonl'));
    expect(journals).toHaveLength(1);
    const facts = readJournal(readFileSync(join(home, journals[0]!))).facts;
    expect(kills).toBeGreaterThanOrEqual(6);
    holdsTakingUp(walk, kills);
    sameAsUninterrupted({ walk, facts }, await uninterrupted(bow));
  });
});

describe('dropped at every tenth answer, and wherever the walk is stopped', () => {
  it.each([['left-handed, two tracks', twoTrackLeft(1)], ['three faults mended', mended(1)]])('%s', async (_name, bow) => {
    const folder = mkdtempSync(join(tmpdir(), 'quarterturn-tune-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const path = join(folder, 'tune.jsonl');
    const clock = new Clock(NOON);
    // Numbers that no process of this computer has: each sitting finds the last one dead.
    let pid = 2 ** 30;
    const open = (): Talk => talkInProcess(openFileStore(path, { now: clock.now(), pid: pid += 1 }), clock);
    let kills = 0;
    const drop: Interrupt = async (answers, { type }) => {
      if (answers % EVERY !== 0 && type !== 'stop') return null;
      kills += 1;
      return open();
    };
    const walk = await walkThrough(open(), new NumberedArcher(bow), drop);
    expect(kills).toBeGreaterThanOrEqual(4);
    holdsTakingUp(walk, kills);
    sameAsUninterrupted({ walk, facts: readJournal(readFileSync(path)).facts }, await uninterrupted(bow));
  });
});
