// What is shot is read fairly.

import { shotAsked, type Invariant, type Moment } from '../moment.ts';

/** Three of each kind, then the heads change shafts. */
const HALF = 6;

export const headsChangeShafts: Invariant = {
  id: 'heads-change-shafts',
  rule: 'Broadheads and field points change shafts at half-time, so that a shaft is not taken for a head.',
  held: 'machine/plan.ts, target.ts',
  broken(m) {
    const shot = shotAsked(m);
    const set = m.state.sets.at(-1);
    if (shot?.head !== 'broadhead' || set?.of !== 'broadheads' || !evenHalf(set)) return null;
    return m.gates.answeredAt('heads-swapped') > (set.shots[0]?.seq ?? 0) ? null : `${goodOf(set)} shots, and the heads are where they were`;
  },
};

// Where one kind is ahead (told three at once, or corrected) the other is shot first.
function evenHalf(set: Moment['state']['sets'][number]): boolean {
  const broad = set.shots.filter(({ good, tag }) => good && tag?.head === 'broadhead').length;
  return 2 * broad === goodOf(set) && goodOf(set) >= HALF;
}

const goodOf = (set: Moment['state']['sets'][number]): number => set.shots.filter(({ good }) => good).length;

export const judgedByEqualNumbers: Invariant = {
  id: 'judged-by-equal-numbers',
  rule: 'Two kinds of arrow are compared only where both were shot as often.',
  held: 'machine/loop/gauge-groups.ts',
  broken({ line, state }) {
    if (line?.kind !== 'answered' || line.answer.kind !== 'shots' || !line.decided.events.some(({ type }) => type === 'verdict')) return null;
    const set = state.sets.find((one) => one.shots.some(({ seq }) => seq === line.seq));
    if (set === undefined || (set.of !== 'broadheads' && set.of !== 'unfletched')) return null;
    const second = set.shots.filter(({ good, tag }) => good && (tag?.head === 'broadhead' || tag?.shaft === 'unfletched')).length;
    return goodOf(set) - second === second ? null : `judged with ${second} of one kind and ${goodOf(set) - second} of the other`;
  },
};

export const nockStandsAsTold: Invariant = {
  id: 'nock-stands-as-told',
  rule: 'The shot that is asked of a numbered arrow says how its nock stands: all that was done to it, alone or with the whole set, and nothing else.',
  held: 'machine/arrows/after.ts, turn-set.ts; notes.ts (cases)',
  broken(m) {
    const shot = shotAsked(m);
    if (shot === null || shot.arrow === null) return null;
    const stands = m.nocks.standsAt(shot.arrow);
    return stands === shot.nockTurn ? null : `arrow ${shot.arrow} is asked for with its nock turned by ${shot.nockTurn}, and it stands at ${stands}`;
  },
};

/** More of them are danger. */
const MOST_MISSES = 2;

export const missesAreLookedFor: Invariant = {
  id: 'misses-are-looked-for',
  rule: 'After two shots in a row that left no hole none is asked for before something was looked for, moved or replaced, or a dealer had the bow.',
  held: 'machine/turn-missed.ts',
  broken(m) {
    const shot = shotAsked(m);
    if (shot === null) return null;
    const now = new Map(m.lines.flatMap((line) => (line.kind === 'corrected' ? [[line.of, line.answer] as const] : [])));
    let run = 0;
    let about = '';
    for (const line of m.lines) {
      if (line.kind === 'moved' || line.kind === 'changed') run = 0;
      if (line.kind !== 'answered') continue;
      const answer = now.get(line.seq) ?? line.answer;
      if (line.about === 'inspected' || line.about === 'released' || (answer.kind === 'moved' && !['not now', 'another'].includes(String(answer.moved)))) run = 0;
      if (answer.kind !== 'shots') continue;
      if (line.about !== about) [run, about] = [0, line.about];
      for (const one of answer.shots) run = 'missed' in one ? run + 1 : 0;
    }
    return run < MOST_MISSES || about !== shot.about ? null : `${run} shots in a row left no hole, and the next one is asked for`;
  },
};
