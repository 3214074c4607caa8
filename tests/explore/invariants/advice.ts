// One change at a time, no farther than it may go, and only where shots ask for it.

import type { Knob } from '../../../src/content/types.ts';
import { bowKnobOf } from '../../../src/machine/types.ts';
import { sameSetting } from '../books/bow-book.ts';
import { adjustmentTold, asked, workTold, type Invariant, type Moment } from '../moment.ts';

export const oneChangeAtATime: Invariant = {
  id: 'one-change-at-a-time',
  rule: 'An advice names one adjustment, one direction and one amount, and the setting that the bow will then stand at.',
  held: 'machine/loop/advise.ts',
  broken(m) {
    const work = workTold(m);
    const id = bowKnobOf(work);
    if (work === null || id === null) return null;
    const { amount, to, direction } = work;
    const knob = m.content.knobs[id];
    if (amount === undefined || to === undefined || direction === undefined) return `${work.what}: amount, direction or setting is missing`;
    if (!(amount.value > 0) || amount.unit !== knob.unit || to.unit !== knob.unit) return `${work.what}: ${amount.value} ${amount.unit}`;
    if (direction !== knob.plus && direction !== knob.minus) return `${knob.name} does not go ${direction}`;
    const from = m.bow.settings()[id] ?? 0;
    if (!sameSetting(from + signed(knob, direction, amount.value), to.value)) return `${knob.name} from ${from} by ${amount.value} ${direction} does not come to ${to.value}`;
    const ask = asked(m);
    return ask === null || (ask.kind === 'amount' && ask.about === 'moved') ? null : `${work.what} stands beside the question ${ask.step}`;
  },
};

export const signed = (knob: Knob, direction: string, amount: number): number => (direction === knob.plus ? amount : -amount);

export const insideTheLimits: Invariant = {
  id: 'inside-the-limits',
  rule: 'No advice goes beyond an adjustment\'s step, its soft limit and its hard limit, counted from where they count from, whatever was moved, put back or corrected before.',
  held: 'machine/loop/size.ts, ladder.ts; content/lint/limits.ts',
  broken(m) {
    const told = adjustmentTold(m);
    if (told?.advice.to === undefined) return null;
    return tooFar(m, m.content.knobs[told.knob], m.bow.settings()[told.knob] ?? 0, told.advice.to.value);
  },
};

function tooFar(m: Moment, knob: Knob, from: number, to: number): string | null {
  const { content, gates } = m;
  const axis = knob.axis === 'none' ? 'height' : knob.axis;
  const press = gates.growing ? 'shop' : gates.value('press');
  // Without the maker's words on its screws it is a bow whose cams are not known.
  const cams = gates.value('cams') === 'screw-adjust' && gates.value('cam-range') === 'not-known' ? 'unknown' : gates.value('cams');
  const rule = content.ladders.find((r) => r.axis === axis && (r.cams === 'any' || r.cams.includes(cams)) && (r.press === 'any' || r.press.includes(press)));
  const soft = rule?.rungs.find((r) => r.knob === knob.id)?.soft ?? knob.soft;
  const offset = offsetOf(m, knob);
  // With broadheads the travel counts from where paper left it.
  const home = m.state.notes.of === 'broadheads' ? (m.state.sets.findLast((set) => set.of !== 'broadheads' && set.shots.length > 0)?.settings[knob.id] ?? 0) : -offset;
  const [was, will] = [Math.abs(from + offset), Math.abs(to + offset)];
  const tell = `${knob.id} from ${from} to ${to}`;
  const nock = nockNow(m);
  // Where the maker's figure or level is far off, it is set right in one move: that is no step of the search.
  const mendsNock = knob.id === 'nock-height' && nock !== null && (nock < 0 || nock > 1 / 4);
  const mendsRest = knob.id === 'rest-side' && was > 1 / 16 + DUST && will < DUST;
  if (!mendsNock && will > knob.hard + DUST && will >= was) return `${tell}: hard limit ${knob.hard}, counted from ${-offset}`;
  const [near, far] = [Math.abs(from - home), Math.abs(to - home)];
  if (!mendsNock && far > soft + DUST && far >= near) return `${tell}: soft limit ${soft}, counted from ${home}`;
  const cap = capOf(m, knob, axis);
  if (!mendsNock && !mendsRest && Math.abs(to - from) > cap + DUST) return `${tell}: at most ${cap} at once`;
  return knob.id === 'nock-height' && nock !== null ? nockOut(nock, to - from) : null;
}

const DUST = 1e-9;

// The rest counts from the maker's centre shot, and centre shot is measured from the riser; what was moved before it was measured
// is in the measure.
export function offsetOf({ gates, bow }: Moment, knob: Knob): number {
  const [here, makers] = [gates.number('centre-shot'), gates.number('centre-shot-figure')];
  if (knob.from !== 'maker' || here === undefined || makers === undefined) return 0;
  const then = bow.settingsBefore(gates.answeredAt('centre-shot'))[knob.id] ?? 0;
  return (gates.value('hand') === 'left' ? here - makers : makers - here) - then;
}

function capOf({ view, bow }: Moment, knob: Knob, axis: 'height' | 'side'): number {
  const mean = view.picture?.kind === 'paper' ? view.picture.mean : undefined;
  // From the middle of what is in tolerance; how far off is told by the coach's own estimate, to 0.05 in.
  const off = mean === undefined ? Infinity : Math.abs(axis === 'height' ? mean.y - 1 / 16 : mean.x);
  const far = knob.firstWhenFar !== null && off > knob.firstWhenFar.over - 0.05 ? knob.firstWhenFar.step : 0;
  return bow.turned.some((turn) => turn.knob === knob.id) ? Math.max(knob.later, knob.first) : Math.max(knob.first, far);
}

/** How far above level the nocking point stands: as it was measured, and what was moved since. */
function nockNow({ gates, bow }: Moment): number | null {
  const measured = gates.number('nock-height');
  if (measured === undefined) return null;
  const since = gates.answeredAt('nock-height');
  return bow.turned.filter((turn) => turn.knob === 'nock-height' && turn.seq > since).reduce((sum, turn) => sum + turn.delta, measured);
}

// The nocking point stays between level and 1/4 in above, or comes nearer to that.
function nockOut(now: number, by: number): string | null {
  const outside = (h: number): number => Math.max(0, -h, h - 1 / 4);
  return outside(now + by) <= 1 / 64 + DUST || outside(now + by) < outside(now) ? null : `the nock would stand ${now + by} above level`;
}

export const pressOnlyWhereAllowed: Invariant = {
  id: 'press-only-where-allowed',
  rule: 'Work in a press is told only to an adult who has a press that the maker allows for this bow and was shown how to use it; to all others it is a note for the shop.',
  held: 'content/ladders.yaml, machine/loop/ladder.ts, guards.ts (pressAtHand)',
  broken(m) {
    const told = adjustmentTold(m);
    if (told === null || !IN_A_PRESS.includes(told.knob)) return null;
    if (m.gates.value('press') !== 'trained') return `${told.advice.what}: by somebody whose press is "${m.gates.value('press')}"`;
    return m.gates.growing ? `${told.advice.what}: by somebody still growing` : null;
  },
};

const IN_A_PRESS: readonly string[] = ['yoke', 'cam-spacers', 'cam-sync'];

export const movedOnlyOnShots: Invariant = {
  id: 'moved-only-on-shots',
  rule: 'Nothing is adjusted unless at least two good shots were taken since the bow was last changed: three before the first change and after a put-back.',
  held: 'machine/plan.ts, loop/judge.ts, walk.ts',
  broken(m) {
    const told = adjustmentTold(m);
    if (told === null) return null;
    const last = m.bow.last();
    const need = last === undefined || last.why === 'put-back' ? 3 : 2;
    return m.bow.shotsHere >= need ? null : `${told.advice.what}: after ${m.bow.shotsHere} good shots since line ${m.bow.changedAt}, and ${need} are needed`;
  },
};

export const sightStays: Invariant = {
  id: 'sight-stays',
  rule: 'The sight is moved last of all, never to make two kinds of arrow meet.',
  held: 'machine/turn-finish.ts; content',
  broken: ({ view: { advice, chapter } }) => (advice !== null && chapter !== 'finish' && /sight/i.test(`${advice.what} ${advice.undo ?? ''}`) ? `told at ${chapter}: ${advice.what}` : null),
};
