// The ladder in every cell: each tear, hand, kind of cams, rest and press, played through the session to the one thing that is to be
// done next. What is right in a cell is written here from common practice, and not read from content.

import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Fact, View } from '../../src/machine/types.ts';
import type { Bow } from '../tunes/archer.ts';
import { NOON, play } from '../tunes/play.ts';

export const HANDS = ['right', 'left'] as const;
export const CAMS = ['yoke', 'single-cam', 'hybrid', 'two-track', 'screw-adjust', 'unknown'] as const;
export const RESTS = ['drop-away-cable', 'drop-away-limb', 'blade', 'containment', 'prong', 'unknown'] as const;
export const PRESSES = ['trained', 'shop', 'none'] as const;
/** Inches, tail minus point. */
export const TEARS = {
  high: [0, 0.5], low: [0, -0.5], left: [-0.5, 0], right: [0.5, 0],
  'high left': [-0.5, 0.5], 'high right': [0.5, 0.5], 'low left': [-0.5, -0.5], 'low right': [0.5, -0.5],
  'an inch and a half left': [-1.5, 0], 'more than two inches high': [0, 2.25],
} as const;

export interface Cell {
  readonly hand: (typeof HANDS)[number]; readonly cams: (typeof CAMS)[number]; readonly rest: (typeof RESTS)[number];
  readonly press: (typeof PRESSES)[number]; readonly tear: keyof typeof TEARS;
}

export const nameOf = ({ hand, cams, rest, press, tear }: Cell): string => `${tear}, ${hand} hand, ${cams}, ${rest}, press ${press}`;

const names = Object.keys(TEARS) as readonly (keyof typeof TEARS)[];

export const CELLS: readonly Cell[] = HANDS.flatMap((hand) => CAMS.flatMap((cams) => RESTS.flatMap((rest) => PRESSES.flatMap((press) =>
  names.map((tear) => ({ hand, cams, rest, press, tear }))))));

const MINUTE = 60_000;
const MOST_TURNS = 300;

/** What the usual archer's tune is like up to the first shot, on a bow for this hand: the same for each of its cells. */
const begun = new Map<string, readonly Fact[]>();

function bowOf({ hand, cams, rest, press, tear }: Cell): Bow {
  const [x, y] = TEARS[tear];
  return { start: { x, y }, gain: {}, sd: 0, seed: 1, readsTo: 0, answers: { hand, cams, rest, press } };
}

const stepsAside = (view: View): boolean => view.ask === null || view.ask.about === 'inspected' || view.ask.about === 'accept';

/** Plays on from these facts as the usual archer would, until `ended`. A sitting that goes on within the hour is the same sitting. */
function playOn(cell: Cell, facts: readonly Fact[], ended: (view: View) => boolean): { readonly view: View; readonly facts: readonly Fact[] } {
  const { last, store } = play(bowOf(cell), { store: memoryStore(facts, { skipCodec: true }), startAt: NOON + facts.length * MINUTE, tune: 'a-cell', most: MOST_TURNS, until: ended });
  if (!ended(last)) throw new Error(`${nameOf(cell)}: no end after ${MOST_TURNS} answers; "${last.ask?.about}" is asked`);
  return { view: last, facts: store.facts };
}

/** Where the first shots of this cell lead. Throws where they lead nowhere. */
export function endOf(cell: Cell): View {
  const key = `${cell.hand} ${cell.rest}`;
  const facts = begun.get(key) ?? playOn({ ...cell, tear: 'high' }, [], (view) => view.ask?.kind === 'tear').facts;
  begun.set(key, facts);
  return playOn(cell, facts, (view) => stepsAside(view) || view.ask?.about === 'moved').view;
}

/** What common practice has next: of which kind, and which adjustments are right. */
export interface Right { readonly kind: 'adjust' | 'inspect'; readonly knobs: readonly string[] }

export function rightIn({ cams, press, tear }: Cell): Right {
  const [x, y] = TEARS[tear];
  // More than an inch is looked into before anything is moved.
  if (Math.hypot(x, y) > 1) return { kind: 'inspect', knobs: [] };
  // Up and down first, on every bow: the rest, or the nocking point instead.
  if (y !== 0) return { kind: 'adjust', knobs: ['rest-height'] };
  // A yoke is twisted in a press, by who was shown how; screws are turned by hand; every other bow begins at the rest.
  if ((cams === 'yoke' || cams === 'single-cam') && press === 'trained') return { kind: 'adjust', knobs: ['yoke'] };
  return { kind: 'adjust', knobs: [cams === 'screw-adjust' ? 'cam-screw' : 'rest-side'] };
}

/** What is wrong with the end of this cell; empty where it is as common practice has it. */
export function wrongIn(cell: Cell, view: View): readonly string[] {
  const { advice, ask } = view;
  const right = rightIn(cell);
  const [, y] = TEARS[cell.tear];
  const wrong: string[] = [];
  if (right.kind === 'inspect') {
    if (ask?.about !== 'inspected' || advice?.kind === 'adjust') wrong.push(`${advice?.kind ?? 'nothing'} instead of a look`);
    return wrong;
  }
  if (advice?.kind !== 'adjust' || ask?.about !== 'moved') return [`${advice?.kind ?? ask?.about ?? 'nothing'} instead of an adjustment`];
  if (!right.knobs.some((knob) => knob === advice.knob)) wrong.push(`${advice.knob} instead of ${right.knobs.join(' or ')}`);
  // The tail is high: the rest goes up. This way is agreed; sideways ones are tried, and said to be.
  if (y !== 0 && advice.knob === 'rest-height' && advice.direction !== (y > 0 ? 'up' : 'down')) wrong.push(`the rest goes ${advice.direction}`);
  if ((advice.knob === 'rest-side') !== (advice.trial === true) && advice.knob !== 'cam-screw' && advice.knob !== 'yoke') wrong.push(`a trial: ${advice.trial === true}`);
  if ((advice.amount?.value ?? 0) <= 0) wrong.push('no amount');
  if (advice.press === true && cell.press !== 'trained') wrong.push('work in a press without one');
  if (advice.knob === 'yoke' && advice.caution.length === 0) wrong.push('a press without a caution');
  return wrong;
}

/** The cell in a mirror. */
export const mirrored = (cell: Cell): Cell => ({
  ...cell,
  hand: cell.hand === 'right' ? 'left' : 'right',
  tear: names.find((name) => TEARS[name][0] === 0 - TEARS[cell.tear][0] && TEARS[name][1] === TEARS[cell.tear][1]) ?? cell.tear,
});

/** The same bow on which nothing that is turned does anything: the adjustments that were tried, in order, and what stands when all are used up. */
export function shopEndOf(cell: Cell): { readonly tried: readonly string[]; readonly view: View } {
  const tried: string[] = [];
  const { view } = playOn(cell, [], ({ ask, advice, type }) => {
    if (ask?.about === 'moved' && advice?.kind === 'adjust' && advice.knob !== undefined && !tried.includes(advice.knob)) tried.push(advice.knob);
    return advice?.kind === 'shop' || type === 'done';
  });
  return { tried, view };
}
