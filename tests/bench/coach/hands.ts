// A bow of the bench in somebody's hands: shoots it, sets it, and keeps what really came of it. Shots tell their luck in the same order whoever shoots,
// so that rules are held against each other on the same bow with the same luck.

import { seededRandom, type Random } from '../../../src/maths/random.ts';
import { isFixable, type KnobBow, type Wanted, type World } from './world.ts';

/** A setting or an end is worse where its tear is larger by more than this, inches. */
const WORSE_BY = 1 / 8;
const FOURFOLD = 4;
const READ_TO = 1 / 16;
/** Paper shows no more, inches. */
const LARGEST = 4;

/** What came of one bow with one rule. */
export interface Outcome {
  readonly fixable: boolean;
  readonly declared: boolean;
  /** Truly in tolerance at the end. */
  readonly inside: boolean;
  /** Left worse than found; some setting visited was. */
  readonly worse: boolean; readonly excursion: boolean;
  readonly shots: number; readonly moves: number;
}

export class Hands {
  at = 0;
  shots = 0;
  moves = 0;
  private off = 0;
  private readonly noise: Random;
  private readonly aside: Random;
  private readonly setting: Random;
  private excursion = false;
  private readonly asFound: number;

  /** `side` -1: the same bow and the same luck in a mirror. */
  constructor(private readonly world: World, private readonly bow: KnobBow, private readonly wanted: Wanted, private readonly side: 1 | -1 = 1) {
    // Streams of their own: from the one that drew the bow the first shot would know what bow it is.
    this.noise = seededRandom(bow.seed + 2 ** 31);
    this.aside = seededRandom(-1 - bow.seed);
    this.setting = seededRandom(2 ** 31 - bow.seed);
    this.asFound = Math.abs(this.tear() - wanted.aim);
  }

  /** The true tear, inches. */
  tear(): number {
    return this.world.bend(this.side * this.bow.start + this.bow.response * (this.at + this.off));
  }

  /** One shot, read from where the tear is wanted. */
  shoot(): number {
    return this.shootBoth().tear - this.wanted.aim;
  }

  /** The same, and what the axis that nothing is wrong with shows: rounded as it is read. */
  shootBoth(): { readonly tear: number; readonly other: number } {
    this.shots++;
    const sd = this.bow.sd * (this.noise.uniform() < this.world.strays ? FOURFOLD : 1);
    const tear = this.tear() + this.side * sd * this.noise.normal();
    return { tear: read(tear), other: read(sd * this.aside.normal()) };
  }

  moveTo(setting: number): void {
    this.moves++;
    this.at = setting;
    this.off = this.world.settingError === 0 ? 0 : this.side * this.world.settingError * this.setting.normal();
    if (this.isWorse()) this.excursion = true;
  }

  private isWorse(): boolean {
    return Math.abs(this.tear() - this.wanted.aim) > this.asFound + WORSE_BY;
  }

  isInside({ aim, within } = this.wanted): boolean {
    return Math.abs(this.tear() - aim) <= within;
  }

  outcome(declared: boolean): Outcome {
    return {
      fixable: isFixable(this.world, this.bow, this.wanted), declared, inside: this.isInside(), worse: this.isWorse(), excursion: this.excursion,
      shots: this.shots, moves: this.moves,
    };
  }
}

/** Halves away from zero: mirrored bows read mirrored. */
const read = (tear: number): number => Math.sign(tear) * Math.min(LARGEST, Math.round(Math.abs(tear) / READ_TO) * READ_TO) + 0;
