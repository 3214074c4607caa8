// The walk as one state machine: small enough to read, no timers, no invoked work, no context.
// Which question is asked inside a state is data (agenda.ts); what the shots say comes in as a verdict. So the machine
// is finite and can be explored whole in tests.

import { setup, initialTransition, transition, type SnapshotFrom } from 'xstate';
import type { Chapter, MachineEvent, Verdict } from './types.ts';

const means = (verdict: Verdict) => ({ event }: { event: MachineEvent }): boolean =>
  event.type === 'verdict' && event.verdict === verdict;
const chose = (choice: 'accept' | 'go on' | 'finish step') => ({ event }: { event: MachineEvent }): boolean =>
  event.type === 'chosen' && event.choice === choice;

const goesTo = (chapter: 'paper' | 'broadheads') => ({ event }: { event: MachineEvent }): boolean =>
  event.type === 'return' && event.to === chapter;

/** Back to an earlier chapter: what is to be put back is put back there, and from there on all is judged again. */
const goingBack = {
  return: [{ guard: goesTo('paper'), target: '#height.puttingBack' }, { guard: goesTo('broadheads'), target: '#broadHeight.puttingBack' }],
};

/**
 * The measuring loop that every axis shares: shoot, judge, advise one change, make it, shoot again; put back and
 * prove; look elsewhere. `after` is where the walk goes when the axis is settled.
 */
const measuringLoop = (id: string, after: string) => ({
  id,
  initial: 'shooting' as const,
  on: { 'put back': { target: `#${id}.puttingBack` } },
  states: {
    shooting: {
      on: {
        verdict: [
          { guard: means('inconsistent'), target: 'inspecting' },
          { guard: means('gross'), target: 'inspecting' },
          { guard: means('in tolerance'), target: 'passed' },
          { guard: means('borderline'), target: 'offering' },
          { guard: means('worse'), target: 'puttingBack' },
          { guard: means('out'), target: 'advising' },
          { guard: means('cannot'), target: 'advising' },
          { guard: means('not returned'), target: 'inspecting' },
        ],
        settled: { target: after },
      },
    },
    advising: {
      on: {
        moved: { target: 'shooting' },
        looked: { target: 'shooting' },
        verdict: [{ guard: means('borderline'), target: 'offering' }],
        settled: { target: after },
      },
    },
    // A put-back of several changes stays here until the last one is moved.
    puttingBack: { on: { moved: { target: 'proving' }, looked: { target: 'shooting' } } },
    proving: {
      on: {
        verdict: [
          { guard: means('returned'), target: 'shooting' },
          { guard: means('not returned'), target: 'inspecting' },
          { guard: means('inconsistent'), target: 'inspecting' },
        ],
        looked: { target: 'shooting' },
      },
    },
    inspecting: { on: { looked: { target: 'shooting' }, settled: { target: after } } },
    passed: {
      on: {
        chosen: [{ guard: chose('finish step'), target: 'advising' }],
        looked: { target: 'shooting' },
        settled: { target: after },
      },
    },
    offering: {
      on: {
        chosen: [{ guard: chose('accept'), target: after }, { guard: chose('go on'), target: 'shooting' }],
        looked: { target: 'shooting' },
      },
    },
  },
});

/** As found: three arrows before anything is moved. Only here does the walk branch to "leave it alone". */
const asFound = {
  id: 'asFound',
  initial: 'shooting' as const,
  states: {
    shooting: {
      on: {
        verdict: [
          { guard: means('inconsistent'), target: 'inspecting' },
          { guard: means('gross'), target: 'inspecting' },
          { guard: means('in tolerance'), target: '#second' },
          { guard: means('out'), target: '#height' },
        ],
        settled: { target: '#broadheads' },
      },
    },
    inspecting: { on: { looked: { target: 'shooting' }, settled: { target: '#broadheads' } } },
  },
};

/** A second close distance confirms or does not; it never drives a move. */
const second = {
  id: 'second',
  initial: 'shooting' as const,
  states: {
    shooting: {
      on: {
        verdict: { target: '#broadheads' },
        settled: { target: '#broadheads' },
      },
    },
  },
};

/** Field points against broadheads: both axes at one distance, then farther while the archer's group allows. */
const broadheads = {
  id: 'broadheads',
  initial: 'preparing' as const,
  on: goingBack,
  states: {
    preparing: { on: { settled: { target: 'height' }, skipped: { target: '#arrows' } } },
    height: measuringLoop('broadHeight', '#broadSide'),
    side: measuringLoop('broadSide', '#farther'),
    farther: { id: 'farther', on: { farther: { target: 'height' }, settled: { target: '#arrows' } } },
  },
};

/** Every arrow of the set against the typical one; odd ones are mended or set aside, one change at a time. */
const arrows = {
  id: 'arrows',
  initial: 'preparing' as const,
  on: goingBack,
  states: {
    preparing: { on: { settled: { target: 'screening' }, skipped: { target: '#finish' } } },
    screening: {
      id: 'screening',
      initial: 'shooting' as const,
      states: {
        shooting: {
          on: {
            verdict: [
              { guard: means('inconsistent'), target: 'inspecting' },
              { guard: means('many odd'), target: 'inspecting' },
              { guard: means('odd arrows'), target: '#mending' },
            ],
            settled: { target: '#finish' },
          },
        },
        inspecting: { on: { looked: { target: 'shooting' }, settled: { target: '#finish' } } },
      },
    },
    mending: {
      id: 'mending',
      initial: 'advising' as const,
      // What the rounds showed has changed, or no longer counts: they are judged, or shot, anew.
      on: { looked: { target: '#screening' } },
      states: {
        // The next single change of this arrow.
        advising: { on: { moved: { target: 'shooting' }, verdict: [{ guard: means('cannot'), target: 'looking' }], settled: { target: '#finish' } } },
        shooting: { on: { verdict: [{ guard: means('out'), target: 'advising' }, { guard: means('in tolerance'), target: 'advising' }] } },
        // Nothing left to change: point, vanes, or set aside.
        looking: { on: { looked: { target: 'advising' } } },
      },
    },
  },
};

/** Tighten, prove by three shots that tightening moved nothing, then the sight and the calendar. */
const finish = {
  id: 'finish',
  initial: 'tightening' as const,
  on: goingBack,
  states: {
    tightening: { on: { settled: { target: 'proof' } } },
    proof: {
      on: {
        verdict: [
          { guard: means('returned'), target: 'closing' },
          { guard: means('not returned'), target: 'inspecting' },
          { guard: means('inconsistent'), target: 'inspecting' },
        ],
        settled: { target: 'closing' },
      },
    },
    inspecting: { on: { looked: { target: 'proof' }, settled: { target: 'closing' } } },
    closing: { on: { settled: { target: '#record' } } },
  },
};

export const walkMachine = setup({
  types: { events: {} as MachineEvent },
}).createMachine({
  id: 'quarterturn',
  initial: 'walk',
  on: { stop: { target: '.stopped' } },
  states: {
    walk: {
      id: 'walk',
      initial: 'safety',
      // Something is to be asked, looked at or measured first; afterwards the walk goes on exactly where it was.
      on: { due: { target: 'asking' } },
      states: {
        safety: { on: { settled: { target: 'baseline' } } },
        baseline: { on: { settled: { target: 'warmUp' } } },
        warmUp: { on: { settled: { target: 'paper' } } },
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
    asking: { on: { clear: { target: '#walk.hist' } } },
    // Left only through the gate that raised it: 'released' is decided from that gate's own answer.
    stopped: { on: { released: { target: 'asking' } } },
  },
});

export type WalkSnapshot = SnapshotFrom<typeof walkMachine>;

export const initialWalk = (): WalkSnapshot => initialTransition(walkMachine)[0];

/** One step of the machine; null where this event cannot happen here (a fact that no longer fits). */
export function step(snapshot: WalkSnapshot, event: MachineEvent): WalkSnapshot | null {
  return snapshot.can(event) ? transition(walkMachine, snapshot, event)[0] : null;
}

/** Where the walk stands, as a dotted path without `walk.`: `safety`, `paper.height.advising`, `asking`, `stopped`. */
export function placeOf(snapshot: WalkSnapshot): string {
  const path: string[] = [];
  let value: unknown = snapshot.value;
  while (typeof value === 'object' && value !== null) {
    const [key, inner] = Object.entries(value)[0] ?? [];
    if (key === undefined) break;
    path.push(key);
    value = inner;
  }
  if (typeof value === 'string') path.push(value);
  if (path[0] === 'walk') path.shift();
  return path.join('.');
}

const CHAPTER_OF: Readonly<Record<string, Chapter>> = {
  safety: 'safety', baseline: 'baseline', warmUp: 'warm-up', paper: 'paper', broadheads: 'broadheads', arrows: 'arrows', finish: 'finish',
  record: 'record',
};

/** The chapter of a place; null in `asking` and `stopped`, which interrupt a chapter. */
export const chapterOfPlace = (place: string): Chapter | null => CHAPTER_OF[place.split('.')[0] ?? ''] ?? null;

/** Places in which a change on the bow can be put back: from the first sheet on, while no question interrupts. */
export const canPutBackAt = (place: string): boolean => /^(paper|broadheads|arrows|finish)\./.test(place);

/** Where the walk stands under a question or a stop that interrupts it. */
export function placeUnder(snapshot: WalkSnapshot): string {
  const place = placeOf(snapshot);
  if (place !== 'asking' && place !== 'stopped') return place;
  const under = Object.values(snapshot.historyValue ?? {})[0] ?? [];
  const deepest = [...under].sort((a, b) => b.path.length - a.path.length)[0];
  return deepest?.path.slice(1).join('.') ?? '';
}
