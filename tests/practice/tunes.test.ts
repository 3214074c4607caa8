// Whole tunes of practice bows through the session: each lesson shows what it says, decision by decision, and any bow comes to its end.

import { describe, expect, it } from 'vitest';
import type { Lesson } from '../../src/practice/lesson-names.ts';
import { lessonBow } from '../../src/practice/lessons.ts';
import type { Memory } from '../../src/practice/memory.ts';
import { truth } from '../../src/practice/truth.ts';
import { bowByNumber, mirrored, type World } from '../../src/practice/world.ts';
import { KNOBS, playPractice, type PracticeTune } from './play.ts';

const lesson = (name: Lesson, seed: number) => {
  const world = lessonBow(name, seed, KNOBS);
  return { world, tune: tuneOf(world), wrong: truth(world).adjustments.filter(({ wrong }) => wrong) };
};
/** Each bow is played once. */
function tuneOf(world: World): PracticeTune {
  const name = `${world.lesson ?? ''} ${world.seed}`;
  const tune = played.get(name) ?? playPractice(world);
  played.set(name, tune);
  return tune;
}
const played = new Map<string, PracticeTune>();
const adjusted = (tune: PracticeTune): readonly string[] => [...new Set(tune.moves.filter((move) => move.startsWith('adjust')).map((move) => move.split(' ')[1] ?? ''))];
const causes = (tune: PracticeTune): readonly string[] => tune.findings.flatMap((finding) => (finding.kind === 'cause' ? [finding.cause] : []));
const ends = (tune: PracticeTune): readonly string[] =>
  tune.findings.flatMap((finding) => (finding.kind === 'axis' && finding.chapter === 'paper' ? [`${finding.axis} ${finding.result}`] : []));
const SEEDS = [1, 2];

describe('two things wrong', () => {
  // Of the seeds up to 30 all but 1 and 24 end so: there luck takes a yoke that helped for one that did harm.
  it.each([2, 3])('are found one after the other, each moved towards where it belongs (%i)', (seed) => {
    const { tune, wrong } = lesson('two things wrong', seed);
    expect(wrong.map(({ knob, works }) => [knob, works])).toEqual([['rest-height', 'as the book says'], ['yoke', 'as the book says']]);
    expect(tune.last.type).toBe('done');
    expect(adjusted(tune).slice(0, 2)).toEqual(['rest-height', 'yoke']);
    for (const { knob, optimum } of wrong) {
      const stands = tune.last.bow[knob]?.value ?? 0;
      expect(Math.abs(optimum - stands)).toBeLessThan(0.9 * Math.abs(optimum));
    }
    for (const end of ends(tune)) expect(end).toMatch(/tuned|accepted/);
  });
});

describe('it is the archer', () => {
  it.each(SEEDS)('sends nobody to a screw, finds the hand and then a bow that is in tune (%i)', (seed) => {
    const { tune, wrong } = lesson('it is the archer', seed);
    expect(wrong).toEqual([]);
    expect([tune.last.type, tune.last.bow, tune.moves]).toEqual(['done', {}, []]);
    expect(causes(tune)).toEqual(['grip']);
    expect(tune.memory.condition.handRelaxed).toBe(true);
  });
});

describe('one bad arrow', () => {
  it.each([1, 3])('is that one and no other (%i)', (seed) => {
    const { world, tune, wrong } = lesson('one bad arrow', seed);
    const [bad] = truth(world).arrows;
    expect([wrong, truth(world).arrows.length, tune.last.type, tune.last.bow]).toEqual([[], 1, 'done', {}]);
    // Whatever is done to an arrow is done to this one; it is the first to be told of, and all others are first choice.
    expect(tune.moves.length).toBeGreaterThan(0);
    const changed = tune.turns.flatMap(({ about, view: { advice } }) => (about === 'moved' ? [advice?.arrow] : []));
    expect(new Set(changed)).toEqual(new Set([bad?.arrow]));
    const classes = tune.findings.flatMap((finding) => (finding.kind === 'arrow' ? [[finding.arrow, finding.class] as const] : []));
    expect(classes.filter(([arrow, how]) => arrow !== bad?.arrow && how !== 'first choice')).toEqual([]);
    // A nock is mended with a new one; a shaft or its insert is not, and only a turn may help it.
    if (bad?.fault === 'nock') expect([tune.moves, classes[0]?.[1]]).toEqual([['adjust nock-swap '], 'first choice']);
    else expect(tune.moves.some((move) => move.includes('nock-turn'))).toBe(true);
  });
});

describe('the first guess is wrong', () => {
  it.each(SEEDS)('is tried, seen, and the rest ends on the other side (%i)', (seed) => {
    const { tune, wrong } = lesson('the first guess is wrong', seed);
    expect(wrong.map(({ knob, works }) => [knob, works])).toEqual([['rest-side', 'the other way']]);
    const rest = tune.moves.filter((move) => move.includes('rest-side'));
    const good = (wrong[0]?.optimum ?? 0) > 0 ? 'right' : 'left';
    expect(rest[0]).toBe(`adjust rest-side ${good === 'right' ? 'left' : 'right'}`);
    expect(rest.at(-1)).toBe(`adjust rest-side ${good}`);
    expect(Math.sign(tune.last.bow['rest-side']?.value ?? 0)).toBe(good === 'right' ? 1 : -1);
    expect(tune.findings).toContainEqual({ kind: 'knob', knob: 'rest-side', result: 'learned' });
    expect(ends(tune)).toContain('side tuned');
  });

  it('and so it is in the mirror, move for move', () => {
    const { world, tune: here } = lesson('the first guess is wrong', 1);
    const swapped = (move: string): string => move.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'));
    const there = playPractice(mirrored(world));
    expect(there.moves).toEqual(here.moves.map((move) => (move.includes('rest-side') ? swapped(move) : move)));
    expect(there.shots.length).toBe(here.shots.length);
  });
});

describe('do not shoot this bow', () => {
  it.each([1, 2, 3, 8])('is stopped by its gate before it is drawn (%i)', (seed) => {
    const { world, tune } = lesson('do not shoot this bow', seed);
    expect([tune.last.type, tune.last.ask?.about, tune.shots]).toEqual(['stop', 'released', []]);
    expect(truth(world).danger?.mends).toBe('dealer');
  });
});

describe('a bow by its number', () => {
  // A clip that is missing; a loop that is worn, and broadheads; vanes that touch.
  it.each([8, 16, 34])('comes to its end, and its ledger tells near enough where it stands (%i)', (number) => {
    const world = bowByNumber(number, KNOBS);
    const tune = tuneOf(world);
    const danger = world.bow.danger?.mends === 'dealer';
    expect(tune.last.type).toBe(danger ? 'stop' : 'done');
    for (const [knob, { value }] of Object.entries(tune.last.bow)) {
      const id = knob as keyof typeof world.bow.adjustments;
      const [one, stands] = [world.bow.adjustments[id], tune.memory.condition.settings[id] ?? NaN];
      expect(Math.abs(stands - value)).toBeLessThan(3 * (one?.step ?? 0));
    }
  });

  it('is the same tune each time, also where its memory is written down and read back after every answer', () => {
    const world = bowByNumber(16, KNOBS);
    const again = playPractice(world, { keep: (memory) => JSON.parse(JSON.stringify(memory)) as Memory });
    const told = ({ turns }: PracticeTune) => turns.map(({ about, said }) => [about, said]);
    expect(told(again)).toEqual(told(tuneOf(world)));
  });
});
