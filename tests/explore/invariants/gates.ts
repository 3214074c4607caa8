// Gates come first: nothing is shot, drawn or turned on a bow, an arrow or a range that was not found in order.

import { asked, first, shotAsked, stepOf, workTold, type Invariant, type Moment } from '../moment.ts';

// Putting back is undrawn work: what must be drawn or shot to look at it waits until all is back. What stands beyond its hard
// limit goes back before the walk comes to its first draw, and before a failed gate that is drawn for is tried again.
const waitsForPutBack = ({ content, view }: Moment) => (reason: string): boolean =>
  view.advice?.kind === 'put-back' && (reason.endsWith(' was never answered') || ['draw', 'shoot'].includes(stepOf(content, reason.split(/[ /]/)[0] ?? '')?.pause ?? ''));

export const gatesBeforeShots: Invariant = {
  id: 'gates-before-shots',
  rule: 'No shot is asked for and no adjustment is shown while a gate that concerns it is failed, not known, or due to be looked at again.',
  held: 'machine/gates.ts, agenda.ts, advance.ts; content/rechecks.yaml',
  broken(m) {
    const ask = asked(m);
    if (workTold(m) === null && shotAsked(m) === null && ask?.kind !== 'amount') return null;
    const waits = waitsForPutBack(m);
    return first(m.gates.forbids().filter((reason) => !waits(reason)).map((reason) => `${workTold(m)?.what ?? ask?.short} at ${m.view.step}, and ${reason}`));
  },
};

export const lookedAtBeforeDrawn: Invariant = {
  id: 'looked-at-before-drawn',
  rule: 'Nobody is asked to draw before people, range, the bow at rest and the arrows were looked at undrawn, and found in order.',
  held: 'machine/agenda.ts (rank by pause); content/lint/safety.ts',
  broken(m) {
    const ask = asked(m);
    const pause = ask === null ? undefined : stepOf(m.content, ask.step)?.pause;
    if (ask === null || (pause !== 'draw' && pause !== 'shoot')) return null;
    return first(m.gates.forbidsDraw(ask.step).map((reason) => `${ask.step} draws the bow, and ${reason}`));
  },
};

export const notKnownNeverPasses: Invariant = {
  id: 'not-known-never-passes',
  rule: 'An answer that fails a gate, or "not known" at a gate, is never written down as passed.',
  held: 'machine/gates.ts; content/lint/safety.ts',
  broken({ line, gates }) {
    if (line?.kind !== 'answered' && line?.kind !== 'corrected') return null;
    const failed = gates.failedAt(line.kind === 'corrected' ? line.of : line.seq);
    const passed = line.decided.findings.flatMap((f) => (f.kind === 'gate' && (f.result === 'passed' || f.result === 'noted') ? [f.gate] : []));
    return first(passed.filter((gate) => failed.includes(gate)).map((gate) => `line ${line.seq} passes ${gate}, which it fails`));
  },
};

export const lookedAtFromElsewhere: Invariant = {
  id: 'looked-at-from-elsewhere',
  rule: 'Where target or distance is another than at the last shot, what stops the arrow and the range are looked at again before the next one.',
  held: 'machine/target.ts; content/rechecks.yaml',
  broken(m) {
    const shot = shotAsked(m);
    const last = m.state.sets.findLast((set) => set.shots.length > 0);
    if (shot === null || last === undefined) return null;
    // One line of impacts is shot from several distances at a time, and has a gate of its own for that.
    if (last.of === 'plumb' && shot.kind === 'impact' && m.state.notes.of === 'plumb') return null;
    const feet = shot.distance.value * (shot.distance.unit === 'yd' ? 3 : 1);
    const paper = (of: string): boolean => of === 'paper' || of === 'arrows';
    if (paper(last.of) === (shot.kind === 'tear') && (paper(last.of) || last.of === m.state.notes.of) && last.distance === feet) return null;
    const at = last.shots.at(-1)?.seq ?? 0;
    const own = m.state.notes.of === 'broadheads' ? ['broadhead-place'] : ['backstop', 'range'];
    return first(own.filter((id) => m.gates.answeredAt(id) <= at).map((id) => `shot from ${last.distance} ft at line ${at}, now from ${feet} ft, and ${id} was not looked at since`));
  },
};

/** Who may shoot what, whatever the gates say. */
export const onlyWhatIsTheirs: Invariant = {
  id: 'only-what-is-theirs',
  rule: 'Somebody still growing is never offered a press, the limb bolts, broadheads or unfletched shafts.',
  held: 'machine/guards.ts (pressAtHand), target.ts, ladders; content "when: [adult]"',
  broken(m) {
    if (!m.gates.growing) return null;
    const work = workTold(m);
    const ask = asked(m);
    const shot = shotAsked(m);
    if (work !== null && work.kind === 'adjust' && (work.press === true || PRESS_OR_BOLTS.includes(work.knob ?? ''))) return `a growing archer is told: ${work.what}`;
    if (shot !== null && (shot.head === 'broadhead' || shot.shaft === 'unfletched')) return `a growing archer is asked to shoot a ${shot.shaft} shaft with a ${shot.head}`;
    if (ask !== null && ['press', 'broadheads-wanted', 'broadhead-place', 'broadhead-arrows', 'first-broadhead', 'unfletched-ready', 'first-unfletched'].includes(ask.step)) return `a growing archer is asked ${ask.step}`;
    return null;
  },
};

const PRESS_OR_BOLTS: readonly string[] = ['yoke', 'cam-spacers', 'cam-sync', 'limb-bolts'];

export const fingersAreNotRead: Invariant = {
  id: 'fingers-are-not-read',
  rule: 'Who shoots with fingers is told that paper reads otherwise, and is asked for no shot and no adjustment, but to bring back what stands beyond its limit.',
  held: 'machine/advance.ts',
  broken(m) {
    if (!m.gates.fingers || (shotAsked(m) === null && workTold(m)?.kind !== 'adjust')) return null;
    return `a finger shooter is asked: ${m.view.advice?.what ?? m.view.ask?.short}`;
  },
};

export const ownGateOfEachShot: Invariant = {
  id: 'own-gate-of-each-shot',
  rule: 'A broadhead, an unfletched shaft and a plumb line each have gates of their own before the first such shot; a broadhead is never shot through paper nor without vanes.',
  held: 'machine/target.ts, guards.ts; content/chapters/broadheads.yaml, without-paper.yaml',
  broken(m) {
    const shot = shotAsked(m);
    if (shot === null) return null;
    if (shot.head === 'broadhead' && shot.kind === 'tear') return 'a broadhead is asked for at paper';
    return first(m.gates.forbidsShot(shot).map((reason) => `a ${shot.shaft} shaft with a ${shot.head} is asked for, and ${reason}`));
  },
};
