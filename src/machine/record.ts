// The bow record as data, and what a later tune of the same bow may start from.
// It says "tuned" only where the shots did, and "left as it is" where the archer decided so.

import { carriedPrior } from '../archery/spread.ts';
import type { Content } from '../content/types.ts';
import { arrowParts } from './figures/arrow-mass.ts';
import { chosen } from './guards.ts';
import { pickedBow } from './known-bow.ts';
import { carriedBesides, carriedGains } from './loop/carried.ts';
import { paperSpreadOf } from './loop/evidence.ts';
import { archerRows, arrowRows, bowRows, lookedAtRows, notCheckedRows } from './record-card.ts';
import { eachArrowRows } from './record-arrows.ts';
import { measuresNow } from './reading-now.ts';
import { learnedRows, resultRows, settingRows } from './record-result.ts';
import { changeRows, noticedRows } from './record-story.ts';
import type { State } from './state.ts';
import type { Answer, BowRecord, Carried, RecordRow } from './types.ts';
import { phrase } from './words.ts';

type Rows = (content: Content, state: State) => readonly RecordRow[];

/** Sections by the id of their title, in the order in which the next technician needs them. */
const SECTIONS: readonly (readonly [string, Rows])[] = [
  ['record-result', resultRows],
  ['record-settings', settingRows],
  ['record-learned', learnedRows],
  ['record-shop', (_content, state) => state.notes.shop.map((value, i) => ({ name: `${i + 1}`, value }))],
  ['record-archer', archerRows],
  ['record-bow', bowRows],
  ['record-arrows', arrowRows],
  ['record-each-arrow', eachArrowRows],
  ['record-looked-at', lookedAtRows],
  ['record-changes', changeRows],
  ['record-noticed', noticedRows],
  ['record-not-checked', notCheckedRows],
  ['record-next', (content) => [{ name: phrase(content, 'record-look-again'), value: phrase(content, 'look-again-when') }]],
];

export function recordOf(content: Content, state: State): BowRecord {
  const begun = state.facts[0];
  const date = state.facts.at(-1)?.time.slice(0, 10) ?? '';
  const tune = begun?.kind === 'begun' ? begun.tune : '';
  const sections = SECTIONS.map(([title, rows]) => ({ title: phrase(content, title), rows: rows(content, state) })).filter(({ rows }) => rows.length > 0);
  return { title: phrase(content, 'record-title', { tune, date }), sections };
}

/** What a later tune of the same bow may start from; of an arrow that was added up, its parts. Null for a tune that never got to shoot, or that stands stopped. */
export function carriedOf(content: Content, state: State): Carried | null {
  const begun = state.facts[0];
  if (begun?.kind !== 'begun' || state.shotCount === 0 || state.stop !== null) return null;
  const kept = Object.entries(state.answers).filter(([id, { answer }]) => content.steps[id]?.everyTune === false && (isKnown(answer) || NAMES.includes(id) || (id === 'arrow-mass' && arrowParts(state) !== null)));
  const answers = { ...Object.fromEntries(kept.map(([id, { answer }]) => [id, answer])), ...measuresNow(state) };
  const picked = pickedBow(state);
  const besides = { ...carriedBesides(state), ...state.notes.besides };
  return {
    from: begun.tune, bow: labelOf(content, state),
    bowId: picked === null ? begun.tune : (picked.carried.bowId ?? picked.carried.from),
    archerId: picked === null || picked.as === 'other-archer' ? begun.tune : (picked.carried.archerId ?? picked.carried.from),
    answers, spread: carriedPrior(paperSpreadOf(state)),
    // What this tune did not learn anew still holds, as far as it held here.
    gains: { ...carriedGains(state), ...state.notes.learned },
    ...(Object.keys(besides).length > 0 ? { besides } : {}),
  };
}

/** Asked once: who does not name bow or archer is not asked again. */
const NAMES = ['bow-name', 'archer-name'];

function labelOf(content: Content, state: State): string {
  const named = (id: string): string | null => {
    const answer = state.answers[id]?.answer;
    return answer?.kind === 'text' ? answer.value : null;
  };
  const name = named('bow-name') ?? phrase(content, 'known-bow-unnamed', { hand: chosen(state, 'hand') === 'left' ? 'left' : 'right' });
  const archer = named('archer-name');
  const date = state.facts.at(-1)?.time.slice(0, 10) ?? '';
  return archer === null ? phrase(content, 'known-bow-label', { name, date }) : phrase(content, 'known-bow-of', { name, date, archer });
}

/** What was not known is asked anew: "I do not know", "I could not see it" and the like are no answers to rely on. */
const isKnown = (answer: Answer): boolean =>
  answer.kind !== 'not known' && !(answer.kind === 'choice' && answer.values.some((value) => ['unknown', 'not-known', 'not-seen'].includes(value)));
