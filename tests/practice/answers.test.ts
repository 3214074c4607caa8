// What the practice archer answers: only what is there, what was really moved, and what fails a gate.

import { describe, expect, it } from 'vitest';
import type { Step } from '../../src/content/types.ts';
import { parseAnswer } from '../../src/machine/answer.ts';
import { aboutOf } from '../../src/machine/ask.ts';
import type { Ask, View } from '../../src/machine/types.ts';
import { inUnit, yards } from '../../src/maths/units.ts';
import { answerTo, askedOf } from '../../src/practice/answers.ts';
import { HONEST } from '../../src/practice/archer.ts';
import type { PracticeBow } from '../../src/practice/bow.ts';
import { FOR_THE_ARCHER, FOR_THE_DEALER } from '../../src/practice/danger.ts';
import { caughtUp, FRESH, type Memory } from '../../src/practice/memory.ts';
import { bowByNumber, soundWorld, type World } from '../../src/practice/world.ts';
import { CONTENT, KNOBS, playPractice } from './play.ts';

const world = soundWorld(4, KNOBS, { ...HONEST, noise: 0.7 }, { cams: 'yoke', rest: 'blade' });
const withBow = (bow: Partial<PracticeBow>, of = world): World => ({ ...of, bow: { ...of.bow, ...bow } });
const base = { step: 'x', short: '', text: [], why: [], caution: [] };
const choice = (about: string, ...values: readonly string[]): Ask => ({ ...base, about, kind: 'choice', options: values.map((value) => ({ value, label: value })) });
const shown = (ask: Ask, more: Partial<View> = {}): Pick<View, 'ask' | 'bow' | 'advice'> => ({ ask, bow: {}, advice: null, ...more });
const said = (of: World, ask: Ask, memory: Memory = FRESH) => answerTo(of, memory, shown(ask));

describe('gates', () => {
  it.each(FOR_THE_DEALER)('$at: the bow goes to the dealer before it is drawn or shot', (danger) => {
    const tune = playPractice(withBow({ danger }));
    expect([tune.last.type, tune.last.chapter, tune.last.ask?.about]).toEqual(['stop', 'stopped', 'released']);
    expect(tune.shots).toEqual([]);
    expect(tune.turns.map(({ about }) => about).filter((about) => about === 'gate:first-draw' || about === 'peak-weight')).toEqual([]);
    expect(tune.findings.filter((finding) => finding.kind === 'gate' && finding.result === 'failed')).toHaveLength(1);
  });

  it.each(FOR_THE_ARCHER)('$at: is said once, mended, and then in order', (danger) => {
    const tune = playPractice(withBow({ danger }), { until: ({ ask }) => ask?.kind === 'tear' });
    expect(tune.last.ask?.kind).toBe('tear');
    const stops = tune.turns.filter(({ view }) => view.type === 'stop').map(({ about }) => about);
    expect(stops).toContain('about' in danger.at ? danger.at.about : `gate:${danger.at.check}`);
    expect(tune.memory.mended).toEqual(['about' in danger.at ? danger.at.about : danger.at.check]);
  });

  it('nobody at the bow answers for a dealer', () => {
    expect(said(world, { ...base, about: 'released', kind: 'text' }).said).toBeNull();
  });
});

describe('looks', () => {
  const scatter = choice('inspected', 'one-arrow', 'loose-part', 'contact', 'grip', 'tired', 'nothing');
  const touching = withBow({ contact: { often: 1, push: { x: 0, y: -0.1 } } });
  const loose = withBow({ loose: { knob: 'rest-side', from: 5, each: 1 / 256 } });
  const twisting: World = { ...world, archer: { ...world.archer, torque: { always: 0.06, spread: 0 } } };
  const shot = (shots: number): Memory => ({ ...FRESH, condition: { ...FRESH.condition, shots } });

  it('find what is there, once, and nothing where nothing is', () => {
    expect(said(world, scatter, shot(30)).said).toBe('nothing');
    for (const [of, found] of [[touching, 'contact'], [loose, 'loose-part'], [twisting, 'grip']] as const) {
      const first = said(of, scatter, shot(30));
      expect([first.said, said(of, scatter, first.memory).said]).toEqual([found, 'nothing']);
    }
    expect(said(loose, scatter, shot(3)).said).toBe('nothing');
    // What is not offered is not picked.
    expect(said(touching, choice('inspected', 'grip', 'nothing'), shot(30)).said).toBe('nothing');
  });

  it('find an odd arrow among those that the bow is tuned with, and leave it out', () => {
    const odd: World = { ...world, set: { ...world.set, arrows: world.set.arrows.map((arrow) => (arrow.number === '2' ? { ...arrow, fault: 'bent' } : arrow)) } };
    const found = said(odd, scatter);
    expect([found.said, found.memory.condition.leftOut]).toEqual(['one-arrow', ['2']]);
    expect(said(odd, { ...base, about: 'arrow-out', kind: 'number', unit: 'count', min: 0, max: 60 }, found.memory).said).toBe(2);
    expect(said(odd, { ...choice('arrow-look', 'crack', 'wobble', 'vane', 'nothing'), short: 'Arrow 2: what do you see?' }).said).toBe('wobble');
    expect(said(odd, { ...choice('arrow-look', 'crack', 'wobble', 'vane', 'nothing'), short: 'Arrow 3: what do you see?' }).said).toBe('nothing');
  });

  it('powder and a relaxed hand tell, and cure', () => {
    expect([said(touching, choice('contact', 'clean', 'smear')).said, said(world, choice('contact', 'clean', 'smear')).said]).toEqual(['smear', 'clean']);
    expect([said(twisting, choice('grip', 'same', 'moved')).said, said(world, choice('grip', 'same', 'moved')).said]).toEqual(['moved', 'same']);
    expect(said(twisting, choice('grip', 'same', 'moved')).memory.condition.handRelaxed).toBe(true);
  });

  it('a tired archer says so once and rests', () => {
    const tiring: World = { ...world, archer: { ...world.archer, tires: { from: 40, each: 0.01 } } };
    const ask = choice('gate:fit-to-shoot', 'fresh', 'tired');
    const first = said(tiring, ask, shot(45));
    expect([first.said, said(tiring, ask, first.memory).said, said(tiring, ask, shot(30)).said]).toEqual(['tired', 'fresh', 'fresh']);
  });

  it('miss now and then what is there, as often as the archer does', () => {
    const blind = (finds: number): World => ({ ...touching, archer: { ...touching.archer, finds } });
    expect([said(blind(0), scatter).said, said(blind(1), scatter).said]).toEqual(['nothing', 'contact']);
  });
});

describe('moves', () => {
  const told = { value: 1 / 32, unit: 'in' } as const;
  const ask: Ask = { ...base, about: 'moved', kind: 'amount', unit: 'in', max: 1 / 2 };
  const advised = { kind: 'adjust', knob: 'rest-side', direction: 'right', amount: told, to: told, what: '', why: '', caution: [] } as const;
  const move = (of: World, memory: Memory = FRESH) => answerTo(of, memory, shown(ask, { advice: advised }));

  it('are made as told, and end a little beside', () => {
    const { said: answer, memory } = move(world);
    expect([answer, memory.slip]).toEqual(['as told', null]);
    const after = caughtUp(world, memory, { 'rest-side': told });
    expect(after.condition.settings['rest-side']).toBeCloseTo(1 / 32, 1);
    expect(caughtUp(world, after, { 'rest-side': told })).toBe(after);
    // The ledger falls back to nothing where all is put back, whoever did it.
    expect(Math.abs(caughtUp(world, after, {}).condition.settings['rest-side'] ?? NaN)).toBeLessThan(1 / 64);
  });

  it('end where the screw ends, and that is told', () => {
    const rest = world.bow.adjustments['rest-side'];
    const near = (high: number): World => withBow({ adjustments: { ...world.bow.adjustments, ...(rest === undefined ? {} : { 'rest-side': { ...rest, travel: { low: -1, high } } }) } });
    expect(move(near(1 / 64)).said).toEqual({ value: 1 / 64, unit: 'in' });
    expect(move(near(0)).said).toBe('at its end');
  });

  it('go back as far as they came, wherever the screw has ended', () => {
    const rest = world.bow.adjustments['rest-side'];
    const short = withBow({ adjustments: { ...world.bow.adjustments, ...(rest === undefined ? {} : { 'rest-side': { ...rest, travel: { low: 0, high: 1 / 256 } } }) } });
    const moved = caughtUp(short, FRESH, { 'rest-side': told });
    expect(moved.condition.settings['rest-side']).toBe(1 / 256);
    const back = { ...advised, kind: 'put-back', direction: 'left', to: { value: 0, unit: 'in' } } as const;
    expect(answerTo(short, moved, { ask, bow: { 'rest-side': told }, advice: back }).said).toBe('as told');
  });

  it('now and then go a step too far or too short: told, or not seen', () => {
    const slipping = (seen: number): World => ({ ...world, archer: { ...world.archer, wrongAmount: { often: 1, told: seen } } });
    const seen = move(slipping(1));
    expect(seen.said).toMatchObject({ unit: 'in' });
    const { value } = seen.said as { value: number };
    expect(Math.abs(value - 1 / 32)).toBe(1 / 64);
    const unseen = move(slipping(0));
    expect([unseen.said, Math.abs(unseen.memory.slip?.by ?? 0)]).toEqual(['as told', 1 / 64]);
    const after = caughtUp(slipping(0), unseen.memory, { 'rest-side': told });
    expect(Math.abs((after.condition.settings['rest-side'] ?? NaN) - 1 / 32)).toBeGreaterThan(1 / 100);
    expect(after.slip).toBeNull();
  });

  it('a new nock takes what lay in the old one with it', () => {
    const swap = { kind: 'adjust', knob: 'nock-swap', arrow: '5', what: '', why: '', caution: [] } as const;
    expect(answerTo(world, FRESH, shown({ ...ask, unit: 'count' }, { advice: swap })).memory.condition.newNocks).toEqual(['5']);
  });
});

describe('shots', () => {
  const plan = { ...base, about: 'impact', kind: 'impact', distance: { value: 20, unit: 'yd' }, shaft: 'fletched', head: 'broadhead', arrow: null, nockTurn: 0, shots: { taken: 0, wanted: 3 } } as const;
  it('are shot with what is asked for', () => {
    const hunter: World = { ...world, archer: { ...world.archer, heads: 'mechanical' } };
    expect([askedOf(world, plan).flying, askedOf(hunter, plan).flying, askedOf(world, { ...plan, head: 'field', shaft: 'unfletched' }).flying]).toEqual(['fixed', 'mechanical', 'unfletched']);
    expect(askedOf(world, plan).at).toEqual({ target: yards(20) });
    expect(askedOf(world, { ...plan, kind: 'tear', distance: { value: 7, unit: 'ft' } }).at).toEqual({ paper: inUnit(7, 'ft') });
  });

  it('count, each with luck of its own', () => {
    const first = answerTo(world, FRESH, shown(plan));
    const second = answerTo(world, first.memory, shown(plan));
    expect([first.memory.condition.shots, second.memory.condition.shots]).toEqual([1, 2]);
    expect(second.happened?.departure).not.toEqual(first.happened?.departure);
  });
});

describe('every question of the walk', () => {
  const steps = Object.values(CONTENT.steps);
  const options = (values: readonly string[], pass?: string) => values.map((value) => ({ value, label: value, ...(value === pass ? { pass: true as const } : {}) }));
  const askOf = (step: Step): Ask => {
    const common = { ...base, step: step.id, about: aboutOf(step), ...(step.unknown ? { unknown: true as const } : {}) };
    switch (step.kind) {
      case 'choice':
        return { ...common, kind: 'choice', options: options(step.options.map(({ value }) => value), step.options.find(({ gate }) => gate === 'pass')?.value) };
      case 'chunk': return { ...common, kind: 'choice', many: true, options: options(['all true', ...step.checks.map(({ id }) => id)], 'all true') };
      case 'number': return { ...common, kind: 'number', unit: step.unit, min: step.min, max: step.max };
      case 'confirm': return { ...common, kind: 'confirm' };
      case 'text': return { ...common, kind: 'text' };
    }
  };
  // What the loop asks by itself, and the checks of a list one by one.
  const ofTheLoop = [
    choice('accept', 'accept', 'go on'), choice('finishing', 'leave', 'one more step'), choice('turn-the-set', 'done', 'one stays', 'leave'),
    choice('arrow-look', 'crack', 'wobble', 'vane', 'nothing'),
    ...Object.values(CONTENT.inspections).map((one) => choice('inspected', ...one.options.map(({ value }) => value))),
    ...steps.flatMap((step) => (step.kind === 'chunk' ? step.checks : []))
      .map(({ id }): Ask => ({ ...base, about: `gate:${id}`, kind: 'choice', options: options(['true', 'false'], 'true') })),
  ];

  it('has an answer in a form that is taken, but for a dealer\'s', () => {
    const asks = [...steps.map(askOf), ...ofTheLoop];
    expect(asks.length).toBeGreaterThan(200);
    for (const of of [world, bowByNumber(3, KNOBS), bowByNumber(9, KNOBS)]) {
      const refused = asks.filter((ask) => {
        const answer = said(of, ask).said;
        return answer === null || !parseAnswer(ask, answer).ok;
      });
      expect(refused.map(({ about }) => about)).toEqual(['released']);
    }
  });

  it('of a bow that is in order passes every gate', () => {
    const gates = [...steps.map(askOf), ...ofTheLoop]
      .flatMap((ask) => (ask.kind === 'choice' && ask.options.some(({ pass }) => pass === true) ? [ask] : []));
    expect(gates.length).toBeGreaterThan(150);
    expect(gates.filter((ask) => said(world, ask).said !== ask.options.find(({ pass }) => pass === true)?.value).map(({ about }) => about)).toEqual([]);
  });
});

it('what no archer knows of is refused by name', () => {
  expect(() => said(world, choice('no-such-thing', 'a', 'b'))).toThrow(/answerTo: .*no-such-thing/);
  expect(() => answerTo(world, FRESH, { ask: null, bow: {}, advice: null })).toThrow(RangeError);
});
