// What happens in the middle of a set of broadheads: a mirror, a kill, a night, a change that nobody advised, a bad shot.

import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/machine/types.ts';
import { lowAndRight } from './impact-bows.ts';
import { headOf, impactCourse, impactsOf } from './impact-course.ts';
import { holdsForAnyHunt } from './impact-held.ts';
import type { StoryBow } from './numbered-archer.ts';
import { shippedContent } from './play.ts';
import { askedIn, leaveWhen, saidIn, walked } from './sittings.ts';
import { adviceInShort, type Instead, type Walked, type WalkLine } from './walk-through.ts';

/** The bow of these tunes, shot at 20 yd only. */
const theBow = (seed: number): StoryBow => {
  const bow = lowAndRight(seed);
  return { ...bow, answers: { ...bow.answers, 'broadheads-farther': 'enough' } };
};
let once: Promise<Walked> | null = null;
/** The same tune with nothing happening. */
const undisturbed = (): Promise<Walked> => (once ??= walked(theBow(2)));

/** Says something else once: where `when` holds for the nth time. */
function onceAt(when: (line: WalkLine) => boolean, saying: unknown, nth = 1): Instead {
  let seen = 0;
  return (line) => (when(line) && (seen += 1) === nth ? saying : null);
}
const aboutIs = (about: string) => ({ ask }: WalkLine): boolean => ask?.about === about;
const headIs = (head: string) => ({ ask, chapter }: WalkLine): boolean => chapter === 'broadheads' && ask?.kind === 'impact' && ask.head === head;
/** What was asked after the one turn that said something else. */
const askedAfter = (walk: Walked, saying: unknown): readonly string[] =>
  askedIn(walk).slice(walk.turns.findIndex(({ answer }) => JSON.stringify(answer) === JSON.stringify((saying as { answer?: unknown }).answer ?? saying)) + 1);

/** Decisions in order; a set that was shot with one more arrow is the same decision. */
const decisions = (walk: Walked): readonly string[] => impactCourse(walk).map((text) => text.replace(/^(\d+ yd) x7$/, '$1 x6'));
const FIRST_UP = 'adjust rest-height up 1/32 in';

describe('a left-handed archer, the whole bow in a mirror', () => {
  const SWAPPED: Readonly<Record<string, string>> = { right: 'left', left: 'right', RIGHT: 'LEFT', LEFT: 'RIGHT' };
  const words = (text: string): string => text.replace(/\b(left|right|LEFT|RIGHT)\b/g, (word) => SWAPPED[word] ?? word);
  const flip = (value: number): number => 0 - value;
  const mirroredAnswer = (about: string, answer: unknown): unknown => {
    if (typeof answer === 'object' && answer !== null && 'x' in answer) return { ...answer, x: flip(Number(answer.x)) };
    return about === 'hand' ? 'left' : answer;
  };
  const content = shippedContent();
  const mirroredAdvice = (advice: Advice | null): unknown => {
    if (advice === null || advice.knob === undefined) return advice;
    const { expect: expected, direction, to } = advice;
    const side = content.knobs[advice.knob as 'yoke'].axis === 'side';
    return {
      ...advice, what: words(advice.what), why: words(advice.why),
      ...(advice.undo === undefined ? {} : { undo: words(advice.undo) }), ...(advice.wrongIf === undefined ? {} : { wrongIf: words(advice.wrongIf) }),
      ...(expected === undefined ? {} : { expect: { ...expected, x: flip(expected.x) } }),
      ...(side ? { direction: SWAPPED[direction ?? ''], to: { ...to, value: flip(to?.value ?? NaN) } } : {}),
    };
  };

  it('gets the mirrored decision at every turn, to the last bit', async () => {
    const right = await undisturbed();
    let turn = 0;
    const left = await walked(theBow(2), () => {
      const { ask, answer } = right.turns[turn]!;
      turn += 1;
      return { answer: mirroredAnswer(ask.about, answer) };
    });
    expect(left.turns).toHaveLength(right.turns.length);
    for (const [i, { reply }] of left.turns.entries()) {
      const other = right.turns[i]!.reply;
      expect(reply.advice).toEqual(mirroredAdvice(other.advice as Advice | null));
      expect(reply.findings).toEqual(other.findings);
      if (reply.chapter === 'broadheads') expect(reply.say.map(words)).toEqual(other.say);
      expect([reply.chapter, reply.step, reply.ask?.about]).toEqual([other.chapter, other.step, other.ask?.about]);
      expect(reply.bow['rest-side']?.value ?? 0).toBe(flip(other.bow['rest-side']?.value ?? 0));
      expect(reply.bow['rest-height']).toEqual(other.bow['rest-height']);
    }
    expect(left.last.bow['rest-side']).toEqual({ value: 1 / 16, unit: 'in' });
  });
});

const inSecondSet = (line: WalkLine): boolean => headIs('field')(line) && line.ask?.kind === 'impact' && line.ask.shots.taken === 2 && Object.keys(line.bow).length > 0;

describe('killed in the middle of a set', () => {
  it('goes on with the very arrow that stood, after the four questions of a start, and ends the same', async () => {
    const whole = await undisturbed();
    const killed = await leaveWhen(theBow(2), inSecondSet, 0);
    const [at] = killed.sittings;
    expect(at).toBeDefined();
    const after = killed.turns.slice(at);
    expect(after.slice(0, 4).map(({ ask }) => ask.about)).toEqual(['place', 'gate:backstop', 'gate:range', 'gate:history']);
    expect(after[4]?.ask).toEqual(killed.turns[at! - 1]?.reply.ask);
    expect(impactCourse(killed)).toEqual(impactCourse(whole));
    expect(killed.last.bow).toEqual(whole.last.bow);
    holdsForAnyHunt(killed, 60);
  });
});

describe('left in the middle of a set, and taken up the next day', () => {
  it('looks at bow, place and heads again, and shoots three and three at 20 yd before anything is judged', async () => {
    const walk = await leaveWhen(theBow(2), inSecondSet, 20);
    const day2 = walk.turns.slice(walk.sittings[0]);
    const steps = day2.map(({ ask }) => ask.step);
    const firstShot = steps.findIndex((step) => step.startsWith('shoot-'));
    for (const step of ['limbs', 'axle-clips', 'bow-at-rest', 'arrows-flexed', 'marks', 'warm-up', 'broadhead-place', 'broadhead-arrows']) {
      expect([step, steps.indexOf(step) >= 0 && steps.indexOf(step) < firstShot]).toEqual([step, true]);
    }
    const resumed = day2.filter(({ ask }) => ask.step === 'shoot-resume');
    expect(resumed.map(({ ask }) => [headOf(ask), ask.kind === 'impact' ? ask.distance.value : 0])).toEqual(['broadhead', 'field', 'broadhead', 'field', 'broadhead', 'field'].map((head) => [head, 20]));
    expect(day2.slice(firstShot, firstShot + 6)).toEqual(resumed);
    // No word on it, and nothing advised, before the whole set was shot.
    expect(resumed.slice(0, 5).every(({ reply }) => reply.advice === null && reply.findings.length === 0)).toBe(true);
    expect(walk.last.type).toBe('done');
    expect(Math.abs(walk.last.bow['rest-height']?.value ?? 0)).toBeLessThanOrEqual(1 / 16);
  });
});

describe('in the middle of the chapter', () => {
  it('"not now" offers the other equally right one, never both, and goes on with what was made', async () => {
    const walk = await walked(theBow(2), onceAt(aboutIs('moved'), { answer: 'not now' }));
    expect(decisions(walk).slice(0, 4)).toEqual(['20 yd x6', FIRST_UP, 'adjust nock-height down 1/32 in', '20 yd x6']);
    expect(walk.last.bow['nock-height']).toEqual({ value: -1 / 32, unit: 'in' });
    holdsForAnyHunt(walk, 60);
  });

  it('"put back" undoes the last move and proves it by three and three before anything else', async () => {
    const saying = { putBack: true };
    const walk = await walked(theBow(2), onceAt(headIs('broadhead'), saying, 6));
    expect(decisions(walk).slice(0, 6)).toEqual(['20 yd x6', FIRST_UP, '20 yd x5', 'put-back rest-height down 1/32 in', 'proving 20 yd x6', FIRST_UP]);
    expect(askedAfter(walk, saying).slice(0, 3)).toEqual(['moved', 'gate:rest-check', 'impact']);
    expect(saidIn(walk)).toContain('no clear difference from before');
    expect(walk.last.type).toBe('done');
  });

  it('a move that nobody advised is taken into the ledger, looked at, and judged by a set of its own', async () => {
    const saying = { moved: { knob: 'rest-height', direction: 'up', amount: '1/32' } };
    const walk = await walked(theBow(2), onceAt(headIs('broadhead'), saying, 3));
    const at = walk.turns.findIndex(({ answer }) => answer === saying);
    expect(walk.turns[at]?.reply.bow).toEqual({ 'rest-height': { value: 1 / 32, unit: 'in' } });
    // Nobody had asked yet what kind of rest it is.
    expect(askedAfter(walk, saying).slice(0, 4)).toEqual(['gate:marks', 'rest', 'gate:rest-check', 'impact']);
    // The four shots from before do not count towards the new set.
    const next = walk.turns[at + 4]?.ask;
    expect(next?.kind === 'impact' ? [next.head, next.shots] : []).toEqual(['broadhead', { taken: 0, wanted: 6 }]);
    expect(walk.last.bow['rest-height']).toEqual({ value: 1 / 16, unit: 'in' });
  });

  it('a broadhead that was called bad does not count, and another broadhead is shot in its place', async () => {
    const saying = { answer: { x: 8, y: 8, called: 'bad' } };
    const walk = await walked(theBow(2), onceAt(headIs('broadhead'), saying, 2));
    const at = walk.turns.findIndex(({ answer }) => answer === saying.answer);
    const [bad, again] = [walk.turns[at]!, walk.turns[at + 1]!];
    expect([headOf(again.ask), again.ask.kind === 'impact' && again.ask.shots]).toEqual(['broadhead', bad.ask.kind === 'impact' && bad.ask.shots]);
    expect(decisions(walk)).toEqual(decisions(await undisturbed()));
    holdsForAnyHunt(walk, 60);
  });

  it('several told at once, one kind ahead: the other is shot first, nothing is judged before', async () => {
    const saying = { answer: [{ x: 0.75, y: -2.5 }, { x: 0, y: 0 }, { x: 1.25, y: -2.75 }, { x: 0, y: 0.25 }, { x: 1.5, y: -2.5 }] };
    const walk = await walked(theBow(2), onceAt(headIs('broadhead'), saying, 2));
    const { reply } = walk.turns.find(({ answer }) => answer === saying.answer)!;
    expect([reply.ask?.kind === 'impact' && reply.ask.head, reply.advice, reply.findings]).toEqual(['field', null, []]);
    expect(decisions(walk)[1]).toBe(FIRST_UP);
  });

  it('after a miss the arrow is looked at before the next shot, and the same kind is shot again', async () => {
    const saying = { answer: { missed: true } };
    const walk = await walked(theBow(2), onceAt(headIs('field'), saying, 2));
    expect(askedAfter(walk, saying).slice(0, 2)).toEqual(['gate:arrow-check', 'impact']);
    const at = walk.turns.findIndex(({ answer }) => answer === saying.answer);
    expect(headOf(walk.turns[at + 2]!.ask)).toBe('field');
    expect(decisions(walk)).toEqual(decisions(await undisturbed()));
    holdsForAnyHunt(walk, 60);
  });

  it('an impact that was told wrong is corrected, and only what is true is judged', async () => {
    const whole = await undisturbed();
    // The fourth impact of the first set is told as 8 in high and right, and at once put right.
    const nth = whole.turns.indexOf(impactsOf(whole)[3]!);
    let turn = -1;
    const walk = await walked(theBow(2), ({ ask }) => {
      turn += 1;
      if (turn === nth) return { answer: { x: 8, y: 8 } };
      if (turn === nth + 1) return { back: true };
      if (turn !== nth + 2) return null;
      expect(ask?.correcting).toBeDefined();
      return { answer: whole.turns[nth]!.answer };
    });
    expect(walk.turns[nth + 2]?.ask.about).toBe('impact');
    // The archer's later arrows fly under other numbers: the same advice, from a set of six.
    expect(decisions(walk).slice(1, 3)).toEqual([FIRST_UP, '20 yd x6']);
    const first = walk.turns.find(({ reply }) => reply.advice !== null)!.reply.advice as Advice;
    expect(first.expect?.x ?? 9).toBeLessThan(3);
    expect(walk.last.type).toBe('done');
    expect(adviceInShort(first)).toBe(FIRST_UP);
  });
});
