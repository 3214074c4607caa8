// The record: "tuned" only where shots said so, and everything that nobody looked at.

import { KNOBS, type Axis, type Content } from '../../../src/content/types.ts';
import type { Fact } from '../../../src/machine/types.ts';
import { sameSetting } from '../books/bow-book.ts';
import { first, type Invariant, type Moment } from '../moment.ts';

const AXES: readonly Axis[] = ['height', 'side'];

export const tunedOnlyByShots: Invariant = {
  id: 'tuned-only-by-shots',
  rule: 'The record says "tuned" or "land together" only where a set of shots found it so, nothing was replaced and no dealer had the bow since, and every adjustment still stands where those shots were shot, not only those of that axis; the middle of those shots, as they read now, is inside the tolerance.',
  held: 'machine/record-moved.ts, record-result.ts, record-impacts.ts, loop/results.ts, standing.ts, still-shown.ts, loop/judge.ts',
  broken(m) {
    const found = outOfTolerance(m);
    if (found !== null || !m.ending) return found;
    const rows = m.record().flatMap((section) => section.rows);
    return first(AXES.flatMap((axis) => GOOD_WORDS.flatMap(({ chapter, name, words }) => {
      const row = rows.find((one) => one.name === name(m.content, axis));
      const why = words.some((word) => row?.value.startsWith(word)) ? notTuned(m, chapter, axis) : null;
      return why === null ? [] : [`the record says ${row?.name} ${row?.value}, and ${why}`];
    })));
  },
};

/** Where the record has a good word for an axis, and what it begins with. */
const GOOD_WORDS = [
  { chapter: 'paper', name: (content: Content, axis: Axis) => content.phrases[`axis-${axis}`], words: ['tuned', 'land together', 'straight'] },
  { chapter: 'broadheads', name: (content: Content, axis: Axis) => `${content.phrases['record-broadheads']}, ${content.phrases[`axis-${axis}`]?.toLowerCase()}`, words: ['land together'] },
] as const;

function notTuned(m: Moment, chapter: 'paper' | 'broadheads', axis: Axis): string | null {
  const { lines, bow } = m;
  const of = (line: Fact) => line.decided.findings.findLast((f) => f.kind === 'axis' && f.chapter === chapter && f.axis === axis);
  const found = lines.findLast((line) => of(line) !== undefined);
  const result = found === undefined ? undefined : of(found);
  if (found === undefined || result?.kind !== 'axis' || result.result !== 'tuned') return 'no shots found it so';
  const replaced = lines.find((line) => line.seq > found.seq && line.kind === 'changed' && ['string', 'rest', 'release', 'arrow', 'other'].includes(line.what));
  if (replaced !== undefined) return `line ${replaced.seq} replaced a part since`;
  const dealer = lines.find((line) => line.seq > found.seq && line.kind === 'answered' && line.step === 'released');
  if (dealer !== undefined) return `a dealer had the bow since, line ${dealer.seq}`;
  const [then, now] = [bow.settingsBefore(found.seq + 1), bow.settings()];
  return first(KNOBS.filter((knob) => !sameSetting(now[knob] ?? 0, then[knob] ?? 0)).map((knob) => `${knob} was moved since`))
    ?? (chapter === 'paper' ? outOfIt(m, found.seq, axis) : null);
}

// 1/4 in each way, and vertically 1/8 low to 1/4 high; the coach weighs strays and what it knew before, the plain middle does not.
const WEIGHED = 1 / 8;
const WITHIN = { height: { lo: -1 / 8 - WEIGHED, hi: 1 / 4 + WEIGHED }, side: { lo: -1 / 4 - WEIGHED, hi: 1 / 4 + WEIGHED } };

function outOfTolerance(m: Moment): string | null {
  const { line } = m;
  if (line?.kind !== 'answered' || line.answer.kind !== 'shots') return null;
  return first(line.decided.findings.flatMap((f) => (f.kind === 'axis' && f.chapter === 'paper' && f.result === 'tuned' ? (outOfIt(m, line.seq, f.axis) ?? []) : [])));
}

// The good shots up to this line at the setting at which it was shot, by their plain middle. What was shot later has a word of its own.
function outOfIt({ state, lines }: Moment, seq: number, axis: Axis): string | null {
  const set = state.sets.find((one) => one.shots.some((shot) => shot.seq === seq));
  if (set?.of !== 'paper') return null;
  const scattered = scatteredBy(state.sets, lines);
  const shots = state.sets.filter((one) => one.of === 'paper' && one.epoch === set.epoch && settingKey(one.settings) === settingKey(set.settings) && !scattered.includes(one))
    .flatMap((one) => one.shots).filter((shot) => shot.good && shot.seq <= seq);
  if (shots.length < 2) return `${axis} is called tuned by ${shots.length} shots`;
  const values = shots.map((shot) => (axis === 'height' ? shot.y : shot.x)).toSorted((a, b) => a - b);
  const middle = ((values[Math.floor((values.length - 1) / 2)] ?? 0) + (values[Math.ceil((values.length - 1) / 2)] ?? 0)) / 2;
  const { lo, hi } = WITHIN[axis];
  return middle >= lo && middle <= hi ? null : `${axis} is called tuned, and the middle of ${shots.length} shots is ${middle} in`;
}

// Shots that were called scattered show nothing of the bow. Unless one of them was corrected before anything was looked into, and as they now read
// nothing was left to look for; or it was looked, and nothing found: then they are how the archer shoots.
function scatteredBy(sets: Moment['state']['sets'], lines: readonly Fact[]): Moment['state']['sets'] {
  // Shots that left no hole are looked for as well: those that did are no scatter.
  const scatters = ({ decided: { events, loop } }: Fact): boolean => loop?.inspection !== 'missed' && events.some((event) => event.type === 'verdict' && event.verdict === 'inconsistent');
  const said = lines.filter((line, i) => scatters(line) && !takenBack(lines.slice(i + 1)));
  return said.flatMap((line) => sets.findLast((one) => one.shots.some((shot) => shot.seq <= line.seq)) ?? []);
}

function takenBack(after: readonly Fact[]): boolean {
  const next = after.find((line) => line.decided.events.some(({ type }) => type === 'looked'));
  return next?.kind === 'corrected' || (next?.kind === 'answered' && next.step === 'inspect-scatter' && next.answer.kind === 'choice' && next.answer.values.includes('nothing'));
}

const settingKey = (settings: Moment['state']['sets'][number]['settings']): string => JSON.stringify(Object.entries(settings).filter(([, value]) => value !== 0).toSorted());

export const notCheckedIsSaid: Invariant = {
  id: 'not-checked-is-said',
  rule: 'The record names what was not looked at: what nobody knew, what was never shot, and what this coach does not measure.',
  held: 'machine/record-card.ts (notCheckedRows)',
  broken(m) {
    if (!m.ending) return null;
    const told = (m.record().find(({ title }) => title === m.content.phrases['record-not-checked'])?.rows ?? []).map((row) => row.value);
    return first(notChecked(m).filter((id) => !told.includes(m.content.phrases[`not-checked-${id}`] ?? '?')).map((id) => `the record does not say "${m.content.phrases[`not-checked-${id}`]}"`))
      ?? byNumber(m, told)
      ?? first(m.gates.notKnown().filter((id) => m.content.steps[id] !== undefined && !ON_THE_CARD.includes(id) && !told.some((row) => row.startsWith('Not known: '))).map((id) => `the record does not say that ${id} is not known`));
  },
};

/** Figures that are told for the card or left out; what was left out is named in the row of what was not told by number. */
const ON_THE_CARD: readonly string[] = ['arrow-length', 'balance-point', 'arrow-speed', 'second-mass', 'second-speed', 'holding-weight', 'draw-mark', 'rated-speed', 'spine-printed', 'spine-older'];

// What no tune measures, and what could have been told and was not; and nothing that was.
function byNumber({ content, state, gates }: Moment, told: readonly string[]): string | null {
  const number = (id: string): boolean => state.answers[id]?.answer.kind === 'number';
  const row = told.find((one) => one.startsWith('Not measured: ')) ?? '';
  const left: Readonly<Record<string, boolean>> = {
    'timing': true, 'tiller': true, 'string-age': true, 'loop-to-peep': true,
    'holding-weight': !number('holding-weight'), 'draw-length': !number('draw-mark'), 'spine': !number('spine-printed') && !number('spine-older'),
    'balance-point': !(number('balance-point') && (number('arrow-length') || gates.addedUp)),
  };
  return first(Object.entries(left).filter(([id, is]) => row.includes(content.phrases[`by-number-${id}`] ?? '?') !== is).map(([id, is]) => `the record ${is ? 'does not say' : 'says'} that ${id} was not told by number`));
}

function notChecked({ lines, gates }: Moment): readonly string[] {
  const shot = (of: (head: string, line: Fact) => boolean): boolean => lines.some((line) => line.kind === 'answered' && line.answer.kind === 'shots' && (line.decided.loop?.tags ?? []).some((tag) => of(tag.head, line)));
  const never: string[] = [];
  if (!shot((head) => head === 'broadhead') && !['target', 'three-d'].includes(gates.value('use'))) never.push('broadheads');
  if (!lines.some((line) => line.decided.findings.some((f) => f.kind === 'arrow'))) never.push('each-arrow');
  if (gates.value('contact') === 'unknown') never.push('contact');
  if (gates.value('lean') === 'not-seen') never.push('lean');
  const proved = lines.some((line) => line.kind === 'answered' && line.answer.kind === 'shots' && line.step === 'shoot-proof');
  if (!gates.fingers && !proved) never.push('after-tightening');
  return never;
}
