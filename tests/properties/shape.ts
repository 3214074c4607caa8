// The shape of what goes into a function and comes out of it: where the numbers stand, in which unit, which way a mirror turns them, and whether
// the order of a list means anything. From one shape follow valid arguments, the same in other units, mirrored, in another order, and spoilt.

import fc from 'fast-check';

/** Exponents of base quantities: a length is { length: 1 }, an area { length: 2 }, inches for each yard { length: 1, far: -1 }. */
export type Unit = Readonly<Record<string, number>>;
export type Side = 'side' | 'height';
/** Where a number that is none may stand, and why: in words. */
export type Allowed = Readonly<Partial<Record<'NaN' | 'Infinity' | '-Infinity', string>>>;

export interface Leaf {
  readonly kind: 'number';
  readonly unit: Unit;
  readonly low: number;
  readonly high: number;
  /** Figures are told on marks, so ties are common. */
  readonly mark: number;
  /** Which mirror turns its sign: a turn goes the other way round in either. */
  readonly turns?: Side | 'either';
  readonly may: Allowed;
  readonly among?: readonly number[];
}
interface ListOf { readonly kind: 'list'; readonly each: Shape; readonly least: number; readonly most: number; readonly ordered: boolean }
interface RecordOf { readonly kind: 'record'; readonly fields: Readonly<Record<string, Shape>>; readonly tidy: (value: Values) => Values }
interface MaybeOf { readonly kind: 'maybe'; readonly of: Shape; readonly otherwise: null | undefined }
interface Wordy { readonly kind: 'words'; readonly among: readonly unknown[] }
export type Shape = Leaf | ListOf | RecordOf | MaybeOf | Wordy;
export type Values = Readonly<Record<string, number>>;

interface LeafOptions { readonly turns?: Side | 'either'; readonly may?: Allowed; readonly among?: readonly number[] }
export const number = (unit: Unit, low: number, high: number, mark: number, { may = {}, ...rest }: LeafOptions = {}): Leaf =>
  ({ kind: 'number', unit, low, high, mark, may, ...rest });
export const list = (each: Shape, least: number, most: number, order: 'any order' | 'in order' = 'any order'): ListOf =>
  ({ kind: 'list', each, least, most, ordered: order === 'in order' });
/** `tidy` brings figures that were drawn singly into a state in which they can stand together. */
export const record = (fields: Readonly<Record<string, Shape>>, tidy: RecordOf['tidy'] = (value) => value): RecordOf => ({ kind: 'record', fields, tidy });
export const maybe = (of: Shape, otherwise: null | undefined): MaybeOf => ({ kind: 'maybe', of, otherwise });
export const words = (...among: readonly unknown[]): Wordy => ({ kind: 'words', among });

/** Valid values: on their marks, where ties are common, or anywhere between, where there are none. */
export function valuesOf(shape: Shape, where: 'on marks' | 'anywhere'): fc.Arbitrary<unknown> {
  switch (shape.kind) {
    case 'number': return numbersOf(shape, where);
    case 'list': return fc.array(valuesOf(shape.each, where), { minLength: shape.least, maxLength: shape.most });
    case 'record': {
      const fields = Object.fromEntries(Object.entries(shape.fields).map(([name, of]) => [name, valuesOf(of, where)]));
      return fc.record(fields).map((value) => (isValues(value) ? shape.tidy(value) : value));
    }
    case 'maybe': return fc.oneof(fc.constant(shape.otherwise), { arbitrary: valuesOf(shape.of, where), weight: 3 });
    case 'words': return fc.constantFrom(...shape.among);
  }
}

function numbersOf({ low, high, mark, among }: Leaf, where: 'on marks' | 'anywhere'): fc.Arbitrary<number> {
  if (among !== undefined) return fc.constantFrom(...among);
  if (where === 'on marks' || Number.isInteger(mark)) return fc.integer({ min: Math.ceil(low / mark), max: Math.floor(high / mark) }).map((n) => n * mark);
  // Evenly: else the ends and 0 come so often that figures are alike after all.
  return fc.noBias(fc.integer({ min: 0, max: PARTS })).map((n) => low + (high - low) * (n / PARTS));
}
const PARTS = 2 ** 31 - 1;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;
const isValues = (value: unknown): value is Values => isObject(value) && Object.values(value).every((one) => typeof one === 'number');

/** The same value with each of its numbers changed; `at` tells where a number stands. */
export function changed(shape: Shape, value: unknown, change: (leaf: Leaf, value: number, at: string) => number, at = ''): unknown {
  if (value === null || value === undefined) return value;
  if (shape.kind === 'number') return typeof value === 'number' ? change(shape, value, at) : value;
  if (shape.kind === 'maybe') return changed(shape.of, value, change, at);
  if (shape.kind === 'list' && Array.isArray(value)) return value.map((one: unknown, i) => changed(shape.each, one, change, `${at}[${i}]`));
  if (shape.kind === 'record' && isObject(value)) {
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, changed(shape.fields[name] ?? words(), one, change, `${at}.${name}`)]));
  }
  return value;
}

export interface Spot { readonly leaf: Leaf; readonly at: string; readonly value: number }

/** Where the numbers stand. */
export function spotsIn(shape: Shape, value: unknown): readonly Spot[] {
  const spots: Spot[] = [];
  changed(shape, value, (leaf, one, at) => {
    spots.push({ leaf, at, value: one });
    return one;
  });
  return spots;
}

/** The value with another number at one spot. */
export const spoilt = (shape: Shape, value: unknown, spot: string, by: number): unknown => changed(shape, value, (_leaf, one, at) => (at === spot ? by : one));

export const mirrored = (shape: Shape, value: unknown, side: Side): unknown => changed(shape, value, (leaf, one) => (leaf.turns === side || leaf.turns === 'either' ? -one : one));

/** In other units: a base quantity is counted in units `factors` times as small. */
export const factorOf = (unit: Unit, factors: Unit): number => Object.entries(unit).reduce((product, [base, power]) => product * (factors[base] ?? 1) ** power, 1);
export const scaled = (shape: Shape, value: unknown, factors: Unit): unknown => changed(shape, value, (leaf, one) => one * factorOf(leaf.unit, factors));

/** Lists whose order means nothing, each in another order; `uniform` gives numbers from 0 to 1. */
export function shuffled(shape: Shape, value: unknown, uniform: () => number): unknown {
  if (shape.kind === 'maybe') return shuffled(shape.of, value, uniform);
  if (shape.kind === 'list' && Array.isArray(value)) {
    const each = value.map((one: unknown) => shuffled(shape.each, one, uniform));
    return shape.ordered ? each : each.map((one) => ({ one, key: uniform() })).toSorted((a, b) => a.key - b.key).map(({ one }) => one);
  }
  if (shape.kind === 'record' && isObject(value)) {
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, shuffled(shape.fields[name] ?? words(), one, uniform)]));
  }
  return value;
}

/** Whether a list is in it whose order means nothing. */
export function hasAnyOrder(shape: Shape): boolean {
  switch (shape.kind) {
    case 'list': return !shape.ordered || hasAnyOrder(shape.each);
    case 'record': return Object.values(shape.fields).some(hasAnyOrder);
    case 'maybe': return hasAnyOrder(shape.of);
    default: return false;
  }
}

/** Whether a mirror turns a number in it. */
export function turnsWith(shape: Shape, side: Side): boolean {
  switch (shape.kind) {
    case 'number': return shape.turns === side || shape.turns === 'either';
    case 'list': return turnsWith(shape.each, side);
    case 'record': return Object.values(shape.fields).some((field) => turnsWith(field, side));
    case 'maybe': return turnsWith(shape.of, side);
    case 'words': return false;
  }
}
