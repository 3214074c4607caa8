// One line on every frame: that this is an invented demo, and the two keys that a visitor has.

import type { ScreenStore } from '../../src/screens/screen-store.ts';
import type { ScreenState } from '../../src/screens/state.ts';
import type { Pace } from './pace.ts';

/** Fits in one line of a screen of 40 columns. */
const RUNNING = 'invented demo: space pauses, q ends';
const PAUSED = 'PAUSED: space goes on, q ends';

/** The same store, with the line where the screen tells of the last key; what the screen has to tell itself comes first. */
export function withBanner(store: ScreenStore, pace: Pace): ScreenStore {
  let of: ScreenState | null = null;
  let paused = false;
  let shown: ScreenState = store.getState();
  return {
    ...store,
    getState: () => {
      const state = store.getState();
      if (state === of && paused === pace.paused()) return shown;
      [of, paused] = [state, pace.paused()];
      shown = { ...state, message: paused ? PAUSED : (state.message ?? RUNNING) };
      return shown;
    },
    subscribe: (listener) => {
      const [off, offPace] = [store.subscribe(listener), pace.subscribe(listener)];
      return () => { off(); offPace(); };
    },
  };
}
