// The coach itself on one bow of the bench: the whole session on a store in memory, from the first shot at paper on. Everything before it (people, range,
// bow, arrows) is answered once and taken over as facts; every decision is the session's.
//
// What differs from the rules it is held against, and cannot be switched off: tears have two axes, so that its usual spread comes from both; a set that is
// worse is put back and proved before the other side is tried (these shots and moves are counted); scatter is looked into before anything is moved.
// Of the tune's own rules one is: it begins with three shots, and here with two.

import type { Content } from '../../../src/content/types.ts';
import { memoryStore } from '../../../src/journal/memory-store.ts';
import type { AxisResult } from '../../../src/machine/notes.ts';
import type { Carried, Fact, SessionLike, View } from '../../../src/machine/types.ts';
import { openSession } from '../../../src/session.ts';
import { TestArcher, type Bow } from '../../tunes/archer.ts';
import { nextMinute, play } from '../../tunes/play.ts';
import { mayGoOn } from '../rivals/one-knob.ts';
import { Hands, type Outcome } from './hands.ts';
import { KNOB, SAYS, settingOf, smallContent } from './small-content.ts';
import type { KnobBow, Wanted, World } from './world.ts';

/** A chance that was said after a shot, and whether the bow was in tolerance then. */
export interface Stated { readonly chance: number; readonly inside: boolean }

/** How the height ended; `budget` where it did not within the moves and shots that every rule has. */
export type End = AxisResult | 'budget';

export interface CoachOutcome extends Outcome {
  readonly result: End;
  /** Of the moves, those that took one back. */
  readonly putBacks: number;
  readonly stated: readonly Stated[];
}

/** What all of them call tuned here, inches: the side's tolerance, and the one that the rules were first measured with. */
export const TUNED: Wanted = { aim: 0, within: 1 / 4 };

/** Answers as everybody's; it shoots with other hands. */
const ANSWERS: Bow = { start: { x: 0, y: 0 }, gain: {}, sd: 0, seed: 1 };
/** Where shots do not tell, this archer shoots on, as the rules do that the coach is held against. */
const GO_ON = 'go on';
/** Questions included, no bow takes so many turns within the budget; a walk that asks for ever is a fault. */
const MOST_TURNS = 600;

/** Shots before the first judgement, as the rules have that the coach is held against; in a tune it takes three. */
const FIRST_SHOTS = 2;

/** All lines up to the first shot at paper. */
export function preparedFacts(content: Content, known: readonly Carried[] = []): readonly Fact[] {
  const archer = { ...ANSWERS, answers: known[0] === undefined ? {} : { bow: known[0].from } };
  const { facts } = play(archer, { content, known, tune: known.length === 0 ? 'first' : 'second', until: (view) => view.ask?.kind === 'tear' }).store;
  return facts.map((fact, i) => (i < facts.length - 1 ? fact : { ...fact, decided: { ...fact.decided, loop: { ...fact.decided.loop, wanted: FIRST_SHOTS } } }));
}

/** A coach for the bows of one world. `prepared` are the lines of `preparedFacts`. `side` -1 shoots the axis that nothing is wrong with in a mirror. */
export class Coach {
  private readonly content: Content;
  constructor(shipped: Content, private readonly prepared: readonly Fact[], private readonly world: World, private readonly wanted = TUNED) {
    this.content = smallContent(shipped, world, wanted);
  }

  play(bow: KnobBow, side: 1 | -1 = 1): CoachOutcome {
    return this.tune(bow, this.prepared, side).outcome;
  }

  /** The same on these lines up to the first shot; with all lines that came of it. */
  tune(bow: KnobBow, prepared: readonly Fact[], side: 1 | -1 = 1): { readonly outcome: CoachOutcome; readonly facts: readonly Fact[] } {
    const store = memoryStore(prepared, { skipCodec: true });
    const session = openSession({ content: this.content, store, startAt: nextMinute(store), engine: 'bench', tune: 'bench', known: [] });
    const hands = new Hands(this.world, bow, this.wanted);
    const archer = new TestArcher(ANSWERS);
    const stated: Stated[] = [];
    let putBacks = 0;
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const before = session.view();
      const view = this.turn(session, hands, archer, side, nextMinute(store));
      const at = settingOf(view.bow[KNOB]?.value ?? 0, this.world);
      if (at !== hands.at) {
        hands.moveTo(at);
        if (before.advice?.kind === 'put-back') putBacks++;
      }
      // In one turn the height may be settled and the other axis looked at: the first word is of the height, and only a shot asks for one.
      const [chance] = before.ask?.kind === 'tear' ? chancesIn(view) : [];
      if (chance !== undefined) stated.push({ chance, inside: hands.isInside() });
      const result = heightIn(view) ?? (mayGoOn(hands) ? undefined : 'budget');
      if (result !== undefined) return { outcome: { ...hands.outcome(result === 'tuned'), result, putBacks, stated }, facts: store.facts };
    }
    throw new Error(`bow ${bow.seed} came to no end in ${MOST_TURNS} turns`);
  }

  private turn(session: SessionLike, hands: Hands, archer: TestArcher, side: 1 | -1, now: Date): View {
    const { ask, advice, bow } = session.view();
    const answer = ask?.kind === 'tear' ? oneShot(hands, side) : ask?.about === 'accept' ? GO_ON : archer.answer({ ask, advice, bow });
    const { view, error } = session.send({ kind: 'answer', answer }, now);
    if (error !== undefined) throw new Error(`${ask?.about ?? ''}: ${error.code}: ${error.message}`);
    return view;
  }
}

function oneShot(hands: Hands, side: 1 | -1): { readonly x: number; readonly y: number } {
  const { tear, other } = hands.shootBoth();
  return { x: side * other, y: tear };
}

/** How the height ended, where it just did. */
const heightIn = ({ findings }: View): AxisResult | undefined => findings.flatMap((f) => (f.kind === 'axis' && f.axis === 'height' ? [f.result] : [])).at(-1);

const STATED = new RegExp(`^${SAYS} (?:(under) 1|(\\d+)) %$`);

/** "under 1 %" is told as 0. */
function chancesIn({ say }: View): readonly number[] {
  return say.flatMap((line) => {
    const found = STATED.exec(line);
    return found === null ? [] : [found[1] === 'under' ? 0 : Number(found[2]) / 100];
  });
}
