// Figures for the card: asked of nobody who does not want them, each with one sentence, in the record only where they were told, and
// gone where they no longer hold.

import { describe, expect, test } from 'vitest';
import { sayFigure } from '../../../src/machine/figures/said.ts';
import { FIGURES } from '../../../src/machine/figures/list.ts';
import { decide } from '../../../src/machine/decide.ts';
import { Deciding } from '../../../src/machine/deciding.ts';
import { recordOf } from '../../../src/machine/record.ts';
import { replay } from '../../../src/machine/replay.ts';
import { evolve } from '../../../src/machine/state.ts';
import { carriedOf } from '../../../src/session.ts';
import type { Changed, KnobId, View } from '../../../src/machine/types.ts';
import type { Bow } from '../../tunes/archer.ts';
import { correct, nextMinute, play, type PlayOptions } from '../../tunes/play.ts';
import { content, stateOf, type Plain } from '../state-of.ts';

const BOW: Bow = { start: { x: 0.03, y: 0.06 }, gain: { 'rest-height': { x: 0, y: -6 } }, sd: 0.06, seed: 3 };
type Rows = Readonly<Record<string, string>>;
type Happening = { readonly kind: 'changed'; readonly what: Changed; readonly note: string } | { readonly kind: 'moved'; readonly knob: KnobId; readonly delta: number };

const rowsOf = (sections: ReturnType<typeof recordOf>['sections']) => (title: string): Rows =>
  Object.fromEntries((sections.find((section) => section.title === title)?.rows ?? []).map(({ name, value }) => [name, value]));

function tune(answers: Bow['answers'] = {}, options: PlayOptions = {}) {
  const { session, store, asked, last } = play({ ...BOW, answers: { 'figures-wanted': 'yes', ...answers } }, options);
  return { session, store, asked, last, rows: () => rowsOf(recordOf(content, replay(content, store.facts).state).sections) };
}

/** What the coach says once this figure is told, all others told before. */
function said(step: string, answers: Readonly<Record<string, Plain>>): readonly string[] {
  const d = new Deciding(content, stateOf({ answers }), { kind: 'noted', seq: 99, time: '2026-03-02T12:00:00.000Z', note: 'x' });
  sayFigure(d, step);
  return d.fact().decided.say;
}

const FIGURE_STEPS: readonly string[] = FIGURES;
const NAMES = ['Arrow, nock groove to shaft end', 'Balance point', 'Speed by chronograph', 'Energy as it leaves', 'Momentum as it leaves', 'Another arrow', 'Speed with 25 gr more', 'Static deflection', 'Holding weight', 'Draw length'];
const BY_NUMBER = /^Not measured: /;
const byNumber = (rows: (title: string) => Rows): string => Object.values(rows('Not checked')).find((row) => BY_NUMBER.test(row)) ?? '';

describe('who wants none', () => {
  const { asked, rows, last } = tune({ 'figures-wanted': 'no' });
  test('is asked one question, whose first answer is no', () => {
    expect(last.type).toBe('done');
    expect(asked.filter((about) => FIGURE_STEPS.includes(about))).toEqual([]);
    const step = content.steps['figures-wanted'];
    expect(step?.kind === 'choice' ? step.options.map(({ value }) => value) : []).toEqual(['no', 'yes']);
  });
  test('has no such row, and the record says what was not told by number', () => {
    for (const title of ['Arrows', 'Bow, as measured and told']) expect(NAMES.filter((name) => rows()(title)[name] !== undefined)).toEqual([]);
    expect(byNumber(rows())).toBe('Not measured: timing at full draw, tiller, holding weight, draw length, string age, loop to peep, spine, balance point');
  });
});

describe('all told', () => {
  const { asked, rows } = tune();
  test('they come after the sight and before the calendar, and none draws but the chronograph', () => {
    const order = asked.slice(asked.indexOf('sight-last'));
    expect(order).toEqual(['sight-last', 'figures-wanted', 'arrow-length', 'balance-point', 'arrow-speed', 'second-mass', 'second-speed', 'holding-weight', 'draw-mark', 'spine-printed', 'look-again', 'bow-name', 'archer-name']);
    expect(FIGURE_STEPS.filter((id) => ['draw', 'shoot'].includes(content.steps[id]?.pause ?? ''))).toEqual(['arrow-speed']);
  });
  test('the card has them, and the record no longer lists them as not told', () => {
    // By hand: 28.25 / 2 = 14.125, 17.75 - 14.125 = 3.625, 12.83 %. 400 gr at 275 fps: 400 x 275^2 / 450436.7 = 67.16 ft lbf,
    // 400 x 275 / 225218.3 = 0.4884 slug ft/s. (59 - 12) / 59 = 79.7 %. 26 1/4 + 1 3/4 = 28.
    expect(rows()('Arrows')).toMatchObject({
      'Arrow, nock groove to shaft end': '28 1/4 in', 'Balance point': "17 3/4 in from the nock's groove, 3.6 in ahead of the middle (12.8 %)",
      'Speed by chronograph': '275 fps with 400 gr', 'Energy as it leaves': '67.2 ft lbf (91.1 J)', 'Momentum as it leaves': '0.488 slug ft/s (2.17 N s)',
      'Another arrow': '255 fps with 475 gr', 'Static deflection': '.340 in, as printed on the shaft',
    });
    expect(rows()('Arrows')['Speed with 25 gr more']).toMatch(/^2\d\d to 2\d\d fps, by two readings$/);
    expect(rows()('Bow, as measured and told')).toMatchObject({ 'Holding weight': '12 lb, 80 % let-off', 'Draw length': '28 in as bows are sold; 26 1/4 in from nocking point to grip' });
    expect(byNumber(rows())).toBe('Not measured: timing at full draw, tiller, string age, loop to peep');
  });
});

test('none known: each may be left out, and nothing is told of it', () => {
  const { rows, last } = tune(Object.fromEntries(FIGURES.map((id) => [id, 'not known'])));
  expect(last.type).toBe('done');
  expect(NAMES.filter((name) => rows()('Arrows')[name] !== undefined || rows()('Bow, as measured and told')[name] !== undefined)).toEqual([]);
  expect(Object.values(rows()('Not checked')).filter((row) => row.startsWith('Not known'))).toEqual([]);
  expect(byNumber(rows())).toContain('holding weight, draw length');
});

test('without a chronograph the bow\'s papers give a wide range, and no energy', () => {
  const { asked, rows } = tune({ 'arrow-speed': 'not known' });
  expect(asked.slice(asked.indexOf('draw-mark'), asked.indexOf('spine-printed'))).toEqual(['draw-mark', 'rated-speed']);
  const [low = NaN, high = NaN] = (/^(\d+) to (\d+) fps, by the bow's papers; not measured$/.exec(rows()('Arrows')['Speed to be expected'] ?? '') ?? []).slice(1).map(Number);
  // By hand: 59 of 70 lb and 19.625 of 21.625 in of string's way leave 0.7287 to 0.7649 of the energy, by the power 1.5 or 1; with 30 and with 250 gr of string
  // 330 sqrt(0.7287 x 380 / 430) = 264.8, 8 in 100 off for papers that flatter, and 330 sqrt(0.7649 x 600 / 650) = 277.3.
  expect([low, high]).toEqual([244, 277]);
  expect(rows()('Arrows')['Energy as it leaves']).toBeUndefined();
});

test('with a finger release nothing is shot for a figure', () => {
  const { asked, last } = tune({ release: 'fingers' });
  expect([last.type, asked.includes('balance-point'), asked.includes('arrow-speed')]).toEqual(['done', true, false]);
});

test('of an arrow that was added up the length is known already', () => {
  const { asked, rows } = tune({ 'arrow-mass': 'not known' });
  expect(asked).not.toContain('arrow-length');
  expect(rows()('Arrows')['Balance point']).toContain('(12.8 %)');
  // What it carries is reckoned by the likeliest mass, and said so.
  expect(rows()('Arrows')).toMatchObject({ 'Lightest arrow': '393 gr added up, not weighed; 376 gr count', 'Speed by chronograph': '275 fps with 393 gr' });
  expect(rows()('Arrows')['Added up from']).toBe('shaft 8.6 gr/in, 28 1/4 in long; point 100 gr, insert 20, nock 9, 3 vanes of 7, wrap 0');
  expect(rows()('Arrows')['Arrow mass for each lb']).toMatch(/^6\.38 gr; 6\.18 gr if/);
  expect(Object.values(rows()('Not checked'))).toContain('Not known: the mass by a scale; the arrow was added up from its parts');
});

describe('each figure is told in one sentence', () => {
  const length = { 'arrow-length': 28.5 };
  test.each([
    // The published example: 28.5 in long, balanced at 18 in, is 13.16 % (read on a secondary page).
    ['balance-point', { ...length, 'balance-point': 18 }, /^The arrow balances 3\.8 in ahead of its middle: 13\.2 % of its length\. 7 to 15 % is usual; more or less is no fault by itself\.$/],
    ['balance-point', { ...length, 'balance-point': 13 }, /behind its middle.*measure again/],
    ['balance-point', { ...length, 'balance-point': 28.5 }, /misread/],
    ['arrow-length', { ...length, 'balance-point': 18 }, /13\.2 %/],
    // 350 gr at 300 fps: 69.9 ft lbf and 0.466 slug ft/s (derived).
    ['arrow-speed', { 'arrow-mass': 350, 'arrow-speed': 300 }, /^350 gr at 300 fps carry 70 ft lbf and 0\.47 slug ft\/s as they leave: how much, and not how straight\.$/],
    ['second-mass', { 'arrow-mass': 350, 'arrow-speed': 300, 'second-mass': null }, /^With 25 gr more it would leave at 28\d to 29\d fps: a range/],
    ['second-speed', { 'arrow-mass': 350, 'arrow-speed': 300, 'second-mass': 450, 'second-speed': 270, 'peak-weight': 60 }, /by both readings: a range/],
    ['second-speed', { 'arrow-mass': 350, 'arrow-speed': 300, 'second-mass': 450, 'second-speed': 301, 'peak-weight': 60 }, /the heavier arrow was not the slower one/],
    ['second-speed', { 'arrow-mass': 350, 'arrow-speed': 300, 'second-mass': 450, 'second-speed': 240, 'peak-weight': 60 }, /No bow gives these two readings/],
    ['holding-weight', { 'holding-weight': 12, 'peak-weight': 60 }, /^You hold 12 lb of 60 lb: 80 % let-off\. It says how the bow holds, and nothing of its tune\.$/],
    ['holding-weight', { 'holding-weight': 61, 'peak-weight': 60 }, /misread/],
    // The published example: 26 1/4 and 1 3/4 are 28 (read on a secondary page).
    ['draw-mark', { 'draw-mark': 26.25 }, /^That is a draw length of 28 in as bows are sold/],
    // The function's own example: 255.1 to 286.7.
    ['rated-speed', { 'arrow-speed': null, 'rated-speed': 330, 'peak-weight': 60, 'draw-mark': 27.25, 'brace-height': 6.5, 'arrow-mass': 400 }, /^By the papers it leaves at 255 to 287 fps: a wide range and no measure\. A chronograph tells\.$/],
    ['spine-printed', { 'spine-printed': 340 }, /^\.340 in is how far the shaft sags.*chart says.*the figure alone does not\.$/],
    // The published example, the other way: .413 by the older test is .500 (read on a secondary page).
    ['spine-older', { 'spine-printed': null, 'spine-older': 0.4127 }, /^\.413 in by the older test is \.500 in by the present one/],
  ] as [string, Record<string, Plain>, RegExp][])('%s %j', (step, answers, words) => {
    const lines = said(step, answers);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(words);
  });

  test('and in none where it is not known, or lacks what it is told against', () => {
    for (const step of FIGURES) expect([step, said(step, { [step]: null })]).toEqual([step, []]);
    expect(said('balance-point', { 'balance-point': 18 })).toEqual([]);
    expect(said('holding-weight', { 'holding-weight': 12, 'peak-weight': null })).toEqual([]);
  });
});

test('another arrow that is too light for this bow: it is not asked how fast it was, and not reckoned with', () => {
  // 300 gr on 59 lb, the scale perhaps 2 lb low: 4.92 gr for each lb.
  const { asked, session, rows, store } = tune({ 'second-mass': 300 }, { until: (view) => view.step === 'holding-weight' });
  expect(session.view().say.join(' ')).toContain('300 gr is less than 5.0 gr for each lb in the worst case: such an arrow is not shot from this bow');
  expect(asked).not.toContain('second-speed');
  expect(rows()('Arrows')['Speed with 25 gr more']).toContain('by one reading');
  // Misread: then its speed is asked.
  expect(correct({ session, store }, store.facts.at(-1)!.seq, 330).step).toBe('second-speed');
});

test('misread figures are left out of the card', () => {
  const { rows } = tune({ 'balance-point': 29, 'holding-weight': 60 });
  expect(rows()('Arrows')['Balance point']).toBeUndefined();
  expect(rows()('Bow, as measured and told')['Holding weight']).toBeUndefined();
});

describe('figures that no longer hold', () => {
  const { store } = tune({}, { until: (view: View) => view.step === 'look-again' });
  const { state } = replay(content, store.facts);
  function then(what: Happening): { readonly arrows: Rows; readonly bow: Rows } {
    const fact = decide(content, state, { ...what, seq: store.facts.length + 1, time: nextMinute(store).toISOString() });
    const rows = rowsOf(recordOf(content, evolve(content, state, fact)).sections);
    return { arrows: rows('Arrows'), bow: rows('Bow, as measured and told') };
  }

  test('other arrows: balance, speed and deflection go, the bow\'s own stay', () => {
    const { arrows, bow } = then({ kind: 'changed', what: 'arrow', note: '' });
    // What another arrow did on this bow it still does.
    expect(NAMES.filter((name) => arrows[name] !== undefined)).toEqual(['Another arrow']);
    expect(Object.keys(bow)).toEqual(expect.arrayContaining(['Holding weight', 'Draw length']));
  });

  test('bolts: speed and holding weight go, the arrow\'s own stay', () => {
    const { arrows, bow } = then({ kind: 'moved', knob: 'limb-bolts', delta: -0.25 });
    expect([arrows['Speed by chronograph'], arrows['Energy as it leaves'], bow['Holding weight']]).toEqual([undefined, undefined, undefined]);
    expect([arrows['Balance point'], arrows['Static deflection'], bow['Draw length']]).not.toContain(undefined);
  });

  test('a string: the draw length as well', () => {
    const { bow } = then({ kind: 'changed', what: 'string', note: '' });
    expect([bow['Draw length'], bow['Holding weight']]).toEqual([undefined, undefined]);
  });

  test('the rest moved: none of them goes', () => {
    const { arrows, bow } = then({ kind: 'moved', knob: 'rest-height', delta: 1 / 64 });
    expect(NAMES.filter((name) => arrows[name] === undefined && bow[name] === undefined)).toEqual([]);
  });
});

describe('the next tune', () => {
  const first = tune({ 'spine-printed': 'not known', 'spine-older': 'not known' });
  const carried = carriedOf(content, first.store.facts)!;

  test('has what was told, as of then, whether or not more is wanted', () => {
    const { rows } = tune({ bow: carried.from }, { known: [carried], tune: 'next', until: (view) => view.ask?.kind === 'tear' });
    expect(rows()('Arrows')['Balance point']).toContain('(as of tune test-tune)');
    expect(rows()('Bow, as measured and told')['Draw length']).toContain('(as of tune test-tune)');
    expect(byNumber(rows())).toBe('Not measured: timing at full draw, tiller, string age, loop to peep, spine');
  });

  test('asks only for what is not known yet', () => {
    const { asked } = tune({ bow: carried.from }, { known: [carried], tune: 'next' });
    expect(asked.filter((about) => FIGURE_STEPS.includes(about))).toEqual(['spine-printed']);
  });

  test('a choice that is corrected takes none of them off the card', () => {
    const { session, store, rows } = tune({ bow: carried.from }, { known: [carried], tune: 'next', until: (view) => view.ask?.kind === 'tear' });
    const place = store.facts.findLast((fact) => fact.kind === 'answered' && fact.step === 'bow')!;
    correct({ session, store }, place.seq, carried.from);
    expect(store.facts.at(-1)?.decided.loop?.suggest?.filter((id) => FIGURE_STEPS.includes(id))).toEqual([]);
    expect(rows()('Arrows')['Balance point']).toContain('12.8 %');
  });

  test('in other hands the draw length is another', () => {
    const { rows } = tune({ bow: 'other-archer' }, { known: [carried], tune: 'next', until: (view) => view.ask?.kind === 'tear' });
    expect(rows()('Bow, as measured and told')['Draw length']).toBeUndefined();
    expect(rows()('Bow, as measured and told')['Holding weight']).toBeDefined();
  });
});
