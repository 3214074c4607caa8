// A canonical answer as an archer would say it: for the transcript, previews and the record.

import type { Step } from '../content/types.ts';
import { formatQuantity, formatInches } from '../maths/fractions.ts';
import type { Answer, Ask, MovedAnswer, ShotAnswer } from './types.ts';

export function answerInWords(step: Step, answer: Answer): string {
  if (answer.kind === 'not known') return 'not known';
  if (answer.kind === 'choice' && step.kind === 'choice') return answer.values.map((v) => step.options.find((o) => o.value === v)?.label ?? v).join(', ');
  if (answer.kind === 'number' && step.kind === 'number') return formatQuantity({ value: answer.value, unit: step.unit });
  return plainAnswer(answer);
}

/** The answer in the words of the ask that it answers. */
export function answerToAskInWords(ask: Ask, answer: Answer): string {
  if (answer.kind === 'choice' && ask.kind === 'choice') return answer.values.map((v) => ask.options.find((o) => o.value === v)?.label ?? v).join(', ');
  if (answer.kind === 'number' && ask.kind === 'number') return formatQuantity({ value: answer.value, unit: ask.unit });
  if (answer.kind === 'shots' && ask.kind === 'impact') return answer.shots.map(impactInWords).join('; ');
  return plainAnswer(answer);
}

/** An answer without its question: values as they are. */
export function plainAnswer(answer: Answer): string {
  switch (answer.kind) {
    case 'choice':
      return answer.values.join(', ');
    case 'number':
      return String(answer.value);
    case 'confirm':
      return answer.value ? 'yes' : 'no';
    case 'text':
      return answer.value;
    case 'shots':
      return answer.shots.map(shotInWords).join('; ');
    case 'moved':
      return typeof answer.moved === 'string' ? MOVED_WORDS[answer.moved] : `moved ${formatQuantity(answer.moved)}`;
    case 'not known':
      return 'not known';
  }
}

const MOVED_WORDS: Readonly<Record<Extract<MovedAnswer, string>, string>> = {
  'as told': 'moved as told', 'not now': 'not now', 'another': 'another adjustment, please', 'at its end': 'it goes no further',
};

/** `1/2 in high, 1/8 in left of its dot`. */
export function impactInWords(shot: ShotAnswer): string {
  if ('missed' in shot) return 'missed the target';
  const parts = sidesOf(shot);
  const where = parts.length === 0 ? 'on its dot' : `${parts.join(', ')} of its dot`;
  return shot.called === 'bad' ? `called bad: ${where}` : where;
}

function sidesOf({ x, y }: { readonly x: number; readonly y: number }): readonly string[] {
  const part = (value: number, plus: string, minus: string): string[] => (formatInches(value, 32) === '0' ? [] : [`${formatInches(Math.abs(value), 32)} in ${value > 0 ? plus : minus}`]);
  return [...part(y, 'high', 'low'), ...part(x, 'right', 'left')];
}

/** `tail 1/2 in high, 1/8 in left of the point`. */
export function shotInWords(shot: ShotAnswer): string {
  if ('missed' in shot) return 'missed the paper';
  const parts = sidesOf(shot);
  const where = parts.length === 0 ? 'a clean hole' : `tail ${parts.join(', ')}${formatInches(shot.x, 32) === '0' ? '' : ' of the point'}`;
  return shot.called === 'bad' ? `called bad: ${where}` : where;
}
