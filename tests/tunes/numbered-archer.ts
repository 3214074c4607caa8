// An archer whose shots depend on nothing but the seed and the number of the shot, so that a tune that was killed and
// taken up again sees the very same arrows as one that ran through. The archer outlives the program.

import { seededRandom } from '../../src/maths/random.ts';
import type { Ask, KnobId, Ledger, Tear } from '../../src/machine/types.ts';
import { TestArcher, type Bow } from './archer.ts';

/** A bow, and answers that change as they are given: each list is used up in order, its last entry stays. */
export interface StoryBow extends Bow {
  readonly inTurn?: Readonly<Record<string, readonly unknown[]>>;
  /** What the archer's own hand adds to the tear, inches, shot after shot in turn. */
  readonly hand?: readonly Tear[];
}

export class NumberedArcher extends TestArcher {
  /** Arrows shot so far, over all sittings. */
  shots = 0;
  private readonly given = new Map<string, number>();

  constructor(private readonly story: StoryBow) {
    super(story);
  }

  /** The answer to an ask at these settings. */
  reply(ask: Ask, bow: Ledger): unknown {
    const turns = this.story.inTurn?.[ask.about];
    if (turns === undefined) return this.answer({ ask, bow });
    const nth = this.given.get(ask.about) ?? 0;
    this.given.set(ask.about, nth + 1);
    return turns[Math.min(nth, turns.length - 1)];
  }

  override shoot(ledger: Ledger): Tear {
    this.shots += 1;
    const chance = seededRandom(this.story.seed * 1000 + this.shots);
    const hand = this.story.hand?.[(this.shots - 1) % this.story.hand.length] ?? { x: 0, y: 0 };
    const true_ = { x: this.story.start.x + hand.x, y: this.story.start.y + hand.y };
    for (const [knob, setting] of Object.entries(ledger) as [KnobId, { value: number }][]) {
      true_.x += (this.story.gain[knob]?.x ?? 0) * setting.value;
      true_.y += (this.story.gain[knob]?.y ?? 0) * setting.value;
    }
    return { x: toRuler(true_.x + this.story.sd * chance.normal()), y: toRuler(true_.y + this.story.sd * chance.normal()) };
  }

  protected override impact(ask: Extract<Ask, { kind: 'impact' }>, ledger: Ledger): Tear {
    this.shots += 1;
    this.random = seededRandom(this.story.seed * 1000 + this.shots);
    return super.impact(ask, ledger);
  }
}

/** Read by ruler to 1/16 in. */
const toRuler = (inches: number): number => Math.round(inches * 16) / 16 + 0;
