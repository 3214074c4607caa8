// The coach's advice: what to do in capitals, then what to expect, what would prove it wrong, the way back, and why.

import type { Advice } from '../machine/types.ts';
import { type Line, paragraph, span } from './look.ts';

const KIND_WORDS: Readonly<Record<Advice['kind'], string>> = { adjust: 'next', 'put-back': 'back', inspect: 'look', shop: 'shop' };
const INDENT = '         ';

const inches = (value: number, plus: string, minus: string): string => `${Math.abs(value).toFixed(2)} in ${value < 0 ? minus : plus}`;

export const adviceHeadline = (advice: Advice, width: number): Line[] =>
  paragraph(span(`  ${KIND_WORDS[advice.kind].padEnd(7)}`, 'coach'), capitals(advice.what), width, 'strong');

/** What to do stands in capitals. Words that come with theirs keep the rest as it is: "in" is a unit and IN a direction. */
const capitals = (what: string): string => (/\p{Lu}{2}/u.test(what) ? what : what.toUpperCase());

/** The way back; of a put-back there is none: it is the way back. */
export const undoWords = ({ kind, undo }: Advice): string[] => (undo === undefined || kind === 'put-back' ? [] : [`To put it back: ${undo}`]);

/** Said of an advice besides its headline, in the order of need. */
export const adviceDetails = (advice: Advice): string[] => [
  // The coach's own words may say it already.
  ...(advice.trial && !/\btrial\b/i.test(advice.why) ? ['This is a trial: the side is not certain. It is measured, and backed out if it does not help.'] : []),
  // Where the coach's own words say what to expect, the figures are not told twice.
  ...(advice.expect === undefined || /expect/i.test(advice.wrongIf ?? '') ? [] : [
    `Expect the tail about ${inches(advice.expect.y, 'high', 'low')}, give or take ${advice.expect.sdY.toFixed(2)}, and ${inches(advice.expect.x, 'right', 'left')}, give or take ${advice.expect.sdX.toFixed(2)}.`,
  ]),
  ...(advice.wrongIf === undefined ? [] : [advice.wrongIf]),
  // The way back is a promise: on a small screen the reason goes first, which `?` shows as well.
  ...undoWords(advice),
  advice.why,
];

/** The same as lines, a list of lines for each sentence; without what the question `says` itself. */
export const adviceDetailLines = (advice: Advice, width: number, says: readonly string[] = []): Line[][] =>
  adviceDetails(advice).filter((text) => text !== '' && !says.includes(text)).map((text) => paragraph(span(INDENT), text, width));

/** What can hurt, or can harm the bow. */
export const adviceCautions = (advice: Advice): string[] => [
  // The caution of the adjustment says so itself, in its own words.
  ...(advice.press && !advice.caution.some((text) => /\bpress\b/i.test(text)) ? ['This needs a bow press: one that the bow\'s maker allows for this model, used by someone who was shown how.'] : []),
  ...advice.caution,
];

/** On a narrow screen they stand in one paragraph, further left: there every line counts, and none of them is ever left out. */
export const cautionLines = (cautions: readonly string[], width: number): Line[] => {
  if (cautions.length === 0) return [];
  if (width < 60) return paragraph(span(' ', 'warn'), `CARE: ${cautions.join(' ')}`, width, 'strong');
  return cautions.flatMap((text) => paragraph(span('  care   ', 'warn'), text, width, 'strong'));
};
