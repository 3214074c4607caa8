// A piece of the walk's rows: some bows of one seed, each played as the row says. Workers do nothing else.

import type { Axis, Content } from '../../../src/content/types.ts';
import type { View } from '../../../src/machine/types.ts';
import { lessonBow } from '../../../src/practice/lessons.ts';
import { outOfReach, type Reach } from '../../../src/practice/reach.ts';
import { usualSpeed } from '../../../src/practice/shoot.ts';
import type { World } from '../../../src/practice/world.ts';
import { carriedOf } from '../../../src/session.ts';
import { isKind, kindOf, withoutCap, type CapName, type Kind } from './walk-caps.ts';
import { playWalk, type Tune } from './walk-play.ts';
import { anyBow, beyondBow, boundBow, contactBow, nextTune, numberOf, unfixableBow } from './walk-world.ts';

/** Any bow, and its second tune; bows of one trouble; bows that nobody should shoot; bows of one kind as shipped, and with one cap lifted. */
export type RowName = 'any' | 'unfixable' | 'beyond' | 'contact' | 'danger' | Kind | CapName;

export interface WalkPiece { readonly row: RowName; readonly seed: number; readonly from: number; readonly to: number }

/** A tune as it goes back to whoever counts: without its journal. */
export type Told = Omit<Tune, 'facts' | 'memory'>;

export interface Played {
  readonly tune: Told;
  /** Whether it must go to a dealer, and which arrows are bad: by truth. */
  readonly deadly: boolean;
  readonly bad: readonly string[];
  /** Axes that nothing within the archer's reach can mend, by truth. */
  readonly outOfReach: readonly Axis[];
  /** The axis that the row is about, and what keeps it out of reach. */
  readonly unfixable?: Axis;
  readonly why?: Reach;
  /** Its next tune, with what the first tune handed over and without; null where nothing was. */
  readonly again?: { readonly known: Told; readonly fresh: Told } | null;
}

export function playPiece(content: Content, { row, seed, from, to }: WalkPiece): readonly Played[] {
  return Array.from({ length: to - from }, (_, i) => playOne(content, row, numberOf(seed, from + i))).filter((one) => one !== null);
}

/** Null where there is no such bow of this number. */
function playOne(content: Content, row: RowName, number: number): Played | null {
  const { knobs } = content;
  switch (row) {
    case 'any': {
      const world = anyBow(number, knobs);
      const tune = playWalk(content, world);
      return { ...played(world, tune), again: again(content, world, tune) };
    }
    case 'unfixable': {
      const { world, axis } = unfixableBow(number, knobs);
      return { ...played(world, playWalk(content, world, { until: paperIsDone })), unfixable: axis };
    }
    case 'beyond': {
      const beyond = beyondBow(number, knobs);
      if (beyond === null) return null;
      return { ...played(beyond.world, playWalk(content, beyond.world, { until: paperIsDone })), unfixable: beyond.axis, why: beyond.why };
    }
    case 'contact': return plainly(content, contactBow(number, knobs));
    case 'danger': return plainly(content, lessonBow('do not shoot this bow', number, knobs));
    // The bow is made by the content as it is shipped: only the coach's caps differ.
    default: {
      const world = boundBow(number, knobs, isKind(row) ? row : kindOf(row));
      return played(world, playWalk(isKind(row) ? content : withoutCap(content, row), world, { until: paperIsDone }));
    }
  }
}

const plainly = (content: Content, world: World): Played => played(world, playWalk(content, world));

function played(world: World, tune: Tune): Played {
  const { bow, set } = world;
  return { tune: told(tune), deadly: bow.danger?.mends === 'dealer', outOfReach: outOfReach(bow, usualSpeed(world)), bad: set.arrows.flatMap(({ number, fault }) => (fault === null ? [] : [number])) };
}

const told = ({ facts: _facts, memory: _memory, ...tune }: Tune): Told => tune;

/** Shots are at paper until both axes are ended: then comes a target, or arrows by their numbers. */
const paperIsDone = ({ chapter }: View): boolean => chapter === 'broadheads' || chapter === 'arrows' || chapter === 'finish';

function again(content: Content, world: World, first: Tune): NonNullable<Played['again']> | null {
  const carried = first.end === 'done' ? carriedOf(content, first.facts) : null;
  if (carried === null) return null;
  const { world: other, memory } = nextTune(world, first.memory, content.knobs);
  const { measures } = other.bow;
  // Rest and nock are measured anew.
  const answers = {
    ...carried.answers, 'centre-shot': { kind: 'number', value: measures.centreShot }, 'nock-height': { kind: 'number', value: measures.nockHeight },
  } as const;
  return { known: told(playWalk(content, other, { memory, known: { ...carried, answers } })), fresh: told(playWalk(content, other, { memory })) };
}
