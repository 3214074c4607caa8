// The walk as text: for every place, which event leads where. Found by trying each event of the closed union at each place,
// so it says what the machine does and not what somebody meant.

import { placeOf, step, walkMachine, type WalkSnapshot } from '../../../src/machine/walk.ts';
import type { MachineEvent, Verdict } from '../../../src/machine/types.ts';

const VERDICTS: readonly Verdict[] = ['inconsistent', 'gross', 'in tolerance', 'out', 'worse', 'cannot', 'borderline', 'returned', 'not returned'];
const EVENTS: readonly MachineEvent[] = [
  { type: 'settled' }, { type: 'skipped' }, { type: 'farther' }, { type: 'moved' }, { type: 'looked' }, { type: 'put back' }, { type: 'clear' }, { type: 'released' },
  ...VERDICTS.map((verdict) => ({ type: 'verdict', verdict }) as const),
  ...(['accept', 'go on', 'finish step'] as const).map((choice) => ({ type: 'chosen', choice }) as const),
];
/** The places that `due` and `stop` lead to from everywhere: told once, not at each place. */
const INTERRUPTIONS = ['asking', 'stopped'];

interface Node { readonly type: string; readonly states: Readonly<Record<string, Node>> }
type Value = string | { readonly [key: string]: Value };

/** Every place where the walk can stand, as the value of its state. */
function places(node: Node): Value[] {
  return Object.entries(node.states).filter(([, child]) => child.type !== 'history').flatMap(([name, child]): Value[] =>
    (child.type === 'compound' ? places(child).map((inner) => ({ [name]: inner })) : [name]));
}

const at = (value: Value): WalkSnapshot => walkMachine.resolveState({ value });
const nameOf = (event: MachineEvent): string => ('verdict' in event ? `"${event.verdict}"` : 'choice' in event ? `chosen: ${event.choice}` : event.type);

interface Place { readonly from: string; readonly ways: ReadonlyMap<string, readonly string[]> }

function waysFrom(value: Value): Place {
  const snapshot = at(value);
  const ways = new Map<string, string[]>();
  for (const event of EVENTS) {
    const to = step(snapshot, event);
    if (to !== null) ways.set(placeOf(to), [...(ways.get(placeOf(to)) ?? []), nameOf(event)]);
  }
  return { from: placeOf(snapshot), ways };
}

const ANY_VERDICT = VERDICTS.map((verdict) => nameOf({ type: 'verdict', verdict })).join(', ');

/** `event, event > place; event > place`; a place of the same parent by its last name. */
function told({ from, ways }: Place): string {
  if (from === 'asking') return 'clear > back to the place that it interrupted';
  if (ways.size === 0) return 'the end';
  const own = from.slice(0, from.lastIndexOf('.') + 1);
  const near = (place: string): string => (own !== '' && place.startsWith(own) ? place.slice(own.length) : place);
  return [...ways].map(([place, events]) => `${events.join(', ').replace(ANY_VERDICT, 'any verdict')} > ${near(place)}`).join('; ');
}

interface Line { readonly label: string; readonly text: string }

/** Parents whose places are alike but for the one place outside that they lead on to: the loop is told once. */
function folded(all: readonly Place[]): Line[] {
  const parentOf = ({ from }: Place): string => from.slice(0, Math.max(0, from.lastIndexOf('.')));
  const lines: Line[] = [];
  let loop: string | null = null;
  // Neighbours with one parent; the order of the walk is kept.
  const groups: Place[][] = [];
  for (const place of all) {
    const last = groups.at(-1);
    if (last?.[0] !== undefined && parentOf(last[0]) === parentOf(place)) last.push(place);
    else groups.push([place]);
  }
  for (const own of groups) {
    const parent = own[0] === undefined ? '' : parentOf(own[0]);
    const outside = [...new Set(own.flatMap(({ ways }) => [...ways.keys()]))].filter((to) => !to.startsWith(`${parent}.`));
    const [next] = outside;
    if (parent === '' || own.length < 5 || outside.length !== 1 || next === undefined) {
      lines.push(...own.map((place) => ({ label: place.from, text: told(place) })));
      continue;
    }
    const body = own.map((place) => ({ label: `  ${place.from.slice(parent.length + 1)}`, text: told(place).replace(next, 'the next place') }));
    const text = JSON.stringify(body);
    lines.push({ label: parent, text: `${loop === text ? 'the same loop' : 'the measuring loop'}; the next place is ${next}` });
    if (loop !== text) lines.push(...body);
    loop = text;
  }
  return lines;
}

/** One line for each place: `place   event, event > place; event > place`. */
export function walkMap(): string {
  const values = places(walkMachine.root);
  const inside = values.filter((value) => !INTERRUPTIONS.includes(placeOf(at(value))));
  const leads = (event: MachineEvent, from: readonly Value[], to: string): void => {
    for (const value of from) {
      const after = step(at(value), event);
      if (after === null || placeOf(after) !== to) throw new Error(`${event.type} does not lead from ${placeOf(at(value))} to ${to}; mend the last lines of the map`);
    }
  };
  leads({ type: 'due' }, inside, 'asking');
  leads({ type: 'stop' }, values, 'stopped');
  const measuring = inside.filter((value) => /^(paper|broadheads|arrows|finish)\./.test(placeOf(at(value))));
  leads({ type: 'return', to: 'paper' }, measuring, 'paper.height.puttingBack');
  leads({ type: 'return', to: 'broadheads' }, measuring, 'broadheads.height.puttingBack');
  const order = (place: Place): number => (INTERRUPTIONS.includes(place.from) ? 1 : 0);
  const lines = folded(values.map(waysFrom).sort((a, b) => order(a) - order(b)));
  const width = Math.max(...lines.map(({ label }) => label.length));
  return [
    ...lines.flatMap(({ label, text }) => wrapped(`${label.padEnd(width)}  `, text)),
    '', 'everywhere: stop > stopped', 'everywhere but in asking and stopped: due > asking',
    'everywhere in paper, broadheads, arrows and finish: return > paper.height.puttingBack or broadheads.height.puttingBack',
  ].join('\n');
}

const WIDEST = 100;

function wrapped(label: string, text: string): string[] {
  const lines: string[] = [];
  let line = label;
  for (const part of text.split(/(?<=;) /)) {
    if (line.trim() !== label.trim() && line.length + part.length + 1 > WIDEST) {
      lines.push(line.trimEnd());
      line = ' '.repeat(label.length);
    }
    line += `${part} `;
  }
  return [...lines, line.trimEnd()];
}
