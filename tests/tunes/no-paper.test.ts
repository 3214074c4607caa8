// Whole tunes without paper, over the pipe: unfletched shafts, a plumb line, a frame that is made first.

import { describe, expect, it } from 'vitest';
import type { Ask, Finding } from '../../src/machine/types.ts';
import { ledgerOfAdvice, recordRows } from './held.ts';
import { slanted, straight, unfletchedLow } from './impact-bows.ts';
import { impactCourse, impactsOf } from './impact-course.ts';
import { askedIn, saidIn, walked } from './sittings.ts';
import { type Walked } from './walk-through.ts';

const SEEDS = [1, 2, 3];
const shaftOf = (ask: Ask): string => (ask.kind === 'impact' ? ask.shaft : '');
const results = (walk: Walked): readonly string[] => recordRows(walk, 'Result').slice(0, 2).map((row) => row.replace(/\d+ %/, 'n %'));
const options = ({ turns }: Walked, about: string): readonly string[] => {
  const ask = turns.find((turn) => turn.ask.about === about)?.ask;
  return ask?.kind === 'choice' ? ask.options.map(({ value }) => value) : [];
};

/** These gates were passed before the first arrow of this way, and paper was never shot. */
function holdsWithoutPaper(walk: Walked, gates: readonly string[]): void {
  const first = walk.turns.findIndex(({ ask }) => ask.kind === 'impact');
  expect(first).toBeGreaterThan(0);
  const found = walk.turns.slice(0, first).flatMap(({ reply }) => reply.findings as readonly Finding[]);
  for (const gate of gates) expect(found).toContainEqual({ kind: 'gate', gate, result: 'passed' });
  expect(askedIn(walk)).not.toContain('tear');
  expect(walk.last.type).toBe('done');
  expect(walk.last.bow).toEqual(ledgerOfAdvice(walk));
}

describe('what is asked down a plumb line', () => {
  it('is the side alone, from all three distances, also after tightening; what is expected is a drift', async () => {
    const { turns } = await walked(slanted(3));
    const openings = turns.flatMap(({ ask }) => (ask.kind === 'impact' && ask.text.length > 1 ? [ask.text.join(' ')] : []));
    expect(openings.length).toBeGreaterThan(2);
    for (const text of openings) expect(text).toMatch(/How far below the dot does not count/);
    expect(turns.flatMap(({ ask }) => (ask.step === 'shoot-proof' && ask.text.length > 1 ? [ask.text[0]] : []))[0]).toMatch(/from 20, 30 and 40 yd|at 20, 30 and 40 yd/);
    const wrongIf = turns.flatMap(({ reply }) => reply.advice?.wrongIf ?? []);
    expect(wrongIf.length).toBeGreaterThan(0);
    for (const text of wrongIf) expect(text).toMatch(/^I expect the drift /);
  });
});

describe('unfletched shafts', () => {
  const GATES = ['unfletched-ready', 'first-unfletched'];

  it('low and right of the fletched ones: the rest goes up, then left, until they land together', async () => {
    const walk = await walked(unfletchedLow(4));
    holdsWithoutPaper(walk, GATES);
    expect(impactCourse(walk)).toEqual([
      '20 yd x6',
      'adjust rest-height up 1/32 in',
      '20 yd x6',
      'adjust rest-height up 1/32 in',
      '20 yd x6',
      'height tuned',
      'adjust rest-side left 1/32 in',
      '20 yd x6',
      'adjust rest-side left 1/32 in',
      '20 yd x6',
      'side tuned',
      '20 yd x2',
      'height tuned',
      'proof 20 yd x6',
    ]);
    expect(results(walk)).toEqual(['Up and down: land together at 20 yd, n % sure', 'Sideways: land together at 20 yd, n % sure']);
    expect(walk.last.bow).toEqual({ 'rest-height': { value: 1 / 16, unit: 'in' }, 'rest-side': { value: -1 / 16, unit: 'in' } });
  });

  it.each(SEEDS)('whatever the luck (%i)', async (seed) => {
    const walk = await walked(unfletchedLow(seed));
    holdsWithoutPaper(walk, GATES);
    const course = impactCourse(walk).filter((text) => text.startsWith('adjust'));
    expect(course.join(', ')).toMatch(/^(adjust rest-height up 1\/(32|64) in, )+(adjust rest-side left 1\/32 in(, )?)+$/);
    // In turn, the unfletched first; field points on all of them, never a broadhead; never farther than 20 yd.
    const shafts = impactsOf(walk).map(({ ask }) => shaftOf(ask));
    expect(shafts).toEqual(shafts.map((_, i) => (i % 2 === 0 ? 'unfletched' : 'fletched')));
    for (const { ask } of impactsOf(walk)) expect(ask.kind === 'impact' ? [ask.head, ask.distance] : []).toEqual(['field', { value: 20, unit: 'yd' }]);
    for (const knob of ['rest-height', 'rest-side'] as const) expect(Math.abs(walk.last.bow[knob]?.value ?? 0)).toBeLessThanOrEqual(1 / 16);
  });

  it.each(['bare-skill', 'bare-backstop'])('stop at the gate where %s does not hold, and nothing is shot', async (check) => {
    const bow = unfletchedLow(4);
    const walk = await walked({ ...bow, inTurn: { 'gate:unfletched-ready': [[check], 'all true'], [`gate:${check}`]: ['false', 'false', 'true'] } });
    const stops = walk.turns.flatMap(({ line, ask }, i) => (line.type === 'stop' ? [{ i, about: ask.about }] : []));
    // It stands until it is answered otherwise.
    expect(stops.map(({ about }) => about)).toEqual([`gate:${check}`, `gate:${check}`]);
    expect(walk.turns.slice(0, stops.at(-1)!.i).some(({ ask }) => ask.kind === 'impact')).toBe(false);
  });

  it('are not offered to who is still growing', async () => {
    const bow = straight(1);
    const walk = await walked({ ...bow, answers: { ...bow.answers, 'growing': 'growing', 'shaft-ahead': 2.5 } });
    expect(options(walk, 'method')).toEqual(['plumb-line', 'none']);
    expect(options(await walked(unfletchedLow(4)), 'method')).toEqual(['unfletched', 'plumb-line', 'none']);
  });
});

describe('a plumb line', () => {
  it('that slants: the side is a trial, wrong at first, put back and proved; the other side straightens it', async () => {
    const walk = await walked(slanted(1));
    holdsWithoutPaper(walk, ['plumb-ready']);
    expect(impactCourse(walk)).toEqual([
      'line x9',
      'adjust rest-side left 1/32 in, trial',
      'line x9',
      'put-back rest-side right 1/32 in',
      'proving line x9',
      'adjust rest-side right 1/32 in',
      'line x9',
      'adjust rest-side right 1/32 in',
      'line x9',
      'side tuned',
      'proof line x9',
    ]);
  });

  it.each(SEEDS)('whatever the luck (%i)', async (seed) => {
    const walk = await walked(slanted(seed));
    holdsWithoutPaper(walk, ['plumb-ready']);
    // One arrow from each distance in turn, the nearest first; only sideways is asked of it, or moved for it.
    const yards = impactsOf(walk).map(({ ask }) => (ask.kind === 'impact' ? ask.distance.value : 0));
    expect(yards).toEqual(yards.map((_, i) => [20, 30, 40][i % 3]));
    expect(Object.keys(walk.last.bow)).toEqual(['rest-side']);
    expect(walk.last.bow['rest-side']?.value).toBeGreaterThan(0);
    expect(impactCourse(walk).slice(1, 4)).toEqual(['adjust rest-side left 1/32 in, trial', 'line x9', 'put-back rest-side right 1/32 in']);
    expect(results(walk)).toEqual(['Up and down: not judged', 'Sideways: straight from 20 to 40 yd, n % sure']);
  });

  it.each([1, 2])('that is straight: nothing is moved, and up and down is not judged (%i)', async (seed) => {
    const walk = await walked(straight(seed));
    holdsWithoutPaper(walk, ['plumb-ready']);
    expect(walk.last.bow).toEqual({});
    expect(results(walk)).toEqual(['Up and down: not judged', 'Sideways: straight from 20 to 40 yd, n % sure']);
    expect(saidIn(walk)).not.toContain('Both ways');
  });
});

describe('no paper yet, and neither of the other ways', () => {
  it('waits for the frame, and shoots paper once it is there', async () => {
    const { answers: { ['gate:backstop']: _none, ...answers } = {}, ...bow } = unfletchedLow(4);
    const walk = await walked({ ...bow, answers, inTurn: { 'gate:backstop': ['no-paper', 'no-paper', 'solid'], 'method': ['none'] } });
    const about = askedIn(walk);
    const from = about.indexOf('method');
    expect(about.slice(from, from + 7)).toEqual(['method', 'gate:backstop', 'gate:range', 'method', 'gate:backstop', 'gate:range', 'tear']);
    expect(about.filter((one) => one === 'impact')).toEqual([]);
    expect(about.indexOf('tear')).toBeGreaterThan(about.lastIndexOf('method'));
    expect(results(walk).every((row) => row.includes(': tuned: in tolerance at 7 ft'))).toBe(true);
  });
});
