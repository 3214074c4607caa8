// The review of answers: every one in the words of the conversation, and those that may be changed open by their line.

import { describe, expect, test } from 'vitest';
import { answersOf } from '../../src/machine/review.ts';
import { replay } from '../../src/machine/replay.ts';
import { play } from '../tunes/play.ts';
import { content } from './state-of.ts';

const BOW = { start: { x: -0.42, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -9 }, 'rest-side': { x: 8, y: 0 } }, sd: 0.05, seed: 7 };

const played = (until: (step: string, seq: number) => boolean, instead: Parameters<typeof play>[1] = {}) => {
  const { session, store } = play(BOW, { until: (view) => until(view.step, view.seq), ...instead });
  let now = Date.parse(store.facts.at(-1)?.time ?? '');
  return { session, store, send: (intent: Parameters<typeof session.send>[0]) => session.send(intent, new Date(now += 60_000)) };
};

describe('the review', () => {
  test('has every answer, oldest first, each told as in the conversation', () => {
    const { session, store } = played((step) => step === 'shoot-proof');
    const answers = session.answers();
    const facts = store.facts.filter((fact) => fact.kind === 'answered');
    expect(answers.map(({ seq }) => seq)).toEqual(facts.map(({ seq }) => seq));
    const said = new Map(session.transcript().filter(({ who }) => who === 'archer').map(({ seq, text }) => [seq, text]));
    for (const { seq, question, answer } of answers) {
      expect([said.get(seq), question.length > 0]).toEqual([expect.stringContaining(answer), true]);
      expect(said.get(seq)?.replace(`${question}: `, '')).toBe(answer);
    }
    expect(answers.find(({ seq }) => seq === facts.find(({ step }) => step === 'hand')?.seq)).toEqual({ seq: expect.any(Number), question: 'Which hand holds the bow?', answer: 'Left hand holds it: right-handed', change: true });
  });

  test('opens the very answer that is named, and takes the correction', () => {
    const { session, store, send } = played((step) => step === 'make-the-move');
    const mass = store.facts.find((fact) => fact.kind === 'answered' && fact.step === 'arrow-mass')?.seq ?? 0;
    const opened = send({ kind: 'back', to: mass });
    expect([opened.error, opened.view.ask?.step, opened.view.ask?.correcting]).toEqual([undefined, 'arrow-mass', mass]);
    send({ kind: 'answer', answer: 410 });
    expect(session.answers().find(({ seq }) => seq === mass)?.answer).toBe('410 gr');
    expect(session.view().ask?.correcting).toBeUndefined();
    // From there "back" again goes on to the one before it.
    send({ kind: 'back', to: mass });
    expect(send({ kind: 'back' }).view.ask?.correcting).toBe(session.answers().filter(({ seq, change }) => seq < mass && change === true).at(-1)?.seq);
  });

  test('says of each other answer why not, and refuses to open it with that reason', () => {
    const stop = { about: '', done: false };
    const { session, store, send } = played((_step, seq) => seq > 60, {
      instead: (view) => {
        if (view.step === 'arrow-count' && !stop.done) { stop.done = true; return { kind: 'stop', words: 'stop' }; }
        if (view.step === 'make-the-move' && stop.about === '') { stop.about = view.step; return { kind: 'answer', answer: 'not now' }; }
        return null;
      },
      until: (view) => view.step === 'leave-or-go-on' || view.chapter === 'finish',
    });
    const at = (step: string, value?: string) => store.facts.find((fact) => fact.kind === 'answered' && fact.step === step && (value === undefined || JSON.stringify(fact.answer).includes(value)))?.seq ?? 0;
    for (const [seq, why] of [[at('what-happened'), content.phrases['review-led-out']], [at('make-the-move', 'not now'), content.phrases['review-nothing-moved']]] as const) {
      expect(session.answers().find((one) => one.seq === seq)?.change).toBe(why);
      const { error, view } = send({ kind: 'back', to: seq });
      expect([error?.code, view.ask?.correcting]).toEqual(['not-now', undefined]);
      expect(error?.message).toContain(why);
    }
    expect(send({ kind: 'back', to: 1 }).error).toEqual({ code: 'nothing-earlier', message: 'Line 1 of this tune is no answer. Pick one from the review of answers.' });
    // After a correction the answer is told as corrected; at the end nothing may be changed any more.
    const done = play(BOW);
    expect(new Set(answersOf(content, replay(content, done.store.facts).state).map(({ change }) => change))).toEqual(new Set([content.phrases['may-not-at-the-end']]));
  });
});
