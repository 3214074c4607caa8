// An amount that is corrected while something is put back: the aim stays, the way to it is reckoned from what was really moved.

import { describe, expect, test } from 'vitest';
import type { Fact, View } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { correct, nextMinute, play } from '../tunes/play.ts';

const BOW: Bow = { start: { x: 0.3, y: 0.75 }, gain: { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 } }, sd: 0.05, seed: 21 };
type Moved = Extract<Fact, { kind: 'answered' }>;

const moves = (facts: readonly Fact[]): Moved[] => facts.filter((fact): fact is Moved => fact.kind === 'answered' && fact.answer.kind === 'moved');

const answer = ({ session, store }: ReturnType<typeof play>, given: unknown): View =>
  session.send({ kind: 'answer', answer: given }, nextMinute(store)).view;

describe('an amount corrected while a put-back stands', () => {
  test('worse, and it had been turned further than told: it goes back by as much', () => {
    const tune = play({ ...BOW, start: { x: 0.3, y: 0.4 }, gain: { 'rest-height': { x: 0, y: 16 } } }, { until: (view) => view.advice?.kind === 'put-back' });
    const made = moves(tune.store.facts).at(-1);
    const { to } = tune.session.view().advice!;
    expect(tune.session.view().advice).toMatchObject({ knob: 'rest-height', amount: { value: 1 / 32 } });
    const view = correct(tune, made!.seq, '1/16');
    expect(view.advice).toMatchObject({ kind: 'put-back', knob: 'rest-height', amount: { value: 1 / 16 }, to });
    expect(answer(tune, 'as told').bow['rest-height']).toEqual(to);
  });

  test('on the way to an earlier point: what went back too far comes forward again, to the same point', () => {
    const tune = play(BOW, { until: (view) => view.ask?.kind === 'tear' && Object.keys(view.bow).includes('rest-side') });
    const [first] = moves(tune.store.facts);
    const now = nextMinute(tune.store);
    expect(tune.session.send({ kind: 'putBack', to: first!.seq }, now).view.advice).toMatchObject({ kind: 'put-back', knob: 'rest-side' });
    expect(answer(tune, 'as told').advice).toMatchObject({ kind: 'put-back', knob: 'rest-height' });
    const back = moves(tune.store.facts).at(-1)!;
    const told = Math.abs(back.decided.loop?.told?.delta ?? 0);
    const view = correct(tune, back.seq, told + 1 / 32);
    expect(view.advice).toMatchObject({ kind: 'put-back', knob: 'rest-side', amount: { value: 1 / 32 }, to: { value: 0 } });
    answer(tune, 'as told');
    const done = answer(tune, 'as told');
    expect(done.advice).toBeNull();
    expect(Object.values(done.bow).map(({ value }) => value)).toEqual([0, 0]);
  });
});
