// The bench of the coach: that it prints what it says, tells the same story twice, and mirrored bows the mirrored one. A bench that flatters would hide a fault.

import { afterEach, describe, expect, it, vi } from 'vitest';
import { coachBench, coachOptions } from '../bench/coach/bench.ts';
import { calibration } from '../bench/coach/calibration.ts';
import { Coach, TUNED } from '../bench/coach/coach.ts';
import { Hands } from '../bench/coach/hands.ts';
import type { Report } from '../bench/coach/report.ts';
import { playRival, RIVAL_NAMES } from '../bench/coach/rules.ts';
import { second, secondHere, secondLines } from '../bench/coach/second.ts';
import { rowOf } from '../bench/coach/tally.ts';
import { doHere, given } from '../bench/coach/workers.ts';
import { isFixable, knobBow, WORLDS } from '../bench/coach/world.ts';

const WORLD = WORLDS.nominal;
const GIVEN = given();
const bows = Array.from({ length: 8 }, (_, i) => knobBow(WORLD, 7, i));
const shares = ['tuned', 'wrong', 'worse', 'excursion'] as const;

afterEach(() => { vi.restoreAllMocks(); });

it('prints one object with --json and nothing else, the same each time', async () => {
  const lines: string[] = [];
  vi.spyOn(console, 'log').mockImplementation((line: string) => { lines.push(line); });
  const options = coachOptions({ seed: '7', bows: '2', world: 'nominal', only: RIVAL_NAMES.join(','), workers: '' });
  if (typeof options === 'string') throw new Error(options);
  for (let i = 0; i < 2; i++) await coachBench(options, true, async (orders) => doHere(orders, GIVEN));
  expect(lines).toHaveLength(2);
  expect(lines[1]).toBe(lines[0]);
  const report = JSON.parse(lines[0] ?? '') as Report;
  expect(Object.keys(report)).toEqual(['kernel', 'calibration']);
  const [row] = report.kernel.nominal;
  expect(row).toMatchObject({ seed: '7', bows: 2 });
  expect(Object.keys(row?.policies ?? {}).toSorted()).toEqual(['coach', ...RIVAL_NAMES].toSorted());
  for (const policy of Object.values(row?.policies ?? {})) {
    for (const name of shares) expect(policy[name] >= 0 && policy[name] <= 1).toBe(true);
    // Nobody says anything by one shot.
    expect(policy.shots).toBeGreaterThanOrEqual(2);
  }
});

it('options that cannot be meant are refused in a sentence', () => {
  const raw = { seed: '901-903', bows: '10', world: 'all', only: 'coach,chart', workers: '' };
  expect(coachOptions(raw)).toMatchObject({ seeds: [901, 902, 903], bows: 10, rivals: ['chart', 'oracle'] });
  expect([{ seed: '3-1' }, { seed: 'x' }, { bows: '0' }, { world: 'mars' }, { workers: '-1' }, { only: 'nobody' }].map((one) => typeof coachOptions({ ...raw, ...one }))).toEqual(Array(6).fill('string'));
});

it('plays the second tune with what the first handed over, and with nothing', async () => {
  const report = await second([7], 3, undefined, secondHere);
  expect(report).toMatchObject({ bows: 3 });
  expect(Object.keys(report.policies)).toEqual(['carried', 'spreadAlone', 'nothing', 'oracle']);
  // What was learned is used: with it another number of shots is taken than without.
  expect(report.policies.carried.shots).not.toBe(report.policies.nothing.shots);
  expect(secondLines(report).join('\n')).toContain('response and spread carried');
});

it('the first shot does not know what bow it is: its luck is that of any shot, on small tears and on large ones', () => {
  // Without strays and rounding a shot's luck is normal with spread 1: over 2,000 its standard error is 0.016 and that of a mean of half of them 0.03.
  const lucks = Array.from({ length: 2000 }, (_, i) => {
    const bow = knobBow(WORLD, 11, i);
    const hands = new Hands({ ...WORLD, strays: 0 }, bow, TUNED);
    return { tear: Math.abs(bow.start), luck: (hands.shoot() - hands.tear()) / Math.hypot(bow.sd, 1 / 16 / Math.sqrt(12)) };
  });
  for (const half of [lucks.filter(({ tear }) => tear < 1), lucks.filter(({ tear }) => tear >= 1)]) {
    const mean = half.reduce((all, { luck }) => all + luck, 0) / half.length;
    const sd = Math.sqrt(half.reduce((all, { luck }) => all + (luck - mean) ** 2, 0) / half.length);
    expect(Math.abs(mean)).toBeLessThan(0.12);
    expect(Math.abs(sd - 1)).toBeLessThan(0.1);
  }
});

describe('in a mirror', () => {
  it.each(RIVAL_NAMES.filter((name) => name !== 'random'))('%s comes to the same end', (name) => {
    for (const bow of bows) expect(playRival(name, WORLD, bow, TUNED, -1)).toEqual(playRival(name, WORLD, bow, TUNED));
  });
  it('the coach decides the same of the height, whatever the other axis shows on which side; and twice the same', () => {
    const coach = new Coach(GIVEN.content, GIVEN.prepared, WORLD);
    for (const bow of bows.slice(0, 2)) {
      const once = coach.play(bow);
      expect(coach.play(bow)).toEqual(once);
      expect(coach.play(bow, -1)).toEqual(once);
    }
  });
});

describe('what is counted', () => {
  const straight = { start: 0.5, response: 0.1, sd: 0, seed: 1 };
  it('a bow in hands: its true tear, where it was, where it is left (by hand: 0.5 and 0.1 a step)', () => {
    const hands = new Hands({ ...WORLD, strays: 0 }, straight, TUNED);
    expect([hands.shoot(), hands.isInside()]).toEqual([0.5, false]);
    hands.moveTo(1);
    // 0.6 is no more than 1/8 in worse than 0.5; 0.7 is.
    expect(hands.outcome(false)).toMatchObject({ worse: false, excursion: false });
    hands.moveTo(2);
    expect(hands.outcome(false)).toMatchObject({ worse: true, excursion: true });
    hands.moveTo(-3);
    expect(hands.outcome(true)).toEqual({ fixable: true, declared: true, inside: true, worse: false, excursion: true, shots: 1, moves: 3 });
  });
  it('whether it could be tuned at all: by the steps of its travel', () => {
    expect([0.1, 0, -0.1, 0.01].map((response) => isFixable(WORLD, { ...straight, response }, TUNED))).toEqual([true, false, true, false]);
    // No reading, no doubt: a step too coarse to stop in between.
    expect(isFixable(WORLD, { ...straight, response: 1 }, TUNED)).toBe(false);
  });
  it('tuned is of the bows that can be, wrong of those that were declared', () => {
    const end = { fixable: true, declared: true, inside: true, worse: false, excursion: false, shots: 4, moves: 1 };
    const row = rowOf([end, { ...end, inside: false, shots: 6 }, { ...end, declared: false }, { ...end, fixable: false, inside: false, shots: 60 }]);
    expect([row.tuned.value, row.wrong.value, row.shots.value, row.unfixable.shots.value]).toEqual([1 / 3, 2 / 3, 14 / 3, 0]);
  });
  it('chances that were said: right as often as they came true', () => {
    const said = [0.96, 0.97, 0.98, 0.99].map((chance, i) => ({ chance, inside: i > 0 }));
    expect(calibration([...said, { chance: 0, inside: false }])).toMatchObject([{ from: 0, right: 0, count: 1 }, { from: 0.95, right: 0.75, said: expect.closeTo(0.98, 12), count: 4 }]);
  });
});
