// Adjustments and ladders: whose hands, what is known before, what is asked after, and which comes first.

import { error } from '../../problem.ts';
import type { Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import { AXES } from '../../types.ts';
import type { Content, Knob, LadderRule } from '../../types.ts';
import type { Book, KnobRow } from '../book/shape.ts';
import { words } from './book-words.ts';

export function adjusting(content: Content, where: Where, book: Book): Problem[] {
  return [
    ...Object.values(content.knobs).flatMap((knob) => adjustment(knob, book.knobs[knob.id], where)),
    ...content.ladders.flatMap((rule, index) => ladder(rule, index, content, where, book)),
    ...lastRules(content, where),
  ];
}

function adjustment(knob: Knob, row: KnobRow, where: Where): Problem[] {
  const found: Problem[] = [];
  const tell = (key: string, text: string): void => { found.push(error(where(['knobs', knob.id, key]), text)); };
  if (row.press && !knob.press) tell('press', `"${knob.id}" is work in a press; write press: true`);
  if (knob.from !== row.from) tell('from', `"${knob.id}" is counted from ${knob.from}; its limits are meant from ${row.from}: write from: ${row.from}`);
  if (knob.trigger !== row.trigger) tell('trigger', `after "${knob.id}" the list "${knob.trigger}" is asked; write trigger: ${row.trigger}`);
  if (knob.alternative !== null && knob.alternative !== row.instead) {
    tell('alternative', `"${knob.alternative}" is not as good as "${knob.id}" for any bow; ${row.instead === undefined ? 'take alternative out' : `write alternative: ${row.instead}`}`);
  }
  for (const caution of words(row.cautions)) {
    // Of a press that is called one, safety.ts tells it.
    if (!knob.cautions.includes(caution) && !(caution === 'press' && knob.press)) tell('cautions', `the adjustment "${knob.id}" lacks the caution "${caution}"; write it into cautions`);
  }
  for (const need of words(row.needs)) {
    if (!knob.needs.includes(need)) tell('needs', `"${knob.id}" is advised without "${need}"; write it into needs: it is asked first`);
  }
  const told = knob.how.join(' ');
  for (const says of row.says) {
    if (!says.test(told)) tell('how', `how to move "${knob.id}" does not say "${plain(says)}"; write it`);
  }
  return found;
}

/** A pattern of the book as an author may read it. */
export const plain = (pattern: RegExp): string => pattern.source.replaceAll('\\', '');

function ladder(rule: LadderRule, index: number, content: Content, where: Where, book: Book): Problem[] {
  const ids = rule.rungs.map((one) => one.knob);
  return rule.rungs.flatMap((rung, at) => {
    const found: Problem[] = [];
    const tell = (key: string | null, text: string): void => {
      found.push(error(where(['ladders', index, 'rungs', at, ...(key === null ? [] : [key])]), text));
    };
    const row = book.knobs[rung.knob];
    const knob = content.knobs[rung.knob];
    // limits.ts tells of a rung for the other axis, and of one beyond the hard limit.
    if (knob.axis !== rule.axis) return [];
    const cams = words(row.cams);
    const fits = cams.includes('any') || (rule.cams !== 'any' && rule.cams.every((one) => cams.includes(one)));
    if (cams.length === 0) tell('knob', `"${rung.knob}" is no rung of a ladder: it has a reason of its own, or is left to a shop; take it out`);
    else if (!fits) tell('knob', `"${rung.knob}" is for ${cams.join(' and ')} only, and this ladder is for others too; take it out or write cams: [${cams.join(', ')}]`);
    if (row.press && (rule.press === 'any' || rule.press.some((one) => one !== 'trained'))) {
      tell('knob', `"${rung.knob}" is work in a press, and this ladder is not for trained hands alone; write press: [trained]`);
    }
    for (const first of words(row.after)) {
      if (ids.findIndex((id) => id === first) > at) tell('knob', `"${rung.knob}" stands before "${first}"; put it after`);
    }
    const reach = rung.soft ?? knob.soft;
    if (reach > knob.soft && reach <= knob.hard) tell('soft', `soft ${reach} of this rung is more than soft ${knob.soft} of "${rung.knob}"; write at most that`);
    for (const [other, most] of Object.entries(row.beside ?? {})) {
      if (ids.some((id) => id === other) && reach > most) tell('soft', `beside "${other}" the ${rung.knob} goes at most ${most}, to finish; write soft: ${most}`);
    }
    return found;
  });
}

/** Which cams a bow has may not be known: the walk must have a ladder for it all the same. */
function lastRules(content: Content, where: Where): Problem[] {
  return AXES.flatMap((axis) => {
    const rules = content.ladders.map((rule, index) => ({ rule, index })).filter(({ rule }) => rule.axis === axis);
    const last = rules.at(-1);
    if (last?.rule.cams === 'any' && last.rule.press === 'any') return [];
    return [error(where(last === undefined ? ['ladders'] : ['ladders', last.index]), `no ladder for ${axis} fits every bow; write one with cams: any and press: any after the others`)];
  });
}
