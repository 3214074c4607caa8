// What holds for every number-function alike: nothing that is no number gets in or comes out, the order of shots and the side of the bow never show,
// and units are only a way to write. Driven by the registry.

import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FUNCTIONS, type Any, type Entry } from './functions.ts';
import {
  changed, factorOf, hasAnyOrder, list, mirrored, record, scaled, shuffled, spoilt, spotsIn, turnsWith, valuesOf, type Leaf, type Shape, type Side, type Unit,
} from './shape.ts';

const SIDES: readonly Side[] = ['side', 'height'];
const call = (fn: Any, args: readonly unknown[]): unknown => Reflect.apply(fn, undefined, args);
/** All arguments as one value. */
const shapeOf = ({ args }: Entry): Shape => record(Object.fromEntries(args.map((shape, i) => [`${i}`, shape])));
const asOne = (args: readonly unknown[]): unknown => Object.fromEntries(args.map((one, i) => [`${i}`, one]));
const asArgs = (one: unknown): readonly unknown[] => Object.values(one ?? {});
const argsOf = (entry: Entry, where: 'on marks' | 'anywhere'): fc.Arbitrary<readonly unknown[]> =>
  fc.tuple(...entry.args.map((shape) => valuesOf(shape, where))).map((args) => entry.arrange?.(args) ?? args);
const outcomeOf = (entry: Entry, args: readonly unknown[], fn = entry.fn): unknown => {
  const outcome = call(fn, args);
  return entry.says === undefined || outcome === null ? outcome : call(entry.says, [outcome, ...args]);
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;
/** Whether two outcomes are the same: numbers by `alike`, everything else exactly. */
function alike(a: unknown, b: unknown, numbers: (a: number, b: number, at: string) => boolean, at = ''): boolean {
  if (typeof a === 'number' && typeof b === 'number') return numbers(a, b, at);
  if (!isObject(a) || !isObject(b)) return a === b;
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => alike(a[name], b[name], numbers, Array.isArray(a) ? `${at}[${name}]` : `${at}.${name}`));
}
const show = (value: unknown): string => (value === undefined ? 'nothing' : shown(value));
const shown = (value: unknown): string => JSON.stringify(value, (_key, one: unknown) => (typeof one === 'number' && !Number.isFinite(one) ? String(one) : one));
function same(found: unknown, expected: unknown, args: readonly unknown[]): void {
  // Of 0 and -0 the archer never hears the difference.
  if (!alike(found, expected, (a, b) => a === b)) expect.fail(`${show(found)} is not ${show(expected)}; told ${show(args)}`);
}

/** Few, for there are some hundred functions; every run draws others. With fifty times as many of each no law was broken. */
const RUNS = 20;
const named = (entries: readonly Entry[]): readonly (readonly [string, Entry])[] => entries.map((entry) => [entry.fn.name, entry] as const);
const holds = (entry: Entry, law: (args: readonly unknown[]) => void, numRuns = RUNS, where: 'on marks' | 'anywhere' = 'on marks'): void =>
  fc.assert(fc.property(argsOf(entry, where), law), { numRuns: Math.ceil(numRuns / (entry.slow ?? 1)) });

describe('the registry', () => {
  const FOLDERS = ['maths', 'archery'];
  const files = FOLDERS.flatMap((folder) => readdirSync(new URL(`../../src/${folder}`, import.meta.url), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts')).map((name) => `${folder}/${name}`));
  const registered = new Set<unknown>(FUNCTIONS.map(({ fn }) => fn));
  it.each(files)('has every exported function of %s', async (file) => {
    const exported = await import(new URL(`../../src/${file}`, import.meta.url).href) as Readonly<Record<string, unknown>>;
    const missing = Object.entries(exported).filter(([, value]) => typeof value === 'function' && !registered.has(value)).map(([name]) => name);
    expect(missing, 'exported, and not in tests/properties/functions.ts').toEqual([]);
  });
  it('gives each function arguments that it takes', () => {
    for (const entry of FUNCTIONS) holds(entry, (args) => void outcomeOf(entry, args));
  });
  it('gives a reason wherever something that is no number may stand, and wherever a law is left out', () => {
    const reasons = FUNCTIONS.flatMap((entry) => [
      ...Object.values(entry.fixed ?? {}), ...Object.values(entry.oneSided ?? {}),
      ...leavesIn(shapeOf(entry)).flatMap(({ may }) => Object.values(may)),
    ]);
    expect(reasons.length).toBeGreaterThan(20);
    expect(reasons.filter((why) => why.length < 10)).toEqual([]);
  });
});

function leavesIn(shape: Shape): readonly Leaf[] {
  switch (shape.kind) {
    case 'number': return [shape];
    case 'list': return leavesIn(shape.each);
    case 'record': return Object.values(shape.fields).flatMap(leavesIn);
    case 'maybe': return leavesIn(shape.of);
    case 'words': return [];
  }
}

const withNumbers = FUNCTIONS.filter((entry) => leavesIn(shapeOf(entry)).length > 0);
const NO_NUMBERS = [['NaN', NaN], ['Infinity', Infinity], ['-Infinity', -Infinity]] as const;

describe('what is no number', () => {
  it.each(named(withNumbers))('%s: throws a RangeError that begins with its name and says why, wherever it stands', (name, entry) => {
    const shape = shapeOf(entry);
    holds(entry, (args) => {
      for (const { leaf, at } of spotsIn(shape, asOne(args))) {
        for (const [word, bad] of NO_NUMBERS) {
          const told = asArgs(spoilt(shape, asOne(args), at, bad));
          const where = `${word} at ${at} of ${show(told)}`;
          const refusal = refusalOf(() => call(entry.fn, told));
          if (refusal === null) {
            if (leaf.may[word] === undefined) expect.fail(`${where} is taken`);
            continue;
          }
          expect(refusal, where).toBeInstanceOf(RangeError);
          const { message } = refusal as RangeError;
          expect(message.startsWith(`${entry.speaksAs ?? name}: `), `${where}: "${message}"`).toBe(true);
          // The figure that was refused, and some words: not the name alone. An infinity that is allowed may still leave too little to go on.
          if (leaf.may[word] === undefined) expect(message, where).toMatch(bad !== bad ? /NaN/ : /Infinity/);
          expect(message.length, message).toBeGreaterThan(name.length + 12);
        }
      }
    }, 3);
  });
  it.each(named(FUNCTIONS))('%s: never comes out, and chances and sizes stay what they are', (_name, entry) => {
    const gives = entry.gives;
    for (const where of ['on marks', 'anywhere'] as const) {
      holds(entry, (args) => {
        const outcome = outcomeOf(entry, args);
        expect(show(outcome), show(args)).not.toContain('NaN');
        for (const { leaf, at, value } of spotsIn(gives, outcome)) {
          const right = 'chance' in leaf.unit ? value >= 0 && value <= 1 : 'atLeast0' in leaf.unit ? value >= 0 : true;
          if (!right) expect.fail(`${at} is ${value}; told ${show(args)}`);
        }
      }, RUNS, where);
    }
  });
});

const refusalOf = (act: () => unknown): unknown => {
  try {
    act();
    return null;
  } catch (refusal) {
    return refusal;
  }
};

describe('the order in which things are told', () => {
  it.each(named(FUNCTIONS.filter((entry) => hasAnyOrder(shapeOf(entry)))))('%s: never shows, to the last bit', (_name, entry) => {
    const shape = shapeOf(entry);
    fc.assert(fc.property(argsOf(entry, 'on marks'), fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 80, maxLength: 80 }), (args, keys) => {
      let next = 0;
      const told = asArgs(shuffled(shape, asOne(args), () => keys[next++ % keys.length] ?? 0));
      const plain = (outcome: unknown): unknown => (entry.inNoOrder === undefined || outcome === null ? outcome : call(entry.inNoOrder, [outcome]));
      same(plain(outcomeOf(entry, told)), plain(outcomeOf(entry, args)), args);
    }), { numRuns: RUNS });
  });
});

describe('the mirror', () => {
  const cases = SIDES.flatMap((side) => FUNCTIONS
    .filter((entry) => entry.oneSided?.[side] === undefined && (turnsWith(shapeOf(entry), side) || (side === 'side' && entry.reflects !== undefined)))
    .map((entry) => [entry.fn.name, side, entry] as const));
  it.each(cases)('%s: the other %s is told the mirrored answer, to the last bit', (_name, side, entry) => {
    const shape = shapeOf(entry);
    for (const where of ['on marks', 'anywhere'] as const) {
      holds(entry, (args) => {
        const { args: turn = (...all: readonly unknown[]) => asArgs(mirrored(shape, asOne(all), side)), fn = entry.fn, outcome: back } = entry.reflects ?? {};
        const found = outcomeOf(entry, call(turn, args) as readonly unknown[], fn);
        same(back === undefined ? found : call(back, [found]), mirrored(entry.gives, outcomeOf(entry, args), side), args);
      }, RUNS, where);
    }
  });
});

describe('the unit', () => {
  const basesOf = (entry: Entry): readonly string[] => [...new Set(leavesIn(shapeOf(entry)).flatMap(({ unit }) => Object.keys(unit)))].filter((base) => base !== 'chance');
  const ways = FUNCTIONS.flatMap((entry) => [
    ...basesOf(entry).filter((base) => entry.fixed?.[base] === undefined).map((base): Unit => ({ [base]: 1 })), ...(entry.together ?? []),
  ].map((way) => [entry.fn.name, Object.keys(way).join(' and '), entry, way] as const));

  it.each(ways)('%s: %s counted in other units is the same answer in other units', (_name, _base, entry, way) => {
    const shape = shapeOf(entry);
    const by = (factor: number): Unit => Object.fromEntries(Object.entries(way).map(([base, power]) => [base, factor ** power]));
    const told = (args: readonly unknown[], factors: Unit): unknown => outcomeOf(entry, asArgs(scaled(shape, asOne(args), factors)));
    // By a power of two nothing is rounded.
    for (const factor of [1 / 8, 32]) {
      holds(entry, (args) => same(told(args, by(factor)), scaled(entry.gives, outcomeOf(entry, args), by(factor)), args), 10);
    }
    // From inches to millimetres everything is; so figures off the marks, where no two are alike and no verdict hangs on the last bit.
    holds(entry, (args) => {
      const [found, expected] = [told(args, by(25.4)), outcomeOf(entry, args)];
      const units = new Map(spotsIn(entry.gives, expected).map(({ leaf, at }) => [at, leaf.unit]));
      const near = (a: number, b: number, at: string): boolean => a === b || Math.abs(a / factorOf(units.get(at) ?? {}, by(25.4)) - b) <= 1e-9 * Math.max(1, Math.abs(b));
      if (!alike(found, expected, near)) expect.fail(`${show(found)} is not ${show(expected)} in other units; told ${show(args)}`);
    }, RUNS, 'anywhere');
  });
  it('is looked at for lengths, distances, masses, weights, speeds, adjustments and angles', () => {
    expect(new Set(ways.flatMap(([, , , way]) => Object.keys(way)))).toEqual(new Set(['length', 'far', 'mass', 'force', 'speed', 'knob', 'tilt', 'any']));
  });
});

describe('the laws themselves', () => {
  // A law that nothing breaks says nothing: a function with each fault is caught by its own law.
  const shots = list(record({ x: leaf({ turns: 'side' }) }), 1, 5);
  function leaf(more: Partial<Leaf> = {}): Leaf {
    return { kind: 'number', unit: { length: 1 }, low: -2, high: 2, mark: 1 / 16, may: {}, ...more };
  }
  it('tell an order, a side, a built-in size and a last bit', () => {
    const told = [{ x: 0.5 }, { x: -0.25 }, { x: 1 }];
    expect(show(shuffled(shots, told, (() => { let n = 3; return () => n--; })()))).toBe(show(told.toReversed()));
    expect(mirrored(shots, told, 'side')).toEqual([{ x: -0.5 }, { x: 0.25 }, { x: -1 }]);
    expect(mirrored(shots, told, 'height')).toEqual(told);
    expect(scaled(shots, told, { length: 4 })).toEqual([{ x: 2 }, { x: -1 }, { x: 4 }]);
    expect(factorOf({ length: 2, knob: -1 }, { length: 4, knob: 2 })).toBe(8);
    expect(spotsIn(shots, told).map(({ at }) => at)).toEqual(['[0].x', '[1].x', '[2].x']);
    expect(changed(shots, told, (_leaf, value, at) => (at === '[1].x' ? NaN : value))).toEqual([{ x: 0.5 }, { x: NaN }, { x: 1 }]);
    expect(() => same(0.1 + 0.2, 0.3, [])).toThrow('is not 0.3');
    expect(() => same({ a: [1, null] }, { a: [1, 0] }, [])).toThrow('is not');
    expect(() => same({ a: 1 }, { a: 1, b: 2 }, [])).toThrow('is not');
    same({ a: [-0, 'b'] }, { a: [0, 'b'] }, []);
  });
});
