// The upper half of the bow record: how it ended, where it stands against its beginning, what this bow answered.
// "Tuned" is said of the setting that the shots were shot at, and of no later one.

import { AXES, knobEntries, type Axis, type Content } from '../content/types.ts';
import { chosen } from './guards.ts';
import { dayOf } from './history.ts';
import { centreOf } from './loop/centre.ts';
import { paperSpreadOf } from './loop/evidence.ts';
import { leavingInShort } from './loop/leaving.ts';
import { lastWord, tunedByScatter } from './loop/results.ts';
import { countingSets, FIRST_DISTANCE, goodShots, SECOND_DISTANCE, settingKey } from './loop/sets.ts';
import { hasStopWord } from './stop-words.ts';
import { settingsOf, type Shot, type ShotSet, type State } from './state.ts';
import type { LoopNotes } from './notes.ts';
import type { RecordRow } from './types.ts';
import { amountInWords, phrase, settingInWords, shiftInWords, tearInWords } from './words.ts';
import { placeOf } from './walk.ts';
import { readingNow } from './reading-now.ts';
import { movedSince } from './record-moved.ts';
import { impactRows, openInWords, resultInWords, seenBy } from './record-impacts.ts';

export function resultRows(content: Content, state: State): readonly RecordRow[] {
  const rows = [...standingRows(content, state), ...axisRows(content, state), ...tearRows(content, state), ...impactRows(content, state)];
  if (state.shotCount === 0) return rows;
  const bad = state.sets.reduce((sum, set) => sum + set.missed + set.shots.filter((shot) => !shot.good).length, 0);
  const days = dayOf(state);
  return [
    ...rows,
    { name: phrase(content, 'record-shots'), value: phrase(content, 'record-shots-value', { shots: state.shotCount, bad, days: `${days} ${days === 1 ? 'day' : 'days'}` }) },
    // Of tears: where none was shot there is nothing to tell.
    ...(countingSets(state, 'paper').some((set) => goodShots(set).length > 1) ? [{ name: phrase(content, 'record-spread'), value: `${paperSpreadOf(state).sd.toFixed(2)} in` }] : []),
  ];
}

/** A record may be written at any time: a stopped bow and an unfinished tune say so before anything else. */
function standingRows(content: Content, state: State): readonly RecordRow[] {
  const name = phrase(content, 'record-state');
  if (placeOf(state.walk) === 'stopped') return [{ name, value: phrase(content, state.stop?.ask.includes('released') ? 'record-stopped-shop' : 'record-stopped') }];
  if (!state.notes.done) return [{ name, value: phrase(content, 'record-under-way') }];
  // The walk is over and nothing can stop it any more; whoever reads the record reads that first.
  const ended = state.facts.findIndex(({ decided }) => decided.loop?.done === true);
  return state.facts.slice(ended).flatMap((fact) =>
    (fact.kind === 'noted' && hasStopWord(fact.note) ? [{ name, value: phrase(content, 'record-since-done', { words: fact.note }) }] : []));
}

function axisRows(content: Content, state: State): readonly RecordRow[] {
  if (chosen(state, 'release') === 'fingers') return [{ name: phrase(content, 'record-paper'), value: phrase(content, 'record-fingers') }];
  return (['height', 'side'] as const).map((axis) => ({ name: phrase(content, `axis-${axis}`), value: axisInWords(content, state, axis) }));
}

function axisInWords(content: Content, state: State, axis: Axis): string {
  const stands = state.notes.axis[axis];
  const result = stands ?? lastSaid(state, axis);
  if (result === undefined || tunedByScatter(state, axis, 'paper')) return phrase(content, 'result-none');
  const by = seenBy(state);
  const words = resultInWords(content, by, result) + (by !== 'paper' && result.result === 'accepted' ? openInWords(content, state, by, axis) : '');
  if (movedSince(content, state, axis)) {
    // Where broadheads agree, they have the last word: nobody goes back to paper after them.
    return phrase(content, state.notes.broadAxis[axis]?.result === 'tuned' ? 'result-by-broadheads' : 'result-moved-since', { was: words });
  }
  return stands === undefined ? phrase(content, 'result-none') : words;
}

/** What was last said of an axis, where a change since has taken it back; nothing where corrected figures did. */
function lastSaid(state: State, axis: Axis): LoopNotes['axis'][Axis] {
  const said = lastWord(state, axis, 'paper');
  const corrected = state.facts.some(({ kind, seq, decided: { loop } }) => kind === 'corrected' && seq > (said?.seq ?? 0) && loop?.axis !== undefined && loop.axis[axis] === undefined);
  return said === null || corrected ? undefined : said;
}

function tearRows(content: Content, state: State): readonly RecordRow[] {
  const first = state.sets.find((set) => set.of === 'paper' && goodShots(set).length > 0);
  const asFound = first === undefined || Object.values(first.settings).some((value) => value !== 0) ? [] : shotsLike(state.sets, first);
  const here = (distance: number): readonly Shot[] => shotsAt(state, distance);
  const row = (id: string, distance: number, shots: readonly Shot[]): readonly RecordRow[] =>
    (shots.length === 0 ? [] : [{ name: phrase(content, id, { distance }), value: meanInWords(state, shots) }]);
  const second = state.notes.secondDistance;
  const confirmed = AXES.filter((axis) => state.notes.axis[axis]?.result === 'tuned' && !movedSince(content, state, axis) && !tunedByScatter(state, axis, 'paper'));
  return [
    ...row('record-as-found-tear', first?.distance ?? FIRST_DISTANCE, asFound),
    ...row('record-last-tear', FIRST_DISTANCE, here(FIRST_DISTANCE)),
    ...row('record-last-tear', SECOND_DISTANCE, here(SECOND_DISTANCE)),
    ...(second === null || confirmed.length === 0 ? [] : [{
      name: phrase(content, 'record-second', { distance: SECOND_DISTANCE }),
      value: [
        phrase(content, second === 'confirmed' ? 'record-confirmed' : 'record-not-confirmed', { axes: confirmed.map((axis) => phrase(content, `axis-${axis}`).toLowerCase()).join(', ') }),
        ...leavingInShort(content, state, { axes: confirmed, from: here }),
      ].join('; '),
    }]),
  ];
}

/** Every counted shot at the setting and distance of the first set, before anything was moved or found. */
const shotsLike = (sets: readonly ShotSet[], first: ShotSet): readonly Shot[] =>
  sets.filter((set) => set.of === 'paper' && set.distance === first.distance && set.epoch === first.epoch && settingKey(set.settings) === settingKey(first.settings) && set.purpose === 'judge').flatMap(goodShots);

/** Shots at the present setting, of the newest epoch that has any at this distance. */
function shotsAt(state: State, distance: number): readonly Shot[] {
  const key = settingKey(settingsOf(state.moves));
  const sets = countingSets(state, 'paper').filter((set) => set.distance === distance && settingKey(set.settings) === key && goodShots(set).length > 0);
  const epoch = sets.at(-1)?.epoch;
  return sets.filter((set) => set.epoch === epoch).flatMap(goodShots);
}

const meanInWords = (state: State, shots: readonly Shot[]): string =>
  `${tearInWords(centreOf(shots, paperSpreadOf(state).sd).mean)} (${shots.length} ${shots.length === 1 ? 'shot' : 'shots'})`;

export function settingRows(content: Content, state: State): readonly RecordRow[] {
  const rows = knobEntries(settingsOf(state.moves)).map(([id, value]): RecordRow => {
    const knob = content.knobs[id];
    const words = value === 0 ? settingInWords(content, knob, value) : phrase(content, 'record-from-start', { setting: settingInWords(content, knob, value) });
    const now = readingNow(state, id);
    return { name: knob.name, value: now === null ? words : `${words}; ${phrase(content, `record-reckoned-${id}`, { value: amountInWords({ value: now, unit: 'in' }) })}` };
  });
  return rows.length > 0 ? rows : [{ name: phrase(content, 'record-all-knobs'), value: phrase(content, 'record-nothing-moved') }];
}

export function learnedRows(content: Content, state: State): readonly RecordRow[] {
  const learned = knobEntries(state.notes.learned).map(([id, { mean, sd }]): RecordRow => {
    const knob = content.knobs[id];
    const [plus, minus] = knob.axis === 'height' ? ['higher', 'lower'] : ['further right', 'further left'];
    const move = settingInWords(content, knob, knob.first);
    return {
      name: knob.name,
      value: phrase(content, 'record-answer', { move, change: Math.abs(mean * knob.first).toFixed(2), side: mean > 0 ? plus : minus, give: (2 * sd * knob.first).toFixed(2) }),
    };
  });
  const ended = knobEntries(state.notes.ended)
    .filter(([id]) => state.moves.some((move) => move.knob === id))
    .map(([id, how]): RecordRow => ({ name: content.knobs[id].name, value: phrase(content, how === 'limit' ? 'record-limit' : 'record-no-response') }));
  const besides = knobEntries(state.notes.besides).map(([id, { mean, sd }]): RecordRow => {
    const knob = content.knobs[id];
    const move = settingInWords(content, knob, knob.first);
    const change = shiftInWords(knob.axis === 'height' ? 'side' : 'height', mean * knob.first);
    return { name: knob.name, value: phrase(content, 'record-besides', { move, change, give: (2 * sd * knob.first).toFixed(2) }) };
  });
  return [...learned, ...besides, ...ended];
}
