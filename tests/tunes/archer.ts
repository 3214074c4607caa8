// An archer for tests: answers every question of the pipe for one bow whose true response is known, and shoots it.
// It reads the asks as a program would (about, kind, options, pass), never the coach's mind.

import { seededRandom, type Random } from '../../src/maths/random.ts';
import type { Answer, Ask, Finding, KnobId, Ledger, Tear, View } from '../../src/machine/types.ts';

export interface Bow {
  /** The tear with every knob at its baseline, inches. */
  readonly start: Tear;
  /** True change of tear per unit of each knob, inches. */
  readonly gain: Partial<Record<KnobId, Tear>>;
  /** Spread of one shot, inches per axis. */
  readonly sd: number;
  readonly seed: number;
  /** Where broadheads (or unfletched shafts) land against field points (fletched ones). */
  readonly groups?: Impacts;
  /** Drift to the right, inches for each yard beyond 20, and what a unit of a knob changes of it. */
  readonly plumb?: { readonly drift: number; readonly gain: Partial<Record<KnobId, number>>; readonly sd: number };
  /** Arrows (by number) that differ from the others. */
  readonly arrows?: Readonly<Record<string, OddArrow>>;
  /** Answers by `about` that differ from the usual archer's. */
  readonly answers?: Readonly<Record<string, unknown>>;
  /** Readings to this fraction of an inch; 0 reads exactly. */
  readonly readsTo?: number;
}

export interface Impacts {
  /** Second group minus first at 20 yd, with every knob at its baseline, inches. */
  readonly start: Tear;
  readonly gain: Partial<Record<KnobId, Tear>>;
  /** Spread of one field point (fletched arrow) at 20 yd, per axis; of the second group where that is another. */
  readonly sd: number;
  readonly sdSecond?: number;
  /** Where both groups land together, from the dots, inches at 20 yd: the sight's affair. */
  readonly both?: Tear;
}

/** What one arrow adds to the tear, inches. */
export interface OddArrow {
  readonly error?: Tear;
  /** What its nock adds, until that is replaced. */
  readonly nock?: Tear;
  /**
   * The error turns with the shaft, clockwise seen from the nock, `vanes` turns once round; a share of it, from a shaft that is
   * stiffer one way than across, twice as fast. Without it no turn changes the error.
   */
  readonly turns?: { readonly vanes: number; readonly twice?: number };
  /** What a look at it finds. */
  readonly look?: 'crack' | 'wobble' | 'vane';
}

/** A right-handed adult with a sound 60-lb bow and twelve 400-gr arrows: facts that pass every gate. */
const USUAL: Readonly<Record<string, unknown>> = {
  'release': 'release-aid', 'growing': 'grown', 'hand': 'right', 'bow': 'another', 'place': 'same',
  'history': 'nothing', 'axle-clips': 4, 'rated-weight': 60, 'bolts-top': 1, 'bolts-bottom': 1, 'bolt-limit': 4,
  'arrow-count': 12, 'arrow-mass': 400, 'peak-weight': 59, 'scale-error': 1, 'shaft-ahead': 1.25,
  'axle-to-axle': '33 1/8', 'brace-height': '6 5/8', 'nock-height': '1/16', 'centre-shot': '13/16', 'centre-shot-figure': '13/16',
  'cams': 'yoke', 'rest': 'drop-away-cable', 'press': 'shop', 'rest-scale': 'fine-screw',
  'contact': 'clean', 'grip': 'same', 'face': 'same', 'lean': 'straight', 'cam-range': 'known',
  'use': 'hunting', 'arrows-wanted': 'later', 'arrows-in-set': 11, 'arrow-out': 1, 'turn-the-set': 'done', 'nock-stays': 4, 'paper-again': 'now', 'vanes': 'three', 'nock-turns': 'turns', 'turned-clears': 'clears', 'broadheads-farther': 'enough', 'broadheads-wanted': 'never', 'blades-ahead': 2, 'group-at-20': 3, 'inspected': 'nothing', 'finishing': 'leave', 'accept': 'accept', 'moved': 'as told',
  'bow-name': 'Old Blue', 'archer-name': 'Kim', 'which-bow': 'another',
  // The same arrow by its parts: 393 gr, of which 377 count. Figures for the card are for those who want them.
  'mass-way': 'add-up', 'shaft-grains': 8.6, 'shaft-length': '28 1/4', 'point-grains': 100, 'insert-grains': 20, 'nock-grains': 9, 'vane-count': 3, 'vane-grains': 7, 'wrap-grains': 0,
  'figures-wanted': 'no', 'arrow-length': '28 1/4', 'balance-point': '17 3/4', 'arrow-speed': 275, 'second-mass': 475, 'second-speed': 255, 'holding-weight': 12, 'draw-mark': '26 1/4', 'rated-speed': 330,
  'spine-printed': 340, 'spine-older': 0.28,
  'what-was-changed': 'nothing', 'released': 'The dealer released it today and found nothing wrong', 'what-happened': 'nothing',
};

export class TestArcher {
  protected random: Random;
  private readonly newNocks = new Set<string>();
  constructor(private readonly bow: Bow) {
    this.random = seededRandom(bow.seed);
  }

  /** The answer to the standing ask, as raw input for the pipe. */
  answer(view: Pick<View, 'ask' | 'bow'> & Partial<Pick<View, 'advice'>>): unknown {
    const { ask, advice } = view;
    if (ask === null) throw new Error('nothing is asked');
    if (ask.about === 'moved' && advice?.knob === 'nock-swap') this.newNocks.add(advice.arrow ?? '');
    const given = this.bow.answers?.[ask.about];
    if (given !== undefined) return typeof given === 'function' ? (given as (ask: Ask, shot: () => Tear) => unknown)(ask, () => this.shoot(view.bow, ask.kind === 'tear' ? ask : undefined)) : given;
    if (ask.kind === 'tear') return this.shoot(view.bow, ask);
    if (ask.kind === 'impact') return this.impact(ask, view.bow);
    const usual = USUAL[ask.about];
    if (usual !== undefined) return usual;
    if (ask.about === 'arrow-look') return this.bow.arrows?.[/\d+/.exec(ask.short)?.[0] ?? '']?.look ?? 'nothing';
    if (ask.kind === 'choice') {
      const pass = ask.options.find((option) => option.pass === true);
      if (pass !== undefined) return pass.value;
    }
    if (ask.kind === 'confirm') return true;
    throw new Error(`this archer has no answer about "${ask.about}" (${ask.kind})`);
  }

  /** One honest shot at the present settings, read by ruler. */
  shoot(ledger: Ledger, plan?: { readonly arrow: string | null; readonly nockTurn: number }): Tear {
    const own = this.arrowAdds(plan?.arrow ?? null, plan?.nockTurn ?? 0);
    const at = { x: this.bow.start.x + own.x, y: this.bow.start.y + own.y };
    for (const [knob, setting] of Object.entries(ledger) as [KnobId, { value: number }][]) {
      const gain = this.bow.gain[knob];
      if (gain === undefined) continue;
      at.x += gain.x * setting.value;
      at.y += gain.y * setting.value;
    }
    const read = (value: number): number => rounded(value, this.bow.readsTo ?? 1 / 16);
    return { x: read(at.x + this.bow.sd * this.random.normal()), y: read(at.y + this.bow.sd * this.random.normal()) };
  }

  private arrowAdds(arrow: string | null, nockTurn: number): Tear {
    const odd = arrow === null ? undefined : this.bow.arrows?.[arrow];
    const { error = { x: 0, y: 0 }, nock = { x: 0, y: 0 }, turns } = odd ?? {};
    const angle = turns === undefined ? 0 : (2 * Math.PI * nockTurn) / turns.vanes;
    const twice = turns?.twice ?? 0;
    const [once, again] = [clockwise(error, angle), clockwise(error, 2 * angle)];
    const turned = { x: (1 - twice) * once.x + twice * again.x, y: (1 - twice) * once.y + twice * again.y };
    return arrow !== null && this.newNocks.has(arrow) ? turned : { x: turned.x + nock.x, y: turned.y + nock.y };
  }

  /** One impact from its own aiming dot, read to 1/4 in. */
  protected impact(ask: Extract<Ask, { kind: 'impact' }>, ledger: Ledger): Tear {
    const yards = ask.distance.value;
    const { groups, plumb } = this.bow;
    if (plumb !== undefined && groups === undefined) {
      const drift = total(plumb.drift, ledger, (knob) => plumb.gain[knob]);
      return { x: rounded(drift * (yards - 20) + (plumb.sd * yards / 20) * this.random.normal(), 1 / 4), y: 0 };
    }
    if (groups === undefined) throw new Error('this archer has no impacts');
    const second = ask.head === 'broadhead' || ask.shaft === 'unfletched';
    const sd = second ? (groups.sdSecond ?? groups.sd) : groups.sd;
    const at = (axis: 'x' | 'y'): number =>
      (yards / 20) * ((groups.both?.[axis] ?? 0) + (second ? total(groups.start[axis], ledger, (knob) => groups.gain[knob]?.[axis]) : 0) + sd * this.random.normal());
    return { x: rounded(at('x'), 1 / 4), y: rounded(at('y'), 1 / 4) };
  }
}

const clockwise = ({ x, y }: Tear, angle: number): Tear => ({ x: x * Math.cos(angle) + y * Math.sin(angle), y: y * Math.cos(angle) - x * Math.sin(angle) });

const rounded = (value: number, mark: number): number => (mark === 0 ? value : Math.round(value / mark) * mark);

const total = (start: number, ledger: Ledger, gain: (knob: KnobId) => number | undefined): number =>
  (Object.entries(ledger) as [KnobId, { value: number }][]).reduce((sum, [knob, { value }]) => sum + (gain(knob) ?? 0) * value, start);

/** What a played tune left behind, collected from the views. */
export interface Played {
  readonly views: readonly View[];
  readonly findings: readonly Finding[];
  readonly asked: readonly string[];
  readonly last: View;
}
export type { Answer };
