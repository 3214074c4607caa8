// Correcting an answer: figures change, the bow does not; what was decided stays as it was written.

import { describe, expect, test } from 'vitest';
import type { Axis } from '../../src/content/types.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { replay } from '../../src/machine/replay.ts';
import type { Fact, Intent, SessionLike, Store, View } from '../../src/machine/types.ts';
import { viewOf } from '../../src/machine/view.ts';
import { openSession, recordOf } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { NOON, play, type PlayOptions } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = { start: { x: 0.3, y: 0.75 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 }, 'nock-height': { x: 0, y: 6 } }, sd: 0.05, seed: 21 };
const IN_TUNE: Bow = { ...BOW, start: { x: 0.05, y: 0.05 }, answers: { 'broadheads-wanted': 'fixed' } };
type Answered = Extract<Fact, { kind: 'answered' }>;

class Tune {
  readonly archer: TestArcher;
  constructor(readonly session: SessionLike, readonly store: Store, bow: Bow) {
    this.archer = new TestArcher(bow);
  }

  static played(options: PlayOptions, bow: Bow = BOW): Tune {
    const { session, store } = play(bow, options);
    return new Tune(session, store, bow);
  }

  get view(): View {
    return this.session.view();
  }

  send(intent: Intent): View {
    const now = Date.parse(this.store.facts.at(-1)?.time ?? '') + 60_000;
    const reply = this.session.send(intent, new Date(now));
    if (reply.error !== undefined) throw new Error(`${reply.error.code}: ${reply.error.message} (${JSON.stringify(intent)} at ${this.view.step})`);
    return reply.view;
  }

  answer(answer: unknown): View {
    return this.send({ kind: 'answer', answer });
  }

  /** The archer's own answers until `there`. */
  on(there: (view: View) => boolean): View {
    for (let turn = 0; turn < 200 && !there(this.view); turn++) this.answer(this.archer.answer(this.view));
    if (!there(this.view)) throw new Error(`never got there; stands at ${this.view.step}`);
    return this.view;
  }

  answered(step: string, which = 0): Answered {
    const all = this.store.facts.filter((f): f is Answered => f.kind === 'answered' && f.step === step);
    const fact = all.at(which);
    if (fact === undefined) throw new Error(`${step} was not answered`);
    return fact;
  }

  /** Opens the answer of this line and gives another one. */
  correct(seq: number, answer: unknown): View {
    for (let turn = 0; turn < 200 && this.view.ask?.correcting !== seq; turn++) this.send({ kind: 'back' });
    return this.answer(answer);
  }

  get state() {
    return replay(content, this.store.facts).state;
  }
}

const kept = (facts: readonly Fact[]): string => JSON.stringify(facts);
const sentence = (id: string): string => (content.phrases[id] ?? '').split(/[{.]/)[0] ?? '';
const atAdvice = (n: number) => { let met = 0; let last: unknown = null; return (v: View) => { if (v.advice?.kind === 'adjust' && v.ask?.kind === 'amount' && v.seq !== last) { met++; last = v.seq; } return met >= n; }; };
const afterFirstMove = (v: View): boolean => v.ask?.kind === 'tear' && v.bow['rest-height'] !== undefined && v.ask.shots.taken === 1;

describe('a measured answer', () => {
  test('an early tear is replaced, later ones stay, the difference is said once, and no kept line changes', () => {
    const tune = Tune.played({ until: afterFirstMove });
    const first = tune.answered('shoot-shooting', 0);
    const before = tune.store.facts.slice();
    const was = kept(before);
    const transcript = tune.session.transcript();
    const sets = tune.state.sets;
    const view = tune.correct(first.seq, { x: 0.25, y: 0.5 });

    expect(kept(tune.store.facts.slice(0, before.length))).toBe(was);
    expect(tune.session.transcript().slice(0, transcript.length)).toEqual(transcript);
    const now = tune.state.sets;
    expect(now[0]?.shots[0]).toEqual({ x: 0.25, y: 0.5, good: true, seq: first.seq });
    expect(now[0]?.shots.slice(1)).toEqual(sets[0]?.shots.slice(1));
    expect(now.slice(1).map((s) => s.shots)).toEqual(sets.slice(1).map((s) => s.shots));
    expect(view.bow).toEqual({ 'rest-height': { value: 1 / 32, unit: 'in' } });
    expect(view.say.filter((line) => line.startsWith(sentence('corrected-shots')))).toHaveLength(1);
    tune.answer({ x: 0.3, y: 0.5 });
    tune.on((v) => v.ask?.kind === 'amount' || v.ask?.kind === 'choice');
    const said = tune.store.facts.flatMap((f) => f.decided.say).filter((line) => line.startsWith(sentence('corrected-shots')));
    expect(said).toHaveLength(1);
  });

  test('the advice that stands was made from the old figure, so it is worked out anew', () => {
    const sheet = [{ x: 0.3, y: 0.6 }, { x: 0.25, y: 0.55 }, { x: 0.3, y: 0.65 }];
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust', instead: (v) => (v.ask?.kind === 'tear' ? { kind: 'answer', answer: sheet } : null) });
    expect(tune.view.advice).toMatchObject({ knob: 'rest-height', direction: 'up' });
    // The sheet was read upside down, all of it.
    tune.correct(tune.answered('shoot-shooting').seq, sheet.map(({ x, y }) => ({ x, y: -y })));
    const view = tune.on((v) => v.advice?.kind === 'adjust');
    expect(view.advice).toMatchObject({ knob: 'rest-height', direction: 'down' });
    expect(view.bow).toEqual({});
  });

  test('a measure of the baseline is replaced where it stands; the walk stays where it is', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    const { step, advice, chapter } = tune.view;
    const view = tune.correct(tune.answered('axle-to-axle').seq, '33 1/4');
    expect(tune.state.answers['axle-to-axle']?.answer).toEqual({ kind: 'number', value: 33.25 });
    expect(JSON.stringify(recordOf(content, tune.store.facts))).toContain('33 1/4');
    expect(view.say.join(' ')).toContain(sentence('corrected').trim());
    expect(tune.on((v) => v.advice?.kind === 'adjust')).toMatchObject({ step, chapter, advice: JSON.parse(JSON.stringify(advice)) });
  });
});

const shotsOf = (tune: Tune): readonly Answered[] => tune.store.facts.filter((f): f is Answered => f.kind === 'answered' && f.answer.kind === 'shots');
const figures = (fact: Answered): { x: number; y: number } => {
  const shot = fact.answer.kind === 'shots' ? fact.answer.shots[0] : undefined;
  if (shot === undefined || 'missed' in shot) throw new Error('no figures');
  return shot;
};
/** The last shot before this axis was called tuned. */
const behind = (tune: Tune, axis: Axis, chapter: 'paper' | 'broadheads' = 'paper'): Answered => {
  const said = tune.store.facts.findLast((f) => f.decided.findings.some((one) => one.kind === 'axis' && one.axis === axis && one.chapter === chapter && one.result === 'tuned'));
  return shotsOf(tune).findLast((f) => f.seq <= (said?.seq ?? 0)) ?? tune.answered('no shot');
};
const off = (fact: Answered, y: number, x = 0): { x: number; y: number } => ({ x: figures(fact).x + x, y: figures(fact).y + y });
const saidBy = (view: View, id: string): number => view.say.filter((line) => line.startsWith(sentence(id).trim())).length;
const eventsOf = (tune: Tune): readonly string[] => tune.store.facts.at(-1)?.decided.events.map((event) => ('verdict' in event ? event.verdict : event.type)) ?? [];
const results = (tune: Tune): string => JSON.stringify(recordOf(content, tune.store.facts)?.sections[0]?.rows);
const replaysTheSame = (tune: Tune): void => expect(viewOf(content, tune.state)).toEqual(tune.view);

/** The first question after the shots of this step. */
const firstAfter = (step: string): ((view: View) => boolean) => {
  let shot = false;
  return (view) => { shot ||= view.step === step; return shot && view.step !== step; };
};

/** In tune as found; broadheads land where field points do. */
const AGREES: Bow = { ...IN_TUNE, groups: { start: { x: 0, y: -0.5 }, gain: {}, sd: 0.4 } };

describe('a verdict that used the corrected figure', () => {
  test('"out", with questions due before the advice: a set that lacks a shot is shot on, and nothing is advised on two', () => {
    const tune = Tune.played({ until: (v) => v.step === 'cams' });
    expect([tune.state.notes.wanted, shotsOf(tune).length]).toEqual([3, 3]);
    tune.correct(tune.answered('shoot-shooting', -1).seq, 'missed');
    expect(tune.state.notes.reshoot).toBe(true);
    const view = tune.on((v) => v.advice !== null || v.ask?.kind === 'tear');
    expect([view.advice, view.ask]).toEqual([null, expect.objectContaining({ kind: 'tear', shots: { taken: 2, wanted: 3 } })]);
    replaysTheSame(tune);
    tune.answer(tune.archer.answer(view));
    expect(tune.on((v) => v.ask?.kind === 'amount').advice?.knob).toBe('rest-height');
  });

  test('"out", under a stop: judged anew once the walk goes on', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    const seqs = shotsOf(tune).map(({ seq }) => seq);
    tune.send({ kind: 'stop', words: 'something popped' });
    for (const seq of seqs) {
      tune.send({ kind: 'back', to: seq });
      tune.answer({ x: 0.05, y: 0.05 });
    }
    expect(tune.view.type).toBe('stop');
    const view = tune.on((v) => v.advice?.kind === 'adjust' || v.ask?.kind === 'tear');
    expect([view.advice, view.ask]).toEqual([null, expect.objectContaining({ kind: 'tear', shots: { taken: 3, wanted: 4 } })]);
    tune.answer({ x: 0.05, y: 0.05 });
    expect(tune.state.notes.axis.height?.result).toBe('tuned');
  });

  describe('"tuned", while a finishing step is offered', () => {
    const offered = (): Tune => {
      const bow: Bow = { ...BOW, seed: 2, start: { x: 0.05, y: 0.4 }, sd: 0.03, gain: { ...BOW.gain, 'rest-height': { x: 0, y: -8 } } };
      const tune = Tune.played({ until: (v) => v.step === 'finishing-step' }, bow);
      expect([tune.view.step, tune.state.notes.axis.height?.result]).toEqual(['finishing-step', 'tuned']);
      return tune;
    };

    test('falls where the corrected set does not show it: told once, and shot on at once', () => {
      const tune = offered();
      const last = behind(tune, 'height');
      const view = tune.correct(last.seq, { x: 0.05, y: 0.75 });
      expect([eventsOf(tune), tune.state.notes.axis.height]).toEqual([['return', 'looked'], undefined]);
      expect([view.ask?.kind, saidBy(view, 'not-shown-paper'), saidBy(view, 'judged-again')]).toEqual(['tear', 1, 1]);
      expect(view.say.join(' ')).toContain('up and down');
      replaysTheSame(tune);
      tune.answer({ x: 0.05, y: 0.15 });
      expect(tune.store.facts.flatMap((f) => f.decided.say).filter((line) => line.startsWith(sentence('not-shown-paper')))).toHaveLength(1);
    });

    test('stands where it would still be said, and the offer stands with it', () => {
      const tune = offered();
      const last = behind(tune, 'height');
      const view = tune.correct(last.seq, off(last, 1 / 16));
      expect([eventsOf(tune), view.step, tune.state.notes.axis.height?.result]).toEqual([[], 'finishing-step', 'tuned']);
      expect([saidBy(view, 'corrected-shots'), saidBy(view, 'not-shown-paper')]).toEqual([1, 0]);
    });
  });

  test('"borderline", while leaving it is offered: judged anew', () => {
    const tune = Tune.played({ until: (v) => v.step === 'leave-or-go-on' }, { ...BOW, start: { x: 0, y: 0.2 }, gain: {}, sd: 0.12, seed: 1, answers: { accept: 'go on' } });
    const [last] = shotsOf(tune).slice(-1);
    tune.correct(last?.seq ?? 0, 'missed');
    // One shot is looked for on the arrow, then shot again.
    const view = tune.on((v) => v.ask?.kind === 'tear');
    expect([view.ask?.kind === 'tear' && view.ask.shots, tune.state.notes.offered]).toEqual([{ taken: 8, wanted: 9 }, null]);
  });

  describe.each([
    ['the second distance', (v: View) => v.ask?.kind === 'tear' && v.ask.distance.value === 9],
    ['broadheads', (v: View) => v.ask?.kind === 'impact' && v.ask.shots.taken === 2],
    ['the arrows', (v: View) => v.step === 'arrows-wanted'],
    ['the finish', (v: View) => v.step === 'tightened'],
    ['the proof after tightening', (v: View) => v.step === 'shoot-proof'],
  ])('"tuned", when the walk is at %s', (_where, until) => {
    test('falls: the record says not judged, and the walk goes back to paper', () => {
      const tune = Tune.played({ until }, AGREES);
      expect(until(tune.view)).toBe(true);
      expect(results(tune)).toContain('tuned: in tolerance');
      const lines = kept(tune.store.facts);
      const before = tune.store.facts.length;
      const view = tune.correct(behind(tune, 'height').seq, { x: 0.45, y: 0.45 });
      expect([tune.state.notes.axis.height, tune.state.notes.secondDistance, tune.state.notes.broadAxis]).toEqual([undefined, null, {}]);
      expect([saidBy(view, 'not-shown-paper'), saidBy(view, 'judged-again')]).toEqual([1, 1]);
      expect(results(tune)).not.toContain('tuned: in tolerance');
      expect(kept(tune.store.facts.slice(0, before))).toBe(lines);
      replaysTheSame(tune);
      const next = tune.on((v) => v.ask?.kind === 'tear' || v.ask?.kind === 'impact');
      expect(next.ask).toMatchObject({ kind: 'tear', distance: { value: 7 }, shots: { taken: 0, wanted: 3 } });
      expect(tune.store.facts.slice(before).flatMap((f) => f.decided.events)).toContainEqual({ type: 'return', to: 'paper' });
      expect(tune.on((v) => v.type === 'done').step).toBe('record');
    });

    test('stands after a slip of 1/16 in, which costs nobody a shot', () => {
      const tune = Tune.played({ until }, AGREES);
      const { step } = tune.view;
      for (const slip of [1 / 16, -1 / 16]) {
        const shot = behind(tune, 'height');
        const view = tune.correct(shot.seq, off(shot, slip, slip));
        expect([eventsOf(tune), view.step, view.say.length]).toEqual([[], step, 2]);
        expect(tune.state.notes.axis).toMatchObject({ height: { result: 'tuned' }, side: { result: 'tuned' } });
      }
    });
  });

  test('"tuned" of one axis falls while the other one is tuned; what it was sure of is told anew where it stands', () => {
    const tune = Tune.played({ until: (v) => v.advice?.knob === 'rest-side' }, { ...BOW, start: { x: 0.5, y: 0.06 }, sd: 0.02 });
    const was = tune.state.notes.axis.height?.chance ?? 0;
    const shot = behind(tune, 'height');
    tune.correct(shot.seq, off(shot, 3 / 32));
    const is = tune.state.notes.axis.height?.chance ?? 0;
    expect([is >= 0.94, is === was, tune.on((v) => v.advice?.kind === 'adjust').advice?.knob]).toEqual([true, false, 'rest-side']);
    for (const one of shotsOf(tune)) tune.correct(one.seq, off(one, 0.6));
    expect(tune.state.notes.axis.height).toBeUndefined();
    expect(tune.on((v) => v.advice?.kind === 'adjust').advice?.knob).toBe('rest-height');
  });

  test('a second correction does not bring back what the first one took back', () => {
    const tune = Tune.played({ until: (v) => v.step === 'arrows-wanted' }, AGREES);
    tune.correct(behind(tune, 'height').seq, { x: 0.45, y: 0.45 });
    tune.correct(tune.answered('axle-to-axle').seq, '33 1/4');
    expect([tune.state.notes.axis.height, results(tune).includes('tuned: in tolerance')]).toEqual([undefined, false]);
    replaysTheSame(tune);
  });

  test('what was moved since is not judged again; only the word about the old setting falls', () => {
    const bow: Bow = { ...AGREES, groups: { start: { x: 0, y: 4 }, gain: { 'rest-height': { x: 0, y: 24 } }, sd: 0.3 } };
    const tune = Tune.played({ until: (v) => v.ask?.kind === 'impact' && v.bow['rest-height'] !== undefined }, bow);
    const upAndDown = (): string => recordOf(content, tune.store.facts)?.sections[0]?.rows.find(({ name }) => name === 'Up and down')?.value ?? '';
    expect(upAndDown()).toContain('Before that, tuned');
    const { step, chapter } = tune.view;
    const views = shotsOf(tune).filter((f) => f.seq <= behind(tune, 'height').seq).map((shot) => tune.correct(shot.seq, off(shot, 0.2)));
    expect([tune.view.step, tune.view.chapter, tune.state.notes.axis.height]).toEqual([step, chapter, undefined]);
    expect(views.map((view) => saidBy(view, 'not-shown-paper')).reduce((a, b) => a + b)).toBe(1);
    expect(upAndDown()).toBe('not judged');
  });

  test('broadheads that "land together" fall by their own shots, and are shot again', () => {
    const tune = Tune.played({ until: (v) => v.step === 'broadheads-farther' }, AGREES);
    expect(tune.state.notes.broadAxis).toMatchObject({ height: { result: 'tuned' }, side: { result: 'tuned' } });
    const shot = behind(tune, 'height', 'broadheads');
    tune.correct(shot.seq, off(shot, 0.05));
    expect(tune.state.notes.broadAxis.height?.result).toBe('tuned');
    // Every broadhead landed higher than was typed.
    const views = shotsOf(tune).filter((f) => f.decided.loop?.tags?.[0]?.head === 'broadhead').map((one) => tune.correct(one.seq, off(one, 3)));
    const said = (id: string): number => views.map((view) => saidBy(view, id)).reduce((a, b) => a + b);
    expect([tune.state.notes.broadAxis.height, said('not-shown-paper')]).toEqual([undefined, 0]);
    expect(said('not-shown-broadheads')).toBeGreaterThan(0);
    expect(tune.state.notes.axis.height?.result).toBe('tuned');
    replaysTheSame(tune);
    expect(tune.on((v) => v.ask?.kind === 'impact' || v.ask?.kind === 'amount' || v.step.startsWith('inspect')).chapter).toBe('broadheads');
  });

  test.each([['unfletched', 'not-shown-unfletched'], ['plumb-line', 'not-shown-plumb']])('without paper, %s: falls, and is shot again', (method, said) => {
    const bow: Bow = { ...BOW, groups: { start: { x: 0, y: 0 }, gain: {}, sd: 0.3 }, answers: { 'gate:backstop': 'no-paper', 'method': method, 'group-at-20': 2 } };
    const { groups: _none, ...line } = { ...bow, plumb: { drift: 0, gain: {}, sd: 0.2 } };
    const tune = Tune.played({ until: (v) => v.step === 'tightened' }, method === 'plumb-line' ? line : bow);
    expect(tune.state.notes.axis.side?.result).toBe('tuned');
    const shot = behind(tune, 'side');
    const view = tune.correct(shot.seq, off(shot, 0, 8));
    expect([tune.state.notes.axis.side, saidBy(view, said)]).toEqual([undefined, 1]);
    replaysTheSame(tune);
    expect(tune.on((v) => v.ask?.kind === 'impact' || v.step.startsWith('inspect')).chapter).toBe('paper');
  });

  test('the second distance says what the corrected shots show there, both ways, and sends nobody back', () => {
    const tune = Tune.played({ until: (v) => v.step === 'tightened' }, { ...IN_TUNE, answers: {} });
    expect(tune.state.notes.secondDistance).toBe('confirmed');
    const last = tune.state.sets.findLast((set) => set.distance === 9)?.shots.at(-1)?.seq ?? 0;
    const fact = shotsOf(tune).find(({ seq }) => seq === last) ?? tune.answered('no shot');
    const no = tune.correct(last, off(fact, 1));
    expect([no.step, tune.state.notes.secondDistance, saidBy(no, 'second-not-confirmed')]).toEqual(['tightened', 'not confirmed', 1]);
    expect(results(tune)).toContain('not shown to be in tolerance there');
    const yes = tune.correct(last, off(fact, 0));
    expect([yes.step, tune.state.notes.secondDistance, saidBy(yes, 'second-confirmed')]).toEqual(['tightened', 'confirmed', 1]);
    expect(tune.state.notes.axis).toMatchObject({ height: { result: 'tuned' }, side: { result: 'tuned' } });
  });

  test('the proof after tightening: shots that did not come back after all leave nothing called tuned', () => {
    const tune = Tune.played({ until: firstAfter('shoot-proof') }, { ...IN_TUNE, answers: {} });
    const proof = shotsOf(tune).slice(-3);
    expect(proof.map(({ step }) => step)).toEqual(['shoot-proof', 'shoot-proof', 'shoot-proof']);
    const views = proof.map((shot) => tune.correct(shot.seq, { x: 0.05, y: 0.9 }));
    expect(views.map((view) => saidBy(view, 'not-shown-tightened')).reduce((a, b) => a + b)).toBe(1);
    expect([tune.state.notes.axis, results(tune).includes('tuned: in tolerance')]).toEqual([{}, false]);
    expect(tune.on((v) => v.ask?.kind === 'tear' || v.ask?.kind === 'amount').chapter).toBe('paper');
  });
});

describe('an inspection or a put-back that a slip of the pen brought about', () => {
  const typed = (shots: readonly { x: number; y: number }[]): NonNullable<PlayOptions['instead']> => {
    let n = 0;
    return (v) => { const answer = v.ask?.kind === 'tear' ? shots[n++] : undefined; return answer === undefined ? null : { kind: 'answer', answer }; };
  };

  test('scatter: the inspection is left, the set counts, and no fresh set is shot', () => {
    const tune = Tune.played({ until: (v) => v.step === 'inspect-scatter', instead: typed([{ x: 0.3, y: 0.5 }, { x: 0.3, y: -3.5 }, { x: 0.3, y: 0.6 }]) });
    expect(tune.state.notes.scattered).toEqual([1]);
    const view = tune.correct(tune.answered('shoot-shooting', 1).seq, { x: 0.3, y: 0.55 });
    expect([tune.state.notes.scattered, tune.state.notes.inspections, tune.state.notes.inspection]).toEqual([[], 0, null]);
    expect([eventsOf(tune)[0], saidBy(view, 'nothing-to-look-for')]).toEqual(['looked', 1]);
    replaysTheSame(tune);
    expect(tune.on((v) => v.advice?.kind === 'adjust').advice?.knob).toBe('rest-height');
    expect(shotsOf(tune)).toHaveLength(3);
  });

  test('scatter that is there in the corrected figures too stands', () => {
    const tune = Tune.played({ until: (v) => v.step === 'inspect-scatter', instead: typed([{ x: 0.3, y: 0.5 }, { x: 0.3, y: -3.5 }, { x: 0.3, y: 0.6 }]) });
    const view = tune.correct(tune.answered('shoot-shooting', 1).seq, { x: 0.3, y: -3.25 });
    expect([view.step, eventsOf(tune), saidBy(view, 'nothing-to-look-for')]).toEqual(['inspect-scatter', [], 0]);
  });

  test('a gross tear: corrected one by one, it is left, and no more is shot than the corrected figures ask for', () => {
    const gross = { x: 0.3, y: 1.5 };
    const tune = Tune.played({ until: (v) => v.step === 'inspect-gross', instead: typed([gross, gross, gross]) });
    for (const { seq } of shotsOf(tune)) tune.correct(seq, { x: 0.3, y: 0.5 });
    expect(tune.state.notes.grossSeen).toBe(false);
    expect(tune.on((v) => v.advice?.kind === 'adjust' || v.ask?.kind === 'tear').advice?.knob).toBe('rest-height');
  });

  test('"worse": nothing is put back, and no side is given up for it', () => {
    const tune = Tune.played({ until: (v) => v.step === 'put-it-back' }, { ...BOW, start: { x: 0.3, y: 0.4 }, gain: { 'rest-height': { x: 0, y: 16 } } });
    expect(tune.state.notes.worse).toEqual({ 'rest-height': 1 });
    const moved = tune.state.moves.at(-1)?.seq ?? 0;
    for (const { seq } of shotsOf(tune).filter((f) => f.seq > moved)) tune.correct(seq, { x: 0.3, y: 0.2 });
    expect([tune.state.notes.worse, tune.state.notes.undo]).toEqual([{}, []]);
    expect(tune.store.facts.flatMap((f) => f.decided.say).filter((line) => line.startsWith(sentence('no-put-back')))).toHaveLength(1);
    expect(tune.on((v) => v.ask?.kind === 'tear' || v.ask?.kind === 'amount').advice?.kind).not.toBe('put-back');
    replaysTheSame(tune);
  });
});

describe('a move', () => {
  test.each([['1/16', true], ['1/64', false]] as const)('re-amounted to %s: "tuned" is judged again with the settings as they really were', (amount, stands) => {
    const bow: Bow = { ...BOW, seed: 1, start: { x: 0.05, y: 0.4 }, sd: 0.03, gain: { ...BOW.gain, 'rest-height': { x: 0, y: -8 } } };
    const tune = Tune.played({ until: (v) => v.step === 'tightened' }, bow);
    expect(tune.state.notes.axis.height?.result).toBe('tuned');
    const view = tune.correct(tune.answered('make-the-move', 0).seq, amount);
    const then = stands ? 'tuned' : undefined;
    expect([tune.state.notes.axis.height?.result, saidBy(view, 'not-shown-paper')]).toEqual([then, stands ? 0 : 1]);
    replaysTheSame(tune);
  });

  test('is only re-amounted: the ledger, later settings and the history follow, the advice given stays as it was', () => {
    const tune = Tune.played({ until: atAdvice(2) });
    const second = tune.view.advice;
    tune.answer('as told');
    tune.on((v) => v.ask?.kind === 'tear' && v.ask.shots.taken === 1);
    const now = tune.view.bow['rest-height']?.value ?? NaN;
    const first = tune.answered('make-the-move', 0);
    const was = kept(tune.store.facts);
    const sets = tune.state.sets.map((s) => s.settings['rest-height'] ?? 0);
    const view = tune.correct(first.seq, '3/64');

    expect(view.bow['rest-height']).toEqual({ value: now + 1 / 64, unit: 'in' });
    expect(tune.state.sets.map((s) => s.settings['rest-height'] ?? 0)).toEqual(sets.map((at) => (at === 0 ? 0 : at + 1 / 64)));
    expect(tune.session.history()[1]?.what).toContain('3/64');
    expect(kept(tune.store.facts.slice(0, -1))).toBe(was);
    expect(second?.to?.value).toBe(now);
    expect(view.say.join(' ')).toContain('rest');
    // What is put back now is what was really moved.
    tune.send({ kind: 'putBack', to: first.seq });
    expect(tune.view.advice).toMatchObject({ kind: 'put-back', to: { value: 0 }, amount: { value: now + 1 / 64 } });
  });
});

describe('a choice', () => {
  test('leaves answers off the route as suggestions: not in force, and offered when they are asked again', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    const release = tune.answered('release').seq;
    const toFingers = tune.correct(release, 'fingers');
    expect(toFingers.say.join(' ')).toContain(sentence('off-route').trim());
    expect(tune.state.answers['warm-up']).toBeUndefined();
    expect(tune.state.suggestions['warm-up']).toEqual({ kind: 'choice', values: ['all true'] });
    // No paper for a finger release.
    expect(toFingers.ask?.kind).not.toBe('tear');
    expect(toFingers.advice).toBeNull();

    tune.correct(release, 'release-aid');
    // What can be answered undrawn comes first.
    expect(tune.view.step).toBe('use');
    const back = tune.answer('target');
    expect(back.step).toBe('warm-up');
    expect(back.ask?.suggestion).toEqual({ kind: 'choice', values: ['all true'] });
    expect(tune.state.answers['warm-up']).toBeUndefined();
    tune.answer('all true');
    expect(tune.state.suggestions['warm-up']).toBeUndefined();
    expect(tune.state.answers['warm-up']).toBeDefined();
  });

  test.each(['put-it-back', 'shoot-proving', 'leave-or-go-on'])('fingers after all, while %s stands: the tune ends at its finish, and no more is shot', (step) => {
    const bow: Bow = step === 'leave-or-go-on' ? { ...BOW, start: { x: 0, y: 0.2 }, gain: {}, sd: 0.12, seed: 1, answers: { accept: 'go on' } } : { ...BOW, gain: { 'rest-height': { x: 0, y: 6 } } };
    const tune = Tune.played({ until: (view) => view.step === step }, bow);
    expect(tune.view.step).toBe(step);
    const view = tune.correct(tune.answered('release').seq, 'fingers');
    expect([view.advice, ['tear', 'impact', 'amount'].includes(view.ask?.kind ?? '')]).toEqual([null, false]);
    expect(tune.on((v) => v.type === 'done').step).toBe('record');
  });

  test('the hand changes the words and nothing of what was measured', () => {
    const tune = Tune.played({ until: (v) => v.advice?.knob === 'rest-side' }, { ...BOW, start: { x: 0.5, y: 0.06 } });
    const before = tune.view.advice;
    tune.correct(tune.answered('hand').seq, 'left');
    const after = tune.on((v) => v.advice?.kind === 'adjust').advice;
    expect(after?.direction).toBe(before?.direction);
    expect(after?.what).not.toBe(before?.what);
    expect(tune.state.sets.flatMap((s) => s.shots).length).toBe(tune.store.facts.filter((f) => f.kind === 'answered' && f.answer.kind === 'shots').length);
  });

  test('of the walk itself is taken back whole while nothing came after it', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    tune.answer('not now');
    tune.answer('not now');
    expect(tune.view.step).toBe('leave-or-go-on');
    tune.answer('accept');
    expect(tune.state.notes.axis.height?.result).toBe('accepted');
    tune.send({ kind: 'note', note: 'wind from the left' });
    tune.send({ kind: 'back' });
    expect(tune.view.step).toBe('leave-or-go-on');
    const view = tune.answer('go on');
    expect(view.ask).toMatchObject({ kind: 'tear', axis: 'height' });
    expect(tune.state.notes.axis.height).toBeUndefined();
    expect(JSON.stringify(recordOf(content, tune.store.facts))).not.toContain(content.phrases['result-accepted']);
    // The note is still there, and the journal replays to the very same view.
    expect(JSON.stringify(recordOf(content, tune.store.facts))).toContain('wind from the left');
    expect(viewOf(content, tune.state)).toEqual(view);
  });

  test('of the walk is not taken back once something followed from it', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    tune.answer('not now');
    tune.answer('not now');
    tune.answer('accept');
    tune.send({ kind: 'changed', what: 'arrow' });
    tune.send({ kind: 'back' });
    expect(tune.view.step).not.toBe('leave-or-go-on');
  });
});

describe('a gate', () => {
  const moving = (): Tune => Tune.played({ until: (v) => v.advice?.kind === 'adjust' });

  test.each([['limbs', 'found', 'released'], ['backstop', 'doubtful', 'backstop'], ['axle-clips', 3, 'released'], ['shaft-ahead', '0.75', 'what-was-changed'], ['rated-weight', 50, 'released'], ['arrow-mass', 280, 'arrow-mass']])('%s corrected to failed stops at once', (step, answer, out) => {
    const tune = moving();
    const view = tune.correct(tune.answered(step).seq, answer);
    expect(view.type).toBe('stop');
    expect(view.step).toBe(out);
    expect(view.advice).toBeNull();
    expect(tune.store.facts.at(-1)?.decided.events).toContainEqual({ type: 'stop' });
  });

  test.each([['limbs', 'limbs'], ['history', 'history'], ['bolt-limit', 'bolt-limit'], ['peak-weight', 'peak-weight'], ['rated-weight', 'rated-weight']])('%s corrected to "not known" stops at once', (step, out) => {
    const tune = moving();
    const view = tune.correct(tune.answered(step).seq, 'not known');
    expect([view.type, view.step]).toEqual(['stop', out]);
  });

  test('a shaft that passed for a grown archer is asked again once the archer still grows', () => {
    const tune = moving();
    expect(tune.correct(tune.answered('growing').seq, 'growing').step).toBe('backstop');
    expect(tune.answer('solid').step).toBe('shaft-ahead');
    expect(tune.answer('1 1/4').type).toBe('stop');
  });

  test('of a way that is no longer taken holds nobody, and is asked anew where that way is taken again', () => {
    const tune = Tune.played({ until: (v) => v.step === 'broadhead-place' }, IN_TUNE);
    tune.answer(['place-target']);
    expect(tune.answer('false').type).toBe('stop');
    const wanted = tune.answered('broadheads-wanted').seq;
    const later = tune.correct(wanted, 'later');
    expect([later.type, later.say.join(' ')]).toEqual(['ask', expect.stringContaining(sentence('stop-cleared'))]);
    expect(later.step).not.toMatch(/^broadhead/);
    expect(tune.correct(wanted, 'fixed').step).toBe('broadhead-place');
  });

  test('that waits for a dealer waits on, whatever way is chosen', () => {
    const tune = Tune.played({ until: (v) => v.step === 'broadhead-place' }, IN_TUNE);
    tune.answer(['place-target']);
    tune.answer('false');
    tune.send({ kind: 'stop', words: 'something popped' });
    tune.answer('bow');
    const view = tune.correct(tune.answered('broadheads-wanted').seq, 'later');
    expect([view.type, view.step]).toEqual(['stop', 'released']);
  });

  test('in a stop, back opens the gate: "written by mistake" goes on exactly where it was', () => {
    const tune = Tune.played({ until: (v) => v.step === 'history' });
    const view = tune.answer('dry-fire');
    expect([view.type, view.step]).toEqual(['stop', 'released']);
    const opened = tune.send({ kind: 'back' });
    expect([opened.step, opened.ask?.correcting]).toEqual(['history', view.seq]);
    const after = tune.answer('nothing');
    expect([after.type, after.step]).toEqual(['ask', 'limbs']);
  });

  test('a stop word and its taking back do not release what waits for a dealer', () => {
    const tune = Tune.played({ until: (v) => v.step === 'limbs' });
    tune.answer('found');
    tune.send({ kind: 'stop', words: 'it cracked' });
    expect(tune.view.step).toBe('what-happened');
    const view = tune.answer('nothing');
    expect([view.type, view.step]).toEqual(['stop', 'released']);
  });

  test('correcting an older answer to the same gate does not release it either', () => {
    const tune = moving();
    tune.send({ kind: 'changed', what: 'fell' });
    expect(tune.view.step).toBe('limbs');
    tune.answer('found');
    const older = tune.answered('limbs', 0).seq;
    expect(older).not.toBe(tune.answered('limbs', -1).seq);
    const view = tune.correct(older, 'clean');
    expect([view.type, view.step]).toEqual(['stop', 'released']);
  });

  test('an arrow that missed after all is looked at before the next shot', () => {
    const tune = Tune.played({ until: afterFirstMove });
    expect(tune.correct(tune.answered('shoot-shooting', -1).seq, 'missed').step).toBe('arrow-check');
  });
});

describe('keep', () => {
  test('leaves the answer, the journal and the question as they were', () => {
    const tune = Tune.played({ until: (v) => v.advice?.kind === 'adjust' });
    const { view } = tune;
    const lines = kept(tune.store.facts);
    tune.send({ kind: 'back' });
    tune.send({ kind: 'back' });
    expect(tune.view.ask?.correcting).toBeDefined();
    expect(tune.send({ kind: 'keep' })).toEqual(view);
    expect(kept(tune.store.facts)).toBe(lines);
    expect(tune.session.send({ kind: 'keep' }, new Date(NOON)).error?.code).toBe('not-correcting');
  });

  test('back goes as far as there are answers, and then says so', () => {
    const tune = Tune.played({ until: (v) => v.step === 'hand' });
    tune.send({ kind: 'back' });
    tune.send({ kind: 'back' });
    expect(tune.view.step).toBe('release');
    expect(tune.session.send({ kind: 'back' }, new Date(NOON)).error?.code).toBe('nothing-earlier');
    expect(tune.view.step).toBe('release');
  });
});

describe('a journal decided by another method', () => {
  test('replays as it was decided: another verdict, another amount, another chance', () => {
    const tune = Tune.played({ until: atAdvice(2) });
    const other = tune.store.facts.map((fact): Fact => {
      const { advice, loop } = fact.decided;
      const bigger = advice?.kind === 'adjust' ? { ...advice, amount: { value: 3 / 64, unit: 'in' as const }, to: { value: 3 / 64, unit: 'in' as const } } : advice;
      const told = loop?.told === undefined ? {} : { told: { ...loop.told, delta: 3 / 64 } };
      return { ...fact, decided: { ...fact.decided, ...(bigger === undefined ? {} : { advice: bigger }), ...(loop === undefined ? {} : { loop: { ...loop, ...told } }) } };
    });
    const { state, unfit } = replay(content, memoryStore(other).facts);
    expect(unfit).toBeNull();
    expect(viewOf(content, state).bow['rest-height']).toEqual({ value: 3 / 64, unit: 'in' });
    expect(viewOf(content, state).advice?.amount?.value).toBe(3 / 64);

    const at = tune.store.facts.findIndex((f) => f.decided.events.some((e) => e.type === 'verdict' && e.verdict === 'out'));
    const scattered = tune.store.facts.slice(0, at + 1).map((f, i): Fact => (i < at ? f : {
      ...f, decided: { ...f.decided, events: [{ type: 'verdict', verdict: 'inconsistent' }], loop: { ...f.decided.loop, inspection: 'scatter' }, advice: null, due: [] },
    }));
    const followed = viewOf(content, replay(content, scattered).state);
    expect(followed.step).toBe('inspect-scatter');
    // And the walk goes on from there, live.
    const store = memoryStore(scattered);
    const session = openSession({ content, store, startAt: new Date(NOON + 3_000_000), engine: 'test', tune: 'test-tune', known: [] });
    expect(session.view().type).toBe('ask');
    expect(session.view().ask?.about).toBe('place');
  });
});
