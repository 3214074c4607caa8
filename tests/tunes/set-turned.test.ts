// Whole tunes in which the arrows of a set truly differ: their nocks are turned together, held against what was foretold, and turned
// back where that did not help.

import { describe, expect, it } from 'vitest';
import type { Ask, Intent, Tear, View } from '../../src/machine/types.ts';
import { seededRandom } from '../../src/maths/random.ts';
import type { Bow, OddArrow } from './archer.ts';
import { correct, play } from './play.ts';

const EVERY = Array.from({ length: 12 }, (_, i) => `${i + 1}`);

/** Twelve arrows that all err by about the same, each to another side; `turn` says whether that goes round with the nock. */
function differing(seed: number, turn: boolean): Readonly<Record<string, OddArrow>> {
  const random = seededRandom(seed);
  return Object.fromEntries(EVERY.map((arrow): [string, OddArrow] => {
    const angle = 2 * Math.PI * random.uniform();
    const error: Tear = { x: 0.16 * Math.cos(angle), y: 0.16 * Math.sin(angle) };
    return [arrow, turn ? { error, turns: { vanes: 3 } } : { error }];
  }));
}

const bow = (seed: number, turn: boolean, more: Partial<Bow> = {}): Bow => ({
  start: { x: 0.02, y: 0.06 }, gain: {}, sd: 0.05, seed, arrows: differing(seed, turn), ...more,
  answers: { 'arrows-wanted': 'all', 'cams': 'screw-adjust', ...more.answers },
});

type Played = ReturnType<typeof play>;
const said = ({ views }: Pick<Played, 'views'>): string => views.flatMap(({ say }) => say).join('\n');
const listsIn = ({ views }: Pick<Played, 'views'>): readonly Ask[] => views.flatMap(({ ask }) => (ask?.step === 'turn-the-set' ? [ask] : []));
const shotsIn = ({ views }: Pick<Played, 'views'>): readonly Extract<Ask, { kind: 'tear' }>[] => views.flatMap(({ ask }) => (ask?.kind === 'tear' && ask.step === 'shoot-each-arrow' ? [ask] : []));
const atList = (view: View): boolean => view.ask?.step === 'turn-the-set';
const inRecord = ({ last }: Played, title: string): readonly string[] =>
  last.record?.sections.find((section) => section.title === title)?.rows.map(({ name, value }) => `${name}: ${value}`) ?? [];

describe('twelve arrows that truly differ, by errors that go round with their nocks', () => {
  const played = play(bow(2, true));

  it('are offered to be turned together, after two questions and with a list; nothing is picked beforehand', () => {
    const [list] = listsIn(played);
    expect(list).toMatchObject({ kind: 'choice', noDefault: true });
    expect(list?.kind === 'choice' ? list.options.map(({ value }) => value) : []).toEqual(['done', 'one stays', 'leave']);
    expect(list?.short).toMatch(/1 vane clockwise: arrows? \d/);
    expect(list?.text[0]).toMatch(/about \d+ % closer/);
    expect(list?.caution.join()).toContain('Too loose');
    expect(played.asked.indexOf('vanes')).toBeLessThan(played.asked.indexOf('turn-the-set'));
    expect(said(played)).toContain('differ among themselves by more than luck');
  });

  it('are all shot anew, two or three shots each, and lie closer together: the nocks stay', () => {
    const at = played.views.findIndex(atList);
    const after = shotsIn({ views: played.views.slice(at) });
    const each = EVERY.map((arrow) => after.filter((ask) => ask.arrow === arrow).length);
    expect(Math.min(...each)).toBeGreaterThanOrEqual(2);
    expect(after.some(({ nockTurn }) => nockTurn === 1)).toBe(true);
    expect(said(played)).toMatch(/closer together, and where they were foretold: they differ by 0\.\d\d in, before it was 0\.\d\d in/);
    expect(listsIn(played)).toHaveLength(1);
  });

  it('shoot the bow at paper once more, since its own arrows were turned; then nothing asks for the arrows again', () => {
    const kept = played.views.findIndex((view) => view.say.join().includes('closer together, and where'));
    const then = played.views.slice(kept);
    expect(said({ views: then })).toContain('shot at paper once more');
    const next = then.find(({ ask }) => ask?.kind === 'tear')?.ask;
    expect(next?.step).toBe('shoot-shooting');
    expect(shotsIn({ views: then })).toEqual([]);
    expect(then.flatMap(({ findings }) => findings).filter((one) => one.kind === 'axis' && one.result === 'tuned').length).toBeGreaterThanOrEqual(2);
    expect(played.last.type).toBe('done');
  });

  it('stand in the record with their nocks', () => {
    const rows = inRecord(played, 'Arrows, one by one');
    expect(rows).toHaveLength(12);
    expect(rows.some((row) => /its nock turned by [12] vanes? with the whole set/.test(row))).toBe(true);
    expect(played.asked).toContain('proving-shot');
  });
});

describe('errors that no turn changes', () => {
  const played = play(bow(2, false));
  it('are offered, seen not to have moved, and the nocks go back to where they stood', () => {
    const [list, back] = listsIn(played);
    expect(listsIn(played)).toHaveLength(2);
    const turnsIn = (ask: Ask | undefined): readonly (readonly [string, string])[] =>
      [...(ask?.short ?? '').matchAll(/(\d) vanes? clockwise: arrows? ([^;]*)/g)].map(([, vanes = '', arrows = '']) => [vanes, arrows] as const);
    expect(turnsIn(list)).toHaveLength(2);
    expect(turnsIn(back).map(([vanes, arrows]) => [`${3 - Number(vanes)}`, arrows]).toSorted()).toEqual(turnsIn(list).toSorted());
    expect(back?.kind === 'choice' ? back.options.map(({ value }) => value) : []).toEqual(['done', 'leave']);
    expect(said(played)).toContain('did not do what was foretold');
  });
  it('are judged by the rounds from before; those are not shot again', () => {
    const at = played.views.findLastIndex(atList);
    expect(shotsIn({ views: played.views.slice(at) })).toEqual([]);
    expect(said({ views: played.views.slice(at) })).toContain('counts again');
    expect(played.last.type).toBe('done');
    expect(inRecord(played, 'Arrows, one by one').some((row) => row.includes('with the whole set'))).toBe(false);
  });
});

describe('what is not wanted or cannot be done', () => {
  it('left as they are, they are told apart as before', () => {
    const played = play(bow(2, true, { answers: { 'turn-the-set': 'leave' } }));
    expect(listsIn(played)).toHaveLength(1);
    expect(said(played)).toContain('The nocks of the set stay as they are');
    expect(played.last.type).toBe('done');
  });

  it('nocks that must not be turned: one question, and no list', () => {
    const played = play(bow(2, true, { answers: { 'nock-turns': 'fixed' } }));
    expect(listsIn(played)).toEqual([]);
    expect(played.asked).not.toContain('vanes');
    expect(said(played)).toContain('The nocks of the set stay as they are');
  });

  it('one nock that does not turn is named, and stays; the list is the same without it', () => {
    const list = play(bow(2, true), { until: atList }).last.ask;
    const arrow = Number(/1 vane clockwise: arrows? (\d+)/.exec(list?.short ?? '')?.[1]);
    let asked = 0;
    const played = play(bow(2, true, { answers: { 'turn-the-set': () => (asked++ === 0 ? 'one stays' : 'done'), 'nock-stays': arrow } }));
    const [, again] = listsIn(played);
    const numbers = (ask: Ask | null | undefined): readonly string[] => [...(ask?.short ?? '').matchAll(/arrows? ([^;]*)/g)].flatMap(([, arrows = '']) => [...arrows.matchAll(/\d+/g)].map(([n]) => n));
    expect(numbers(again)).toEqual(numbers(list).filter((n) => n !== `${arrow}`));
    const at = played.views.findLastIndex(atList);
    expect(shotsIn({ views: played.views.slice(at) }).filter((ask) => ask.arrow === `${arrow}`).every(({ nockTurn }) => nockTurn === 0)).toBe(true);
  });

  it('a nock that was named by mistake, and corrected, is on the list again; the right one is not', () => {
    const list = play(bow(2, true), { until: atList });
    const arrows = [...(list.last.ask?.short ?? '').matchAll(/arrows? ([^;]*)/g)].flatMap(([, some = '']) => [...some.matchAll(/\d+/g)].map(([n]) => Number(n)));
    const [wrong = 0, right = 0] = arrows;
    let asked = 0;
    const named = play(bow(2, true, { answers: { 'turn-the-set': () => (asked++ === 0 ? 'one stays' : 'done'), 'nock-stays': wrong } }), { until: (view) => asked > 0 && atList(view) });
    const line = named.store.facts.findLast((fact) => fact.kind === 'answered' && fact.step === 'nock-stays');
    const short = correct(named, line?.seq ?? 0, right).ask?.short ?? '';
    const listed = [...short.matchAll(/arrows? ([^;]*)/g)].flatMap(([, some = '']) => [...some.matchAll(/\d+/g)].map(([n]) => Number(n)));
    expect(listed.toSorted()).toEqual(arrows.filter((arrow) => arrow !== right).toSorted());
  });

  it('arrows that are alike are never offered it', () => {
    for (const seed of [1, 2, 3]) expect(listsIn(play(bow(seed, true, { arrows: {} })))).toEqual([]);
  });
});

describe('on the way', () => {
  const DAY = 24 * 60 * 60 * 1000;
  it('another day, killed after the nocks were turned: each nock is known to stand as it was turned', () => {
    const first = play(bow(2, true), { until: (view) => view.say.join().includes('Turned: 1 vane') });
    const turned = first.last.ask;
    expect(turned?.kind).toBe('tear');
    const second = play(bow(2, true), { store: first.store, startAt: Date.parse(first.store.facts.at(-1)?.time ?? '') + DAY, until: (view) => view.ask?.kind === 'tear' && view.ask.step === 'shoot-each-arrow' && view.ask.shots.taken === 5 });
    const whole = play(bow(2, true));
    const turns = (views: readonly View[]): Readonly<Record<string, number>> => Object.fromEntries(shotsIn({ views }).map((ask) => [ask.arrow ?? '', ask.nockTurn]));
    const expected = turns(whole.views.slice(whole.views.findIndex(atList)));
    for (const [arrow, nockTurn] of Object.entries(turns(second.views))) expect(nockTurn).toBe(expected[arrow]);
  });

  it('"done" by mistake is taken back while nothing came after it; a stop and a note in between lose nothing', () => {
    const { session, store } = play(bow(2, true), { until: atList });
    let at = Date.parse(store.facts.at(-1)?.time ?? '');
    const send = (intent: Intent): View => {
      const reply = session.send(intent, new Date((at += 60_000)));
      if (reply.error !== undefined) throw new Error(reply.error.message);
      return reply.view;
    };
    const list = session.view().ask;
    send({ kind: 'note', note: 'the marks are white' });
    expect(session.view().ask).toEqual(list);
    expect(send({ kind: 'answer', answer: 'done' }).ask?.kind).toBe('tear');
    expect(send({ kind: 'back' }).ask).toMatchObject({ step: 'turn-the-set', correcting: expect.any(Number) as number });
    expect(send({ kind: 'answer', answer: 'leave' }).step).not.toBe('turn-the-set');
    expect(session.view().ask?.kind === 'tear' && session.view().ask?.step === 'shoot-each-arrow').toBe(false);
  });

  it('a shot that is corrected at the list changes it, or takes the offer back', () => {
    const { session, store } = play(bow(2, true), { until: atList });
    let at = Date.parse(store.facts.at(-1)?.time ?? '');
    const shots = store.facts.filter((fact) => fact.kind === 'answered' && fact.decided.loop?.tags?.[0]?.arrow !== undefined);
    // As if all arrows had torn alike after all.
    for (const { seq } of shots) {
      if (session.view().ask?.step !== 'turn-the-set') break;
      session.send({ kind: 'back', to: seq }, new Date((at += 60_000)));
      session.send({ kind: 'answer', answer: { x: 0, y: 0 } }, new Date((at += 60_000)));
    }
    expect(session.view().ask?.step).not.toBe('turn-the-set');
    expect(session.view().type).toBe('ask');
  });
});
