// A piece of the walk's rows: some bows of one seed, each played as the row says. Workers do nothing else.

import type { Axis, Content } from '../../../src/content/types.ts';
import type { View } from '../../../src/machine/types.ts';
import { lessonBow } from '../../../src/practice/lessons.ts';
import type { World } from '../../../src/practice/world.ts';
import { carriedOf } from '../../../src/session.ts';
import { withoutCap, type CapName } from './walk-caps.ts';
import { playWalk, type Tune } from './walk-play.ts';
import { anotherDay, anyBow, contactBow, numberOf, unfixableBow } from './walk-world.ts';

/** Any bow, and its second tune; bows of one trouble; bows that nobody should shoot; any bow with one cap lifted. */
export type RowName = 'any' | 'unfixable' | 'contact' | 'danger' | CapName;

export interface WalkPiece { readonly row: RowName; readonly seed: number; readonly from: number; readonly to: number }

/** A tune as it goes back to whoever counts: without its journal. */
export type Told = Omit<Tune, 'facts' | 'memory'>;

export interface Played {
  readonly tune: Told;
  /** Whether it must go to a dealer, and which arrows are bad: by truth. */
  readonly deadly: boolean;
  readonly bad: readonly string[];
  /** The axis that cannot be mended. */
  readonly unfixable?: Axis;
  /** The same bow on another day, with what the first tune handed over and without; null where nothing was. */
  readonly again?: { readonly known: Told; readonly fresh: Told } | null;
}

export function playPiece(content: Content, { row, seed, from, to }: WalkPiece): readonly Played[] {
  return Array.from({ length: to - from }, (_, i) => playOne(content, row, numberOf(seed, from + i)));
}

function playOne(content: Content, row: RowName, number: number): Played {
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
    case 'contact': return plainly(content, contactBow(number, knobs));
    case 'danger': return plainly(content, lessonBow('do not shoot this bow', number, knobs));
    // The bow is made by the content as it is shipped: only the coach's caps differ.
    default: return plainly(withoutCap(content, row), anyBow(number, knobs));
  }
}

const plainly = (content: Content, world: World): Played => played(world, playWalk(content, world));

function played({ bow, set }: World, tune: Tune): Played {
  return { tune: told(tune), deadly: bow.danger?.mends === 'dealer', bad: set.arrows.flatMap(({ number, fault }) => (fault === null ? [] : [number])) };
}

const told = ({ facts: _facts, memory: _memory, ...tune }: Tune): Told => tune;

/** Shots are at paper until both axes are ended: then comes a target, or arrows by their numbers. */
const paperIsDone = ({ chapter }: View): boolean => chapter === 'broadheads' || chapter === 'arrows' || chapter === 'finish';

function again(content: Content, world: World, first: Tune): NonNullable<Played['again']> | null {
  const carried = first.end === 'done' ? carriedOf(content, first.facts) : null;
  if (carried === null) return null;
  const { world: other, memory } = anotherDay(world, first.memory);
  const { measures } = other.bow;
  // Rest and nock stand where they were first found.
  const answers = {
    ...carried.answers, 'centre-shot': { kind: 'number', value: measures.centreShot }, 'nock-height': { kind: 'number', value: measures.nockHeight },
  } as const;
  return { known: told(playWalk(content, other, { memory, known: { ...carried, answers } })), fresh: told(playWalk(content, other, { memory })) };
}
