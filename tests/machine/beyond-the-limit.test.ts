// Nothing is drawn, shot or moved besides while an adjustment stands beyond its hard limit: it is told to be brought back, by an
// advice answered with another amount, by hand, or by a correction, wherever the walk stands.

import { describe, expect, test } from 'vitest';
import type { KnobId } from '../../src/content/types.ts';
import { standsOver, wouldBeOver } from '../../src/machine/loop/inside.ts';
import { offsetFromMaker } from '../../src/machine/loop/ladder.ts';
import type { Intent, View } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import { nextMinute, play } from '../tunes/play.ts';
import { content, stateOf, type Given } from './state-of.ts';

const PRESS: Bow = {
  start: { x: 0.9, y: 0.03 }, gain: { 'yoke': { x: -0.125, y: 0 }, 'rest-side': { x: 4, y: 0 }, 'rest-height': { x: 0, y: -8 } }, sd: 0.03, seed: 4,
  answers: { press: 'trained', lean: 'leans-right', grip: 'same', face: 'same' },
};

function at(until: (view: View) => boolean, bow: Bow = PRESS) {
  const { session, store } = play(bow, { until });
  const archer = new TestArcher({ ...bow, seed: 99 });
  const send = (intent: Intent): View => {
    const { error, view } = session.send(intent, nextMinute(store));
    if (error !== undefined) throw new Error(`${view.step}: ${error.message}`);
    return view;
  };
  const answer = (raw: unknown = archer.answer(session.view())): View => send({ kind: 'answer', answer: raw });
  const until_ = (stop: (view: View) => boolean): readonly View[] => {
    const seen: View[] = [];
    while (!stop(session.view()) && seen.length < 150) {
      seen.push(session.view());
      answer();
    }
    return seen;
  };
  return { session, store, send, answer, until: until_ };
}

const moving = (knob: KnobId) => (view: View): boolean => view.step === 'make-the-move' && view.advice?.knob === knob;
const draws = (view: View): boolean => view.ask?.kind === 'tear' || view.ask?.kind === 'impact' || ['draw', 'shoot'].includes(content.steps[view.step.split('/')[0] ?? '']?.pause ?? '');
const setting = (view: View, knob: KnobId): number => view.bow[knob]?.value ?? 0;
const moved = (knob: KnobId, direction: string, amount: string): Intent => ({ kind: 'moved', knob, direction: direction as 'up', amount });

/** From here on: what is asked until the adjustment stands at `back`; nothing there may draw, and no other adjustment is told. */
function broughtBack(here: ReturnType<typeof at>, knob: KnobId, back: number): void {
  const asked = here.until((view) => view.ask?.kind === 'amount' || draws(view));
  expect(asked.filter(draws)).toEqual([]);
  const { advice, step, ask } = here.session.view();
  expect([step, advice?.kind, advice?.knob, advice?.to?.value]).toEqual(['put-it-back', 'put-back', knob, back]);
  expect(advice?.caution).toEqual(content.knobs[knob].cautions.map((id) => content.cautions[id]));
  expect(ask?.text).toEqual(content.knobs[knob].how);
  for (const raw of ['not now', 'another']) {
    expect(here.answer(raw).say).toEqual([content.phrases['bring-inside-stands']]);
    expect(here.session.view().step).toBe('put-it-back');
  }
  here.answer('as told');
  expect(setting(here.session.view(), knob)).toBe(back);
  const again = here.until((view) => view.ask?.kind === 'tear' || view.ask?.kind === 'impact' || view.ask?.kind === 'amount' || view.type === 'done').map(({ step: id }) => id);
  expect(again).toEqual(expect.arrayContaining(content.rechecks[content.knobs[knob].trigger].filter((id) => here.session.view().chapter !== 'baseline' && ['first-shot', 'after-press', 'rest-check', 'loop-check'].includes(id))));
}

describe('an advice answered with an amount beyond the hard limit', () => {
  test('is said at once, and brought back before anything is drawn; the bow is then shot anew', () => {
    const here = at(moving('yoke'));
    const view = here.answer(10);
    expect(setting(view, 'yoke')).toBe(10 * Math.sign(setting(view, 'yoke')));
    expect(view.say.join(' ')).toMatch(/^Taken as you moved it.*Too far: the yoke legs\. It may stand at most 6 half-twist pairs from where it began/);
    broughtBack(here, 'yoke', 0);
    expect([here.session.view().step, here.session.view().ask?.kind]).toEqual(['shoot-shooting', 'tear']);
    here.until(({ type }) => type === 'done');
    expect(here.session.view().type).toBe('done');
    expect(here.session.history().filter(({ what }) => what.includes('10'))).toHaveLength(2);
  });

  test('by less than told: what is inside is taken, what is still over is told on', () => {
    const here = at(moving('yoke'));
    here.answer(10);
    here.until(({ ask }) => ask?.kind === 'amount');
    here.answer(2);
    here.until(({ ask }) => ask?.kind === 'amount');
    expect([Math.abs(setting(here.session.view(), 'yoke')), here.session.view().step, here.session.view().advice?.amount?.value]).toEqual([8, 'put-it-back', 8]);
    here.answer(2);
    expect(here.until((view) => view.ask?.kind === 'tear').map(({ step }) => step)).toContain('first-shot');
    expect(Math.abs(setting(here.session.view(), 'yoke'))).toBe(6);
    // "Put the last change back" leads to no point that it may not stand at.
    expect(here.send({ kind: 'putBack' }).say).toContain(content.phrases['put-back-beyond']?.replace('{knob}', 'the yoke legs'));
    expect(here.until(draws).filter(({ step }) => step === 'put-it-back')).toEqual([]);
  });

  test('mistyped and corrected: nothing is to be brought back', () => {
    const here = at(moving('yoke'));
    const seq = here.answer(10).seq;
    here.send({ kind: 'back', to: seq });
    here.answer(2);
    expect(here.until((view) => view.ask?.kind === 'tear').map(({ step }) => step)).not.toContain('put-it-back');
    expect(Math.abs(setting(here.session.view(), 'yoke'))).toBe(2);
    // And the other way: corrected to too much while its shots are being made.
    here.send({ kind: 'back', to: seq });
    const view = here.answer(10);
    expect([view.step, view.say.some((line) => line.startsWith('Too far'))]).toEqual(['put-it-back', true]);
  });
});

const PLACES: Readonly<Record<string, (view: View) => boolean>> = {
  'before the first draw': (v) => v.step === 'arrow-mass', 'baseline': (v) => v.step === 'brace-height', 'warm-up': (v) => v.step === 'warm-up',
  'as found': (v) => v.ask?.kind === 'tear', 'an advice': moving('yoke'), 'the proof': (v) => v.step === 'shoot-proof', 'the calendar': (v) => v.step === 'look-again',
};

describe.each(Object.keys(PLACES))('moved by hand beyond its limit, at: %s', (place) => {
  const until = PLACES[place] as (view: View) => boolean;

  test.each([['rest-height', 'up', '3/8'], ['yoke', 'right', '12']] as const)('%s', (knob, direction, amount) => {
    const here = at(until);
    const was = setting(here.session.view(), knob);
    const { say } = here.send(moved(knob, direction, amount));
    expect(say.some((line) => line.startsWith(`Too far: ${content.knobs[knob].name}`))).toBe(true);
    broughtBack(here, knob, was);
  });
});

test('during a stop whose question draws, it is brought back first', () => {
  const here = at((view) => view.step === 'slow-draw' && view.chapter === 'paper');
  here.answer('slow-arrow-stayed');
  here.answer('false');
  expect([here.session.view().type, draws(here.session.view())]).toEqual(['stop', true]);
  here.send(moved('rest-height', 'up', '3/8'));
  expect(here.until((view) => view.ask?.kind === 'amount').filter(draws)).toEqual([]);
  expect([here.session.view().type, here.session.view().advice?.knob]).toEqual(['stop', 'rest-height']);
  expect(here.answer('as told').type).toBe('stop');
});

test('wanted back to an earlier point: what stands beyond goes first, and to that very point', () => {
  const here = at((view) => view.ask?.kind === 'tear' && view.ask.axis === 'side' && setting(view, 'yoke') !== 0);
  const first = here.session.history()[1]?.seq ?? 0;
  here.send(moved('rest-height', 'up', '1/32'));
  here.until((view) => view.ask?.kind === 'tear');
  here.send({ kind: 'putBack', to: first });
  here.until((view) => view.ask?.kind === 'amount');
  here.send(moved('yoke', 'right', '12'));
  here.until((view) => view.ask?.kind === 'amount' || draws(view));
  expect([here.session.view().step, here.session.view().advice?.knob, here.session.view().advice?.to?.value]).toEqual(['put-it-back', 'yoke', 0]);
  here.until(draws);
  expect([setting(here.session.view(), 'yoke'), setting(here.session.view(), 'rest-height')]).toEqual([0, 0]);
});

describe('where the limits count from', () => {
  const over = (given: Given, knob: KnobId, to: number): boolean => wouldBeOver(content, stateOf(given), knob, to);
  const figures = { 'hand': 'right', 'centre-shot': 13 / 16, 'centre-shot-figure': 3 / 4 };

  test('the rest: from the maker\'s figure, on either hand, and as found it is left to the ladder', () => {
    // 1/16 in left of the figure for a right-handed archer: 3/16 to the right, 1/16 to the left.
    expect([3 / 16, 3 / 16 + 1 / 64, -1 / 16, -1 / 16 - 1 / 64, 0].map((to) => over({ answers: figures }, 'rest-side', to))).toEqual([false, true, false, true, false]);
    expect([1 / 16, 1 / 16 + 1 / 64, -3 / 16, -3 / 16 - 1 / 64].map((to) => over({ answers: { ...figures, hand: 'left' } }, 'rest-side', to))).toEqual([false, true, false, true]);
    expect([1 / 8, 5 / 32].map((to) => over({}, 'rest-side', to))).toEqual([false, true]);
    expect(over({ answers: { ...figures, 'centre-shot': 1 } }, 'rest-side', 0)).toBe(false);
  });

  test('the nocking point: from level to 1/4 in above, at most 1/8 in from where it was found or first stood right', () => {
    const nock = (height: number | null, to: number): boolean => over({ answers: { 'nock-height': height } }, 'nock-height', to);
    expect([-1 / 16, -3 / 32, 1 / 8, 5 / 32].map((to) => nock(1 / 16, to))).toEqual([false, true, false, true]);
    expect([1 / 16, 3 / 32, -1 / 8].map((to) => nock(3 / 16, to))).toEqual([false, true, false]);
    // Found 3/16 in below level: lifted to level and on, but not left half-way.
    expect([0, 1 / 8, 3 / 16, 5 / 16, 3 / 8].map((to) => nock(-3 / 16, to))).toEqual([false, true, false, false, true]);
    expect([1 / 8, 5 / 32, -5 / 32].map((to) => nock(null, to))).toEqual([false, true, true]);
  });

  test('measured anew it is the truth, whatever the ledger says', () => {
    const state = stateOf({ answers: { ...figures, 'nock-height': 1 / 16 }, moves: [['rest-side', 1 / 8], ['nock-height', 1 / 32]] });
    expect(standsOver(content, state)).toBeNull();
    const later = (step: string, value: number) => ({ ...state, answers: { ...state.answers, [step]: { answer: { kind: 'number' as const, value }, seq: 2000, time: '' } } });
    expect(standsOver(content, later('nock-height', -1 / 16))).toEqual({ knob: 'nock-height', from: 1 / 32, to: 3 / 32 });
    // 3/16 in right of the figure: it goes back to where it last stood inside.
    expect(standsOver(content, later('centre-shot', 3 / 4 - 3 / 16))).toEqual({ knob: 'rest-side', from: 1 / 8, to: 0 });
    expect(standsOver(content, later('centre-shot', 3 / 4))).toBeNull();
    expect(offsetFromMaker(later('centre-shot', 3 / 4))).toBe(-1 / 8);
  });

  test('a part that was replaced counts from where it was put on', () => {
    const state = stateOf({ moves: [['yoke', 10], ['rest-height', 1 / 4]] });
    const at_ = (what: 'string' | 'rest') => ({ ...state, facts: [{ seq: 1500, time: '', kind: 'changed' as const, what, note: '', decided: { events: [], say: [], findings: [] } }] });
    expect(standsOver(content, state)).toEqual({ knob: 'rest-height', from: 1 / 4, to: 0 });
    expect(standsOver(content, at_('rest'))).toEqual({ knob: 'yoke', from: 10, to: 0 });
    expect(standsOver(content, at_('string'))?.knob).toBe('rest-height');
  });
});
