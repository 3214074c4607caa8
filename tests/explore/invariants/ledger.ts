// Where the bow stands is known at any time, and it can be brought back.

import { KNOBS, type KnobId } from '../../../src/content/types.ts';
import { bowKnobOf } from '../../../src/machine/types.ts';
import { sameSetting, sameSettings, type Settings } from '../books/bow-book.ts';
import { adjustmentTold, first, type Invariant, type Moment } from '../moment.ts';
import { signed } from './advice.ts';
import { beyond } from './beyond.ts';

export const ledgerIsWhatWasDone: Invariant = {
  id: 'ledger-is-what-was-done',
  rule: 'The settings that are shown are the sum of what was really moved, to the last 64th: as told, by another amount, by hand, put back, or corrected.',
  held: 'machine/state.ts (recordMove, settingsOf)',
  broken(m) {
    const mismatch = toldOtherwise(m);
    if (mismatch !== null) return mismatch;
    const shown = Object.fromEntries(Object.entries(m.view.bow).map(([knob, { value }]) => [knob, value])) as Settings;
    return sameSettings(shown, m.bow.settings()) ? null : `shown ${JSON.stringify(shown)}, done ${JSON.stringify(m.bow.settings())}`;
  },
};

// What is written down as told is what stood there to be read.
function toldOtherwise({ line, was, content, intent }: Moment): string | null {
  const told = line?.kind === 'answered' ? line.decided.loop?.told : undefined;
  if (told === undefined || intent?.kind !== 'answer') return null;
  const advice = was?.advice ?? null;
  if (advice?.amount === undefined || advice.direction === undefined || bowKnobOf(advice) !== told.knob) return `${told.knob} is written down as told, and "${advice?.what}" was`;
  const amount = signed(content.knobs[told.knob], advice.direction, advice.amount.value);
  return sameSetting(amount, told.delta) ? null : `${advice.what}: written down as ${told.delta}`;
}

export const putBackIsExact: Invariant = {
  id: 'put-back-is-exact',
  rule: 'A put-back brings the bow to exactly where it stood before, and to no place where it never stood.',
  held: 'machine/undo.ts, bring-back.ts',
  broken(m) {
    return backAtThePoint(m) ?? toWhereItStood(m) ?? asTold(m);
  },
};

// Once the bow is back at an earlier point, every adjustment stands as it did before that line.
function backAtThePoint(m: Moment): string | null {
  const { before, state, line, bow, lines } = m;
  if (before.notes.bringing === 0 || state.notes.bringing !== 0 || line === null || line.kind === 'changed') return null;
  // What a dealer did to the bow meanwhile, or somebody at its bolts, is not known: nothing is brought back on it.
  if ('step' in line && ['released', 'what-was-changed', 'bolts-top', 'bolts-bottom'].includes(line.step)) return null;
  const wanted = lines.find(({ seq }) => seq === before.notes.bringing);
  if (wanted?.kind !== 'wanted-back') return `line ${before.notes.bringing} wanted nothing back`;
  if (line.kind === 'answered' && line.answer.kind === 'moved' && line.answer.moved === 'not now') return null;
  // Another release, or no broadheads after all: what was under way is left, with what stands on the bow in the ledger.
  // It is so once the questions that stood before it are answered.
  if (lines.some((one) => one.kind === 'corrected' && one.seq > wanted.seq && one.answer.kind !== 'moved')) return null;
  const target = bow.settingsBefore(wanted.to);
  // Nobody is brought back to where nothing may be drawn.
  if (KNOBS.some((knob) => beyond(m, knob, target[knob] ?? 0))) return null;
  return sameSettings(bow.settings(), target) ? null : `wanted as before line ${wanted.to}, ${JSON.stringify(target)}; it stands at ${JSON.stringify(bow.settings())}`;
}

function toWhereItStood(m: Moment): string | null {
  const { view: { advice }, line, bow, state } = m;
  const id = bowKnobOf(advice);
  if (advice?.kind !== 'put-back' || id === null || advice.to === undefined) return null;
  const { value } = advice.to;
  const judgedWorse = line !== null && line.decided.events.some((event) => event.type === 'verdict' && event.verdict === 'worse');
  if (judgedWorse && state.notes.bringing === 0) {
    const last = bow.turned.findLast((turn) => turn.why === 'advice' && turn.delta !== 0);
    const target = last === undefined ? undefined : (bow.settingsBefore(last.seq)[id] ?? 0);
    if (last?.knob !== id || target === undefined || !sameSetting(value, target)) return `worse after line ${last?.seq}, and told: ${advice.what}, to ${value}`;
  }
  if (bow.stood(id).some((place) => sameSetting(place, value))) return null;
  // A figure measured late may leave no setting inside the limits that it ever stood at: then it goes to the limit itself.
  if (beyond(m, id) && !beyond(m, id, value)) return null;
  return `${advice.what}: it never stood at ${value} (${[...new Set(bow.stood(id))].join(', ')})`;
}

function asTold({ line, was, bow }: Moment): string | null {
  const id: KnobId | null = bowKnobOf(was?.advice ?? null);
  if (line?.kind !== 'answered' || line.answer.kind !== 'moved' || line.answer.moved !== 'as told' || id === null || was?.advice?.to === undefined) return null;
  const { value } = was.advice.to;
  return first(sameSetting(bow.settings()[id] ?? 0, value) ? [] : [`done as told, and ${id} stands at ${bow.settings()[id] ?? 0}, not at ${value}`]);
}

export const provedAfterPutBack: Invariant = {
  id: 'proved-after-put-back',
  rule: 'A put-back is proved by three good shots before anything else is adjusted.',
  held: 'machine/walk.ts (proving), bring-back.ts',
  broken(m) {
    const told = adjustmentTold(m);
    const last = m.bow.last();
    if (told === null || last?.why !== 'put-back') return null;
    return m.bow.shotsHere >= 3 ? null : `${told.advice.what}, ${m.bow.shotsHere} shots after the put-back of line ${last.seq}`;
  },
};
