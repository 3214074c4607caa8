// What nobody advised: moved by hand, replaced, another adjustment wanted. At any point the ledger is true, what no longer
// stands is judged again, and the coach says what happens.

import { describe, expect, test } from 'vitest';
import { replay } from '../../src/machine/replay.ts';
import { decide } from '../../src/machine/decide.ts';
import { evolve, type State } from '../../src/machine/state.ts';
import { viewOf } from '../../src/machine/view.ts';
import { CHANGED, type Intent, type View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW: Bow = {
  start: { x: -0.5, y: 0.5 }, gain: { 'rest-height': { x: 0, y: -14 }, 'rest-side': { x: 8, y: 0 }, 'nock-height': { x: 0, y: 14 } }, sd: 0.04, seed: 7,
  answers: { 'cams': 'two-track', 'press': 'none', 'broadheads-wanted': 'fixed', 'group-at-20': 1.5 }, groups: { start: { x: 0, y: -0.05 }, gain: {}, sd: 0.2 },
};

function at(until: (view: View) => boolean, bow = BOW) {
  const { session, store } = play(bow, { until });
  const archer = new TestArcher({ ...bow, seed: 98 });
  const send = (intent: Intent) => session.send(intent, nextMinute(store));
  const go = (stop: (view: View) => boolean): View => {
    for (let i = 0; i < 250 && !stop(session.view()); i++) {
      if (session.view().type === 'done') break;
      const { error, view } = send({ kind: 'answer', answer: archer.answer(session.view()) });
      if (error !== undefined) throw new Error(`${view.step}: ${error.message}`);
    }
    return session.view();
  };
  return { session, store, send, go, state: () => replay(content, store.facts).state };
}
const shot = (view: View): boolean => view.ask?.kind === 'tear' || view.ask?.kind === 'impact';
const broad = (view: View): boolean => view.ask?.kind === 'impact';
const PLACES: Readonly<Record<string, (view: View) => boolean>> = {
  'safety': (v) => v.step === 'arrow-mass', 'baseline': (v) => v.step === 'brace-height', 'warm-up': (v) => v.step === 'warm-up',
  'as found': (v) => v.ask?.kind === 'tear' && v.ask.shots.taken === 1,
  'an advice': (v) => v.step === 'make-the-move', 'a check after a change': (v) => v.step === 'rest-check' && v.chapter === 'paper',
  'sideways': (v) => v.ask?.kind === 'tear' && v.ask.axis === 'side',
  'the second distance': (v) => v.ask?.kind === 'tear' && v.ask.distance.value === 9,
  'broadheads to come': (v) => v.step === 'use' && v.chapter === 'broadheads',
  'broadheads': broad, 'farther back?': (v) => v.step === 'broadheads-farther', 'arrows?': (v) => v.step === 'arrows-wanted',
  'tightening': (v) => v.step === 'tightened', 'the proof': (v) => v.step === 'shoot-proof', 'the calendar': (v) => v.step === 'look-again',
};
/** Decided on a state alone: what a line would bring about, without walking there again. */
function decided(state: State, draft: Parameters<typeof decide>[2]): { readonly state: State; readonly say: readonly string[] } {
  const fact = decide(content, state, draft);
  const next = evolve(content, state, fact);
  expect(next.fits).toBe(true);
  return { state: next, say: fact.decided.say };
}

describe.each(Object.keys(PLACES))('at: %s', (place) => {
  const until = PLACES[place] as (view: View) => boolean;
  const here = at(until);
  const found = here.state();
  const stamp = { seq: found.facts.length + 1, time: found.facts.at(-1)?.time ?? '' };

  test('something replaced is said and looked at; its old shots count no more, and what was handed over no longer holds', () => {
    expect(until(here.session.view())).toBe(true);
    // Another place is no part of the bow.
    for (const what of CHANGED.filter((one) => one !== 'place')) {
      const { state: { notes, due }, say } = decided(found, { kind: 'changed', ...stamp, what, note: '' });
      const forgets = ['string', 'rest', 'release', 'arrow', 'other'].includes(what);
      expect([what, notes.forgetCarried, notes.epoch - found.notes.epoch, notes.forgetBefore]).toEqual([what, forgets, what === 'sight' ? 0 : 1, forgets ? found.notes.epoch : 0]);
      // The sight touches no tear; where impacts are compared it goes back, and no fresh set is promised that does not come.
      const { of } = found.notes;
      expect(say.join(' ')).toContain(what !== 'sight' ? `Noted as changed: ${what === 'other' ? 'something that I have no checks of its own for' : what}.` : of === 'paper' || of === 'arrows' ? 'A tear does not depend on it' : 'put it back there before the next one');
      if (what !== 'sight') expect([notes.axis, notes.broadAxis, due.length > 0]).toEqual([{}, {}, true]);
    }
  });

  test('a move by hand while the walk is stopped: taken and said; the stop stands', () => {
    const word = decided(found, { kind: 'stopped', ...stamp, words: 'stop' }).state;
    const { state, say } = decided(word, { kind: 'moved', ...stamp, seq: stamp.seq + 1, knob: 'rest-height', delta: -1 / 64 });
    expect(say.join(' ')).toContain('Taken: REST DOWN 1/64 in.');
    const view = viewOf(content, state);
    expect([view.type, view.step, view.bow['rest-height']?.value]).toEqual(['stop', 'what-happened', (viewOf(content, found).bow['rest-height']?.value ?? 0) - 1 / 64]);
  });

  test('a move by hand is in the ledger, said, and judged by the next shots', () => {
    const before = here.session.view().bow['rest-height']?.value ?? 0;
    const { view, error } = here.send({ kind: 'moved', knob: 'rest-height', direction: 'down', amount: '1/64' });
    expect([error, view.bow['rest-height']?.value]).toEqual([undefined, before - 1 / 64]);
    expect(view.say.join(' ')).toContain('Taken: REST DOWN 1/64 in.');
    // Nothing that was said of the height stands; marks and rest are looked at before the next shot.
    const { notes, due } = here.state();
    const withBroadheads = place === 'broadheads' || place === 'farther back?';
    if (!withBroadheads) expect(notes.axis.height).toBeUndefined();
    expect(notes.broadAxis.height).toBeUndefined();
    expect(due).toEqual(expect.arrayContaining(['marks', 'rest-check']));
    const seen: string[] = [];
    const next = here.go((v) => { seen.push(v.step); return shot(v); });
    expect(seen).toEqual(expect.arrayContaining(['marks', 'rest-check']));
    expect([next.chapter, next.ask?.kind === 'tear' || next.ask?.kind === 'impact' ? [next.ask.shots.taken, next.ask.distance.value] : []])
      .toEqual([withBroadheads ? 'broadheads' : 'paper', [0, withBroadheads ? 20 : 7]]);
    if (!['as found', 'farther back?', 'the calendar'].includes(place)) return;
    const end = here.go(() => false);
    expect(end.type).toBe('done');
    expect(JSON.stringify(end.record?.sections)).toContain('REST DOWN 1/64 in (not advised)');
    expect(end.record?.sections[0]?.rows.find(({ name }) => name === 'Up and down')?.value).toMatch(withBroadheads ? /^moved for the broadheads since/ : /^tuned/);
  });
});

test('a string replaced at the end: the whole tune once more from the first sheet at this bow', () => {
  const here = at((v) => v.step === 'look-again');
  here.send({ kind: 'changed', what: 'string' });
  const next = here.go(shot);
  expect([next.chapter, next.ask?.kind]).toEqual(['paper', 'tear']);
  const end = here.go(() => false);
  expect([end.type, Object.keys(here.state().notes.axis).toSorted()]).toEqual(['done', ['height', 'side']]);
});

describe('during a put-back and its proof', () => {
  /** The rest works the other way: the first trial sideways is put back. */
  const wrong: Bow = { ...BOW, start: { x: -0.7, y: 0.06 }, gain: { ...BOW.gain, 'rest-side': { x: 10, y: 0 } } };

  test('the same adjustment moved by hand: only the rest of the way is told', () => {
    const here = at((v) => v.step === 'put-it-back', wrong);
    expect(here.session.view().advice?.what).toBe('REST RIGHT (toward the riser) 1/32 in');
    here.send({ kind: 'moved', knob: 'rest-side', direction: 'right', amount: '1/64' });
    expect(here.go((v) => v.step === 'put-it-back').advice?.what).toBe('REST RIGHT (toward the riser) 1/64 in');
    here.send({ kind: 'answer', answer: 'as told' });
    expect([here.go(shot).step, here.session.view().bow['rest-side']?.value]).toEqual(['shoot-proving', 0]);
  });

  test('all of it moved by hand: proved at once', () => {
    const here = at((v) => v.step === 'put-it-back', wrong);
    const { view } = here.send({ kind: 'moved', knob: 'rest-side', direction: 'right', amount: '1/32' });
    expect(view.say).toContain('Taken: REST RIGHT 1/32 in. With that all is put back; now shots prove it.');
    expect([here.go(shot).step, here.session.view().bow['rest-side']?.value]).toEqual(['shoot-proving', 0]);
  });

  test('another adjustment moved by hand: it stays, and the put-back stands', () => {
    const here = at((v) => v.step === 'put-it-back', wrong);
    here.send({ kind: 'moved', knob: 'nock-height', direction: 'up', amount: '1/64' });
    expect(here.go((v) => v.step === 'put-it-back').advice?.what).toBe('REST RIGHT (toward the riser) 1/32 in');
    here.send({ kind: 'answer', answer: 'as told' });
    here.go(shot);
    expect(here.session.view().bow).toEqual({ 'rest-side': { value: 0, unit: 'in' }, 'nock-height': { value: 1 / 64, unit: 'in' } });
    expect(here.go(() => false).type).toBe('done');
  });

  test('moved while it is proved: nothing to prove any more, the new setting is judged', () => {
    const here = at((v) => v.step === 'shoot-proving' && v.ask?.kind === 'tear' && v.ask.shots.taken === 1, wrong);
    here.send({ kind: 'moved', knob: 'rest-side', direction: 'left', amount: '1/64' });
    const next = here.go(shot);
    expect([next.step, next.ask?.kind === 'tear' && next.ask.shots.taken]).toEqual(['shoot-shooting', 0]);
  });

  test('a string replaced: what was to be put back is left, and said', () => {
    const here = at((v) => v.step === 'put-it-back', wrong);
    const { view } = here.send({ kind: 'changed', what: 'string' });
    expect(view.say).toContain(content.phrases['put-back-dropped']);
    expect([here.state().notes.undo, here.go(shot).step]).toEqual([[], 'shoot-shooting']);
  });
});

describe('another adjustment, please', () => {
  const advising = (v: View): boolean => v.step === 'make-the-move';

  test('the equally right one is advised; asked once more, the first one again: nothing is skipped', () => {
    const here = at(advising);
    expect(here.session.view().advice?.knob).toBe('rest-height');
    const second = here.send({ kind: 'answer', answer: 'another' }).view;
    expect([second.step, second.advice?.knob, second.say]).toEqual(['make-the-move', 'nock-height', [content.phrases['another-offered']]]);
    const third = here.send({ kind: 'answer', answer: 'another' }).view;
    expect([third.step, third.advice?.knob]).toEqual(['make-the-move', 'rest-height']);
  });

  test('where there is none it says so, and the advice stands', () => {
    const here = at((v) => advising(v) && v.advice?.knob === 'rest-side');
    const { advice } = here.session.view();
    const { view } = here.send({ kind: 'answer', answer: 'another' });
    expect([view.step, view.advice, view.say]).toEqual(['make-the-move', advice, [content.phrases['no-other']]]);
    // "Not now" keeps its meaning: the archer may leave it as it is.
    expect(here.send({ kind: 'answer', answer: 'not now' }).view.step).toBe('leave-or-go-on');
  });

  test('a put-back has no other', () => {
    const here = at((v) => v.step === 'make-the-move');
    here.send({ kind: 'answer', answer: 'as told' });
    here.go(shot);
    here.send({ kind: 'putBack' });
    const { view } = here.send({ kind: 'answer', answer: 'another' });
    expect([view.step, view.say]).toEqual(['put-it-back', [content.phrases['put-back-stands']]]);
  });
});
