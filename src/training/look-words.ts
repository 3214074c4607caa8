// What is seen at the practice bow, in words: from the answer of somebody who looks well to a sentence of somebody who stands there.

import { fill } from '../content/fill.ts';
import type { PracticeWords } from '../content/practice-words.ts';
import type { Content } from '../content/types.ts';
import type { Ask } from '../machine/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import type { Unit } from '../maths/units.ts';
import type { Said } from '../practice/answers.ts';

/** One paragraph an entry; none where nobody wrote what is to be seen. `said`: what is there; null where nobody here can tell. */
export function lookWords(words: PracticeWords, content: Content, ask: Ask, said: Said | null): readonly string[] {
  const about = ask.about.replace(/^gate:/, '');
  if (said === null) return written(words.texts[about]);
  if (Array.isArray(said) || (ask.kind === 'choice' && ask.many === true)) return chunkWords(words, content, about, [said].flat().map(String));
  const text = words.looks[about]?.[String(said)];
  if (text !== undefined) return [text];
  if (said === 'not known') return written(words['not-known'][about]);
  if (ask.kind === 'number') return words.numbers[about] === undefined ? [] : [fill(words.numbers[about], { n: asRead(Number(said), ask.unit) })];
  if (ask.kind === 'text') return written(words.texts[about]);
  const check = words.checks[about];
  if (check !== undefined) return written(said === 'false' ? check.not : check.fine);
  // A check that is asked by itself after all: a look round shows it among the others.
  const chunk = Object.values(content.steps).find((step) => step.kind === 'chunk' && step.checks.some(({ id }) => id === about));
  return chunk === undefined ? [] : written(words.chunks[chunk.id]);
}

const written = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : [text]);

function chunkWords(words: PracticeWords, content: Content, id: string, not: readonly string[]): readonly string[] {
  const whole = words.chunks[id];
  if (whole === undefined || whole !== '') return written(whole);
  const step = content.steps[id];
  if (step?.kind !== 'chunk') return [];
  const each = step.checks.flatMap((check) => {
    const one = words.checks[check.id];
    return written(not.includes(check.id) ? one?.not : one?.fine);
  });
  return [each.join(' ')];
}

/** As a tape or a scale is read: inches to the 1/32. */
function asRead(value: number, unit: Unit): string {
  const read = unit === 'in' ? Math.round(value * 32) / 32 : Math.round(value * 100) / 100;
  return unit === 'count' ? String(read) : formatQuantity({ value: read, unit });
}
