// How wide text is in a terminal, and how to break or cut it so that no line is ever wider than asked for.

import { splitGraphemes } from './key-names.ts';

const WIDE = /^(?:[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f|[\u{20000}-\u{3fffd}])/u;
const NO_WIDTH = /^[\p{Mn}\p{Me}\p{Cf}\p{Cc}]/u;

const graphemeWidth = (part: string): number => (NO_WIDTH.test(part) ? 0 : WIDE.test(part) ? 2 : 1);

/** Columns that a text takes on one line. */
export const textWidth = (text: string): number => {
  if (/^[ -~]*$/.test(text)) return text.length;
  return splitGraphemes(text).reduce((sum, part) => sum + graphemeWidth(part), 0);
};

/** The longest beginning of a text that fits into `width` columns. */
const beginning = (text: string, width: number): string => {
  let taken = '';
  let used = 0;
  for (const part of splitGraphemes(text)) {
    used += graphemeWidth(part);
    if (used > width) break;
    taken += part;
  }
  return taken;
};

/** Cuts a text that is too wide, and says so with an ellipsis. */
export const cut = (text: string, width: number): string =>
  textWidth(text) <= width ? text : `${beginning(text, Math.max(0, width - 1)).trimEnd()}\u2026`;

/** The last part of a text that fits, with an ellipsis in front where something is left out. */
export const cutFront = (text: string, width: number): string => {
  if (textWidth(text) <= width) return text;
  const parts = splitGraphemes(text);
  while (parts.length > 0 && textWidth(parts.join('')) > width - 1) parts.shift();
  return `\u2026${parts.join('')}`;
};

/** Breaks a text at spaces into lines of at most `width` columns; a word that is too long is broken hard. */
export const wrap = (text: string, width: number): string[] => {
  const room = Math.max(1, width);
  const lines: string[] = [];
  for (const paragraph of text.split(/\r?\n/)) {
    let line = '';
    for (const word of paragraph.split(/[ \t]+/)) {
      const joined = line === '' ? word : `${line} ${word}`;
      if (textWidth(joined) <= room) {
        line = joined;
        continue;
      }
      if (line !== '') lines.push(line);
      line = word;
      while (textWidth(line) > room) {
        const head = beginning(line, room) || (splitGraphemes(line)[0] ?? line);
        lines.push(head);
        line = line.slice(head.length);
      }
    }
    lines.push(line);
  }
  return lines;
};
