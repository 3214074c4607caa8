// Shots of simulated archers, as the published tables have them.

import type { Random } from '../../../src/maths/random.ts';
import type { Point } from '../../../src/archery/shots.ts';

/** One shot in twenty strays: its noise is four times as large, on both axes alike. */
const STRAYING = 0.05;
const FOURFOLD = 4;

export const times = <T>(n: number, make: (i: number) => T): T[] => Array.from({ length: n }, (_, i) => make(i));
export const mean = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0) / values.length;

/** A shot around the origin with standard deviation `sd` on each axis. */
export const honest = (random: Random, sd = 1): Point => ({ x: sd * random.normal(), y: sd * random.normal() });
export const straying = (random: Random, sd = 1): Point => honest(random, random.uniform() < STRAYING ? FOURFOLD * sd : sd);
/** The same on one axis. */
export const strayingOnLine = (random: Random, sd: number): number => (random.uniform() < STRAYING ? FOURFOLD * sd : sd) * random.normal();

/** A point at a distance in a direction drawn by chance. */
export function away(random: Random, distance: number): Point {
  const angle = 2 * Math.PI * random.uniform();
  return { x: distance * Math.cos(angle), y: distance * Math.sin(angle) };
}

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const middle = (points: readonly Point[]): Point => ({ x: mean(points.map((p) => p.x)), y: mean(points.map((p) => p.y)) });

/** A spread of 1 as it is known after `df` degrees of freedom; exactly 1 after infinitely many. */
export function knownSpread(random: Random, df: number): number {
  if (df === Infinity) return 1;
  let squares = 0;
  for (let i = 0; i < df; i++) squares += random.normal() ** 2;
  return Math.sqrt(squares / df);
}

/** Tears are told in sixteenths of an inch. */
export const sixteenths = (inches: number): number => Math.round(inches * 16) / 16;
