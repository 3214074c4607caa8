// A tear of more than two inches is looked into; if it stays and no cause is found, it is no matter of small steps.

import { expect, it } from 'vitest';
import { nextMinute, play } from '../tunes/play.ts';

it('more than two inches twice, with no cause found, ends in a note for the shop and not in an adjustment', () => {
  const { views, findings, last } = play({ start: { x: 0.2, y: 2.6 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.1, seed: 3 }, { most: 300 });
  expect(views.filter((view) => view.advice?.kind === 'adjust')).toEqual([]);
  expect(views.filter((view) => view.ask?.about === 'inspected')).toHaveLength(1);
  expect(views.filter((view) => view.advice?.kind === 'shop')).not.toEqual([]);
  expect(findings.filter((f) => f.kind === 'axis').map((f) => `${f.axis} ${f.result}`)).toEqual(['height cannot', 'side cannot']);
  expect(last.type).toBe('done');
});

it('a little over one inch is looked into once, and then tuned step by step', () => {
  const { views } = play({ start: { x: 0, y: 1.2 }, gain: { 'rest-height': { x: 0, y: -20 } }, sd: 0.08, seed: 3 }, { most: 300 });
  expect(views.filter((view) => view.ask?.about === 'inspected')).toHaveLength(1);
  expect(views.some((view) => view.advice?.kind === 'adjust')).toBe(true);
});

it('looked into, and every shot of it corrected to a miss: no tear is left to look into, but that none left a hole is', () => {
  const { session, store } = play({ start: { x: 0.2, y: 2.6 }, gain: {}, sd: 0.1, seed: 3 }, { until: ({ ask }) => ask?.about === 'inspected' });
  const now = nextMinute(store);
  for (const fact of store.facts.filter((one) => one.kind === 'answered' && one.about === 'tear')) {
    session.send({ kind: 'back', to: fact.seq }, now);
    expect(session.send({ kind: 'answer', answer: 'missed' }, now).error).toBeUndefined();
  }
  for (const [step, answer] of [['arrow-check', 'all true'], ['backstop', 'solid'], ['range', 'all true'], ['inspect-missed', 'nothing']]) {
    expect(session.view().step).toBe(step);
    session.send({ kind: 'answer', answer }, now);
  }
  expect(session.view().ask).toMatchObject({ kind: 'tear' });
});
