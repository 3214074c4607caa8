// Turning the nocks of a whole set, so that all its arrows err the same way. An arrow's own error turns with its shaft and does not
// become smaller (nock-turn.ts); but where all errors point one way they are no difference between arrows any more, only one
// tear that is common to all, and that is tuned out with the bow.
//
// By simulation, twelve arrows that truly differ by one spread of a shot, three shots each: 0.77 of their scatter is left with three
// vanes and 0.73 with four; where they differ by two spreads 0.70 and 0.66, by half a spread 0.88 and 0.85: hardly worth the shots.

import { checks } from '../maths/check.ts';
import { sum } from '../maths/sum.ts';
import { predictTurns } from './nock-turn.ts';
import { checkPoint, type Point } from './shots.ts';

const must = checks('indexSet', 'worthTurning', 'staysTurned');

/** One arrow as it stands now. */
export interface ArrowToIndex {
  readonly arrow: string;
  /** Its own error, already shrunk (arrow-set.ts), inches. */
  readonly effect: Point;
  /** How unsure that is on one axis, inches; 0 where it is known. */
  readonly unsure: number;
  /** How many ways round its nock can stand; 1 where it does not turn. */
  readonly ways: number;
}

export interface SetIndex {
  /** By how many ways each shaft is turned clockwise, from as it stands: 0 to ways - 1. In the order given. */
  readonly turns: readonly { readonly arrow: string; readonly turn: number }[];
  /** What is left common to all, on top of the typical tear: the bow's to tune out, inches. */
  readonly common: Point;
  /** How far the arrows lie from their own middle on one axis, as is to be expected: as they stand, and turned; inches. */
  readonly before: number;
  readonly after: number;
}

/** Directions that are tried in the span of one way round. */
const STEPS = 72;
/** Scatters and distances that differ by less (in) are alike: only rounding tells them apart. */
const ALIKE = 1e-9;
/** Nobody reads a tear closer than this (in): arrows that differ by less are alike. */
const READ = 1 / 16;
/** The least share of the scatter that must go. */
const WORTH = 0.15;

/** The typical arrow, from which the errors were read: what is common to all already. */
export interface TypicalTear {
  readonly tear: Point;
  /** How unsure it is on one axis, inches. What it is wrong by is the bow's, and so scatters arrows that are turned against each other. */
  readonly unsure: number;
}

/**
 * The turn of each arrow with which all err the same way: directions are tried all round, 72 of them to one way round of a nock, each arrow takes
 * its nearest turn, and the direction with the least scatter is kept. That leaves as many as there are ways round, all alike in scatter:
 * the one that leaves the least tear for the bow, then the one with the fewest nocks turned. Whether it is worth the work is another
 * question (worthTurning). Throws RangeError on fewer than two arrows, two of one name, or a number that cannot be meant.
 */
// Example: indexSet([{ arrow: 'a', effect: { x: 1, y: 0 }, unsure: 0, ways: 4 }, { arrow: 'b', effect: { x: 0, y: 1 }, unsure: 0, ways: 1 }],
// { tear: { x: 0, y: 0 }, unsure: 0 }) is
// { turns: [{ arrow: 'a', turn: 3 }, { arrow: 'b', turn: 0 }], common: { x: 0, y: 1 }, before: 0.7071, after: 0 }.
export function indexSet(arrows: readonly ArrowToIndex[], typical: TypicalTear): SetIndex {
  checkPoint(must.indexSet, typical.tear, 'the typical tear');
  must.indexSet.amount(typical.unsure, 'how unsure the typical tear is');
  for (const { effect, unsure, ways } of arrows) {
    checkPoint(must.indexSet, effect, "an arrow's own error");
    must.indexSet.amount(unsure, 'how unsure that is');
    must.indexSet.whole(ways, 'the ways round of a nock', 1);
    if (ways > MOST) throw must.indexSet.error(`a nock with ${ways} ways round cannot be turned; give a whole number, like 3`);
  }
  if (new Set(arrows.map(({ arrow }) => arrow)).size < arrows.length) throw must.indexSet.error('two arrows have one name; number each arrow once');
  if (arrows.length < 2) throw must.indexSet.error('one arrow is no set; give two at least');
  const errors = arrows.map(({ effect, ways }) => predictTurns(NOWHERE, effect, ways));
  const middles = arrows.map(({ ways }) => predictTurns(NOWHERE, { x: 0, y: typical.unsure }, ways));
  const luck = sum(arrows.map(({ unsure }) => unsure ** 2)) / arrows.length;
  const tried = (turns: readonly number[]): Tried => {
    const stand = turned(errors, turns);
    const common = middle(stand);
    return {
      turns, common, left: Math.hypot(typical.tear.x + common.x, typical.tear.y + common.y),
      expected: Math.sqrt(scatter(stand) + 2 * scatter(turned(middles, turns)) + luck),
    };
  };
  const asIs = tried(arrows.map(() => 0));
  // Many directions lead to the same turns.
  const ways = new Map(directions(arrows).map((towards) => errors.map((tears) => nearestTurn(tears, towards))).map((turns) => [turns.join(), turns]));
  const best = [...ways.values()].map(tried).reduce((a, b) => better(arrows, a, b), asIs);
  return { turns: arrows.map(({ arrow }, i) => ({ arrow, turn: best.turns[i] ?? 0 })), common: best.common, before: asIs.expected, after: best.expected };
}

/**
 * Whether so much of the scatter is expected to go that it is worth shooting the set anew: 15 % at least, of a scatter that can be read at all
 * (1/16 in). Arrows that hardly differ beside the luck in their shots promise less. Throws RangeError unless both are 0 or more.
 */
// Example: worthTurning({ before: 0.2, after: 0.15 }) is true; worthTurning({ before: 0.2, after: 0.18 }) is false.
export function worthTurning({ before, after }: Pick<SetIndex, 'before' | 'after'>): boolean {
  must.worthTurning.notNegative(before, 'the scatter as they stand');
  must.worthTurning.notNegative(after, 'the scatter when turned');
  return before >= READ && after <= (1 - WORTH) * before;
}

/** One arrow of a set that was turned and shot anew: its error as it stood, as it was foretold, and as it is seen; inches. */
export interface ArrowTurned { readonly stood: Point; readonly foretold: Point; readonly seen: Point }

/**
 * Whether the nocks are to stay as they were turned: the arrows lie closer together than before (how much they truly differ, inches), and they
 * lie nearer to where they were foretold than to where they stood. By simulation, twelve arrows that were worth turning, three shots each
 * before and two or three after: where errors turn with their shafts they stay in 94 of 100 sets, where nothing turns in at most 1; where each
 * turn has an error of its own in about half. Throws RangeError on no arrows, or a number that cannot be meant.
 */
// Example: staysTurned([{ stood: { x: 1, y: 0 }, foretold: { x: 0, y: 1 }, seen: { x: 0, y: 0.9 } }, { stood: { x: 0, y: 1 }, foretold: { x: 0, y: 1 },
// seen: { x: 0, y: 1 } }], { before: 0.7, after: 0.1 }) is true.
export function staysTurned(arrows: readonly ArrowTurned[], { before, after }: Pick<SetIndex, 'before' | 'after'>): boolean {
  must.staysTurned.notNegative(before, 'the scatter before');
  must.staysTurned.notNegative(after, 'the scatter after');
  if (arrows.length === 0) throw must.staysTurned.error('no arrow was turned; give at least one');
  for (const { stood, foretold, seen } of arrows) {
    checkPoint(must.staysTurned, stood, 'an error before');
    checkPoint(must.staysTurned, foretold, 'a foretold error');
    checkPoint(must.staysTurned, seen, 'an error that is seen');
  }
  // What is common to all is the bow's, and says nothing of the turns.
  const around = (of: (arrow: ArrowTurned) => Point): readonly Point[] => {
    const all = arrows.map(of);
    const { x, y } = middle(all);
    return all.map((one) => ({ x: one.x - x, y: one.y - y }));
  };
  const seen = around((arrow) => arrow.seen);
  const missed = (told: readonly Point[]): number => sum(told.map(({ x, y }, i) => (x - (seen[i]?.x ?? 0)) ** 2 + (y - (seen[i]?.y ?? 0)) ** 2));
  return after < before && missed(around((arrow) => arrow.foretold)) < missed(around((arrow) => arrow.stood));
}

const NOWHERE: Point = { x: 0, y: 0 };
/** One way for each degree, as predictTurns has it. */
const MOST = 360;

interface Tried {
  readonly turns: readonly number[];
  readonly common: Point;
  /** Tear of the typical arrow after it, inches. */
  readonly left: number;
  readonly expected: number;
}

// As unit vectors, the same number to either side of straight up, and never straight between two of the usual ways.
function directions(arrows: readonly ArrowToIndex[]): readonly Point[] {
  const steps = STEPS * Math.max(...arrows.map(({ ways }) => ways));
  return Array.from({ length: steps }, (_, step) => {
    const angle = ((2 * Math.PI) / steps) * (step - steps / 2 + 1 / 2);
    return { x: Math.sin(angle), y: Math.cos(angle) };
  });
}

/** The turn whose error points nearest to a direction; of those alike the one with the least turning, either way round. */
function nearestTurn(tears: readonly Point[], towards: Point): number {
  let [best, most] = [0, -Infinity];
  for (const [turn, { x, y }] of tears.entries()) {
    const along = x * towards.x + y * towards.y;
    if (along < most - ALIKE || (along <= most + ALIKE && turning(turn, tears.length) >= turning(best, tears.length))) continue;
    [best, most] = [turn, along];
  }
  return best;
}

const turning = (turn: number, ways: number): number => Math.min(turn, ways - turn);

// By scatter, by what is left to the bow, by nocks turned, and by how far, in the order of the arrows' names: never by the order they were told in.
function better(arrows: readonly ArrowToIndex[], a: Tried, b: Tried): Tried {
  for (const gain of [a.expected - b.expected, a.left - b.left]) if (Math.abs(gain) > ALIKE) return gain > 0 ? b : a;
  const work = ({ turns }: Tried): readonly number[] => {
    const each = arrows.map(({ arrow, ways }, i) => ({ arrow, by: turning(turns[i] ?? 0, ways) })).sort((p, q) => (p.arrow < q.arrow ? -1 : 1));
    return [each.filter(({ by }) => by > 0).length, ...each.map(({ by }) => by)];
  };
  const [ofA, ofB] = [work(a), work(b)];
  const first = ofA.findIndex((value, i) => value !== ofB[i]);
  return first >= 0 && (ofB[first] ?? 0) < (ofA[first] ?? 0) ? b : a;
}

const turned = (ways: readonly (readonly Point[])[], turns: readonly number[]): readonly Point[] => ways.flatMap((tears, i) => tears[turns[i] ?? 0] ?? []);

const middle = (tears: readonly Point[]): Point => ({ x: sum(tears.map(({ x }) => x)) / tears.length, y: sum(tears.map(({ y }) => y)) / tears.length });

/** Variance on one axis around their own middle, both axes pooled: square inches. */
function scatter(tears: readonly Point[]): number {
  const { x, y } = middle(tears);
  return sum(tears.map((tear) => (tear.x - x) ** 2 + (tear.y - y) ** 2)) / (2 * (tears.length - 1));
}
