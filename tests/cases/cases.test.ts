// Expert cases as data: what a good technician would do next. The coach must give that very step.

import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/machine/types.ts';
import { readCases, type Case, type Next } from './case.ts';
import { Played } from './play-case.ts';

interface Step { readonly knob: string; readonly way: string; readonly size: readonly [number, number] }

function holds(advice: Advice | null, kind: Advice['kind'], { knob, way, size }: Step): void {
  expect(advice).toMatchObject({ kind, knob, direction: way });
  const amount = advice?.amount?.value ?? 0;
  expect(amount, 'the size of the step').toBeGreaterThanOrEqual(size[0] - 1e-9);
  expect(amount, 'the size of the step').toBeLessThanOrEqual(size[1] + 1e-9);
}

const lastSaid = (played: Played): string => [...played.view.say, ...(played.view.ask?.text ?? [])].join('\n');
const movedBefore = (given: Case): number => given.seen.filter((item) => 'moved' in item).length;

/** Nothing on the bow was moved that the case did not move, and nothing is advised. */
function nothingMoves(played: Played, given: Case): void {
  expect(played.view.advice?.kind === 'adjust' || played.view.advice?.kind === 'put-back', JSON.stringify(played.view.advice)).toBe(false);
  if (movedBefore(given) === 0) expect(played.view.bow).toEqual({});
}

const CHECK: { readonly [K in Next['kind']]: (played: Played, next: Extract<Next, { kind: K }>, given: Case) => void } = {
  adjust: (played, next) => {
    holds(played.view.advice, 'adjust', next);
    expect(played.view.advice?.trial ?? false, 'whether it is a trial').toBe(next.trial ?? false);
    if (next.words !== undefined) expect(`${played.view.advice?.what}\n${played.view.advice?.why}`).toContain(next.words);
    if (next.also === undefined) return;
    const before = played.view.bow;
    played.answer('not now');
    for (let turn = 0; turn < 12 && !played.stands(); turn += 1) played.usual();
    holds(played.view.advice, 'adjust', next.also);
    expect(played.view.bow, 'one of the two, never both').toEqual(before);
  },
  'put-back': (played, next) => {
    holds(played.view.advice, 'put-back', next);
    if (next.proof === undefined) return;
    played.answer('as told');
    for (let turn = 0; turn < 12 && !played.stands(); turn += 1) played.usual();
    expect(played.view.ask).toMatchObject({ kind: 'tear', step: 'shoot-proving', shots: { taken: 0, wanted: next.proof } });
  },
  stop: (played, next, given) => {
    expect(played.view).toMatchObject({ type: 'stop', advice: null, ask: { about: next.out } });
    expect(lastSaid(played)).toContain(next.words);
    if (given.seen.length === 0) expect(played.views.some((view) => view.ask?.kind === 'tear' || view.ask?.kind === 'amount'), 'shot or moved').toBe(false);
  },
  look: (played, next, given) => {
    expect(played.view.ask).toMatchObject({ about: 'inspected' });
    expect(lastSaid(played)).toContain(next.words);
    nothingMoves(played, given);
    if (next.fresh === undefined) return;
    played.usual();
    for (let turn = 0; turn < 30 && !played.stands(); turn += 1) played.usual();
    expect(played.view.ask).toMatchObject({ kind: 'tear', shots: { taken: 0, wanted: next.fresh } });
  },
  shoot: (played, next, given) => {
    const { ask } = played.view;
    if (ask?.kind !== 'tear') throw new Error(`more shots were expected, not ${ask?.about ?? 'the end'}: ${lastSaid(played)}`);
    expect(ask.shots.wanted - ask.shots.taken).toBe(next.more);
    if (next.distance !== undefined) expect(ask.distance.value).toBe(next.distance);
    nothingMoves(played, given);
    if (next.words !== undefined) expect(played.said()).toContain(next.words);
  },
  shop: (played, next) => {
    const notes = played.views.flatMap((view) => (view.advice?.kind === 'shop' ? [view.advice.why] : []));
    expect(notes.join('\n')).toContain(next.words);
    expect(Object.values(played.view.bow).map(({ value }) => value), 'what did nothing is put back').toEqual(Object.values(played.view.bow).map(() => 0));
  },
  ask: (played, next, given) => {
    const asked: string[] = [];
    for (let turn = 0; turn < next.about.length; turn += 1) {
      asked.push(played.ask.about);
      if (turn + 1 < next.about.length) played.usual();
    }
    expect(asked).toEqual(next.about);
    if (next.words !== undefined) expect(played.said()).toContain(next.words);
    nothingMoves(played, given);
  },
  leave: (played, next, given) => {
    expect(played.view.ask).toMatchObject({ kind: 'tear', distance: { value: 9 } });
    expect(played.said()).toContain(next.words);
    nothingMoves(played, given);
  },
};

const FILES = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.yaml'));

describe.each(FILES)('the cases of %s', (file) => {
  it.each(readCases(`./${file}`).map((given) => [given.situation, given] as const))('%s', (_situation, given) => {
    const played = new Played(given);
    played.run();
    (CHECK[given.next.kind] as (played: Played, next: Next, given: Case) => void)(played, given.next, given);
    // A slip of the pen in a case would be a question that nobody asked.
    expect([...Object.keys(given.bow), ...Object.keys(given.once)].filter((about) => !played.asked.has(about)), 'answers to what was never asked').toEqual([]);
  });
});
