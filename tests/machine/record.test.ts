// The bow record as the customer and the next technician read it: nothing tuned that was not, nothing lost, nothing invented.

import { describe, expect, it } from 'vitest';
import { carriedOf, recordOf } from '../../src/session.ts';
import { recordMarkdown } from '../../src/report/markdown.ts';
import type { BowRecord, Intent, View } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { play, shippedContent, type PlayOptions } from '../tunes/play.ts';

const content = shippedContent();
const GAIN: Bow['gain'] = { 'rest-height': { x: 0, y: -6 }, 'rest-side': { x: -4, y: 0 }, 'nock-height': { x: 0, y: 6 } };

interface Read { readonly record: BowRecord; readonly text: string; readonly rows: (title: string) => Readonly<Record<string, string>>; readonly played: ReturnType<typeof play> }

function tune(bow: Partial<Bow>, options: PlayOptions = {}): Read {
  const played = play({ start: { x: 0.03, y: 0.06 }, gain: GAIN, sd: 0.07, seed: 7, ...bow }, options);
  const record = recordOf(content, played.store.facts);
  if (record === null) throw new Error('no record');
  const rows = (title: string): Readonly<Record<string, string>> =>
    Object.fromEntries((record.sections.find((section) => section.title === title)?.rows ?? []).map(({ name, value }) => [name, value]));
  return { record, text: recordMarkdown(record), rows, played };
}

/** Sends `intent` once, at the first view that fits. */
function onceAt(fits: (view: View) => boolean, intent: Intent): NonNullable<PlayOptions['instead']> {
  let sent = false;
  return (view) => (!sent && fits(view) ? ((sent = true), intent) : null);
}

const shooting = (view: View): boolean => view.ask?.kind === 'tear' && view.ask.shots.taken > 0;
const advising = (view: View): boolean => view.step === 'make-the-move';

describe('a bow in tune as found', () => {
  const { rows, text, played } = tune({});
  it('is called tuned with its chance, and nothing was moved', () => {
    expect(played.last.type).toBe('done');
    const result = rows('Result');
    expect(result['Up and down']).toMatch(/^tuned: in tolerance at 7 ft, 9[5-9] % sure$/);
    expect(result['Sideways']).toMatch(/^tuned: in tolerance at 7 ft, 9[5-9] % sure$/);
    expect(result['State']).toBeUndefined();
    expect(rows('Settings against where it began')).toEqual({ 'All adjustments': 'nothing was moved' });
    expect(rows('Changes and what came of them')).toEqual({});
  });
  it('has the tear at both distances, the shots and the spread', () => {
    const result = rows('Result');
    expect(result['Tear as found, 7 ft']).toMatch(/\(\d+ shots\)$/);
    expect(result['Tear at this setting, 7 ft']).toBe(result['Tear as found, 7 ft']);
    expect(result['Tear at this setting, 9 ft']).toMatch(/\(\d+ shots\)$/);
    expect(result['Second distance, 9 ft']).toBe('in tolerance there too: up and down, sideways; 9 ft is too near to 7 ft to tell an angle from a turning');
    expect(result['Shots']).toBe(`${played.last.where.shots}, over 1 day; called bad or missed: 0`);
    expect(result['Spread of one shot']).toMatch(/^0\.\d\d in$/);
  });
  it('has the card: archer, bow, arrows, and the mass for each pound reckoned', () => {
    expect(rows('Archer')['Bow hand']).toBe('Left hand holds it: right-handed');
    expect(rows('Bow, as measured and told')).toMatchObject({
      'Cams': 'Two cams, a cable split into a yoke', 'Rest': 'Arm that drops, cord to a cable', 'Limbs\' rating': '60 lb', 'Peak draw weight': '59 lb',
      'Top bolt, out from seated': '1 turn', 'Bottom bolt, out from seated': '1 turn', 'Axle to axle': '33 1/8 in', 'Brace height': '6 5/8 in',
      'Nock height above level': '1/16 in', 'Centre shot': '13/16 in',
    });
    // By hand: 400 / 59 = 6.779, 400 / 61 = 6.557, each cut off, never rounded up.
    expect(rows('Arrows')).toMatchObject({
      'Arrows counted': '12', 'Flexed': 'All sound: silent and smooth all round', 'Lightest arrow': '400 gr', 'Shaft ahead of the rest': '1 1/4 in',
      'Arrow mass for each lb': '6.77 gr; 6.55 gr if the scale reads 2 lb low (at least 5.0 wanted)',
    });
  });
  it('says what was not checked, and when to look again', () => {
    const unseen = Object.values(rows('Not checked'));
    expect(unseen).toContain('Broadheads against field points');
    expect(unseen).toContain('Each arrow of the set against the others');
    expect(unseen).not.toContain('The tear after tightening');
    expect(rows('Next')['Look again']).toContain('every 500 to 1,000 shots');
  });
  it('names nothing as invented', () => {
    expect(text).not.toMatch(/invented|practice bow/i);
  });
});

describe('a sideways tear that the rest cannot cure', () => {
  const { rows, played } = tune({ start: { x: -0.9, y: 0.05 }, gain: { 'rest-side': { x: -4, y: 0 } } });
  it('is not called tuned, and the shop is told what stands', () => {
    expect(rows('Result')['Sideways']).toBe('not tuned: what could be adjusted here is used up');
    expect(Object.values(rows('Note for the shop'))).toHaveLength(1);
    expect(rows('Note for the shop')['1']).toContain('yoke legs');
  });
  it('keeps the setting, what the tape should read, and what came of each change', () => {
    const setting = played.last.bow['rest-side']?.value ?? 0;
    expect(setting).toBeLessThan(0);
    // 13/16 in at the start; left is away from a right-handed riser.
    const reads = { '-0.03125': '27/32', '-0.0625': '7/8' }[String(setting)];
    expect(reads).toBeDefined();
    expect(rows('Settings against where it began')['the rest, sideways']).toBe(`${setting === -0.0625 ? '1/16' : '1/32'} in left from where it began; centre shot reckoned at ${reads} in now`);
    const changes = Object.values(rows('Changes and what came of them'));
    expect(changes.length).toBeGreaterThan(0);
    expect(changes[0]).toMatch(/^REST LEFT 1\/32 in: 0\.\d\d in (high|low), 0\.\d\d in left \(\d+ shots\)$/);
  });
});

it('calls what the archer left as it was by that name, never tuned', () => {
  const { rows } = tune({ start: { x: 0, y: 0.6 }, answers: { moved: 'not now' } });
  expect(rows('Result')['Up and down']).toBe('left as it is by choice; not shown to be in tolerance');
});

it('does not carry the word "tuned" over to a setting that was moved afterwards', () => {
  const { rows } = tune({ start: { x: 0.6, y: 0.06 } }, {
    instead: onceAt(advising, { kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/16' }),
    until: (view) => view.bow['rest-height'] !== undefined && view.ask?.kind === 'tear',
  });
  expect(rows('Result')['Up and down']).toMatch(/^not judged as it stands now: moved since\. Before that, tuned: /);
  expect(Object.values(rows('Changes and what came of them'))).toEqual(['REST UP 1/16 in (not advised): not shot at this setting']);
});

it('says of a tune that is under way that it is not finished', () => {
  const { rows } = tune({}, { until: shooting });
  expect(rows('Result')).toMatchObject({ 'State': 'not finished: what stands below is as far as it came', 'Up and down': 'not judged', 'Sideways': 'not judged' });
  expect(Object.values(rows('Not checked'))).toEqual(expect.arrayContaining(['The tear at a second close distance', 'The tear after tightening', 'Peep and sight: not set at the end of this tune']));
});

describe('a stop', () => {
  const stopped = (): PlayOptions => ({ instead: onceAt(shooting, { kind: 'stop', words: 'a new noise at the top limb' }) });
  it('stands above everything until a dealer has released the bow', () => {
    const { rows } = tune({ answers: { 'what-happened': 'bow' } }, { ...stopped(), until: (view) => view.ask?.about === 'released' });
    expect(rows('Result')['State']).toBe('STOPPED: not to be drawn, pressed or shot until an authorised dealer has released it');
  });
  it('is kept with its words, what happened and who released it', () => {
    const { rows, played } = tune({ answers: { 'what-happened': 'bow', 'released': 'The dealer in town, today: an axle was dry, oiled it' } }, stopped());
    expect(played.last.type).toBe('done');
    expect(rows('Noticed on the way')).toMatchObject({
      '2026-03-02, stop': 'a new noise at the top limb', '2026-03-02, what happened': 'To the bow, or an arrow broke at a shot',
      '2026-03-02, released': 'The dealer in town, today: an axle was dry, oiled it',
    });
    expect(rows('Result')['State']).toBeUndefined();
  });
});

it('keeps a gate that failed, and what was told before and after it', () => {
  const tops = [5, 3];
  const bottoms = [4.5, 3];
  const { rows } = tune({ answers: { 'bolts-top': () => tops.shift() ?? 3, 'bolts-bottom': () => bottoms.shift() ?? 3 } });
  expect(rows('Bow, as measured and told')).toMatchObject({
    'Top bolt, out from seated': '3 turns on 2026-03-02; first told: 5 turns', 'Bottom bolt, out from seated': '3 turns on 2026-03-02; first told: 4 1/2 turns',
  });
  expect(Object.values(rows('Noticed on the way'))).toEqual(['not so: Bottom limb bolt, turns out from fully seated; passed on 2026-03-02']);
});

it('lists what was not known, and keeps notes and changes in the archer\'s words', () => {
  const { rows, text } = tune({ start: { x: 0.5, y: 0.06 }, answers: { 'brace-height': 'not known', 'contact': 'unknown', 'cams': 'unknown' } }, {
    instead: onceAt(shooting, { kind: 'note', note: 'vane of arrow 3 *loose* | <b>' }),
  });
  expect(Object.values(rows('Not checked'))).toEqual(expect.arrayContaining(['Not known: Brace height', 'Contact: not ruled out', 'Kind of cams: not known']));
  expect(rows('Noticed on the way')['2026-03-02, note']).toBe('vane of arrow 3 *loose* | <b>');
  expect(text).toContain('\\*loose\\* | \\<b\\>');
});

describe('what the next tune of this bow begins with', () => {
  const carry = (hand: string): number => {
    const { played } = tune({ start: { x: -0.9, y: 0.05 }, gain: {}, answers: { hand } }, {
      instead: onceAt(advising, { kind: 'moved', knob: 'rest-side', direction: 'left', amount: '1/32' }),
      until: (view) => view.bow['rest-side'] !== undefined && view.ask?.kind === 'tear',
    });
    const answer = carriedOf(content, played.store.facts)?.answers['centre-shot'];
    return answer?.kind === 'number' ? answer.value : NaN;
  };
  it('is the centre shot as the bow stands, not as it was before the rest was moved', () => {
    expect(carry('right')).toBe(13 / 16 + 1 / 32);
    expect(carry('left')).toBe(13 / 16 - 1 / 32);
  });
  it('has no answer that was "not known"', () => {
    const { played } = tune({ start: { x: 0.5, y: 0.06 }, answers: { 'brace-height': 'not known', 'contact': 'unknown', 'cams': 'unknown' } });
    const answers = carriedOf(content, played.store.facts)?.answers ?? {};
    expect(answers['hand']).toEqual({ kind: 'choice', values: ['right'] });
    for (const id of ['brace-height', 'contact', 'cams', 'grip', 'face', 'limbs']) expect(answers[id]).toBeUndefined();
  });
});

it('is readable in 80 columns, however the tune went', () => {
  const bows: readonly Partial<Bow>[] = [
    {}, { start: { x: -0.5, y: 0.6 }, sd: 0.1 }, { sd: 0.55, seed: 3 }, { start: { x: 0.4, y: 1.4 }, answers: { hand: 'left', cams: 'hybrid', press: 'none' } },
    { answers: { release: 'fingers' } }, { start: { x: -0.8, y: 0 }, gain: { ...GAIN, yoke: { x: -0.12, y: 0 } }, answers: { press: 'trained' } },
  ];
  for (const bow of bows) {
    const { text, played } = tune(bow);
    expect(played.last.type).toBe('done');
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(text).not.toMatch(/undefined|NaN|null|\[object/);
  }
});
