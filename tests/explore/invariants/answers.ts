// What was said is kept: nothing is lost, nothing is written twice, and the journal tells it all.

import { isDeepStrictEqual } from 'node:util';
import { first, type Invariant, type Moment } from '../moment.ts';

export const noAnswerIsLost: Invariant = {
  id: 'no-answer-is-lost',
  rule: 'A correction changes one answer; a later one either stays in force, or is kept as a suggestion and that is said.',
  held: 'machine/after-correction.ts, state.ts (adoptCorrection)',
  broken(m) {
    const { line, before, state } = m;
    if (line?.kind !== 'corrected' || line.decided.loop?.rewindTo !== undefined) return null;
    const of = m.lines.find(({ seq }) => seq === line.of);
    const own = of?.kind === 'answered' ? of.step : '';
    const given = new Set(m.lines.flatMap((one) => (one.kind === 'answered' && one.seq > line.of ? [one.step] : [])));
    for (const [id, was] of Object.entries(before.answers)) {
      if (id === own || !given.has(id)) continue;
      const is = state.answers[id];
      if (is !== undefined && isDeepStrictEqual(is.answer, was.answer)) continue;
      if (is !== undefined) return `correcting line ${line.of} (${own}) changes what was answered at ${id}`;
      if (!isDeepStrictEqual(state.suggestions[id], was.answer)) return `correcting line ${line.of} (${own}) loses what was answered at ${id}`;
      if (line.decided.say.length < 2) return `correcting line ${line.of} (${own}) takes ${id} off the way without a word`;
    }
    const shots = (s: Moment['state']): number => s.sets.reduce((sum, set) => sum + set.shots.filter((shot) => shot.seq !== line.of).length, 0);
    if (shots(before) !== shots(state)) return `correcting line ${line.of} leaves ${shots(state)} of ${shots(before)} other shots`;
    const moves = (s: Moment['state']): string => JSON.stringify(s.moves.filter((move) => move.seq !== line.of));
    return moves(before) === moves(state) ? null : `correcting line ${line.of} changes other moves`;
  },
};

export const journalTellsAll: Invariant = {
  id: 'journal-tells-all',
  rule: 'What stands on the screen follows from the journal alone: a killed program comes back to the same settings, gates and question.',
  held: 'session.ts, machine/replay.ts, state.ts (evolve)',
  broken(m) {
    if (m.view.seq !== (m.lines.at(-1)?.seq ?? 0)) return `shown is line ${m.view.seq} of ${m.lines.length}`;
    if (m.view.ask?.correcting !== undefined) return null;
    // Wherever a question stands for the first time, and at every fourth line besides.
    if (!m.fresh && !m.ending && m.view.seq % 4 !== 0) return null;
    const again = m.replayed();
    return isDeepStrictEqual(again, m.view) ? null : `read again, ${differing(again, m.view)} is another`;
  },
};

const differing = (a: object, b: object): string => Object.keys({ ...a, ...b }).filter((key) => !isDeepStrictEqual((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key])).join(', ');

export const linesAreInOrder: Invariant = {
  id: 'lines-are-in-order',
  rule: 'Each line has the next number and no earlier time, and is never changed afterwards.',
  held: 'session.ts (stamp), journal/',
  broken: ({ lines }) => first(lines.slice(-2).flatMap((line, i, two) => {
    const at = lines.length - two.length + i + 1;
    const earlier = two[i - 1];
    if (line.seq !== at) return [`line ${at} has the number ${line.seq}`];
    return earlier !== undefined && line.time < earlier.time ? [`line ${at} is earlier than the one before`] : [];
  })),
};

export const refusalChangesNothing: Invariant = {
  id: 'refusal-changes-nothing',
  rule: 'What is refused changes nothing, writes nothing, and says in plain words why; what is taken writes exactly one line.',
  held: 'session.ts (take, refuse)',
  broken({ intent, refused, line, was, view, state, before }) {
    if (intent === null || was === null) return null;
    if (refused !== null) {
      if (line !== null || state !== before || !isDeepStrictEqual(was, view)) return `${JSON.stringify(intent).slice(0, 80)} was refused, and something changed`;
      return refused.length > 5 && /^[\x20-\x7e]*$/.test(refused) ? null : `the refusal reads "${refused}"`;
    }
    const looks = intent.kind === 'back' || intent.kind === 'keep';
    return looks === (line === null) ? null : `${JSON.stringify(intent).slice(0, 80)} wrote ${line === null ? 'nothing' : 'a line'}`;
  },
};
