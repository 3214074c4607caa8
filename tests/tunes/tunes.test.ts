// Whole tunes over the pipe, from the first question to the record: every decision in order for one run of luck, and
// what must hold whatever the luck for several.

import { describe, expect, it } from 'vitest';
import { newHome } from '../cli/program.ts';
import { Talker } from '../cli/talker.ts';
import { inTune, mended, ownPress, scatters, twoTrackLeft, wrongSide } from './bows.ts';
import { ledgerOfAdvice, recordRows } from './held.ts';
import { NumberedArcher } from './numbered-archer.ts';
import { walked } from './sittings.ts';
import { adviceInShort, advicesOf, courseOf, findingInShort, findingsOf, otherThanGates, walkThrough, type Walked } from './walk-through.ts';

const SEEDS = [1, 2, 3];

const advised = (walk: Walked): readonly string[] => advicesOf(walk.lines).map(adviceInShort);
const found = (walk: Walked): readonly string[] => otherThanGates(findingsOf(walk.lines)).map(findingInShort);
/** The course without the number of shots of an ordinary set, which luck decides. */
const decisionsOf = (walk: Walked): readonly string[] => courseOf(walk).map((text) => text.replace(/^shoot-shooting x\d+$/, 'shots'));
/** What was asked between one answer and the next that is about `about`, from the nth answer on. */
const askedAfter = (walk: Walked, about: string, nth = 0): readonly string[] => {
  const at = walk.turns.map(({ ask }, i) => (ask.about === about ? i : -1)).filter((i) => i >= 0)[nth] ?? -1;
  const rest = walk.turns.slice(at + 1).map(({ ask }) => ask.about);
  return rest.slice(0, rest.indexOf('tear'));
};

/** Holds for every tune that came to its record. */
function holdsForAnyTune(walk: Walked, mostShots: number): void {
  expect(walk.last.type).toBe('done');
  expect(walk.turns.filter(({ ask: { about } }) => about === 'tear').length).toBeLessThanOrEqual(mostShots);
  // The ledger is the sum of what was advised and made, and nothing else.
  expect(walk.last.bow).toEqual(ledgerOfAdvice(walk));
  for (const { ask: { about }, line: { type, advice } } of walk.turns) {
    // A change is made only where one was advised, and nothing else is asked while it stands.
    expect([about, advice?.kind === 'adjust' || advice?.kind === 'put-back']).toEqual([about, about === 'moved']);
    if (type === 'stop') expect(['tear', 'moved', 'contact']).not.toContain(about);
  }
  for (const advice of advicesOf(walk.lines)) {
    if (advice.kind !== 'adjust' && advice.kind !== 'put-back') continue;
    expect([advice.knob, advice.direction, advice.amount?.value, advice.to, advice.undo].includes(undefined)).toBe(false);
  }
}

describe('a right-handed yoke bow, the press at the shop, its rest answering the other way', () => {
  it('tries, puts back and proves it, goes the other way to the limit, and writes to the shop', async () => {
    const walk = await walked(wrongSide(1));
    holdsForAnyTune(walk, 26);
    expect(decisionsOf(walk)).toEqual([
      'shots',
      'height tuned',
      'adjust rest-side left 1/32 in, trial',
      'shots',
      'rest-side learned',
      'put-back rest-side right 1/32 in',
      'shoot-proving x3',
      'adjust rest-side right 1/32 in',
      'shots',
      'adjust rest-side right 1/32 in',
      'shots',
      'rest-side limit',
      'side cannot',
      'height tuned',
      'shop',
      'shots',
      'shoot-proof x3',
    ]);
  });

  it.each(SEEDS)('whatever the luck (%i)', async (seed) => {
    const walk = await walked(wrongSide(seed));
    holdsForAnyTune(walk, 32);
    expect(advised(walk).map((text) => text.replace(/(right .*), trial/, '$1'))).toEqual([
      'adjust rest-side left 1/32 in, trial', 'put-back rest-side right 1/32 in',
      'adjust rest-side right 1/32 in', 'adjust rest-side right 1/32 in', 'shop',
    ]);
    const course = courseOf(walk);
    expect(course[course.indexOf('put-back rest-side right 1/32 in') + 1]).toBe('shoot-proving x3');
    // Up and down is judged once more after the last change sideways.
    expect(found(walk).toSorted()).toEqual(['height tuned', 'height tuned', 'rest-side learned', 'rest-side limit', 'side cannot']);
    expect(found(walk).at(-1)).toBe('height tuned');
    expect(walk.last.bow).toEqual({ 'rest-side': { value: 1 / 16, unit: 'in' } });
    expect(recordRows(walk, 'Note for the shop').join(' ')).toContain('twist the yoke legs');
    // The powder is shot once, before the first sideways change; a cable is never touched here.
    expect(walk.turns.filter(({ ask: { about } }) => about === 'contact')).toHaveLength(1);
    expect(walk.turns.map(({ ask }) => ask.about)).not.toContain('gate:after-press');
    expect(recordRows(walk, 'Result')[1]).toMatch(/^Sideways: not tuned/);
  });
});

const PRESSED = ['gate:after-press', 'axle-to-axle', 'brace-height', 'nock-height', 'gate:slow-draw', 'peak-weight', 'shaft-ahead', 'gate:first-shot'];

describe('a right-handed yoke bow on its own press', () => {
  it('goes height, rest to the maker\'s figure, yoke, a finishing step, height again', async () => {
    const walk = await walked(ownPress(2));
    holdsForAnyTune(walk, 34);
    expect(decisionsOf(walk)).toEqual([
      'shots',
      'adjust rest-height up 1/32 in',
      'shots',
      'adjust rest-height up 1/32 in',
      'shots',
      'height tuned',
      'rest-height learned',
      'adjust rest-side right 3/32 in',
      'shots',
      'adjust yoke left 2 half-twist-pair',
      'shots',
      'side tuned',
      'yoke learned',
      'adjust yoke left 1 half-twist-pair',
      'shots',
      'side tuned',
      'height tuned',
      'shots',
      'shoot-proof x3',
    ]);
  });

  it.each(SEEDS)('whatever the luck (%i)', async (seed) => {
    const walk = await walked(ownPress(seed));
    holdsForAnyTune(walk, 34);
    const moves = advised(walk);
    // Up and down is settled before anything is moved sideways, the figure is restored before the yoke.
    const knobs = moves.map((text) => text.split(' ')[1] ?? '');
    expect(knobs).toEqual(knobs.toSorted((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
    expect(moves.filter((text) => text.includes('rest-side'))).toEqual(['adjust rest-side right 3/32 in']);
    expect(found(walk)).toContain('yoke learned');
    expect(found(walk).filter((text) => text === 'height tuned')).toHaveLength(2);
    expect(found(walk).at(-1)).toBe('height tuned');
    expect(walk.last.bow).toMatchObject({ 'rest-side': { value: 3 / 32, unit: 'in' }, 'yoke': { value: -3, unit: 'half-twist-pair' } });
    // Powder, relaxed hand, light face contact and the look at the cams come before the yoke, once.
    for (const about of ['contact', 'grip', 'face', 'lean']) expect([about, walk.turns.filter((t) => t.ask.about === about).length]).toEqual([about, 1]);
    // After each change of the cables: the looks, the measures and one slow draw before the next shot at paper.
    const changes = walk.turns.filter((t) => t.ask.about === 'moved').length;
    const cables = Array.from({ length: changes }, (_, nth) => nth).filter((nth) => moves[nth]?.includes(' yoke '));
    expect(cables).toHaveLength(2);
    for (const nth of cables) expect(askedAfter(walk, 'moved', nth)).toEqual(PRESSED);
    for (const nth of [0, 1]) expect(askedAfter(walk, 'moved', nth)).toContain('gate:rest-check');
    // The finishing step is offered only where the axis is in tolerance, and taken because the archer wants it.
    const offered = walk.turns.findIndex(({ ask }) => ask.about === 'finishing');
    expect(walk.turns[offered - 1]?.ask.about).toBe('tear');
    expect(found(walk).filter((text) => text === 'side tuned')).toHaveLength(2);
    expect(adviceInShort(walk.turns[offered]?.reply.advice as Parameters<typeof adviceInShort>[0])).toBe('adjust yoke left 1 half-twist-pair');
    expect(recordRows(walk, 'Result').slice(0, 2).every((row) => row.includes(': tuned'))).toBe(true);
  });
});
const ORDER = ['rest-height', 'rest-side', 'yoke'];

describe('a left-handed two-track bow without a press', () => {
  it('moves the rest to its limit and writes to the shop of spacers', async () => {
    expect(decisionsOf(await walked(twoTrackLeft(1)))).toEqual([
      'shots',
      'height tuned',
      'adjust rest-side right 1/32 in, trial',
      'shots',
      'adjust rest-side right 1/32 in',
      'shots',
      'rest-side limit',
      'side cannot',
      'height tuned',
      'shop',
      'shots',
      'shoot-proof x3',
    ]);
  });

  it.each(SEEDS)('whatever the luck (%i)', async (seed) => {
    const walk = await walked(twoTrackLeft(seed));
    holdsForAnyTune(walk, 17);
    expect(advised(walk)[0]).toBe('adjust rest-side right 1/32 in, trial');
    expect(advised(walk).map((text) => text.replace(', trial', ''))).toEqual(['adjust rest-side right 1/32 in', 'adjust rest-side right 1/32 in', 'shop']);
    // A rest right of a left-handed archer's riser goes away from it.
    expect(advicesOf(walk.lines)[0]?.what).toContain('away from the riser');
    expect(advicesOf(walk.lines).at(-1)?.why).toContain('spacers');
    expect(recordRows(walk, 'Note for the shop').join(' ')).toContain('spacers');
    expect(found(walk)).toEqual(expect.arrayContaining(['side cannot', 'rest-side limit']));
    expect(walk.turns.map(({ ask }) => ask.about)).not.toContain('gate:after-press');
  });
});

describe('a screw-adjust bow that is in tune', () => {
  it.each(SEEDS)('is left alone (%i)', async (seed) => {
    const walk = await walked(inTune(seed));
    holdsForAnyTune(walk, 14);
    expect(advised(walk)).toEqual([]);
    expect(walk.last.bow).toEqual({});
    expect(found(walk)).toEqual(['height tuned', 'side tuned']);
    expect(recordRows(walk, 'Result').slice(0, 2).every((row) => row.includes(': tuned'))).toBe(true);
    expect(recordRows(walk, 'Settings against where it began').join()).toContain('nothing was moved');
    // Nothing is asked that only an adjustment would need.
    for (const about of ['press', 'rest-scale', 'contact', 'grip', 'face', 'centre-shot-figure']) expect(walk.turns.map(({ ask }) => ask.about)).not.toContain(about);
  });
});

const stops = (walk: Walked): readonly string[] => walk.turns.filter(({ line }) => line.type === 'stop').map(({ ask }) => ask.about);

describe('a bow that fails gates', () => {
  it.each(SEEDS)('is stopped by each, mended, and goes on to the record (%i)', async (seed) => {
    const walk = await walked(mended(seed));
    holdsForAnyTune(walk, 14);
    // Nothing but what leads out is asked, and its first question is asked at once.
    expect(stops(walk)).toEqual(['released', 'gate:bow-loop', 'bolts-top', 'bolts-bottom']);
    expect(walk.lines.filter((line) => line.type === 'stop').every((line) => line.chapter === 'stopped' && line.advice === null)).toBe(true);
    const gates = findingsOf(walk.lines).filter((f) => f.kind === 'gate').map(findingInShort);
    for (const gate of ['history', 'bow-loop']) {
      expect([gate, gates.indexOf(`gate ${gate} failed`) >= 0]).toEqual([gate, true]);
      expect([gate, gates.lastIndexOf(`gate ${gate} passed`) > gates.indexOf(`gate ${gate} failed`)]).toEqual([gate, true]);
    }
    expect(gates.filter((text) => text.endsWith('failed'))).toEqual(['gate history failed', 'gate bow-loop failed', 'gate bolts-bottom failed']);
    expect(gates.lastIndexOf('gate bolts-bottom passed')).toBeGreaterThan(gates.indexOf('gate bolts-bottom failed'));
    // A check that does not hold is asked about at once, not after the rest of the bow.
    expect(walk.turns[walk.turns.findIndex(({ ask }) => ask.about === 'gate:bow-at-rest') + 1]?.ask.about).toBe('gate:bow-loop');
    expect(found(walk)).toEqual(['height tuned', 'side tuned']);
    expect(recordRows(walk, 'Noticed on the way').join()).toContain('The dealer released it today and found nothing wrong');
  });

  it('after a dealer\'s release asks every gate of the bow anew, the history first, before anything is drawn', async () => {
    const walk = await walked(mended(1));
    const at = walk.turns.findIndex(({ ask }) => ask.about === 'released');
    const after = walk.turns.slice(at + 1).map(({ ask }) => ask.about);
    const anew = [
      'gate:history', 'gate:limbs', 'axle-clips', 'gate:bow-at-rest', 'rated-weight', 'bolts-top', 'bolts-bottom', 'bolt-limit', 'gate:after-press', 'gate:loop-check',
      'gate:rest-check', 'axle-to-axle', 'brace-height', 'nock-height', 'centre-shot', 'arrow-count', 'gate:arrows-flexed', 'gate:arrow-check', 'arrow-mass',
      'gate:slow-draw', 'peak-weight', 'shaft-ahead', 'gate:warm-up',
    ];
    expect(after[0]).toBe('gate:history');
    const firstShot = after.indexOf('tear');
    for (const about of anew) expect([about, after.indexOf(about) >= 0 && after.indexOf(about) < firstShot]).toEqual([about, true]);
    const drawn = Math.min(...['gate:slow-draw', 'gate:first-draw', 'gate:rest-check', 'peak-weight'].map((about) => after.indexOf(about)));
    for (const about of ['gate:history', 'gate:limbs', 'axle-clips', 'gate:bow-at-rest', 'gate:bow-loop', 'bolts-top', 'bolt-limit', 'arrow-mass']) expect([about, after.lastIndexOf(about) < drawn]).toEqual([about, true]);
  });

  it('stays stopped until arrows that are too light are replaced, or the bow is made lighter', async () => {
    const heavier = await walked({ ...inTune(1), inTurn: { 'arrow-mass': [280, 400] } });
    expect(stops(heavier)).toEqual(['rated-weight', 'arrow-mass']);
    holdsForAnyTune(heavier, 14);
    // 312 gr do for limbs rated 60 lb, not for the 65 lb that 62 on a scale 3 lb off may be; they do for 59 + 3.
    const lighter = await walked({ ...inTune(1), inTurn: { 'arrow-mass': [312], 'peak-weight': [62, 59], 'scale-error': [3] } });
    // Each figure of the rule once, the last of them decides: no question comes round again.
    expect(stops(lighter)).toEqual(['arrow-mass', 'what-was-changed', 'peak-weight', 'scale-error']);
    holdsForAnyTune(lighter, 14);
  });
});

describe('an archer who scatters', () => {
  it.each([...SEEDS, 6, 7, 8])('is told to look elsewhere, and no bow is blamed (%i)', async (seed) => {
    const walk = await walked(scatters(seed));
    holdsForAnyTune(walk, 16);
    expect(new Set(advised(walk))).toEqual(new Set(['inspect']));
    expect(walk.turns.filter(({ ask: { about } }) => about === 'inspected').length).toBeGreaterThanOrEqual(2);
    expect(walk.last.bow).toEqual({});
    expect(found(walk)).toEqual(['height inconsistent', 'side inconsistent']);
    expect(recordRows(walk, 'Result').slice(0, 2)).toEqual(['Up and down: not judged: the shots scatter too far', 'Sideways: not judged: the shots scatter too far']);
    expect(recordRows(walk, 'Result').join()).not.toMatch(/(?<!not )tuned/);
  });
});

describe('the same through the program itself', () => {
  it.each([['wrong side', wrongSide(3)], ['in tune', inTune(3)]])('%s: says what the session says', async (_name, bow) => {
    const here = await walked(bow);
    const talker = new Talker(['new', '--pipe', '--home', newHome()]);
    const there = await walkThrough(talker, new NumberedArcher(bow));
    talker.end();
    expect(await talker.ended).toBe(0);
    // Only the tune's own name and the day may differ.
    const said = (walk: Walked) => walk.turns.map(({ answer, reply: { type, seq, chapter, say, ask, bow: ledger, advice, findings } }) => ({ answer, type, seq, chapter, say, ask, ledger, advice, findings }));
    expect(said(there)).toEqual(said(here));
  });
});
