// Lines with a little emphasis. Every screen is made of these, wrapped here and not by Ink, so that its height is known
// before it is shown. Emphasis repeats what the words say; without colour nothing is lost.

import { clean } from './clean.ts';
import { cut, textWidth, wrap } from './text-width.ts';

export type Tone = 'plain' | 'strong' | 'soft' | 'coach' | 'warn';
export interface Span { readonly text: string; readonly tone: Tone }
export type Line = readonly Span[];

export const span = (text: string, tone: Tone = 'plain'): Span => ({ text, tone });
export const BLANK: Line = [];

export const lineText = (line: Line): string => line.map((part) => part.text).join('');
export const lineWidth = (line: Line): number => textWidth(lineText(line));

/** A paragraph with a label in front; the lines after the first hang under the text. */
export const paragraph = (label: Span, text: string, width: number, tone: Tone = 'plain'): Line[] => {
  const indent = textWidth(label.text);
  return wrap(clean(text), width - indent).map((part, at) => [at === 0 ? label : span(' '.repeat(indent)), span(part, tone)]);
};

/** Several paragraphs with the same indent. */
export const paragraphs = (texts: readonly string[], indent: number, width: number, tone: Tone = 'plain'): Line[] =>
  texts.flatMap((text) => paragraph(span(' '.repeat(indent)), text, width, tone));

/** The guard of the one rule that matters: never wider than `width`, whatever came in. */
export const clip = (line: Line, width: number): Line => {
  if (lineWidth(line) <= width) return line;
  const clipped: Span[] = [];
  let left = width;
  for (const part of line) {
    const text = cut(part.text, left);
    clipped.push({ ...part, text });
    left -= textWidth(text);
    if (text !== part.text || left <= 0) break;
  }
  return clipped;
};
