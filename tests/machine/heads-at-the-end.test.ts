// Broadheads at the end of a tune, of a day and after a break: nobody leaves with blades on without being told, and what flies
// first after a break, after work on cables or after a dealer's release flies from near, and is not counted.

import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { replay } from '../../src/machine/replay.ts';
import type { Intent, SessionLike, Store, View } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { play } from '../tunes/play.ts';
import { content } from './state-of.ts';

/** In tune at paper; broadheads land low and ask for the rest to be moved. */
const HUNTER: Bow = {
  start: { x: 0.03, y: 0.06 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 13,
  answers: { 'broadheads-wanted': 'fixed', 'broadheads-farther': 'farther', 'group-at-20': 1.5 },
  groups: { start: { x: 0, y: -3 }, gain: { 'rest-height': { x: 0, y: 60 } }, sd: 0.15 },
};
/** Both kinds land together, as far back as it goes. */
const STEADY: Bow = { ...HUNTER, gain: {}, sd: 0.04, groups: { start: { x: 0.1, y: -0.4 }, gain: {}, sd: 0.25 }, answers: { ...HUNTER.answers, 'use': 'hunting', 'group-at-20': 1 } };
/** No paper at hand: unfletched shafts. */
const BARE: Bow = {
  ...HUNTER, answers: { 'use': 'target', 'cams': 'two-track', 'press': 'none', 'gate:backstop': 'no-paper', 'method': 'unfletched', 'group-at-20': 1.5 },
  groups: { start: { x: 2.2, y: -2.4 }, gain: { 'rest-height': { x: 0, y: 36 }, 'rest-side': { x: 32, y: 0 } }, sd: 0.4, sdSecond: 0.5 },
};

class Tune {
  private readonly archer: TestArcher;
  private constructor(private readonly session: SessionLike, readonly store: Store, private readonly bow: Bow) {
    this.archer = new TestArcher({ ...bow, seed: 99 });
  }

  static at(until: (view: View) => boolean, bow = HUNTER): Tune {
    const { session, store } = play(bow, { until });
    expect(until(session.view())).toBe(true);
    return new Tune(session, store, bow);
  }

  get view(): View { return this.session.view(); }
  get now(): number { return Date.parse(this.store.facts.at(-1)?.time ?? '') + 60_000; }

  send(intent: Intent, hours = 0): View {
    const { error, view } = this.session.send(intent, new Date(this.now + hours * 3_600_000));
    if (error !== undefined) throw new Error(`${view.step}: ${error.message}`);
    return view;
  }

  /** Closed, and opened again so many hours later. */
  later(hours: number): Tune {
    const store = memoryStore(this.store.facts);
    const startAt = new Date(this.now + hours * 3_600_000);
    return new Tune(openSession({ content, store, startAt, engine: 'test', tune: 'test-tune', known: [] }), store, this.bow);
  }

  /** What is asked until then. */
  until(stop: (view: View) => boolean): readonly string[] {
    const asked: string[] = [];
    while (!stop(this.view)) {
      if (this.view.type === 'done' || asked.length > 150) throw new Error(`never came there: ${asked.slice(-20).join(' ')}`);
      asked.push(this.view.step);
      this.send({ kind: 'answer', answer: this.archer.answer(this.view) });
    }
    return asked;
  }
}

const counted = (view: View): boolean => view.ask?.kind === 'impact' || view.ask?.kind === 'tear';
const broadhead = (view: View): boolean => view.ask?.kind === 'impact' && view.ask.head === 'broadhead';
const unfletched = (view: View): boolean => view.ask?.kind === 'impact' && view.ask.shaft === 'unfletched';
const yards = ({ ask }: View): number | null => (ask?.kind === 'impact' ? ask.distance.value : null);
const fromFar = (view: View): boolean => broadhead(view) && yards(view) === 30;

describe('the end', () => {
  test('last shots were broadheads: field points are back on before the sight is set, and before the record', () => {
    const tune = Tune.at(({ step }) => step === 'tightened', { ...HUNTER, answers: { ...HUNTER.answers, 'broadheads-farther': 'enough' } });
    expect(replay(content, tune.store.facts).state.moves.length).toBeGreaterThan(0);
    const asked = tune.until(({ type }) => type === 'done');
    const [proof, back, sight] = [asked.lastIndexOf('shoot-proof'), asked.lastIndexOf('points-back'), asked.indexOf('sight-last')];
    expect(proof).toBeGreaterThan(-1);
    expect([proof < back, back < sight]).toEqual([true, true]);
    expect(asked.filter((step) => step === 'points-back')).toHaveLength(1);
  });

  test('thought better of while tightening is proved with them: no further one is shot, and the points are back on first', () => {
    const tune = Tune.at((view) => view.step === 'shoot-proof' && broadhead(view), { ...HUNTER, answers: { ...HUNTER.answers, 'broadheads-farther': 'enough' } });
    const wanted = tune.store.facts.find((fact) => fact.kind === 'answered' && fact.step === 'broadheads-wanted');
    tune.send({ kind: 'back', to: wanted?.seq ?? 0 });
    expect(tune.send({ kind: 'answer', answer: 'never' }).say).toContain(content.phrases['broadheads-left']);
    const heads: boolean[] = [];
    const asked = tune.until((view) => { heads.push(broadhead(view)); return view.type === 'done'; });
    expect(heads).not.toContain(true);
    expect(asked.filter((step) => step === 'points-back')).toHaveLength(1);
    expect(asked.slice(0, asked.indexOf('points-back'))).not.toContain('shoot-proof');
  });

  test('nobody had broadheads on: nothing is asked about them', () => {
    const tune = Tune.at(({ step }) => step === 'tightened', { ...HUNTER, answers: { 'broadheads-wanted': 'never' } });
    expect(tune.until(({ type }) => type === 'done')).not.toContain('points-back');
  });
});

describe('a save for today', () => {
  test.each([[true, broadhead], [false, (view: View) => view.ask?.kind === 'tear']] as const)('blades on is %s: to cover and count them is said where it may end, and where it does', (on, until) => {
    const tune = Tune.at(until);
    // Badly shot, and called so: nothing is judged by it, but the arm counts.
    for (let shot = 0; counted(tune.view) && shot < 41; shot++) tune.send({ kind: 'answer', answer: { x: 0, y: 0, called: 'bad' } });
    const says = (view: View): boolean => view.say.includes(content.phrases['cover-blades'] ?? '');
    expect([tune.view.step, says(tune.view)]).toEqual(['fit-to-shoot', on]);
    const ended = tune.send({ kind: 'answer', answer: 'tired' });
    expect([ended.type, says(ended)]).toEqual(['stop', on]);
  });

  test('with every broadhead it stands beside the shot', () => {
    expect(Tune.at(broadhead).view.ask?.text.join(' ')).toMatch(/before you stop for today: blades covered, heads counted/i);
  });
});

describe.each([['another day', 20], ['left standing for more than two hours', 0]] as const)('%s', (_what, hours) => {
  const here = (tune: Tune): Tune => {
    if (hours > 0) return tune.later(hours);
    tune.send({ kind: 'note', note: 'rested' }, 2.5);
    return tune;
  };

  test.each([['20 yd', broadhead], ['30 yd', fromFar]] as const)('from %s: warm, then one broadhead from near that is not counted, then 20 yd', (_far, until) => {
    const tune = here(Tune.at(until, STEADY));
    const asked = tune.until(counted);
    expect(asked.filter((step) => ['warm-up', 'sight-at-20', 'first-broadhead'].includes(step))).toEqual(['warm-up', 'sight-at-20', 'first-broadhead']);
    expect([yards(tune.view), broadhead(tune.view)]).toEqual([20, true]);
    // Only once.
    tune.send({ kind: 'answer', answer: { x: 0, y: 0 } });
    expect(counted(tune.view)).toBe(true);
    tune.until(({ type }) => type === 'done');
  });
});

test('an unfletched shaft on another day: warm, then one from near', () => {
  const tune = Tune.at(unfletched, BARE).later(20);
  const asked = tune.until(counted);
  expect(asked.filter((step) => step === 'warm-up' || step === 'first-unfletched')).toEqual(['warm-up', 'first-unfletched']);
  tune.until(({ type }) => type === 'done');
});

describe.each([['a broadhead', 'first-broadhead', broadhead, HUNTER], ['an unfletched shaft', 'first-unfletched', unfletched, BARE]] as const)('%s', (_what, first, until, bow) => {
  test('after work on cables: from near first', () => {
    const tune = Tune.at(until, bow);
    tune.send({ kind: 'moved', knob: 'yoke', direction: 'right', amount: '1' });
    expect(tune.until(until)).toContain(first);
  });

  test('after a dealer had the bow: from near first', () => {
    const tune = Tune.at(until, bow);
    tune.send({ kind: 'stop', words: 'it cracked' });
    tune.send({ kind: 'answer', answer: 'bow' });
    expect(tune.until(until)).toContain(first);
  });

  test('the same day, nothing happened: not again', () => {
    const tune = Tune.at(until, bow);
    tune.send({ kind: 'answer', answer: { x: 0, y: 0 } });
    expect(tune.until(until)).not.toContain(first);
  });
});
