// The cases as a whole: how many there are, that none stands twice, and that no gate of the safety chapter is left without one.

import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shippedContent } from '../tunes/play.ts';
import { readCases, type Case } from './case.ts';
import { Played } from './play-case.ts';

const FEWEST = 90;

const files = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.yaml'));
const cases: readonly Case[] = files.flatMap((file) => readCases(`./${file}`));

it(`at least ${FEWEST} situations, each told once`, () => {
  const told = cases.map(({ situation }) => situation);
  expect(new Set(told).size).toBeGreaterThanOrEqual(FEWEST);
  expect(told.filter((situation, at) => told.indexOf(situation) !== at)).toEqual([]);
});

/** Everything that the safety chapter does not let pass: its questions, and each check of its lists. */
const gates: readonly string[] = (({ chapters, steps }) => {
  const asked = chapters.filter(({ id }) => id === 'safety').flatMap(({ blocks }) => blocks.flatMap((block) => block.steps)).flatMap((id) => steps[id] ?? []);
  return asked.filter(({ effect }) => effect === 'gate').flatMap((step) => (step.kind === 'chunk' ? step.checks.map(({ id }) => id) : [step.id]));
})(shippedContent());

/** Gates that a case names, in its answers or its checks, or where its stop leads out. */
function named({ bow, once, checks, next }: Case): readonly string[] {
  const out = next.kind === 'stop' ? [next.out] : [];
  return [...Object.keys(bow), ...Object.keys(once), ...Object.keys(checks), ...out].map((about) => about.replace(/^gate:/, ''));
}

const found = new Map<Case, ReadonlySet<string>>();

/** What failed, or was not known, while this case was played. */
function notPassed(given: Case): ReadonlySet<string> {
  const already = found.get(given);
  if (already !== undefined) return already;
  const played = new Played(given);
  played.run();
  const gone = new Set(played.views.flatMap(({ findings }) => findings).flatMap((one) => (one.kind === 'gate' && (one.result === 'failed' || one.result === 'unknown') ? [one.gate] : [])));
  found.set(given, gone);
  return gone;
}

describe('the gates of the safety chapter', () => {
  it('are many', () => expect(gates.length).toBeGreaterThan(50));

  it.each(gates)('%s: some case has it failed or not known, and nothing is shot then', (gate) => {
    const about = cases.filter((given) => named(given).includes(gate) && notPassed(given).has(gate));
    expect(about.map(({ situation }) => situation)).not.toEqual([]);
    expect(about.filter(({ next }) => next.kind !== 'stop').map(({ situation }) => situation), 'such a case ends in a stop').toEqual([]);
  });
});
