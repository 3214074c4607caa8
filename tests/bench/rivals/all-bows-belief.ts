// A list of all bows that the one in hand may be: tear at the start, response, spread of a shot. Every tear crosses out those that do not fit.
// A grid, because a response may be on the other side or none at all, and no normal belief says that. Derived: Bayes' rule, node by node.

/** Grid of the tear at the start, inches. */
const WIDEST = 2.6;
const STEP = 0.04;
const WIDE_VARIANCE = 9;
/** Nodes of a normal number, in standard deviations: of the size of the response, of the spread. */
const GAIN_NODES = { from: -2.8, count: 23, logSd: 0.6 };
const SPREAD_NODES = { from: -2.4, count: 7, logSd: 0.4, sd: 0.2 };
const SHARES = { book: 0.88, other: 0.06, none: 0.06 };
const [STRAYING, FOURFOLD] = [0.06, 4];
/** A bow is crossed out below this share of the likeliest. */
const [DROP_BEFORE, DROP_ON_EXPANDING, DROP] = [1e-5, 1e-6, 1e-4];
/** Variance of a reading that nobody tells closer, and of rounding to 1/16 in. */
const READING = 0.03 ** 2 + 0.000326;
const GOLDEN = 0.618034;

interface Gain { readonly gain: number; readonly weight: number; readonly shift: number }

/** One possible bow. Columns, since there are thousands. */
interface Nodes { readonly c: Float64Array; readonly g: Float64Array; readonly s: Float64Array; readonly w: Float64Array }

export class AllBows {
  private nodes: Nodes;
  private readonly gains: readonly Gain[];
  private expanded = false;
  /** Chances of the tear at the start whatever the spread: all that is asked of it before anything was moved. */
  private starts: ReadonlyMap<number, number> = new Map();

  constructor(book: number) {
    this.gains = gainsAround(book);
    this.nodes = atStart();
  }

  /** A reading at a setting, inches. */
  see(x: number, tear: number): void {
    if (x !== 0 && !this.expanded) this.expand();
    const { c, g, s, w } = this.nodes;
    for (let i = 0; i < w.length; i++) w[i] = (w[i] ?? 0) * likelihood(tear - (c[i] ?? 0) - (g[i] ?? 0) * x, s[i] ?? 1);
    this.nodes = kept(this.nodes, this.expanded ? DROP : DROP_BEFORE);
    if (!this.expanded) this.starts = chancesOf(this.nodes.c, this.nodes.w);
  }

  private expand(): void {
    const { c, s, w } = this.nodes;
    const all = empty(w.length * this.gains.length);
    let k = 0;
    for (const { gain, weight, shift } of this.gains) {
      for (let i = 0; i < w.length; i++, k++) {
        all.c[k] = (c[i] ?? 0) + shift;
        all.g[k] = gain;
        all.s[k] = s[i] ?? 0;
        all.w[k] = (w[i] ?? 0) * weight;
      }
    }
    this.expanded = true;
    this.nodes = kept(all, DROP_ON_EXPANDING);
  }

  /** Adds up over all bows; before anything was moved each stands for all responses. */
  private total(value: (c: number, g: number) => number): number {
    const { c, g, w } = this.nodes;
    let total = 0;
    if (this.expanded) {
      for (let i = 0; i < w.length; i++) total += (w[i] ?? 0) * value(c[i] ?? 0, g[i] ?? 0);
      return total;
    }
    for (const { gain, weight, shift } of this.gains) {
      let share = 0;
      for (const [start, chance] of this.starts) share += chance * value(start + shift, gain);
      total += weight * share;
    }
    return total;
  }

  /** Chance that the tear at a setting lies within `d`. */
  within(x: number, d: number): number {
    return this.total((c, g) => Math.min(1, Math.max(0, (d + STEP / 2 - Math.abs(c + g * x)) / STEP)));
  }

  /** Chance that a setting is worse than the start by more than 1/8 in. */
  worseThanStart(x: number): number {
    return this.total((c, g) => (Math.abs(c + g * x) > Math.abs(c) + 1 / 8 ? 1 : 0));
  }

  /** Chance that no setting of the travel brings the tear within `d`. */
  unreachable(reach: number, d: number): number {
    return this.total((c, g) => {
      const [a, b] = [c - g * reach, c + g * reach];
      return Math.min(a, b) > d || Math.max(a, b) < -d ? 1 : 0;
    });
  }

  tear(x: number): number {
    return this.total((c, g) => c + g * x);
  }

  response(): number {
    return this.total((_c, g) => g);
  }

  spread(): number {
    const { s, w } = this.nodes;
    return Math.sqrt(w.reduce((total, weight, i) => total + weight * (s[i] ?? 0) ** 2, 0));
  }

  /** The spreads that a shot may have, with their chances. */
  spreads(): readonly { readonly sd: number; readonly chance: number }[] {
    return [...chancesOf(this.nodes.s, this.nodes.w)].map(([sd, chance]) => ({ sd, chance }));
  }
}

function chancesOf(values: Float64Array, weights: Float64Array): ReadonlyMap<number, number> {
  const chances = new Map<number, number>();
  for (let i = 0; i < weights.length; i++) chances.set(values[i] ?? 0, (chances.get(values[i] ?? 0) ?? 0) + (weights[i] ?? 0));
  return chances;
}

function gainsAround(book: number): readonly Gain[] {
  const nodes = Array.from({ length: GAIN_NODES.count }, (_, i) => GAIN_NODES.from + (-2 * GAIN_NODES.from * i) / (GAIN_NODES.count - 1));
  const weights = nodes.map((z) => Math.exp(-(z * z) / 2));
  const all = weights.reduce((a, b) => a + b, 0);
  const signed = nodes.flatMap((z, i) => {
    const gain = book * Math.exp(GAIN_NODES.logSd * z);
    const weight = (weights[i] ?? 0) / all;
    return [{ gain, weight: SHARES.book * weight }, { gain: -gain, weight: SHARES.other * weight }];
  });
  // Without the shift all nodes would lie on one lattice, and chances would jump from setting to setting.
  return [...signed, { gain: 0, weight: SHARES.none }].map((one, j) => ({ ...one, shift: STEP * ((GOLDEN * (j + 1)) % 1 - 0.5) }));
}

function atStart(): Nodes {
  const tears = Math.round((2 * WIDEST) / STEP) + 1;
  const nodes = empty(tears * SPREAD_NODES.count);
  for (let i = 0, k = 0; i < tears; i++) {
    for (let j = 0; j < SPREAD_NODES.count; j++, k++) {
      const z = SPREAD_NODES.from + (-2 * SPREAD_NODES.from * j) / (SPREAD_NODES.count - 1);
      const c = -WIDEST + STEP * i;
      nodes.c[k] = c;
      nodes.s[k] = Math.sqrt((SPREAD_NODES.sd * Math.exp(SPREAD_NODES.logSd * z)) ** 2 + READING);
      nodes.w[k] = Math.exp(-(c * c) / (2 * WIDE_VARIANCE)) * Math.exp(-(z * z) / 2);
    }
  }
  return nodes;
}

const empty = (size: number): Nodes => ({ c: new Float64Array(size), g: new Float64Array(size), s: new Float64Array(size), w: new Float64Array(size) });

function likelihood(off: number, sd: number): number {
  const r = Math.min(60, Math.abs(off / sd));
  return ((1 - STRAYING) * Math.exp(-(r * r) / 2) + (STRAYING / FOURFOLD) * Math.exp(-(r * r) / (2 * FOURFOLD ** 2)) + 1e-9) / sd;
}

/** Without those that are next to impossible; weights add up to 1. */
function kept({ c, g, s, w }: Nodes, drop: number): Nodes {
  let most = 0;
  for (const weight of w) most = Math.max(most, weight);
  const stays: number[] = [];
  let all = 0;
  w.forEach((weight, i) => {
    if (weight < drop * most) return;
    stays.push(i);
    all += weight;
  });
  const left = empty(stays.length);
  stays.forEach((from, to) => {
    left.c[to] = c[from] ?? 0;
    left.g[to] = g[from] ?? 0;
    left.s[to] = s[from] ?? 0;
    left.w[to] = (w[from] ?? 0) / all;
  });
  return left;
}
