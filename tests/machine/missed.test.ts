// Two shots in a row that leave no hole are danger: nothing more is shot before it was looked for, what was just moved goes back, and where
// looking does not help a shop sees the bow.

import { describe, expect, it } from 'vitest';
import type { Ask, Tear, View } from '../../src/machine/types.ts';
import { correct, play } from '../tunes/play.ts';

type Shots = 'hit' | 'miss';
const HIT: Tear = { x: 0, y: 0.0625 };

/** Shots at paper in this order; after the last one, hits. */
const bow = (shots: readonly Shots[], answers: Readonly<Record<string, unknown>> = {}, hit: Tear = HIT) => {
  let nth = 0;
  const tear = (): Tear | 'missed' => (shots[nth++] === 'miss' ? 'missed' : hit);
  return { start: { x: 0, y: 0 }, gain: {}, sd: 0.1, seed: 1, answers: { tear, ...answers } };
};
/** What was asked, shots and looks alone. */
const story = (views: readonly View[]): readonly string[] => views.flatMap(({ ask, type }) => {
  const about = type === 'stop' ? `stop: ${ask?.about ?? ''}` : ask?.step === 'inspect-missed' ? 'look' : (ask?.about ?? '');
  return ['tear', 'look', 'stop: released', 'moved'].includes(about) ? [about] : [];
});
const times = (n: number, what: Shots): readonly Shots[] => Array.from({ length: n }, () => what);

describe('two in a row that leave no hole', () => {
  it('are looked for before a third is shot, and what stops the arrow is looked at as well; three hits, and it is over', () => {
    const { views, last } = play(bow(['miss', 'miss', 'hit', 'hit', 'hit']), { most: 300 });
    expect(story(views).slice(0, 4)).toEqual(['tear', 'tear', 'look', 'tear']);
    const asked = views.map(({ ask }) => ask?.about);
    const [second, look] = [asked.indexOf('tear', asked.indexOf('tear') + 1), asked.indexOf('inspected')];
    expect(asked.slice(second, look)).toEqual(expect.arrayContaining(['gate:arrow-check', 'gate:backstop', 'gate:range']));
    expect(last.type).toBe('done');
  });

  it('again and again, and nothing is found: after the second look nobody shoots on, a dealer sees bow and arrows', () => {
    const { views } = play(bow(times(30, 'miss')), { until: ({ type }) => type === 'stop' });
    expect(story(views)).toEqual(['tear', 'tear', 'look', 'tear', 'tear', 'look', 'tear', 'tear', 'stop: released']);
    expect(views.at(-1)?.advice?.kind).toBe('shop');
  });

  it('and the dealer releases it: the bow is looked at and shot anew, and may miss twice before it is looked for again', () => {
    const { views, last } = play(bow([...times(6, 'miss'), 'miss', 'hit', 'hit', 'hit']), { most: 400 });
    expect(story(views).filter((one) => one === 'look')).toHaveLength(2);
    expect(last.type).toBe('done');
  });

  it('with hits between them are looked at one by one', () => {
    const { views, last } = play(bow(['miss', 'hit', 'miss', 'hit', 'miss', 'hit']), { most: 300 });
    expect(story(views)).not.toContain('look');
    expect(last.type).toBe('done');
  });

  it('told at once count like two told one by one', () => {
    const tear = [['missed', 'missed'].join('; ')];
    const { views } = play({ ...bow([]), answers: { tear: () => tear.shift() ?? HIT } }, { until: ({ ask }) => ask?.about === 'inspected' });
    expect(story(views)).toEqual(['tear', 'look']);
  });

  it('after a change take that change back first, and three hits prove it', () => {
    const { views } = play(bow(['hit', 'hit', 'hit', 'miss', 'miss'], {}, { x: 0, y: 0.6 }), { until: ({ step }) => step === 'shoot-proving' });
    expect(story(views)).toEqual(['tear', 'tear', 'tear', 'moved', 'tear', 'tear', 'moved', 'tear']);
    const moves = views.flatMap(({ ask, advice }) => (ask?.about === 'moved' && advice !== null ? [`${advice.kind} ${advice.what}`] : []));
    expect(moves).toEqual(['adjust REST UP 1/32 in', 'put-back REST DOWN 1/32 in']);
  });

  it('at the second distance are looked for too, and then it is shot again from there', () => {
    let near = 0;
    const tear = (ask: Ask): Tear | 'missed' => (ask.kind === 'tear' && ask.distance.value === 9 && near++ < 2 ? 'missed' : HIT);
    const { views, findings, last } = play({ ...bow([]), answers: { tear } }, { most: 300 });
    expect(story(views).filter((one) => one === 'look')).toHaveLength(1);
    expect(findings.filter((f) => f.kind === 'axis').map((f) => f.result)).toEqual(['tuned', 'tuned']);
    expect(views.some(({ say }) => say.some((line) => line.startsWith('What was called tuned is in tolerance at the second')))).toBe(true);
    expect(last.type).toBe('done');
  });

  it('among the arrows lead back to paper where a part was loose', () => {
    let nth = 0;
    const tear = (ask: Ask): Tear | 'missed' => (ask.kind === 'tear' && ask.arrow !== null && [2, 3].includes(nth++) ? 'missed' : HIT);
    const { views, findings } = play({ ...bow([]), answers: { 'arrows-wanted': 'all', tear, inspected: 'loose-part' } }, { most: 500 });
    expect(findings.some((f) => f.kind === 'cause' && f.cause === 'loose part')).toBe(true);
    const look = views.findIndex(({ ask }) => ask?.step === 'inspect-missed');
    const next = views.slice(look).find(({ ask }) => ask?.kind === 'tear');
    expect(next?.chapter).toBe('paper');
  });

  it('off the target, and nothing is found: broadheads are left, and the walk goes on', () => {
    const groups = { start: { x: 0, y: 0 }, gain: {}, sd: 0.5 };
    const { views, findings, last } = play({ ...bow([]), groups, answers: { ...bow([]).answers, 'broadheads-wanted': 'fixed', 'impact': 'missed' } }, { most: 500 });
    expect(views.filter(({ ask }) => ask?.about === 'impact')).toHaveLength(6);
    expect(views.filter(({ ask }) => ask?.step === 'inspect-missed')).toHaveLength(2);
    expect(findings.filter((f) => f.kind === 'axis' && f.chapter === 'broadheads').map((f) => f.kind === 'axis' && f.result)).toEqual(['inconsistent', 'inconsistent']);
    expect(last.type).toBe('done');
  });

  it('that were a slip of the pen are not looked for any more', () => {
    const tune = play(bow(['miss', 'miss']), { until: ({ ask }) => ask?.about === 'inspected' });
    const [first] = tune.store.facts.filter((fact) => fact.kind === 'answered' && fact.about === 'tear');
    const view = correct(tune, first?.seq ?? 0, HIT);
    expect(view.say).toContain('With the corrected figures there is nothing to look into here. The shots are judged as they now read.');
    expect(view.ask?.kind).toBe('tear');
  });
});
