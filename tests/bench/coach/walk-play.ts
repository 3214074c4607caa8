// One whole tune of a practice bow through the session on a store in memory, and what was true before and after it.

import type { Axis, Content, KnobId } from '../../../src/content/types.ts';
import { memoryStore } from '../../../src/journal/memory-store.ts';
import type { AxisResult } from '../../../src/machine/notes.ts';
import { bowKnobOf, type Carried, type Fact, type Finding, type Tear, type View } from '../../../src/machine/types.ts';
import { yards, type Yards } from '../../../src/maths/units.ts';
import { answerTo, type Answering } from '../../../src/practice/answers.ts';
import { caughtUp, FRESH, type Memory } from '../../../src/practice/memory.ts';
import type { World } from '../../../src/practice/world.ts';
import { openSession } from '../../../src/session.ts';
import { nextMinute, NOON } from '../../tunes/play.ts';
import { meanApart, meanTear, onAxis } from './walk-truth.ts';

/** `stopped`: the bow went to a dealer. `never`: not in so many turns. `refused`: the session took no answer that a truthful archer has. */
export type End = 'done' | 'stopped' | 'never' | 'refused' | 'left';

export interface AxisEnd {
  readonly axis: Axis;
  /** The last word at paper; null where there was none. */
  readonly result: AxisResult | null;
  /** Shots from the last axis that ended, or the first shot, to its first end. */
  readonly shots: number;
}

export interface Tune {
  readonly number: number;
  readonly end: End;
  readonly why: string;
  readonly axes: readonly AxisEnd[];
  readonly causes: readonly { readonly cause: string; readonly shots: number }[];
  readonly shots: number;
  /** Shots on which something touched, by truth, until both axes were first ended at paper. */
  readonly touches: number;
  readonly moves: number;
  readonly questions: number;
  readonly moved: readonly KnobId[];
  /** Mean tears by truth: as found, as left, and as it would be left with everything mended but nothing moved. */
  readonly found: Tear;
  /** Axes on which a setting was tried that was worse by more than 1/8 in than with nothing moved. */
  readonly excursions: readonly Axis[];
  readonly left: Tear;
  readonly unmoved: Tear;
  /** Broadheads, where they were shot: how the coach ended them, and whether they are inside its margin by truth. */
  readonly broadheads: { readonly called: boolean; readonly inside: boolean } | null;
  /** Arrows by their number that were set aside, and to which anything was done. Null where the set was not shot to its end. */
  readonly aside: readonly string[] | null;
  readonly touched: readonly string[];
  readonly facts: readonly Fact[];
  readonly memory: Memory;
}

export interface Playing {
  readonly memory?: Memory;
  readonly known?: Carried;
  readonly until?: (view: View) => boolean;
}

/** Four times as many turns as the longest tune of a sound bow takes. */
const MOST_TURNS = 1200;
const AXES = ['height', 'side'] as const;
/** in. */
const EXCURSION = 1 / 8;

export function playWalk(content: Content, world: World, { memory: before = FRESH, known, until = () => false }: Playing = {}): Tune {
  const store = memoryStore([], { skipCodec: true });
  const session = openSession({ content, store, startAt: new Date(NOON), engine: 'bench', tune: `bow-${world.seed}`, known: known === undefined ? [] : [known] });
  const seen = new Seen(world);
  let memory = before;
  const finish = (end: End, why = ''): Tune => seen.tune(end, why, before, caughtUp(world, memory, session.view().bow), store.facts);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const view = session.view();
    if (view.type === 'done') return finish('done');
    if (until(view)) return finish('left');
    const answering = answerBy(world, memory, view, known);
    memory = answering.memory;
    seen.stands(memory, before);
    if (answering.said === null) return finish('stopped', view.ask?.about);
    const reply = session.send({ kind: 'answer', answer: answering.said }, store.facts.length === 0 ? new Date(NOON) : nextMinute(store));
    if (reply.error !== undefined) return finish('refused', `${view.ask?.about ?? ''}: ${reply.error.message} (${JSON.stringify(answering.said)})`);
    seen.turn(view, answering, reply.view, memory);
  }
  return finish('never', session.view().ask?.about);
}
const answerBy = (world: World, memory: Memory, view: View, known: Carried | undefined): Answering =>
  (known !== undefined && view.ask?.about === 'bow' ? { said: known.from, memory } : answerTo(world, memory, view));

/** What is noted while a tune is played. */
class Seen {
  private readonly findings: Finding[] = [];
  private readonly ends = new Map<Axis, number>();
  private readonly causes: { cause: string; shots: number }[] = [];
  private readonly moved = new Set<KnobId>();
  private readonly touched = new Set<string>();
  private readonly excursions = new Set<Axis>();
  private settings: Memory['condition']['settings'] | null = null;
  private shots = 0;
  private touches = 0;
  private moves = 0;
  private questions = 0;
  private groups: { readonly distance: Yards; readonly margin: number; readonly aim: Tear; readonly memory: Memory; readonly bow: View['bow'] } | null = null;

  constructor(private readonly world: World) {}

  turn({ ask, advice, chapter }: View, { said, happened }: Answering, after: View, memory: Memory): void {
    if (happened !== undefined) {
      this.shots++;
      if (happened.contact && this.ends.size < AXES.length) this.touches++;
    } else if (ask?.about === 'moved' && said !== 'not now') {
      this.moves++;
      if (advice?.arrow !== undefined) this.touched.add(advice.arrow);
      const knob = bowKnobOf(advice);
      if (knob !== null) this.moved.add(knob);
    } else this.questions++;
    for (const finding of after.findings) {
      this.findings.push(finding);
      if (finding.kind === 'axis' && finding.chapter === 'paper' && !this.ends.has(finding.axis)) this.ends.set(finding.axis, this.shots);
      if (finding.kind === 'cause') this.causes.push({ cause: finding.cause, shots: this.shots });
    }
    const { picture } = after;
    if (chapter === 'broadheads' && ask?.kind === 'impact' && picture?.kind === 'groups' && picture.margin !== undefined) {
      this.groups = { distance: yards(ask.distance.value), margin: picture.margin, aim: picture.aim ?? { x: 0, y: 0 }, memory, bow: after.bow };
    } else if (chapter === 'broadheads' && this.groups !== null) {
      this.groups = { ...this.groups, memory, bow: after.bow };
    }
  }

  /** What the bow shows at a setting that is new. */
  stands({ condition }: Memory, before: Memory): void {
    if (condition.settings === this.settings) return;
    this.settings = condition.settings;
    const [here, unmoved] = [condition, { ...condition, settings: before.condition.settings }].map((one) => meanTear(this.world, one));
    for (const axis of AXES) if (here !== undefined && unmoved !== undefined && Math.abs(onAxis(axis, here)) > Math.abs(onAxis(axis, unmoved)) + EXCURSION) this.excursions.add(axis);
  }

  tune(end: End, why: string, before: Memory, memory: Memory, facts: readonly Fact[]): Tune {
    const { world, findings } = this;
    const classes = new Map(findings.flatMap((one) => (one.kind === 'arrow' ? [[one.arrow, one.class] as const] : [])));
    const unmoved = { ...memory.condition, settings: before.condition.settings };
    return {
      number: world.seed, end, why, causes: this.causes, shots: this.shots, touches: this.touches, moves: this.moves, questions: this.questions, moved: [...this.moved],
      axes: AXES.map((axis) => ({ axis, result: this.resultOf('paper', axis), shots: this.shotsOf(axis) })),
      excursions: [...this.excursions], found: meanTear(world, before.condition), left: meanTear(world, memory.condition), unmoved: meanTear(world, unmoved),
      broadheads: this.broadheads(),
      aside: classes.size === 0 ? null : [...classes].flatMap(([arrow, how]) => (how === 'first choice' ? [] : [arrow])),
      touched: [...this.touched, ...memory.condition.leftOut], facts, memory,
    };
  }

  private resultOf(chapter: 'paper' | 'broadheads', axis: Axis): AxisResult | null {
    const last = this.findings.findLast((one) => one.kind === 'axis' && one.axis === axis && one.chapter === chapter);
    return last?.kind === 'axis' ? last.result : null;
  }

  private shotsOf(axis: Axis): number {
    const own = this.ends.get(axis) ?? this.shots;
    return own - Math.max(0, ...[...this.ends.values()].filter((shots) => shots < own));
  }

  private broadheads(): Tune['broadheads'] {
    if (this.groups === null) return null;
    const { distance, margin, aim, memory, bow } = this.groups;
    const apart = meanApart(this.world, caughtUp(this.world, memory, bow).condition, distance);
    return {
      called: AXES.every((axis) => this.resultOf('broadheads', axis) === 'tuned'),
      inside: AXES.every((axis) => Math.abs(onAxis(axis, apart) - onAxis(axis, aim)) <= margin),
    };
  }
}
