// A step that says "undrawn" or "talk" asks for no draw and no shot: it may come before the bow was looked at.
// Words are all there is to go by: a sentence that begins with the doing, or leads up to it.

import { error } from '../../problem.ts';
import type { Path, Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import type { Content, Step } from '../../types.ts';

const DOING = '(draw(?! ((a|the|fresh|fine|new|witness) )*(weight|length|board|lines?|marks?)\\b)|pull (it|the (bow|string)) back|let (it )?down|come to (full draw|anchor)|shoot|fire|hold (it )?(drawn|at full draw))';
const LEADING = '(now|then|first|next|again|once|once more|slowly|carefully|and|or|please|you)';
/** At the head of a sentence, after words that lead up to it, or after a comma, "and" or "then". */
const ASKS = new RegExp(`^(${LEADING},? )*${DOING}\\b|^at full draw,|(,|\\band|\\bthen) (${LEADING} )*${DOING}\\b`, 'i');
/** What is said of drawing without asking for it. */
const SAID_OF_IT = /\b(never|not|nobody|no|without)\b[^,;]*\b(draw|drawn|shoot|shot|let down)\b|^(if|when|where|as|who|whoever)\b|^you (can|could|have|may)\b|\b(mean|able) to\b/i;

export function asking(content: Content, where: Where): Problem[] {
  return Object.values(content.steps).flatMap((step) => (step.pause === 'talk' || step.pause === 'undrawn' ? look(step, where) : []));
}

function look(step: Step, where: Where): Problem[] {
  const found: Problem[] = [];
  const read = (text: string, path: Path): void => {
    const asked = sentences(text).find((one) => ASKS.test(one) && !SAID_OF_IT.test(one));
    if (asked === undefined) return;
    const calm = asked.replace(/[.:;?]$/, '');
    found.push(error(where(['steps', step.id, ...path]), `"${calm}" asks for a draw or a shot, and "${step.id}" is asked ${step.pause === 'talk' ? 'in passing' : 'undrawn'}; take it out, or write pause: draw or shoot and put the step after the looks`));
  };
  read(step.short, ['short']);
  step.text.forEach((text, index) => read(text, ['text', index]));
  if (step.kind === 'chunk') {
    step.checks.forEach((check, index) => {
      read(check.label, ['checks', index, 'label']);
      read(check.how, ['checks', index, 'how']);
    });
  }
  return found;
}

const sentences = (text: string): string[] => text.split(/(?<=[.:;?]) /);
