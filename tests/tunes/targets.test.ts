// Between paper and broadheads, there and back: no shot at another target or from another distance before what stops it was
// looked at, no broadhead at paper, and none shot that was not looked at since it was put on.

import { describe, expect, it } from 'vitest';
import type { Ask, Intent, View } from '../../src/machine/types.ts';
import { openSession } from '../../src/session.ts';
import type { Bow } from './archer.ts';
import { lowAndRight, straight, together } from './impact-bows.ts';
import { NOON, play, shippedContent, type PlayOptions } from './play.ts';

type ShotAsk = Extract<Ask, { kind: 'tear' | 'impact' }>;
const isShot = (ask: Ask | null): ask is ShotAsk => ask?.kind === 'tear' || ask?.kind === 'impact';
const targetOf = ({ chapter }: View, { kind, distance }: ShotAsk): string => `${kind === 'tear' ? 'paper' : chapter === 'paper' ? 'line' : 'broadheads'} ${distance.value} ${distance.unit}`;

interface Leg { readonly from: string; readonly to: string; readonly asked: readonly string[] }

/** Every change of target or distance, and what was asked in between. */
function legs(views: readonly View[]): readonly Leg[] {
  const found: Leg[] = [];
  let [from, asked]: [string, string[]] = ['', []];
  for (const view of views) {
    if (!isShot(view.ask)) { asked.push(view.ask?.step ?? ''); continue; }
    const to = targetOf(view, view.ask);
    if (from !== '' && to !== from) found.push({ from, to, asked });
    [from, asked] = [to, []];
  }
  return found;
}

function holds({ from, to, asked }: Leg): void {
  const name = `${from} -> ${to}`;
  const [was, now] = [from.startsWith('broadheads'), to.startsWith('broadheads')];
  if (now) expect(asked, name).toContain('broadhead-place');
  else expect(asked, name).toEqual(expect.arrayContaining(['backstop', 'range']));
  if (now && !was) expect(asked, name).toContain('broadhead-arrows');
  expect(asked.includes('points-back'), name).toBe(was && !now);
}

const withArrows = (bow: Bow): Bow => ({ ...bow, answers: { ...bow.answers, 'arrows-wanted': 'all', 'arrow-count': 4 } });
const once = (when: (view: View) => boolean, intent: Intent): NonNullable<PlayOptions['instead']> => {
  let sent = false;
  return (view) => {
    if (sent || !when(view)) return null;
    sent = true;
    return intent;
  };
};

describe('from one target to another', () => {
  it('a bow that broadheads moved: arrows at paper, and broadheads again after tightening', () => {
    const all = legs(play(withArrows(lowAndRight(3))).views);
    all.forEach(holds);
    expect(all.map(({ to }) => to).slice(-2)).toEqual(['paper 7 ft', 'broadheads 40 yd']);
  });

  it('a bow that nothing moved: three shots at paper after tightening, with field points on', () => {
    const all = legs(play(together(3)).views);
    all.forEach(holds);
    expect(all.at(-1)?.to).toMatch(/^paper/);
  });

  it('moved by hand at the arrows, or a new string among the broadheads: paper, then broadheads as for the first time', () => {
    const atArrows = (view: View): boolean => view.chapter === 'arrows' && isShot(view.ask) && view.ask.shots.taken >= 2;
    const atHeads = (view: View): boolean => view.chapter === 'broadheads' && isShot(view.ask) && view.ask.shots.taken >= 2;
    for (const [bow, instead] of [
      [withArrows(together(3)), once(atArrows, { kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/64 in' })],
      [together(4), once(atHeads, { kind: 'changed', what: 'string' })],
    ] as const) {
      const all = legs(play(bow, { instead, most: 250 }).views);
      all.forEach(holds);
      const again = all.filter(({ from, to }) => from.startsWith('paper') && to === 'broadheads 20 yd');
      expect(again).toHaveLength(2);
      expect(again[1]?.asked).toEqual(expect.arrayContaining(['sight-at-20', 'first-broadhead']));
    }
  });
});

describe('another day', () => {
  /** What is asked from the return on to the first shot. */
  function nextDay(bow: Bow, until: (view: View) => boolean, place: string): readonly string[] {
    const { store } = play(bow, { until });
    const session = openSession({ content: shippedContent(), store, startAt: new Date(NOON + 30 * 3600_000), engine: 'test', tune: 'test-tune', known: [] });
    const again = play({ ...bow, answers: { ...bow.answers, place } }, { store, startAt: NOON + 30 * 3600_000, until: (view) => isShot(view.ask), most: 40 });
    expect(session.view().ask?.step).toBe('place');
    return again.views.flatMap(({ ask }) => (ask === null ? [] : [ask.step, ...(ask.kind === 'choice' ? ask.options.map(({ value }) => value) : [])]));
  }
  const shooting = (view: View): boolean => view.ask?.kind === 'impact' && view.ask.shots.taken >= 1;

  it('another place is said once, and is looked at once', () => {
    const asked = nextDay(together(3), shooting, 'other');
    expect(asked.filter((step) => step === 'place')).toHaveLength(1);
    expect(asked.filter((step) => step === 'broadhead-place')).toHaveLength(1);
  });

  it('where broadheads are shot nobody is asked about a frame or a fresh sheet', () => {
    const asked = nextDay(together(3), shooting, 'same');
    expect(asked).toEqual(expect.arrayContaining(['range-people', 'warm-steady', 'broadhead-place', 'broadhead-arrows']));
    for (const check of ['range-gap', 'range-frame', 'warm-sheet']) expect(asked).not.toContain(check);
  });

  it('a plumb line is hung and looked at again', () => {
    expect(nextDay(straight(3), shooting, 'other').filter((step) => step === 'plumb-ready')).toHaveLength(1);
  });
});

describe('left for later, and wanted after all', () => {
  /** At the finish the answer is changed; what the answers list says of it is how an archer finds it. */
  function changed(bow: Bow, question: RegExp, answer: string): ReturnType<typeof play> {
    const first = play(bow, { until: ({ ask }) => ask?.step === 'sight-last' });
    const seq = first.session.answers().findLast((entry) => question.test(entry.question))?.seq ?? 0;
    const at = new Date(NOON + 3 * 3600_000);
    first.session.send({ kind: 'back', to: seq }, at);
    const reply = first.session.send({ kind: 'answer', answer }, at);
    expect(reply.error).toBeUndefined();
    return play({ ...bow, answers: { ...bow.answers, 'broadheads-wanted': answer === 'all' ? 'never' : answer } }, { store: first.store, startAt: NOON + 4 * 3600_000 });
  }
  const rows = ({ last }: ReturnType<typeof play>, title: string): string => JSON.stringify(last.record?.sections.find((section) => section.title === title) ?? '');

  it('broadheads are shot, from three shots at paper on, and tightening is proved anew', () => {
    const late = together(5);
    const played = changed({ ...late, answers: { ...late.answers, 'broadheads-wanted': 'later' } }, /^Broadheads against/, 'fixed');
    expect(played.asked).toEqual(expect.arrayContaining(['tear', 'gate:first-broadhead', 'impact', 'gate:points-back', 'gate:tightened', 'sight-last']));
    expect(rows(played, 'Result')).toContain('land together at');
    expect(rows(played, 'Not checked')).not.toContain('Broadheads');
  });

  it('the arrows are shot one by one', () => {
    const late = together(5);
    const played = changed({ ...late, answers: { ...late.answers, 'broadheads-wanted': 'never', 'arrow-count': 4 } }, /^Each arrow of your set/, 'all');
    expect(rows(played, 'Arrows, one by one')).toContain('Arrow 4');
  });
});
