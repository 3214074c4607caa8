// The conversation is told in the words of its questions: no name that only programs use.

import { describe, expect, it } from 'vitest';
import { play, shippedContent } from '../tunes/play.ts';

const content = shippedContent();
const BOW = { start: { x: -0.42, y: 0.6 }, gain: { 'rest-height': { x: 0, y: -7 }, 'rest-side': { x: 6.5, y: 0 } }, sd: 0.09, seed: 7 };

/** Every name of content that is no plain word by itself: steps, checks, options. */
const names = Object.values(content.steps).flatMap((step) => [
  step.id, ...(step.kind === 'chunk' ? step.checks.map((check) => check.id) : []), ...(step.kind === 'choice' ? step.options.map((option) => option.value) : []),
]).filter((name) => name.includes('-'));

/** Words that people use as well stand in some label: "left-handed", "drop-away". */
const labels = JSON.stringify(Object.values(content.steps).flatMap((step) => [step.short, ...(step.kind === 'choice' ? step.options.map((option) => option.label) : [])]));

describe('the conversation', () => {
  const once = new Map<string, unknown>([['gate:range', ['range-frame', 'range-lane']], ['gate:bow-at-rest', ['bow-strands']]]);
  const played = play({ ...BOW, answers: { finishing: 'one more step' } }, {
    instead: ({ ask }) => {
      const answer = once.get(ask?.about ?? '');
      if (answer === undefined) return null;
      once.delete(ask?.about ?? '');
      return { kind: 'answer', answer };
    },
  });
  const lines = played.session.transcript();
  const said = lines.filter((line) => line.who === 'archer').map((line) => line.text);

  it('says of checks that were picked that they do not hold', () => {
    expect(said).toContain('Is the range ready, and are you?: not true or not known: Doors to the lane shut, no animals; Frame opening 24 in or larger');
    expect(said).toContain('Frame opening 24 in or larger: It is true now, I looked');
    expect(said).toContain('Every arrow that was kept: All of these are true');
  });

  it('says what was moved, and which choice was made', () => {
    expect(said).toContain('moved as told: REST UP 1/32 in');
    expect(said).toContain('One finishing step');
  });

  it('has no name in it that only programs use', () => {
    expect(names.length).toBeGreaterThan(50);
    const named = (text: string): readonly string[] => names.filter((name) => new RegExp(`(^|[^a-z-])${name}($|[^a-z-])`).test(text) && !labels.includes(name));
    for (const { text } of lines) expect([text, named(text)]).toEqual([text, []]);
  });

  it('names the question of an answer that was corrected', () => {
    const { session } = play(BOW, { until: ({ ask }) => ask?.about === 'gate:backstop' });
    session.send({ kind: 'back' }, new Date('2026-03-02T13:00:00Z'));
    session.send({ kind: 'answer', answer: 'left' }, new Date('2026-03-02T13:01:00Z'));
    expect(session.transcript().map((line) => line.text)).toContain('corrected: Which hand holds the bow?: Right hand holds it: left-handed');
  });
});
