// The demo's time: waits that a visitor can hold up and end. The ticks are handed in, so that a test does not wait.

const TICK_MS = 50;

export interface Pace {
  readonly paused: () => boolean;
  /** True once the demo is to end. */
  readonly ended: () => boolean;
  toggle(): void;
  end(): void;
  /** Resolves after so long, pauses left out; false where the demo is to end. */
  wait(ms: number): Promise<boolean>;
  subscribe(listener: () => void): () => void;
}

/** `tick` resolves after so many milliseconds; `haste` divides all waits. */
export function createPace(tick: (ms: number) => Promise<void>, haste = 1): Pace {
  const now = { paused: false, ended: false };
  const listeners = new Set<() => void>();
  return {
    paused: () => now.paused,
    ended: () => now.ended,
    toggle: () => {
      now.paused = !now.paused;
      for (const listener of listeners) listener();
    },
    end: () => { now.ended = true; },
    async wait(ms) {
      let left = ms / haste;
      while (!now.ended && (left > 0 || now.paused)) {
        const step = now.paused ? TICK_MS : Math.min(TICK_MS, left);
        await tick(step);
        if (!now.paused) left -= step;
      }
      return !now.ended;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** How long a frame stands before it is answered: a moment, and longer for each word that is new on it, up to a bound. */
export const readingTime = (newWords: number): number => Math.min(4400, 900 + 65 * newWords);
