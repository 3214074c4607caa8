// The walk as a table: at each place what may happen, and where that leads. One source for the machine that runs (walk.ts)
// and for the types that say which event can be raised where (places.ts).
// `#name` leads to the place of that name; anything else to a neighbour.

import type { WalkNode } from './signals.ts';

/** Back to an earlier chapter: what is to be put back is put back there, and from there on all is judged again. */
const goingBack = { 'return: paper': '#height.puttingBack', 'return: broadheads': '#broadHeight.puttingBack' } as const;

/**
 * The measuring loop that every axis shares: shoot, judge, advise one change, make it, shoot again; put back and
 * prove; look elsewhere. `after` is where the walk goes when the axis is settled.
 */
const measuringLoop = (id: string, after: string) => ({
  id,
  initial: 'shooting',
  on: { 'put back': `#${id}.puttingBack` },
  states: {
    shooting: {
      on: {
        'verdict: inconsistent': 'inspecting',
        'verdict: gross': 'inspecting',
        'verdict: in tolerance': 'passed',
        'verdict: borderline': 'offering',
        'verdict: worse': 'puttingBack',
        'verdict: out': 'advising',
        'verdict: cannot': 'advising',
        'verdict: not returned': 'inspecting',
        'settled': after,
      },
    },
    advising: { on: { 'moved': 'shooting', 'looked': 'shooting', 'verdict: borderline': 'offering', 'settled': after } },
    // A put-back of several changes stays here until the last one is moved.
    puttingBack: { on: { 'moved': 'proving', 'looked': 'shooting' } },
    proving: {
      on: {
        'verdict: returned': 'shooting',
        'verdict: not returned': 'inspecting',
        'verdict: inconsistent': 'inspecting',
        'looked': 'shooting',
      },
    },
    inspecting: { on: { 'looked': 'shooting', 'settled': after } },
    passed: { on: { 'chosen: finish step': 'advising', 'looked': 'shooting', 'settled': after } },
    offering: { on: { 'chosen: accept': after, 'chosen: go on': 'shooting', 'looked': 'shooting' } },
  },
} as const satisfies WalkNode);

/** As found: three arrows before anything is moved. Only here does the walk branch to "leave it alone". */
const asFound = {
  id: 'asFound',
  initial: 'shooting',
  states: {
    shooting: {
      on: {
        'verdict: inconsistent': 'inspecting',
        'verdict: gross': 'inspecting',
        'verdict: in tolerance': '#second',
        'verdict: out': '#height',
        'settled': '#broadheads',
      },
    },
    inspecting: { on: { 'looked': 'shooting', 'settled': '#broadheads' } },
  },
} as const satisfies WalkNode;

/** A second close distance confirms or does not; it drives no move. What must be looked into there, is so by way of the first one (turn-second.ts). */
const second = {
  id: 'second',
  initial: 'shooting',
  states: {
    shooting: {
      on: {
        'verdict: in tolerance': '#broadheads', 'verdict: out': '#broadheads', 'verdict: inconsistent': '#broadheads', 'verdict: gross': '#broadheads',
        'verdict: worse': '#broadheads', 'verdict: cannot': '#broadheads', 'verdict: borderline': '#broadheads', 'verdict: returned': '#broadheads',
        'verdict: not returned': '#broadheads', 'verdict: odd arrows': '#broadheads', 'verdict: many odd': '#broadheads',
        'verdict: set differs': '#broadheads',
        'settled': '#broadheads',
      },
    },
  },
} as const satisfies WalkNode;

/** Field points against broadheads: both axes at one distance, then farther while the archer's group allows. */
const broadheads = {
  id: 'broadheads',
  initial: 'preparing',
  on: goingBack,
  states: {
    preparing: { on: { 'settled': 'height', 'skipped': '#arrows' } },
    height: measuringLoop('broadHeight', '#broadSide'),
    side: measuringLoop('broadSide', '#farther'),
    farther: { id: 'farther', on: { 'farther': 'height', 'settled': '#arrows' } },
  },
} as const satisfies WalkNode;

/** Every arrow of the set against the typical one; odd ones are mended or set aside, one change at a time. */
const arrows = {
  id: 'arrows',
  initial: 'preparing',
  on: goingBack,
  states: {
    preparing: { on: { 'settled': 'screening', 'skipped': '#finish' } },
    screening: {
      id: 'screening',
      initial: 'shooting',
      states: {
        shooting: {
          on: {
            'verdict: inconsistent': 'inspecting', 'verdict: many odd': 'inspecting', 'verdict: odd arrows': '#mending', 'verdict: set differs': '#indexing',
            'settled': '#finish',
          },
        },
        inspecting: { on: { 'looked': 'shooting', 'settled': '#finish' } },
      },
    },
    // All nocks turned together, or back: offered, and whatever is chosen, the rounds say the rest.
    indexing: { id: 'indexing', on: { 'moved': '#screening', 'looked': '#screening' } },
    mending: {
      id: 'mending',
      initial: 'advising',
      // What the rounds showed has changed, or no longer counts: they are judged, or shot, anew.
      on: { 'looked': '#screening' },
      states: {
        // The next single change of this arrow.
        advising: { on: { 'moved': 'shooting', 'verdict: cannot': 'looking', 'settled': '#finish' } },
        shooting: { on: { 'verdict: out': 'advising', 'verdict: in tolerance': 'advising' } },
        // Nothing left to change: point, vanes, or set aside.
        looking: { on: { 'looked': 'advising' } },
      },
    },
  },
} as const satisfies WalkNode;

/** Tighten, prove by three shots that tightening moved nothing, then the sight and the calendar. */
const finish = {
  id: 'finish',
  initial: 'tightening',
  on: goingBack,
  states: {
    tightening: { on: { 'settled': 'proof' } },
    proof: {
      on: { 'verdict: returned': 'closing', 'verdict: not returned': 'inspecting', 'verdict: inconsistent': 'inspecting', 'settled': 'closing' },
    },
    inspecting: { on: { 'looked': 'proof', 'settled': 'closing' } },
    closing: { on: { 'settled': '#record' } },
  },
} as const satisfies WalkNode;

export const WALK = {
  initial: 'walk',
  on: { 'stop': '.stopped' },
  states: {
    walk: {
      id: 'walk',
      initial: 'safety',
      // Something is to be asked, looked at or measured first; afterwards the walk goes on exactly where it was.
      on: { 'due': 'asking' },
      states: {
        safety: { on: { 'settled': 'baseline' } },
        baseline: { on: { 'settled': 'warmUp' } },
        warmUp: { on: { 'settled': 'paper' } },
        paper: {
          initial: 'asFound',
          on: goingBack,
          states: {
            asFound,
            height: measuringLoop('height', '#side'),
            side: measuringLoop('side', '#heightAgain'),
            heightAgain: measuringLoop('heightAgain', '#second'),
            second,
          },
        },
        broadheads,
        arrows,
        finish,
        record: { id: 'record' },
        hist: { type: 'history', history: 'deep' },
      },
    },
    asking: { on: { 'clear': '#walk.hist' } },
    // Left only through the gate that raised it: 'released' is decided from that gate's own answer.
    stopped: { on: { 'released': 'asking' } },
  },
} as const satisfies WalkNode;
