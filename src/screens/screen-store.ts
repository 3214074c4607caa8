// The screen's state and the only place where it changes. It is outside React: a key that arrives with another in one read
// finds the state that the first one left.

import { CodedError } from '../errors.ts';
import type { Intent, Reply, SessionLike } from '../machine/types.ts';
import { takenLines } from './items.ts';
import type { Key } from './key-names.ts';
import { helpEnd, listIsCut, type LiveNeeds, liveWidth, seenIsCut } from './live.ts';
import { isChecks } from './options.ts';
import { openPage } from './pages.ts';
import { press } from './press.ts';
import type { Deed, Pressed } from './pressed.ts';
import { promptFor, type ScreenState, type Size } from './state.ts';

export interface ScreenStore {
  readonly needs: LiveNeeds;
  getState(): ScreenState;
  subscribe(listener: () => void): () => void;
  keys(keys: readonly Key[]): void;
  resize(size: Size): void;
  leave(exit: number): void;
}

export interface StoreNeeds {
  readonly session: SessionLike;
  readonly now: () => Date;
  readonly size: Size;
  readonly braille: boolean;
  /** A mistake in the program itself: the screen ends. */
  readonly onMistake: (error: unknown) => void;
}

// "All true" of checks of which some were never on the screen is no answer.
const takenUnseen = (state: ScreenState, deed: Deed, needs: LiveNeeds): boolean => {
  const { ask } = state.view;
  if (ask?.kind !== 'choice' || !isChecks(ask) || !('send' in deed) || deed.send.kind !== 'answer') return false;
  const { answer } = deed.send;
  const all = Array.isArray(answer) && ask.options.some(({ value, pass }) => pass === true && answer.includes(value));
  return all && state.prompt.furthest < ask.options.length - 1 && listIsCut(state, needs);
};

/** A gate of a practice bow that is passed while a part of what is seen there was never on the screen. */
const passedUnseen = (state: ScreenState, deed: Deed, needs: LiveNeeds): boolean => {
  const { ask, practice } = state.view;
  if (practice === undefined || state.prompt.looked || ask?.kind !== 'choice' || !('send' in deed) || deed.send.kind !== 'answer') return false;
  const { answer } = deed.send;
  return ask.options.some(({ value, pass }) => pass === true && [answer].flat().includes(value)) && seenIsCut(state, needs);
};

const IN_TWO = 'not in one go: choose, look once more, then Enter by itself';
const AHEAD = 'pressed before this question stood here, and not taken: read it first';

/**
 * What must be picked deliberately is taken by an Enter that comes by itself. A terminal that was busy, a paste and a held key
 * hand over several keys in one read, of which the first ones belong to another question, or nobody looked at what they chose.
 */
const answersDeliberately = (state: ScreenState, deed: Deed): boolean => {
  if (state.view.ask?.noDefault !== true) return false;
  if ('say' in deed) return deed.otherwise.deed !== undefined && answersDeliberately(state, deed.otherwise.deed);
  return 'send' in deed && deed.send.kind === 'answer';
};

/** Nothing is chosen, marked or typed at a question that came with the same read: nobody has seen it yet. */
const typedAhead = (state: ScreenState): ScreenState => {
  const fresh = promptFor(state.view.ask);
  const same = JSON.stringify(fresh) === JSON.stringify(state.prompt);
  return same ? state : { ...state, prompt: fresh, message: AHEAD };
};

export const createScreenStore = ({ session, now, size, braille, onMistake }: StoreNeeds): ScreenStore => {
  const view = session.view();
  let state: ScreenState = { size, view, prompt: promptFor(view.ask), overlay: null, menu: false, run: null, message: null, items: [], leaving: null };
  let told = session.transcript().length;
  let nextId = 1;
  /** How often a question was put up; a note leaves the one that stands. */
  let asked = 0;
  const listeners = new Set<() => void>();
  const needs: LiveNeeds = { preview: (answer) => session.preview(answer), glossary: session.glossary(), braille };

  /** A refusal keeps what was typed; only an adopted line moves the screen on. */
  const adopt = (before: ScreenState, intent: Intent, reply: Reply): ScreenState => {
    if (reply.error !== undefined) return { ...before, message: reply.error.message };
    const entries = session.transcript();
    const fresh = entries.slice(told);
    told = entries.length;
    const lines = takenLines(before.view, intent, reply.view, fresh, { width: liveWidth(before.size.columns), braille });
    const items = lines.length === 0 ? before.items : [...before.items, { id: nextId++, lines }];
    if (reply.noted) return { ...before, view: reply.view, items, message: intent.kind === 'turned' ? 'turned, and the coach was not told' : 'noted' };
    asked += 1;
    return { ...before, view: reply.view, prompt: promptFor(reply.view.ask), menu: false, items };
  };

  const send = (before: ScreenState, intent: Intent): ScreenState => {
    try {
      return adopt(before, intent, session.send(intent, now()));
    } catch (error) {
      if (error instanceof CodedError) return { ...before, message: error.message };
      throw error;
    }
  };

  const carryOut = (before: ScreenState, deed: Deed): ScreenState => {
    if ('send' in deed) return send(before, deed.send);
    if ('leave' in deed) return { ...before, leaving: deed.leave };
    if ('say' in deed) return say(before, deed.say, deed.otherwise);
    if ('word' in deed) return before;
    if ('undo' in deed) {
      const kept = send(before, { kind: 'keep' });
      asked -= 1;
      return { ...kept, prompt: deed.undo, overlay: before.overlay };
    }
    switch (deed.open) {
      case 'help': return { ...before, prompt: { ...before.prompt, looked: true }, overlay: openPage({ id: 'help', top: 0 }) };
      case 'history': return { ...before, overlay: openPage({ id: 'history', entries: session.history() }) };
      case 'answers': return { ...before, overlay: openPage({ id: 'answers', entries: session.answers() }) };
      case 'sure': return { ...before, overlay: openPage({ id: 'sure', what: '', to: null, steps: [], settings: [] }) };
      case 'turn': return { ...before, overlay: openPage({ id: 'knob', quiet: true }) };
      case 'debrief': return { ...before, overlay: openPage({ id: 'end' }) };
      case 'note': case 'stop': case 'other': return { ...before, overlay: openPage({ id: deed.open }, before.run?.letters) };
    }
  };

  /** Danger stops, and closes what was open; all else is done as if it had not been listened to. */
  const say = (before: ScreenState, words: string, otherwise: Pressed): ScreenState => {
    const intent: Intent = { kind: 'say', words };
    try {
      const reply = session.send(intent, now());
      if (reply.error === undefined) return adopt({ ...before, overlay: null }, intent, reply);
      return reply.error.code === 'not-understood' || reply.error.code === 'walk-is-done' ? carried(otherwise) : adopt(before, intent, reply);
    } catch (error) {
      if (error instanceof CodedError) return { ...before, message: error.message };
      throw error;
    }
  };

  const carried = ({ state: after, deed }: Pressed): ScreenState => (deed === undefined ? after : carryOut(after, deed));

  /** `alone`: nothing came before the key in its read. */
  const pressOne = (before: ScreenState, key: Key, alone: boolean): ScreenState => {
    const pressed = press(before, key, needs.preview);
    if (!alone && pressed.deed !== undefined && answersDeliberately(before, pressed.deed)) return { ...before, message: IN_TWO };
    if (pressed.deed !== undefined && takenUnseen(before, pressed.deed, needs)) {
      return { ...before, message: 'there are more below: go down through all of them, then 1 and Enter' };
    }
    if (pressed.deed !== undefined && passedUnseen(before, pressed.deed, needs)) return { ...before, message: 'there is more to see than has room here: ? shows all of it' };
    const after = carried(pressed);
    const page = after.overlay?.page;
    if (page?.id !== 'help' || page.top === 0) return after;
    return { ...after, overlay: openPage({ id: 'help', top: Math.min(page.top, helpEnd(after, needs)) }) };
  };

  const change = (next: ScreenState): void => {
    if (next === state) return;
    state = next;
    for (const listener of listeners) listener();
  };

  return {
    needs,
    getState: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    keys: (keys) => {
      let next = state;
      try {
        const before = asked;
        for (const [at, key] of keys.entries()) if (next.leaving === null) next = pressOne(next, key, at === 0);
        if (asked > before && next.view.ask?.noDefault === true) next = typedAhead(next);
      } catch (error) {
        onMistake(error);
        return;
      }
      change(next);
    },
    resize: (to) => change({ ...state, size: to }),
    leave: (exit) => change(state.leaving === null ? { ...state, leaving: exit } : state),
  };
};
