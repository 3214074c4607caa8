// The tunes that the frozen journals were made of: all bows, archers and shots are invented. Together they hold what version 1 can
// write. `tests/tools/freeze-journal.ts` plays them once; what it wrote is never written anew.

import { readFileSync } from 'node:fs';
import { memoryStore } from '../../src/journal/memory-store.ts';
import { readJournal } from '../../src/journal/read.ts';
import type { Ask, Carried, Fact, Intent, Store, Tear } from '../../src/machine/types.ts';
import { carriedOf } from '../../src/session.ts';
import type { Bow } from '../tunes/archer.ts';
import { NOON, play, shippedContent, type PlayOptions } from '../tunes/play.ts';

const HOUR = 3_600_000;
type Shot = () => Tear;

/** Answers one after the other; the last stays. */
function inTurn(...answers: readonly unknown[]): (ask: Ask, shot: Shot) => unknown {
  let nth = 0;
  return (ask, shot) => {
    const answer = answers[Math.min(nth++, answers.length - 1)];
    return typeof answer === 'function' ? (answer as (ask: Ask, shot: Shot) => unknown)(ask, shot) : answer;
  };
}

/** Before the nth question about something in a chapter (`paper/tear`): what is said first. */
interface Saying { readonly at: string; readonly nth?: number; readonly say: readonly Intent[] }

function saying(...all: readonly Saying[]): NonNullable<PlayOptions['instead']> {
  const seen = new Map<string, number>();
  const queue: Intent[] = [];
  return ({ ask, chapter }) => {
    if (queue.length === 0 && ask !== null) {
      const here = `${chapter}/${ask.about}`;
      const nth = (seen.get(here) ?? 0) + 1;
      seen.set(here, nth);
      queue.push(...all.filter(({ at, nth: wanted = 1 }) => at === here && wanted === nth).flatMap(({ say }) => say));
    }
    return queue.shift() ?? null;
  };
}

const answer = (value: unknown): Intent => ({ kind: 'answer', answer: value });
const back: Intent = { kind: 'back' };
const note = (words: string): Intent => ({ kind: 'note', note: words });
const stop = (words: string): Intent => ({ kind: 'stop', words });

interface Sitting extends PlayOptions { readonly bow: Bow; readonly hours?: number }

/** One tune in one sitting or several. */
function tune(name: string, known: readonly Carried[], ...sittings: readonly Sitting[]): Store {
  const store = memoryStore();
  for (const { bow, hours = 0, ...options } of sittings) {
    play(bow, { tune: name, known, most: 500, ...options, store, startAt: NOON + hours * HOUR });
  }
  return store;
}

const chapterIs = (chapter: string): NonNullable<PlayOptions['until']> => (view) => view.chapter === chapter;

/** Paper: a rest that works the other way, put back and proved (once it does not come back), a stop, a note, slips put right. */
function paper(): Store {
  const bow: Bow = {
    seed: 3, sd: 0.04, start: { x: -0.75, y: 0.3 }, gain: { 'rest-side': { x: 6, y: 0 }, 'rest-height': { x: 0, y: -6 } },
    answers: {
      'press': 'shop', 'cams': inTurn('yoke'), 'moved': inTurn('as told', 'another', '1 mm', 'as told'), 'inspected': 'loose-part',
      'what-happened': inTurn('nothing', 'bow'), 'peak-weight': 59, 'scale-error': 'not known',
    },
  };
  const proving = { nth: 0 };
  const shoot = (ask: Ask, shot: Shot): Tear => {
    const { x, y } = shot();
    if (ask.step !== 'shoot-proving' || proving.nth >= 3) return { x, y };
    proving.nth += 1;
    return { x: x + 0.5, y };
  };
  const tears = inTurn(shoot, { x: -0.75, y: 0.3, called: 'bad' }, { missed: true }, { x: -0.75, y: 0.25, called: 'good' }, shoot);
  return tune('2026-03-02-a', [], {
    bow: { ...bow, answers: { ...bow.answers, tear: tears } },
    instead: saying(
      { at: 'safety/hand', say: [answer('left'), back, answer('right')] },
      { at: 'paper/tear', nth: 4, say: [note('wind from the left'), stop('something went snap')] },
      { at: 'paper/tear', nth: 12, say: [{ kind: 'putBack' }] },
    ),
    until: chapterIs('broadheads'),
  });
}

/** Gates that fail, that nobody can answer and that are noted; every kind of change; scatter; an adjustment that does nothing, and a side that is left as it is. */
function happenings(): Store {
  const height = inTurn('another', 'as told');
  const hand = [{ x: -1, y: 0.7 }, { x: 0.9, y: 0.3 }, { x: 0.1, y: -1 }, { x: -0.9, y: -0.4 }, { x: 0.8, y: 0.9 }];
  const bow: Bow = {
    seed: 5, sd: 0.04, start: { x: -0.5, y: 0.5 }, gain: {},
    answers: {
      'gate:history': inTurn('derailed', 'nothing'), 'gate:limbs': inTurn('not known', 'clean'), 'arrow-mass': 330, 'scale-error': 'not known', 'cams': 'hybrid', 'press': 'none',
      'tear': inTurn(...hand.slice(0, 4), (_: Ask, shot: Shot) => shot()), 'inspected': inTurn('other', 'nothing'),
      'contact': inTurn('smear', 'clean'), 'grip': inTurn('moved', 'same'), 'face': inTurn('moved', 'same'), 'accept': inTurn('go on', 'accept'),
      'moved': (ask: Ask) => (ask.step === 'make-the-move' && /^REST (LEFT|RIGHT)/.test(ask.short) ? 'not now' : height(ask, () => ({ x: 0, y: 0 }))),
    },
  };
  const changes = (['string', 'rest', 'arrow', 'release', 'loop', 'sight', 'fell', 'other'] as const).map((what): Intent => ({ kind: 'changed', what }));
  return tune('2026-03-02-b', [], {
    bow,
    instead: saying(
      { at: 'paper/tear', nth: 3, say: changes },
      { at: 'paper/tear', nth: 6, say: [answer([{ x: -0.5, y: 0.5 }, { x: 0.5, y: -0.5 }])] },
    ),
    until: chapterIs('broadheads'),
  });
}

/** A tear that is gross until the cause is found, then a yoke on its archer's own press; an hour's break and a night; to the record, and a note after it. */
function press(): Store {
  const gross = { x: -1.5, y: 0.5 };
  const bow: Bow = {
    seed: 2, sd: 0.04, start: { x: -0.48, y: 0.5 }, gain: { 'rest-side': { x: -1, y: 0 }, 'rest-height': { x: 0, y: -7 }, 'yoke': { x: -0.2, y: 0.02 } },
    answers: {
      'cams': inTurn('yoke'), 'press': 'trained', 'centre-shot': '29/32', 'centre-shot-figure': '13/16', 'finishing': inTurn('leave', 'one more step', 'leave'), 'inspected': inTurn('face', 'nothing'),
      'tear': inTurn(gross, gross, gross, (_: Ask, shot: Shot) => shot()), 'place': 'same', 'contact': inTurn('clean'),
    },
  };
  const known = '2026-03-02-c';
  const first: Sitting = { bow, until: ({ advice }) => advice?.knob === 'rest-side' };
  const second: Sitting = { bow, hours: 3, until: ({ advice }) => advice?.knob === 'yoke' };
  const last: Sitting = {
    bow, hours: 27,
    instead: saying(
      { at: 'paper/finishing', say: [answer('leave'), back, answer('one more step')] },
      { at: 'broadheads/use', say: [answer('hunting'), answer('fixed'), back, back, answer('target')] },
    ),
  };
  const store = tune(known, [], first, second, last);
  const { session } = play(bow, { store, tune: known, startAt: NOON + 50 * HOUR });
  session.send(note('the string was served anew by the shop after this'), new Date(NOON + 51 * HOUR));
  return store;
}

/** The bow of that tune again, with moves that nobody advised, of every adjustment, and all of them put back. */
function known(): Store {
  const carried = carriedOf(shippedContent(), press().facts);
  if (carried === null) throw new Error('that tune hands nothing over');
  const hands = (
    [['cam-sync', 'add', 1], ['limb-bolts', 'in', '1/4'], ['limb-bolts', 'out', '1/2'], ['point-weight', 'add', 5], ['point-weight', 'remove', 10], ['drop-cord', 'add', '1/8'], ['cam-spacers', 'right', 1],
      ['cam-screw', 'left', '1/4'], ['nock-height', 'down', '1/32'], ['yoke', 'right', 1], ['rest-height', 'up', '1/32']] as const
  ).map(([knob, direction, amount]): Intent => ({ kind: 'moved', knob, direction, amount }));
  const bow: Bow = { seed: 4, sd: 0.04, start: { x: 0.02, y: 0.06 }, gain: {}, answers: { bow: carried.from, cams: 'yoke', press: 'trained', contact: 'clean' } };
  return tune('2026-04-11-a', [carried], {
    bow, hours: 24 * 40, instead: saying({ at: 'paper/tear', nth: 2, say: hands }, { at: 'paper/tear', nth: 4, say: [{ kind: 'putBack', to: 1 }] }, { at: 'paper/tear', nth: 6, say: [{ kind: 'moved', knob: 'limb-bolts', direction: 'in', amount: '1/4' }] },
      { at: 'paper/tear', nth: 7, say: [{ kind: 'putBack' }] }), until: chapterIs('broadheads'),
  });
}

/** A rest that takes the tail to the left as well when it goes up, told and handed on; and what was judged before is judged once more. */
function besides(): Store {
  const bow: Bow = {
    seed: 5, sd: 0.05, start: { x: 0.6, y: 0.7 }, gain: { 'rest-height': { x: -19, y: -7 }, 'rest-side': { x: -6, y: 0 } },
    answers: { cams: 'two-track', press: 'none', contact: 'clean' },
  };
  const carried = carriedOf(shippedContent(), tune('2026-05-02-a', [], { bow, until: chapterIs('broadheads') }).facts);
  if (carried === null) throw new Error('that tune hands nothing over');
  return tune('2026-05-02-b', [carried], { bow: { ...bow, seed: 6, start: { x: 0.3, y: 0.5 }, answers: { ...bow.answers, bow: carried.from } }, until: chapterIs('broadheads') });
}

const HUNTER = { 'use': 'hunting', 'broadheads-wanted': 'fixed', 'group-at-20': 1, 'cams': 'yoke', 'press': 'shop' } as const;

/** Broadheads low and right of the field points, heads swapped at half-time, farther; then a move that nobody advised, where it was settled already. */
function broadheads(): Store {
  const bow: Bow = {
    seed: 1, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {}, groups: { start: { x: 1.6, y: -2.6 }, gain: { 'rest-height': { x: 0, y: 30 }, 'rest-side': { x: 24, y: 0 } }, sd: 0.25 },
    answers: { ...HUNTER, 'broadheads-farther': inTurn('farther', 'enough') },
  };
  return tune('2026-03-02-d', [], {
    bow, until: chapterIs('arrows'),
    instead: saying({ at: 'broadheads/broadheads-farther', nth: 2, say: [{ kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/64' }] }),
  });
}

const ARROWS = { 'arrows-wanted': 'all', 'cams': 'screw-adjust', 'press': 'none' } as const;

/** Twelve arrows: a wobble, a bad nock, a crack, and one that is odd and shows nothing. */
function arrows(): Store {
  const bow: Bow = {
    seed: 3, sd: 0.08, start: { x: 0.03, y: 0.06 }, gain: {}, answers: ARROWS,
    arrows: { 4: { error: { x: -0.7, y: 0.1 }, look: 'wobble' }, 9: { nock: { x: 0.1, y: 0.6 } }, 11: { error: { x: 0.7, y: 0 }, look: 'crack' }, 12: { error: { x: 0, y: -0.7 } } },
  };
  return tune('2026-03-02-e', [], { bow });
}

/** Six of twelve look odd: the bow is looked at. */
function manyOdd(): Store {
  const bow: Bow = {
    seed: 3, sd: 0.08, start: { x: 0.03, y: 0.06 }, gain: {}, answers: { ...ARROWS, inspected: 'nothing' },
    arrows: { 4: { error: { x: -0.7, y: 0.1 } }, 5: { error: { x: 0.6, y: 0.3 } }, 9: { error: { x: 0, y: 0.6 } }, 10: { error: { x: 0.6, y: 0 } }, 12: { error: { x: 0, y: -0.6 } } },
  };
  return tune('2026-03-02-f', [], { bow, until: ({ chapter }) => chapter === 'finish' || chapter === 'record' });
}

/** Six arrows that all differ, each to another side: their nocks are turned together, one of them does not turn; as nothing goes round with them, they go back. */
function setTurned(): Store {
  const error = (angle: number): Tear => ({ x: 0.25 * Math.cos(angle), y: 0.25 * Math.sin(angle) });
  const bow: Bow = {
    seed: 7, sd: 0.06, start: { x: 0.03, y: 0.06 }, gain: {},
    answers: { ...ARROWS, 'arrow-count': 6, 'turn-the-set': inTurn('one stays', 'done'), 'nock-stays': 2 },
    arrows: Object.fromEntries([0, 1, 2, 3, 4, 5].map((i) => [`${i + 1}`, { error: error(i * 1.1) }])),
  };
  return tune('2026-03-02-m', [], { bow, until: ({ say }) => say.join().includes('Turned back') });
}

const NO_PAPER = { 'use': 'target', 'cams': 'two-track', 'press': 'none', 'gate:backstop': 'no-paper' } as const;

function unfletched(): Store {
  const bow: Bow = {
    seed: 1, sd: 0.04, start: { x: 0, y: 0 }, gain: {}, answers: { ...NO_PAPER, 'method': 'unfletched', 'group-at-20': 1.5 },
    groups: { start: { x: 2.2, y: -2.4 }, gain: { 'rest-height': { x: 0, y: 36 }, 'rest-side': { x: 32, y: 0 } }, sd: 0.4, sdSecond: 0.5 },
  };
  return tune('2026-03-02-g', [], { bow });
}

function plumbLine(): Store {
  const bow: Bow = {
    seed: 1, sd: 0.04, start: { x: 0, y: 0 }, gain: {}, answers: { ...NO_PAPER, 'method': 'plumb-line', 'group-at-20': 1 },
    plumb: { drift: 0.2, gain: { 'rest-side': -3.2 }, sd: 0.3 },
  };
  return tune('2026-03-02-h', [], { bow });
}

/** Shots that scatter to the end. */
function scatter(): Store {
  let nth = 0;
  const hand = [{ x: -1, y: 0.7 }, { x: 0.9, y: 0.3 }, { x: 0.1, y: -1 }, { x: -0.4, y: 0.9 }, { x: 0.6, y: -0.5 }];
  const bow: Bow = { seed: 1, sd: 0.1, start: { x: 0, y: 0 }, gain: {}, answers: { tear: () => hand[nth++ % hand.length], inspected: inTurn('tired', 'one-arrow', 'grip'), cams: 'two-track', press: 'none' } };
  return tune('2026-03-02-i', [], { bow });
}

/** Moved to another place between two shots. */
function place(): Store {
  return tune('2026-03-02-j', [], {
    bow: { seed: 2, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {} },
    instead: saying({ at: 'paper/tear', nth: 3, say: [{ kind: 'changed', what: 'place', note: 'to the club' }] }), until: chapterIs('broadheads'),
  });
}

/** An arrow added up, too light by its first point, and all figures for the card; with a finger release, so that nothing is shot. */
function addedUp(): Store {
  const answers = { 'release': 'fingers', 'arrow-mass': 'not known', 'mass-way': 'add-up', 'point-grains': inTurn(25, 100), 'figures-wanted': 'yes', 'spine-printed': 'not known' };
  return tune('2026-03-02-k', [], {
    bow: { seed: 2, sd: 0.04, start: { x: 0.03, y: 0.06 }, gain: {}, answers },
    instead: saying({ at: 'finish/look-again', say: [back, answer(0.3)] }),
  });
}

/** Screws that end at once, and then the rest: both are closed, and what is left goes to the shop. */
function atItsEnd(): Store {
  return tune('2026-03-02-n', [], {
    bow: { seed: 2, sd: 0.04, start: { x: -0.5, y: 0.05 }, gain: {}, answers: { cams: 'screw-adjust', press: 'none', moved: 'at its end' } },
    until: ({ advice }) => advice?.kind === 'shop',
  });
}

/** A journal whose lines do not fit this content any more, gone on with: they are set aside. */
function aside(): Store {
  const old = readJournal(readFileSync(new URL('../fixtures/journal-v1.jsonl', import.meta.url))).facts;
  const store = memoryStore(old);
  play({ seed: 1, sd: 0.04, start: { x: 0, y: 0 }, gain: {} }, { store, startAt: NOON + 365 * 24 * HOUR, most: 12 });
  return store;
}

export interface Frozen { readonly name: string; readonly play: () => readonly Fact[] }

/** Each tune by the name of its file. */
export const FROZEN: readonly Frozen[] = Object.entries({
  'paper': paper, 'happenings': happenings, 'press': press, 'known': known, 'broadheads': broadheads, 'arrows': arrows, 'many-odd': manyOdd, 'unfletched': unfletched, 'plumb-line': plumbLine,
  'scatter': scatter, 'aside': aside, 'place': place, 'set-turned': setTurned, 'added-up': addedUp, 'besides': besides, 'at-its-end': atItsEnd,
}).map(([name, make]) => ({ name, play: () => make().facts }));
