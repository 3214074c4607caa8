// What no text of the content may hold, because a terminal, a screen reader or the coach's tone cannot bear it.

import { error } from './problem.ts';
import type { Position, Problem } from './problem.ts';

const RULES: readonly { readonly when: RegExp; readonly says: string }[] = [
  { when: /\t/, says: 'a tab stands in this text; write a space instead' },
  { when: /!/, says: 'an exclamation mark stands in this text; the coach speaks calmly: end with a full stop' },
  { when: /[\u2018\u2019\u201a\u201b\u201c\u201d\u201e\u201f\u00ab\u00bb\u2032\u2033]/, says: 'a curly quote or prime stands in this text; write \' or " instead' },
  { when: /\p{Extended_Pictographic}|\p{Regional_Indicator}|\ufe0f|\u20e3/u, says: 'an emoji stands in this text; say it in words' },
  { when: /[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/, says: 'a control character stands in this text; take it out' },
  { when: /[\u00a0\u00ad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/, says: 'an invisible character stands in this text; write an ordinary space or nothing' },
  { when: /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60]/, says: 'a double-width character stands in this text; use plain letters' },
];

/** The rules that a text breaks, all at the place where the text begins. */
export function textRules(text: string, at: Position): Problem[] {
  const broken = RULES.filter((rule) => rule.when.test(text)).map((rule) => error(at, rule.says));
  if (text !== text.normalize('NFC')) broken.push(error(at, 'a letter is made of two characters (not NFC); type it as one'));
  return broken;
}
