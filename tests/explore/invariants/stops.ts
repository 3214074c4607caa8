// A stop stands until it is cleared, and can be said at any time.

import { KNOBS } from '../../../src/content/types.ts';
import { asked, first, type Invariant } from '../moment.ts';
import { beyond } from './beyond.ts';

export const stopIsLeftByItsGate: Invariant = {
  id: 'stop-is-left-by-its-gate',
  rule: 'A stop is left only by answers to what raised it: nothing else that is said, moved, put back, noted or restarted leads out of it.',
  held: 'machine/walk.ts (released), stops.ts, after-answer.ts',
  broken({ was, view, line, gates }) {
    const holds = gates.holds(view.step);
    if (view.type !== 'stop' && holds.length > 0) return `the walk goes on at ${view.step}, and ${holds[0]}`;
    if (was?.type !== 'stop' || view.type === 'stop') return null;
    return line?.kind === 'answered' || line?.kind === 'corrected' ? null : `the stop is left by a line that answers nothing (${line?.kind})`;
  },
};

export const stopShowsItsWayOut: Invariant = {
  id: 'stop-shows-its-way-out',
  rule: 'A stop asks what leads out of it and what must be looked at before that, and shows no other work than to bring back what stands beyond a limit.',
  held: 'machine/ask.ts (stoppedAsk), view.ts',
  broken(m) {
    if (m.view.type !== 'stop') return null;
    const { advice } = m.view;
    // What stands too far away goes back before a gate that is drawn for is tried again.
    const goesBack = advice?.kind === 'put-back' && KNOBS.some((knob) => beyond(m, knob));
    if (advice !== null && advice.kind !== 'shop' && advice.kind !== 'inspect' && !goesBack) return `stopped, and told: ${advice.what}`;
    const ask = asked(m);
    if (ask === null) return m.view.ask === null ? 'stopped, and nothing is asked that would lead out' : null;
    const ways = m.gates.waysOut();
    return ways.has(ask.step) || (goesBack && ask.step === 'put-it-back') ? null : `stopped, and asked: ${ask.step}; ways out: ${[...ways].join(' ')}`;
  },
};

/** What a frightened person says; each is heard as a stop everywhere. */
export const DANGER: readonly string[] = ['stop', 'it cracked', 'dry fire', 'the string came off', 'someone is in front', 'I am hurt'];

export const stopWordIsHeard: Invariant = {
  id: 'stop-word-is-heard',
  rule: 'A stop word stops the walk at once, wherever it stands and whatever is being asked, and asks what happened.',
  held: 'session.ts, machine/stop-words.ts, walk.ts (stop everywhere)',
  broken({ intent, line, view, said, fresh }) {
    const words = intent?.kind === 'stop' ? intent.words : intent?.kind === 'note' ? intent.note : null;
    const taken = line?.kind === 'stopped' || (line?.kind === 'noted' && words !== null && DANGER.some((danger) => words.includes(danger)));
    if (taken && view.type !== 'stop' && view.type !== 'done') return `"${words}" was said, and the walk goes on at ${view.step}`;
    if (view.type === 'done' || !fresh) return null;
    return first(DANGER.slice(0, 1).filter((words) => said(words).type !== 'stop').map((words) => `"${words}" at ${view.step} would not stop`));
  },
};

export const alwaysAWayOn: Invariant = {
  id: 'always-a-way-on',
  rule: 'Until the tune is finished there is always one question that stands: nobody is left at a drawn bow without a next step.',
  held: 'machine/ask.ts, advance.ts',
  broken: ({ view }) => (view.type === 'done' || view.ask !== null ? null : `nothing is asked at ${view.chapter}`),
};
