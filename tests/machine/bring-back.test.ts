// "Bring the bow back to here": from any point to any earlier one the ledger is exactly what it was, each put-back asks its
// re-checks, three shots prove it, what was said of undone settings no longer stands, and the record tells it.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { KNOBS, type KnobId } from '../../src/content/types.ts';
import { replay } from '../../src/machine/replay.ts';
import { settingsOf, type Move, type State } from '../../src/machine/state.ts';
import type { Intent, Ledger, Reply, SessionLike, Store, View } from '../../src/machine/types.ts';
import { amountOf, lastMoveToUndo, movesFrom, sameSettings, settingsBefore, undoRuns } from '../../src/machine/undo.ts';
import { holds } from '../../src/machine/guards.ts';
import { openSession } from '../../src/session.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content, stateOf } from './state-of.ts';

/** High and left, its rest working weakly both ways: it takes several changes. No press, two like cams. */
const BOW: Bow = {
  start: { x: -0.6, y: 0.7 }, gain: { 'rest-height': { x: 0, y: -3 }, 'rest-side': { x: 4, y: 0 }, 'nock-height': { x: 0, y: 3 } }, sd: 0.04, seed: 7,
  answers: { cams: 'two-track', press: 'none' },
};

/** A tune under test: the archer answers, the clock goes on by minutes. */
class Tune {
  readonly views: View[] = [];
  private readonly archer: TestArcher;
  constructor(readonly session: SessionLike, readonly store: Store, bow: Bow) {
    this.archer = new TestArcher({ ...bow, seed: bow.seed + 100 });
  }

  static played(until: (view: View) => boolean, bow = BOW, instead: (view: View, turn: number) => Intent | null = () => null): Tune {
    const { session, store } = play(bow, { until, instead });
    return new Tune(session, store, bow);
  }

  /** The same tune once more, from its journal: what is tried on one does not touch the other. */
  again(bow = BOW): Tune {
    const store = memoryStore(this.store.facts);
    const time = nextMinute(this.store);
    const tune = new Tune(openSession({ content, store, startAt: time, engine: 'test', tune: 'test-tune', known: [] }), store, bow);
    // Coming back asks about place and range first.
    tune.until((view) => view.step === this.view.step);
    return tune;
  }

  get view(): View { return this.session.view(); }
  get state(): State { return replay(content, this.store.facts).state; }

  send(intent: Intent): Reply {
    const reply = this.session.send(intent, nextMinute(this.store));
    this.views.push(reply.view);
    return reply;
  }

  answer(answer: unknown = this.archer.answer(this.view)): View {
    const { error, view } = this.send({ kind: 'answer', answer });
    if (error !== undefined) throw new Error(`${view.step}: ${error.message}`);
    return view;
  }

  /** Answers on until `stop`; the steps that were asked on the way. */
  until(stop: (view: View) => boolean): readonly string[] {
    const asked: string[] = [];
    while (!stop(this.view)) {
      if (this.view.type === 'done' || asked.length > 200) throw new Error(`never came there: ${asked.slice(-20).join(' ')}`);
      asked.push(this.view.step);
      this.answer();
    }
    return asked;
  }

  settle(): readonly string[] { return this.until((view) => view.ask?.kind === 'tear' || view.ask?.kind === 'amount' || view.ask?.kind === 'impact'); }

  moved(knob: KnobId, direction: string, amount: string): void {
    const { error } = this.send({ kind: 'moved', knob, direction: direction as 'up', amount });
    if (error !== undefined) throw new Error(error.message);
    this.settle();
  }
}

const ledger = (bow: Ledger): Record<string, number> => Object.fromEntries(Object.entries(bow).filter(([, { value }]) => value !== 0).map(([knob, { value }]) => [knob, value]));
const shooting = (view: View): boolean => view.ask?.kind === 'tear';
const advising = (view: View): boolean => view.step === 'make-the-move';

/** Five changes of three adjustments: two advised, two by hand, one more advised. Ends where the fifth is being shot. */
function fiveChanges(): Tune {
  const tune = Tune.played(advising);
  tune.answer('as told');
  tune.until(advising);
  tune.answer('as told');
  tune.until(shooting);
  tune.moved('nock-height', 'down', '1/32');
  tune.moved('rest-side', 'right', '1/16');
  tune.until((view) => advising(view) && view.advice?.knob === 'rest-side');
  tune.answer('as told');
  tune.settle();
  return tune;
}

describe('five changes over three adjustments', () => {
  const tune = fiveChanges();
  const history = tune.session.history();

  test('the history has the bow as found and each change, with the way back to each', () => {
    expect(history.map(({ what }) => what)).toEqual([
      'As found', 'REST UP 1/32 in', 'REST UP 1/32 in', 'LOOP DOWN 1/32 in (not advised)', 'REST RIGHT 1/16 in (not advised)', 'REST LEFT 1/32 in',
    ]);
    expect(history.map(({ seq }) => seq)[0]).toBe(0);
    expect(history[0]?.came).toMatch(/^0\.7\d in high, 0\.[56]\d in left \(3 shots\)$/);
    expect(history.map(({ bow }) => ledger(bow))).toEqual([
      {}, { 'rest-height': 1 / 32 }, { 'rest-height': 1 / 16 }, { 'rest-height': 1 / 16, 'nock-height': -1 / 32 },
      { 'rest-height': 1 / 16, 'nock-height': -1 / 32, 'rest-side': 1 / 16 }, { 'rest-height': 1 / 16, 'nock-height': -1 / 32, 'rest-side': 1 / 32 },
    ]);
    expect(history.map(({ back }) => back?.steps ?? null)).toEqual([
      ['REST LEFT (away from the riser) 1/32 in', 'LOOP UP 1/32 in', 'REST DOWN 1/16 in'],
      ['REST LEFT (away from the riser) 1/32 in', 'LOOP UP 1/32 in', 'REST DOWN 1/32 in'],
      ['REST LEFT (away from the riser) 1/32 in', 'LOOP UP 1/32 in'],
      ['REST LEFT (away from the riser) 1/32 in'],
      ['REST RIGHT (toward the riser) 1/32 in'],
      null,
    ]);
  });

  test.each([0, 1, 2, 3, 4])('brought back to point %i: told as listed, checked, proved by three shots, told in the record', (i) => {
    const here = tune.again();
    const point = history[i];
    if (!point?.back) throw new Error('there is no way back');
    const { to, steps } = point.back;
    expect(here.send({ kind: 'putBack', to }).error).toBeUndefined();
    const told: string[] = [];
    const asked: string[] = [];
    while (!shooting(here.view)) {
      if (here.view.step === 'put-it-back') told.push(here.view.advice?.what ?? '');
      else asked.push(here.view.step);
      // Nothing is drawn before all is put back.
      if (told.length < steps.length) expect(['draw', 'shoot']).not.toContain(content.steps[here.view.step]?.pause);
      here.answer();
    }
    expect(told).toEqual(steps);
    expect(ledger(here.view.bow)).toEqual(ledger(point.bow));
    // Every check that these moves ask for, once the bow is back.
    const knobs = new Set(tune.state.moves.filter((move) => move.seq >= to).map((move) => move.knob));
    const due = [...knobs].flatMap((knob) => content.rechecks[content.knobs[knob].trigger]).filter((id) => holds(here.state, content.steps[id]?.when ?? []));
    expect(due.length).toBeGreaterThan(0);
    expect(asked).toEqual(expect.arrayContaining(due));
    expect([here.view.step, here.view.ask?.kind === 'tear' && here.view.ask.shots.wanted]).toEqual(['shoot-proving', 3]);
    expect(here.until((view) => view.step !== 'shoot-proving')).toHaveLength(3);
    expect(here.session.history().find(({ seq }) => seq === point.seq)?.back).toBeNull();
    here.until((view) => view.type === 'done');
    const rows = here.view.record?.sections.find(({ title }) => title === 'Noticed on the way')?.rows ?? [];
    const n = tune.state.moves.filter((move) => move.seq >= to).length;
    const where = i === 0 ? 'as found' : `after ${point.what}`;
    expect(rows.map(({ name, value }) => `${name.slice(12)}: ${value}`)).toContain(`brought back to: ${where}; ${n === 1 ? 'one change' : `${n} changes`} put back`);
    const changes = here.view.record?.sections.find(({ title }) => title === 'Changes and what came of them')?.rows ?? [];
    expect(changes.filter(({ value }) => value.includes('(put back)')).length).toBeGreaterThanOrEqual(steps.length);
  });

  test('and forward again: a point that was undone can be brought back, too', () => {
    const here = tune.again();
    const start = history[0]?.back?.to;
    if (start === undefined) throw new Error('no way back');
    here.send({ kind: 'putBack', to: start });
    here.until((view) => view.step === 'shoot-proving');
    const back = here.session.history()[5]?.back;
    expect(back?.steps).toEqual(['REST UP 1/16 in', 'LOOP DOWN 1/32 in', 'REST RIGHT (toward the riser) 1/32 in']);
    here.send({ kind: 'putBack', ...(back ? { to: back.to } : {}) });
    here.until((view) => view.step === 'shoot-proving');
    expect(ledger(here.view.bow)).toEqual(ledger(history[5]?.bow ?? {}));
  });

  test('put back by another amount than told: the ledger is true, the rest is asked for, and then the others', () => {
    const here = tune.again();
    here.send({ kind: 'putBack', to: history[2]?.back?.to ?? 0 });
    expect(here.view.advice?.what).toBe('REST LEFT (away from the riser) 1/32 in');
    expect(ledger(here.answer('1/16').bow)['rest-side']).toBe(-1 / 32);
    expect(here.view.say).toContain(content.phrases['put-back-short']);
    expect(here.view.advice?.what).toBe('REST RIGHT (toward the riser) 1/32 in');
    expect(here.answer('1/64').advice?.what).toBe('REST RIGHT (toward the riser) 1/64 in');
    expect(here.answer('as told').advice?.what).toBe('LOOP UP 1/32 in');
    // Told of 1/32 in, 0.8 mm is as told.
    here.answer('0.8 mm');
    here.until((view) => view.step === 'shoot-proving');
    expect(ledger(here.view.bow)).toEqual(ledger(history[2]?.bow ?? {}));
  });

  test('moved by hand in between: undone with the rest; where it was the put-back itself, nothing is left of that', () => {
    const here = tune.again();
    here.send({ kind: 'putBack', to: history[2]?.back?.to ?? 0 });
    here.send({ kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/64' });
    here.until((view) => view.step === 'put-it-back');
    // Newest first: what was just moved by hand goes first.
    expect(here.view.advice?.what).toBe('REST DOWN 1/64 in');
    here.send({ kind: 'moved', knob: 'rest-side', direction: 'left', amount: '1/32' });
    here.until((view) => view.step === 'put-it-back');
    expect(here.view.advice?.what).toBe('REST DOWN 1/64 in');
    here.answer('as told');
    here.until((view) => view.step === 'put-it-back');
    expect(here.view.advice?.what).toBe('LOOP UP 1/32 in');
    here.send({ kind: 'moved', knob: 'nock-height', direction: 'up', amount: '1/32' });
    here.until((view) => view.step === 'shoot-proving');
    expect(ledger(here.view.bow)).toEqual(ledger(history[2]?.bow ?? {}));
  });

  test('"not now" before anything was put back leaves the bow as it is; later it stands', () => {
    const here = tune.again();
    const { bow } = here.view;
    here.send({ kind: 'putBack', to: history[0]?.back?.to ?? 0 });
    expect(here.answer('not now').say).toContain(content.phrases['bring-back-left']);
    expect(here.view.bow).toEqual(bow);
    expect(here.view.step).toBe('shoot-shooting');
    here.send({ kind: 'putBack', to: history[0]?.back?.to ?? 0 });
    here.answer('as told');
    here.until((view) => view.step === 'put-it-back');
    expect(here.answer('not now').say).toContain(content.phrases['put-back-stands']);
    expect(here.view.step).toBe('put-it-back');
    here.until((view) => view.type === 'done');
    const rows = here.view.record?.sections.find(({ title }) => title === 'Noticed on the way')?.rows.map(({ value }) => value) ?? [];
    expect(rows).toEqual(expect.arrayContaining(['as found: wanted, and left', 'as found; 5 changes put back']));
  });

  test('a line after which nothing moved, or after which all came to nothing, is refused with the reason', () => {
    const here = tune.again();
    expect(here.send({ kind: 'putBack', to: 9999 }).error).toEqual({ code: 'nothing-to-put-back', message: 'Nothing was moved at or after line 9999.' });
    here.moved('rest-height', 'up', '1/64');
    const seq = here.state.moves.at(-1)?.seq ?? 0;
    here.moved('rest-height', 'down', '1/64');
    expect(here.send({ kind: 'putBack', to: seq }).error?.code).toBe('nothing-to-put-back');
  });
});

describe('what was said of settings that are undone', () => {
  const results = (tune: Tune) => Object.keys(tune.state.notes.axis).toSorted();
  const easy: Bow = { ...BOW, start: { x: -0.5, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -14 }, 'rest-side': { x: 8, y: 0 } } };

  test('from the work sideways back to before the height: the height is judged again, and first', () => {
    const tune = Tune.played((view) => advising(view) && view.advice?.knob === 'rest-side', easy);
    expect(results(tune)).toEqual(['height']);
    tune.send({ kind: 'putBack', to: tune.session.history()[0]?.back?.to ?? 0 });
    tune.until((view) => view.step === 'shoot-proving');
    expect(results(tune)).toEqual([]);
    tune.until((view) => view.step === 'make-the-move');
    expect(tune.view.advice?.knob).toBe('rest-height');
  });

  test.each(['finish', 'broadheads'])('from the %s: both axes are worked on once more, confirmed, tightened and proved', (chapter) => {
    const hunter: Bow = { ...easy, answers: { ...easy.answers, 'broadheads-wanted': 'fixed' }, groups: { start: { x: 0, y: -0.5 }, gain: {}, sd: 0.4 } };
    const tune = Tune.played((view) => (chapter === 'finish' ? view.step === 'look-again' : view.ask?.kind === 'impact'), chapter === 'finish' ? easy : hunter);
    expect(results(tune)).toEqual(['height', 'side']);
    const history = tune.session.history();
    tune.send({ kind: 'putBack', to: history[0]?.back?.to ?? 0 });
    expect(tune.view.chapter).toBe('paper');
    tune.until((view) => view.step === 'shoot-proving');
    expect([results(tune), tune.state.notes.secondDistance, tune.view.ask?.kind === 'tear' && tune.view.ask.distance.value]).toEqual([[], null, 7]);
    const before = tune.state.facts.length;
    const asked = tune.until((view) => view.type === 'done');
    expect(results(tune)).toEqual(['height', 'side']);
    expect(asked).toEqual(expect.arrayContaining(['make-the-move', 'tightened', 'shoot-proof', 'sight-last', 'look-again']));
    const findings = tune.state.facts.slice(before).flatMap((fact) => fact.decided.findings);
    for (const axis of ['height', 'side']) expect(findings).toContainEqual(expect.objectContaining({ kind: 'axis', axis, chapter: 'paper', result: 'tuned' }));
    if (chapter === 'broadheads') expect(tune.views.slice(-asked.length).filter((view) => view.ask?.kind === 'impact').length).toBeGreaterThanOrEqual(6);
  });

  test('only sideways undone: the height stands, and is not moved again', () => {
    const tune = Tune.played((view) => view.chapter === 'finish', easy);
    const side = tune.state.moves.find(({ knob }) => knob === 'rest-side');
    tune.send({ kind: 'putBack', to: side?.seq ?? 0 });
    tune.until((view) => view.step === 'shoot-proving');
    expect(results(tune)).toEqual(['height']);
    tune.until((view) => view.type === 'done');
    expect(tune.views.filter((view) => view.advice?.knob === 'rest-height')).toEqual([]);
    expect(results(tune)).toEqual(['height', 'side']);
  });

  test('what was learned stays; an adjustment at its limit has its travel again, one without response stays closed', () => {
    const tune = Tune.played((view) => view.chapter === 'finish', { ...BOW, start: { x: -0.9, y: 0.7 }, gain: { ...BOW.gain, 'rest-side': { x: 6, y: 0 } } });
    expect(tune.state.notes.ended).toEqual({ 'rest-height': 'limit', 'rest-side': 'limit' });
    const { learned } = tune.state.notes;
    expect(Object.keys(learned)).toEqual(['rest-side']);
    tune.send({ kind: 'putBack', to: tune.session.history()[0]?.back?.to ?? 0 });
    tune.until((view) => view.step === 'shoot-proving');
    expect([tune.state.notes.ended, tune.state.notes.shop, tune.state.notes.learned]).toEqual([{}, [], learned]);

    const deaf = Tune.played((view) => view.chapter === 'finish', { ...BOW, gain: { 'rest-height': { x: 0, y: -9 } } });
    expect(deaf.state.notes.ended['rest-side']).toBe('no response');
    deaf.send({ kind: 'putBack', to: deaf.session.history()[0]?.back?.to ?? 0 });
    deaf.until((view) => view.step === 'shoot-proving');
    expect(deaf.state.notes.ended['rest-side']).toBe('no response');
  });
});

describe('broadheads', () => {
  const hunter: Bow = {
    seed: 11, sd: 0.03, start: { x: 0.02, y: 0.4 }, gain: { 'rest-height': { x: 0, y: -10 } },
    groups: { start: { x: 3, y: -4.5 }, gain: { 'rest-height': { x: 0, y: 40 }, 'rest-side': { x: -40, y: 0 } }, sd: 0.4 },
    answers: { 'broadheads-wanted': 'fixed', 'cams': 'two-track', 'press': 'none' },
  };

  test('a change made with broadheads is put back and proved with broadheads; what paper said stands', () => {
    const tune = Tune.played((view) => view.chapter === 'broadheads' && view.step === 'make-the-move', hunter);
    tune.answer('as told');
    tune.until((view) => view.ask?.kind === 'impact');
    const made = tune.state.moves.at(-1);
    const { axis } = tune.state.notes;
    tune.send({ kind: 'putBack' });
    expect([tune.view.chapter, tune.view.advice?.knob]).toEqual(['broadheads', made?.knob]);
    tune.until((view) => view.ask?.kind === 'impact');
    expect([tune.view.step, tune.state.notes.axis]).toEqual(['shoot-proving', axis]);
    expect(settingsOf(tune.state.moves)[made?.knob ?? 'yoke'] ?? 0).toBe(settingsBefore(tune.state, made?.seq ?? 0)[made?.knob ?? 'yoke'] ?? 0);
  });

  test('a change made at paper is undone at paper, and broadheads are shot again', () => {
    const tune = Tune.played((view) => view.chapter === 'broadheads' && view.step === 'make-the-move', hunter);
    expect(tune.state.moves.length).toBeGreaterThan(0);
    tune.send({ kind: 'putBack', to: tune.session.history()[0]?.back?.to ?? 0 });
    tune.until((view) => view.step === 'shoot-proving');
    expect([tune.view.chapter, tune.view.ask?.kind, tune.state.notes.broadAxis]).toEqual(['paper', 'tear', {}]);
    tune.until((view) => view.chapter === 'broadheads' && view.ask?.kind === 'impact');
    expect(tune.view.ask?.kind === 'impact' && tune.view.ask.shots.taken).toBe(0);
    tune.until((view) => view.type === 'done');
  });
});

describe('any moves and put-backs, to any point', () => {
  const per: Record<string, number> = { 'in': 64, 'turn': 4, 'half-twist': 1, 'half-twist-pair': 1, 'size': 1, 'gr': 1 };
  const move = fc.constantFrom(...KNOBS).chain((knob) => fc.record({
    knob: fc.constant(knob), delta: fc.integer({ min: -12, max: 12 }).filter((n) => n !== 0).map((n) => n / (per[content.knobs[knob].unit] ?? 64)),
    why: fc.constantFrom('advice' as const, 'put-back' as const, 'unadvised' as const),
  }));
  const made = fc.array(move, { minLength: 1, maxLength: 25 }).map((list) => list.map((one, i): Move => ({ ...one, seq: 10 + 2 * i })));

  test('the runs to be undone lead exactly to the ledger of that point, one adjustment each, and name no move in vain', () => {
    fc.assert(fc.property(made, fc.nat(), (moves, pick) => {
      const state: State = { ...stateOf(), moves };
      const to = moves[pick % moves.length]?.seq ?? 0;
      const runs = undoRuns(movesFrom(state, to));
      const undone = runs.map((run, i): Move => ({ seq: 900 + i, knob: run[0]?.knob ?? 'yoke', delta: -amountOf(run), why: 'put-back' }));
      const now = settingsOf([...moves, ...undone]);
      for (const knob of KNOBS) expect(now[knob] ?? 0).toBe(settingsBefore(state, to)[knob] ?? 0);
      expect(new Set(undone.map(({ knob }) => knob)).size).toBe(undone.length);
      for (const run of runs) expect(amountOf(run)).not.toBe(0);
      expect(runs.length === 0).toBe(sameSettings(settingsOf(moves), settingsBefore(state, to)));
    }), { seed: 12, numRuns: 300 });
  });

  test('"put the last change back", again and again, comes to the bow as found', () => {
    fc.assert(fc.property(made, (moves) => {
      let state: State = { ...stateOf(), moves };
      for (let i = 0; i <= moves.length; i++) {
        const to = lastMoveToUndo(state);
        if (to === null) break;
        const undone = undoRuns(movesFrom(state, to)).map((run, j): Move => ({ seq: 1000 + 100 * i + j, knob: run[0]?.knob ?? 'yoke', delta: -amountOf(run), why: 'put-back' }));
        expect(undone.length).toBeGreaterThan(0);
        state = { ...state, moves: [...state.moves, ...undone] };
      }
      for (const value of Object.values(settingsOf(state.moves))) expect(value).toBe(0);
    }), { seed: 13, numRuns: 300 });
  });
});
