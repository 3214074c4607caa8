// One shot with a practice bow: what really happened, which nobody at the bow sees, and what is told of it.

import { checks } from '../maths/check.ts';
import { degrees, radiansPerSecond, type Feet, type Fps, type Yards } from '../maths/units.ts';
import { inchesAt } from '../archery/impact-angle.ts';
import { speedFor } from '../archery/launch-speed.ts';
import type { Point } from '../archery/shots.ts';
import { mrad } from '../maths/units.ts';
import type { Random } from '../maths/random.ts';
import type { Tear } from '../machine/types.ts';
import { AIM_NOISE, SHOT_NOISE, tiredness } from './archer.ts';
import { arrowPush, massOf, type PracticeArrow } from './arrows.ts';
import { bowDeparture } from './bow.ts';
import { chanceOf, happens } from './chance.ts';
import { standing, type Condition } from './condition.ts';
import { departureOf, inAll, NO_PUSH, together, type Departure, type Push } from './departure.ts';
import { byTable, type Flight, type Flying } from './flight.ts';
import type { World } from './world.ts';

const must = checks('shoot');

/** What is to be shot: which arrow (by number; null for any of the tuning arrows), its nock turned by so many vanes, what it flies with, and at what. */
export interface Asked {
  readonly arrow: string | null;
  readonly nockTurn: number;
  readonly flying: Flying;
  readonly at: { readonly paper: Feet } | { readonly target: Yards };
}

export interface Happened {
  /** Tear in paper, or impact from the archer's own dot: inches. */
  readonly hole: Point;
  readonly arrow: string;
  /** How it left, luck included. */
  readonly departure: Departure;
  /** What the archer called it before looking. */
  readonly called: 'good' | 'bad';
  readonly flier: boolean;
  readonly contact: boolean;
}

/**
 * Shot number `condition.shots + 1`. The same number under the same condition is the same shot, whatever else was shot. Throws RangeError where the set
 * has no such arrow.
 */
export function shoot(world: World, condition: Condition, asked: Asked, flight: Flight = byTable): Happened {
  const { bow, archer, side } = world;
  const number = condition.shots + 1;
  const chance = chanceOf(world.seed, 'shot', number);
  const arrow = arrowShot(world, condition, asked.arrow, number);
  // Every draw is made for every shot, so that one trouble more or less leaves the luck of all else alone.
  const luck = drawn(chance);
  const flier = luck.fails < archer.fliers.often;
  const times = archer.noise * tiredness(archer, condition.shots - condition.rested) * (flier ? archer.fliers.times : 1);
  const touches = bow.contact !== null && !condition.contactCured && luck.touches < bow.contact.often;
  const hand = archer.torque === null || condition.handRelaxed ? 0 : archer.torque.always + side * archer.torque.spread * luck.hand;
  const push = together([
    { x: hand, y: 0 }, touches ? (bow.contact?.push ?? NO_PUSH) : NO_PUSH,
    arrowPush(world.set, arrow, asked.nockTurn, condition.newNocks.includes(arrow.number)),
  ]);
  const departure = inAll([bowDeparture(bow, standing(world, condition)), departureOf(push), noise(luck, side, times)]);
  const [speed, sighted] = [speedFor(bow.throws, arrow.mass), usualSpeed(world)];
  const straight = 'paper' in asked.at ? flight.tear(departure, speed, asked.at.paper) : flight.impact(departure, asked.flying, speed, sighted, asked.at.target);
  const aim = 'target' in asked.at ? aimed(luck, side, archer.noise, asked.at.target) : NO_PUSH;
  const called = flier ? luck.calls < archer.fliers.called : luck.calls < archer.callsGood;
  return { hole: together([straight, aim]), arrow: arrow.number, departure, called: called ? 'bad' : 'good', flier, contact: touches };
}

/** The speed of an arrow that weighs what its parts say: the sight is set with that. */
export const usualSpeed = ({ bow, set }: World): Fps => speedFor(bow.throws, massOf(set.parts, set.vanes));

/** Tuning arrows are shot in turn, without those that are left out. */
const TUNING = 3;
export const tuningArrows = ({ set }: World, { leftOut }: Pick<Condition, 'leftOut'>): readonly PracticeArrow[] =>
  set.arrows.filter(({ number }) => !leftOut.includes(number)).slice(0, TUNING);

function arrowShot(world: World, condition: Condition, wanted: string | null, number: number): PracticeArrow {
  const tuning = tuningArrows(world, condition);
  const arrow = wanted === null ? tuning[number % tuning.length] : world.set.arrows.find((one) => one.number === wanted);
  if (arrow === undefined) throw must.shoot.error(`there is no arrow ${wanted ?? 'left'} in this set; it has ${world.set.arrows.length}`);
  return arrow;
}

interface Luck {
  readonly angle: Push; readonly rate: Push; readonly aim: Push;
  readonly hand: number; readonly fails: number; readonly calls: number; readonly touches: number;
}

function drawn(chance: Random): Luck {
  const two = (): Push => ({ x: chance.normal(), y: chance.normal() });
  return { angle: two(), rate: two(), aim: two(), hand: chance.normal(), fails: chance.uniform(), calls: chance.uniform(), touches: chance.uniform() };
}

const noise = ({ angle, rate }: Luck, side: number, times: number): Departure => ({
  side: { angle: degrees(SHOT_NOISE.angle * times * side * angle.x), rate: radiansPerSecond(SHOT_NOISE.rate * times * side * rate.x) },
  height: { angle: degrees(SHOT_NOISE.angle * times * angle.y), rate: radiansPerSecond(SHOT_NOISE.rate * times * rate.y) },
});

function aimed({ aim }: Luck, side: number, times: number, distance: Yards): Point {
  const inch = inchesAt(mrad(AIM_NOISE * times), distance);
  return { x: inch * side * aim.x, y: inch * aim.y };
}

/** What is told of a shot: a tear or an impact and how it was called, or that no hole was found. */
export type Told = (Tear & { readonly called?: 'bad' }) | { readonly missed: true };

/** More than this (in) is no hole that can be read: a tear beyond 4, an impact beyond 24 from its dot. */
export const NO_TEAR = 4;
export const NO_IMPACT = 24;

/** What the archer reads from the hole of shot number `condition.shots + 1`: by the marks of a rule, a little off, and now and then from behind. */
export function read({ archer: { reads }, seed, side }: World, { shots }: Condition, { hole, called }: Happened, at: Asked['at']): Told {
  const chance = chanceOf(seed, 'reading', shots + 1);
  const paper = 'paper' in at;
  const [x, y, behind] = [side * chance.normal(), chance.normal(), happens(chance, reads.mirrored)];
  const [mark, error, most] = paper ? [reads.paper, reads.error, NO_TEAR] : [reads.target, 0, NO_IMPACT];
  const seen = { x: byMark((hole.x + error * x) * (paper && behind ? -1 : 1), mark), y: byMark(hole.y + error * y, mark) };
  if (Math.max(Math.abs(seen.x), Math.abs(seen.y)) > most) return { missed: true };
  return called === 'bad' ? { ...seen, called } : seen;
}

// A rule reads the same to both sides; and never -0.
const byMark = (inches: number, mark: number): number => Math.sign(inches) * mark * Math.round(Math.abs(inches) / mark) + 0;
