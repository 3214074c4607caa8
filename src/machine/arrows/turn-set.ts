// The nocks of the whole set, turned together: offered, done, held against what was foretold, and turned back where it did not help.

import type { Deciding } from '../deciding.ts';
import type { ArrowNotes, TurnedTogether } from '../notes.ts';
import { isTurnAnswer } from './answers.ts';
import { listNow, offerOf, turnedSeen, type TurnList } from './together.ts';
import { arrowsGone } from './gone.ts';
import { effectiveFacts } from '../state.ts';
import { lastShotSet } from './shots.ts';
import { arrowsInWords, turnsInWords } from './words.ts';

const NONE: TurnedTogether = { how: 'offered', stay: [], vanes: 1, from: {}, before: [0, 0], until: 0 };

const noteTogether = (d: Deciding, changed: Partial<TurnedTogether>, arrows: Partial<ArrowNotes> = {}): void => {
  const now = d.state.notes.arrows;
  d.add({ loop: { arrows: { ...now, ...arrows, together: { ...(now.together ?? NONE), ...changed } } } });
};

/** After the rounds: the list, or what must be asked before it; false where there is nothing to offer. */
export function offerTogether(d: Deciding<'arrows.screening.shooting'>): boolean {
  const offer = offerOf(d.state);
  const { together } = d.state.notes.arrows;
  if (offer === null) {
    if (together?.how === 'offered') { d.say('set-turn-none'); noteTogether(d, { how: 'left' }); }
    return false;
  }
  if (together === undefined) { d.say('arrows-differ'); noteTogether(d, {}); }
  if ('ask' in offer) { d.add({ due: [offer.ask] }); return true; }
  return d.event({ type: 'verdict', verdict: 'set differs' }, { advice: null });
}

/** Once a set that was turned is shot anew: it stays so, or the nocks go back. False where that is settled. */
export function heldAgainstForetold(d: Deciding<'arrows.screening.shooting'>): boolean {
  if (d.state.notes.arrows.together?.how !== 'turned') return false;
  const seen = turnedSeen(d.state);
  const holes = { was: seen?.was.toFixed(2) ?? '', is: seen?.is.toFixed(2) ?? '' };
  if (seen?.stays === false) {
    d.say('set-turned-worse', holes);
    return d.event({ type: 'verdict', verdict: 'set differs' }, { advice: null });
  }
  if (seen === null) d.say('set-turned-unseen');
  else d.say('set-turned-better', holes);
  noteTogether(d, { how: 'kept' });
  return true;
}

/** Waits at the list as long as it stands: a corrected shot, or an arrow that is out, may take it back. */
export function turnIndexing(d: Deciding<'arrows.indexing'>): boolean {
  if (arrowsGone(d)) return true;
  if (d.state.notes.reshoot) d.add({ loop: { reshoot: false } });
  return listNow(d.state) === null && d.event({ type: 'looked' });
}

export function afterTurnTheSet(d: Deciding, value: string): void {
  const list = listNow(d.state);
  if (list === null || !isTurnAnswer(value)) return;
  switch (value) {
    case 'done': return turned(d, list);
    case 'one stays':
      d.add({ due: ['nock-stays'] });
      return;
    case 'leave':
      d.say(list.back ? 'set-turn-kept-so' : 'set-turn-none');
      noteTogether(d, { how: list.back ? 'kept' : 'left' });
      d.where('looked').event({ type: 'looked' });
  }
}

// Where a nock stands is told by its case, as for an arrow that is turned by itself; other turns of it are tried from there.
function turned(d: Deciding, { back, turns, vanes }: TurnList): void {
  const { arrows } = d.state.notes;
  const cases = Object.fromEntries(turns.map(({ arrow, to }) => {
    const one = arrows.cases[arrow];
    return [arrow, { swapped: one?.swapped ?? null, declined: one?.declined ?? [], tried: [to], turn: to }];
  }));
  const from = Object.fromEntries(turns.map(({ arrow }) => [arrow, arrows.cases[arrow]?.turn ?? 0]));
  const last = lastShotSet(d.state);
  d.say(back ? 'set-turned-back' : 'set-turned', { turns: turnsInWords(d.content, turns) });
  noteTogether(d, back ? { how: 'back', until: last } : { how: 'turned', vanes, from, before: [arrows.after, last] }, { cases: { ...arrows.cases, ...cases }, told: '' });
  d.where('moved').event({ type: 'moved' }, { loop: { newSet: true, purpose: 'judge' } });
}

/** An arrow of the list whose nock does not turn; the others are turned as they were told. */
export function afterNockStays(d: Deciding, number: number): void {
  const arrow = `${number}`;
  takeBackStays(d);
  const { together } = d.state.notes.arrows;
  if (listNow(d.state)?.turns.some((one) => one.arrow === arrow) !== true || together === undefined) {
    d.say('nock-stays-unknown', { arrow });
    return;
  }
  noteTogether(d, { stay: [...together.stay, arrow] });
  d.say('nock-stays-said', { which: arrowsInWords(d.content, [arrow]) });
}

// Named by mistake: that nock turns after all, and is on the list again while the list stands.
function takeBackStays(d: Deciding): void {
  const { draft, before } = d;
  if (draft.kind !== 'corrected' || before.notes.arrows.together?.how !== 'offered') return;
  const named = effectiveFacts(before.facts).find((fact) => fact.seq === draft.of);
  if (named?.kind !== 'answered' || named.answer.kind !== 'number') return;
  const wrong = `${named.answer.value}`;
  noteTogether(d, { stay: before.notes.arrows.together.stay.filter((arrow) => arrow !== wrong) });
}
