// The screen's state and the only place where it changes. It is outside React: a key that arrives with another in one read
// finds the state that the first one left.

import { CodedError } from '../errors.ts';
import type { Intent, Reply, SessionLike } from '../machine/types.ts';
import { takenLines } from './items.ts';
import type { Key } from './key-names.ts';
import { helpEnd, listIsCut, type LiveNeeds, liveWidth } from './live.ts';
import { isChecks } from './options.ts';
import { openPage } from './pages.ts';
import { press } from './press.ts';
import type { Deed } from './pressed.ts';
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

export const createScreenStore = ({ session, now, size, braille, onMistake }: StoreNeeds): ScreenStore => {
  const view = session.view();
  let state: ScreenState = { size, view, prompt: promptFor(view.ask), overlay: null, menu: false, message: null, items: [], leaving: null };
  let told = session.transcript().length;
  let nextId = 1;
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
    if (reply.noted) return { ...before, view: reply.view, items, message: 'noted' };
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
    switch (deed.open) {
      case 'help': return { ...before, overlay: openPage({ id: 'help', top: 0 }) };
      case 'history': return { ...before, overlay: openPage({ id: 'history', entries: session.history() }) };
      case 'answers': return { ...before, overlay: openPage({ id: 'answers', entries: session.answers() }) };
      case 'sure': return { ...before, overlay: openPage({ id: 'sure', what: '', to: null, steps: [], settings: [] }) };
      default: return { ...before, overlay: openPage({ id: deed.open }) };
    }
  };

  const pressOne = (before: ScreenState, key: Key): ScreenState => {
    const pressed = press(before, key, needs.preview);
    if (pressed.deed !== undefined && takenUnseen(before, pressed.deed, needs)) {
      return { ...before, message: 'there are more below: go down through all of them, then 1 and Enter' };
    }
    const after = pressed.deed === undefined ? pressed.state : carryOut(pressed.state, pressed.deed);
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
        for (const key of keys) if (next.leaving === null) next = pressOne(next, key);
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
