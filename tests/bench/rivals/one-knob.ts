// What a rule for one adjustment is given, and what it hands back. Tears are on one axis, inches from where the tear is wanted;
// settings are whole steps of the adjustment from where the bow was found.

/** A bow in the hands of a rule. Only what an archer sees: its readings, and the settings that were made. */
export interface OneKnob {
  readonly at: number;
  readonly shots: number;
  readonly moves: number;
  /** One shot at the present setting: the tear as it was read. */
  shoot(): number;
  moveTo(setting: number): void;
}

export interface Task {
  /** What the book says that one step changes, inches. */
  readonly book: number;
  /** Steps of travel each way. */
  readonly reach: number;
  /** The most steps that may lie beyond what was tried, or of a first move; what each rule makes of it is its own matter. */
  readonly cap: number;
  /** In tolerance is so far at the most from where it is wanted, inches. */
  readonly within: number;
}

export interface Said { readonly tuned: boolean }
export type Rule = (bow: OneKnob, task: Task) => Said;

/** Nobody makes more of either for one axis. */
const MOST_MOVES = 10;
const MOST_SHOTS = 60;
export const mayGoOn = ({ moves, shots }: Pick<OneKnob, 'moves' | 'shots'>): boolean => moves < MOST_MOVES && shots < MOST_SHOTS;

export const TUNED: Said = { tuned: true };
export const LEFT: Said = { tuned: false };

export const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
/** To the nearest whole number, halves away from zero: mirrored in, mirrored out. */
export const wholeSteps = (value: number): number => Math.sign(value) * Math.round(Math.abs(value)) + 0;

/** All readings so far by setting, in the order in which the settings were first tried. */
export class Tried {
  readonly bySetting = new Map<number, number[]>();
  add(setting: number, tear: number): void {
    const own = this.bySetting.get(setting);
    if (own === undefined) this.bySetting.set(setting, [tear]);
    else own.push(tear);
  }
  at(setting: number): readonly number[] {
    return this.bySetting.get(setting) ?? [];
  }
  settings(): readonly number[] {
    return [...this.bySetting.keys()];
  }
}

/** So many shots here, kept. */
export function shootHere(bow: OneKnob, tried: Tried, count: number): void {
  for (let i = 0; i < count; i++) tried.add(bow.at, bow.shoot());
}
