// An arrow flown from the string through a plane across its way, by the classical Runge-Kutta method of fourth order. Distances count from where
// the point is as the arrow leaves the string; fromPoint (from-hand.ts) makes them of the archer's own.
// Rejected: a package whose steps fit themselves. Steps that stay are the same to the last bit on either side of a mirror, and err by less than 2e-5 in.

import type { Checks } from '../../maths/check.ts';
import { FOOT, INCH } from '../../maths/exact.ts';
import { degrees, feet, fps, radiansPerSecond, type Degrees, type Feet, type Fps } from '../../maths/units.ts';
import type { Leaving } from '../launch.ts';
import type { Point } from '../shots.ts';
import type { FlightArrow } from './arrow.ts';
import { bodyOf } from './body.ts';
import { changeOf, type Across, type Motion } from './forces.ts';
import { checkWorld, type World } from './world.ts';

/** An arrow as it leaves the string. What is left out is 0. */
export interface Shot {
  readonly arrow: FlightArrow;
  readonly speed: Fps;
  /** Its nose out of its way, to the right and up above 0, and how fast that grows. */
  readonly side?: Leaving;
  readonly height?: Leaving;
  /** Its way out of straight ahead and level, to the right and up above 0. */
  readonly bearing?: Degrees;
  readonly elevation?: Degrees;
}

/** Beyond these the model says nothing: slants are not small there, shots not flat. An arrow that turns round on its way is refused besides. */
export const FLIGHT_LIMITS = {
  slowest: fps(50), fastest: fps(500), farthest: feet(300), angle: degrees(30), rate: radiansPerSecond(30), way: degrees(15),
} as const;

/** Where one end of the arrow goes through (in), when (s after the string), and how fast the arrow is then. */
export interface Passage extends Point { readonly time: number; readonly speed: Fps }

/** Point and nock of a shot, each as it goes through the plane at this distance. Throws RangeError in the name that `must` carries where that cannot be
 *  meant or flown. */
// Example: flyThrough(checks('flyThrough').flyThrough, { arrow: { length: 28, diameter: 0.25, drag: 2, shaft: 9, point: 100, head: { nose: 0.35, drag: 0 } },
// speed: 280, bearing: 1, elevation: 1 }, 60, { density: 1.2, gravity: 9.8, crossFlow: 1.1, step: 0.004 }).point.y is 3.867.
export function flyThrough(must: Checks, shot: Shot, distance: Feet, world: World): { readonly point: Passage; readonly nock: Passage } {
  checkWorld(must, world);
  checkShot(must, shot);
  within(must, 'the distance', distance, 0, FLIGHT_LIMITS.farthest, 'ft');
  const body = bodyOf(must, shot.arrow);
  const change = changeOf(body, world);
  const [atPoint, atNock] = [distance * FOOT - body.toTip, distance * FOOT + body.toNock];
  const first = flown(must, change, launched(shot, body.toTip), atPoint, world.step);
  const then = flown(must, change, first, atNock, world.step);
  return { point: passage(first, body.toTip), nock: passage(then, -body.toNock) };
}

interface Moment extends Motion { readonly time: number }

const STRAIGHT: Leaving = { angle: degrees(0), rate: radiansPerSecond(0) };

function checkShot(must: Checks, { speed, side = STRAIGHT, height = STRAIGHT, bearing = degrees(0), elevation = degrees(0) }: Shot): void {
  const { slowest, fastest, angle, rate, way } = FLIGHT_LIMITS;
  within(must, "the arrow's speed", speed, slowest, fastest, 'fps');
  for (const leaving of [side, height]) {
    within(must, 'the angle', leaving.angle, -angle, angle, 'degrees');
    within(must, 'the rate', leaving.rate, -rate, rate, 'rad/s');
  }
  within(must, 'the bearing', bearing, -way, way, 'degrees');
  within(must, 'the elevation', elevation, -way, way, 'degrees');
}

function within(must: Checks, what: string, value: number, least: number, most: number, unit: string): void {
  if (!(value >= least && value <= most)) throw must.error(`${what} is ${value}; ${least} to ${most} ${unit} are needed`);
}

const radians = (angle: Degrees): number => (angle * Math.PI) / 180;

function launched({ speed, side = STRAIGHT, height = STRAIGHT, bearing = degrees(0), elevation = degrees(0) }: Shot, toTip: number): Moment {
  const fast = speed * FOOT;
  const [right, up] = [radians(bearing), radians(elevation)];
  const across = (way: number, { angle, rate }: Leaving, by: number): Across => ({ at: 0, speed: by, turn: way + radians(angle), turning: rate });
  return {
    time: 0, x: -toTip, speed: fast * Math.cos(up) * Math.cos(right),
    side: across(right, side, fast * Math.cos(up) * Math.sin(right)), height: across(up, height, fast * Math.sin(up)),
  };
}

/** m. */
const THERE = 1e-9;
/** s; no arrow takes so long. */
const LONGEST = 20;
/** Not round yet, rad, and onwards more than aside. */
const flies = ({ turn, speed }: Across, onwards: number): boolean => Math.abs(turn) < Math.PI / 2 && Math.abs(speed) < onwards;

/** The moment at which the balance point has come to x (m). */
function flown(must: Checks, change: (now: Motion) => Motion, from: Moment, x: number, step: number): Moment {
  let now = from;
  while (x - now.x > THERE) {
    now = stepped(change, now, Math.min(step, (x - now.x) / now.speed));
    if (!(now.time < LONGEST && flies(now.side, now.speed) && flies(now.height, now.speed))) {
      throw must.error('the arrow does not fly so far: it turns round, stops or only falls; give it a launch, or parts, that let it fly');
    }
  }
  return now;
}

function stepped(change: (now: Motion) => Motion, now: Moment, time: number): Moment {
  const first = change(now);
  const second = change(moved(now, first, time / 2));
  const third = change(moved(now, second, time / 2));
  const fourth = change(moved(now, third, time));
  const [outer, inner] = [time / 6, time / 3];
  return { ...moved(moved(moved(moved(now, first, outer), second, inner), third, inner), fourth, outer), time: now.time + time };
}

const moved = (now: Motion, by: Motion, time: number): Motion =>
  ({ x: now.x + time * by.x, speed: now.speed + time * by.speed, side: movedAcross(now.side, by.side, time), height: movedAcross(now.height, by.height, time) });
const movedAcross = (now: Across, by: Across, time: number): Across =>
  ({ at: now.at + time * by.at, speed: now.speed + time * by.speed, turn: now.turn + time * by.turn, turning: now.turning + time * by.turning });

/** Of an end so far ahead of the balance point (m). */
function passage({ time, speed, side, height }: Moment, ahead: number): Passage {
  const across = ({ at, turn }: Across): number => (at + ahead * turn) / INCH;
  return { x: across(side), y: across(height), time, speed: fps(Math.hypot(speed, side.speed, height.speed) / FOOT) };
}
