// A view as plain lines: no escape codes, no columns, one thought a line, so that a screen reader reads it in order.

import { formatInches, formatQuantity } from '../maths/fractions.ts';
import type { Unit } from '../maths/units.ts';
import type { Advice, Ask, BowRecord, HistoryEntry, PaperPicture, Tear, View } from '../machine/types.ts';
import { clean } from './clean.ts';
import { saidUnit } from './words.ts';

/** A tear or an impact in the words that are also taken as an answer: high 1/2, left 1/8. */
export function tearWords({ x, y }: Tear, finest = 32): string {
  const up = formatInches(Math.abs(y), finest);
  const side = formatInches(Math.abs(x), finest);
  const words = [...(up === '0' ? [] : [`${y > 0 ? 'high' : 'low'} ${up}`]), ...(side === '0' ? [] : [`${x > 0 ? 'right' : 'left'} ${side}`])];
  return words.join(', ') || 'clean';
}

export function whereLine({ where }: View): string {
  const part = where.part === '' ? where.title : `${where.title}, ${where.part}`;
  return clean(`== ${part}. Day ${where.day}, ${where.shots} ${where.shots === 1 ? 'shot' : 'shots'}.`);
}

const shotInWords = (shot: PaperPicture['shots'][number]): string => `${tearWords(shot)}${shot.counted ? '' : ' (called bad, not counted)'}`;

/** While a set is being shot: how the last tear was understood, and where the set stands. */
export function takenLines({ shots, mean }: PaperPicture): string[] {
  const last = shots.at(-1);
  if (last === undefined) return [];
  const counted = shots.filter((shot) => shot.counted).length;
  return [`  taken: ${shotInWords(last)}${mean ? `; on average of ${counted} at this setting: ${tearWords(mean)}` : ''}`];
}

/** The tears of a picture in words. */
export function pictureLines({ shots, mean, likely }: PaperPicture): string[] {
  if (shots.length === 0) return [];
  const each = shots.map(shotInWords);
  const middle = mean ? [`  on average: ${tearWords(mean)}${likely ? `; likely within ${formatInches(likely.y, 32)} up and down and ${formatInches(likely.x, 32)} sideways of that` : ''}`] : [];
  return [`  tears at this setting, in inches: ${each.join('; ')}`, ...middle];
}

/** `says`: what the question says itself, and so is not told here. */
export function adviceLines(advice: Advice, says: readonly string[] = []): string[] {
  const { what, why, expect, wrongIf, undo, press, caution } = advice;
  return [
    `next: ${what}`,
    ...caution.map((text) => `  caution: ${text}`),
    ...(says.includes(why) ? [] : [`  why: ${why}`]),
    // What would prove it wrong says what to expect as well, in the coach's own figures.
    ...(expect && !wrongIf ? [`  expect: ${tearWords(expect)}, give or take ${formatInches(expect.sdY, 32)} up and down and ${formatInches(expect.sdX, 32)} sideways`] : []),
    ...(wrongIf ? [`  what would prove it wrong: ${wrongIf}`] : []),
    ...(undo && advice.kind !== 'put-back' ? [`  to put it back: ${undo}`] : []),
    ...(press ? ['  this needs a bow press'] : []),
  ].map(clean);
}

/** Where every value is a whole number the value itself is what is typed, or "3" could mean two things. */
const numberOf = (ask: Extract<Ask, { kind: 'choice' }>, at: number): string => {
  const own = ask.options.every(({ value }) => /^\d+$/.test(value));
  return own ? (ask.options[at]?.value ?? '') : String(at + 1);
};

const inUnit = (unit: Unit): string => (saidUnit(unit) === '' ? '' : `, in ${saidUnit(unit)}`);

function howLine(ask: Ask, form: 'full' | 'short'): string {
  const more = ask.unknown ? ', or "not known"' : '';
  switch (ask.kind) {
    case 'choice': if (ask.many && ask.options[0]?.pass) return form === 'full' && ask.text.some((text) => text.includes('NOT true'))
      ? `Type 1, or the other numbers with commas between${more}.`
      : `Type 1 when all of it is true. Else type the numbers of what is NOT true or not known, with commas between${more}.`;
      return `Type ${ask.many ? 'one or more numbers, with commas between' : 'a number'}, or the words${more}.`;
    case 'number': return `Type a number from ${ask.min} to ${ask.max}${inUnit(ask.unit)}${more}.`;
    case 'confirm': return `Type yes or no${more}.`;
    case 'text': return `Type a few words${more}.`;
    case 'amount': return `Type "as told", or how much it was, like ${ask.unit === 'in' ? '1/32' : `1/2 ${ask.unit}`}, or "not now"${more}.`;
    default: if (ask.shots.taken > 0) return `Type the tear; "bad" before it if you called it bad; or "missed"${more}.`;
      return `Type it like "high 1/2 left 1/8", or "clean", or x and y like "-0.1 0.5". Called bad before you looked: "bad high 1/2". No hole: "missed"${more}.`;
  }
}

function shotLine(ask: Ask): string[] {
  if (ask.kind !== 'tear' && ask.kind !== 'impact') return [];
  // The question says the distance and the count; only what is out of the usual is told besides.
  const special = [
    ...(ask.arrow === null ? [] : [`arrow ${ask.arrow}`]),
    ...(ask.shaft === 'fletched' ? [] : [ask.shaft]),
    ...(ask.head === 'field' ? [] : [ask.head]),
    ...(ask.nockTurn === 0 ? [] : [`nock turned by ${ask.nockTurn}`]),
  ];
  return special.length === 0 ? [] : [`shot with: ${special.join(', ')}`];
}

/** The question with its cautions first, and last what may be typed. A correction comes before all. */
export function askLines(ask: Ask, form: 'full' | 'short'): string[] {
  const options = ask.kind === 'choice' ? ask.options.map(({ label }, at) => `  ${numberOf(ask, at)}. ${label}`) : [];
  return [
    ...(ask.correcting === undefined ? [] : ['You are correcting an earlier answer; the bow does not move by this. "keep" leaves it as it was.']),
    ...ask.caution.map((text) => `caution: ${text}`),
    ask.short, ...(form === 'full' ? ask.text.filter((text) => text !== ask.short) : []),
    ...shotLine(ask), ...options,
    ...(ask.suggestion ? [`Your answer before: ${suggested(ask)}. Type it again if it still holds.`] : []),
    howLine(ask, form),
  ].map(clean);
}

function suggested(ask: Ask): string {
  const { suggestion } = ask;
  switch (suggestion?.kind) {
    case 'choice': return suggestion.values.map((value) => (ask.kind === 'choice' ? ask.options.find((option) => option.value === value)?.label : undefined) ?? value).join(', ');
    case 'number': return formatQuantity({ value: suggestion.value, unit: ask.kind === 'number' ? ask.unit : 'count' });
    case 'confirm': return suggestion.value ? 'yes' : 'no';
    case 'text': return suggestion.value;
    case 'moved': return typeof suggestion.moved === 'string' ? suggestion.moved : formatQuantity(suggestion.moved);
    case 'shots': return suggestion.shots.map((shot) => ('missed' in shot ? 'missed' : `${shot.called === 'bad' ? 'bad ' : ''}${tearWords(shot)}`)).join('; ');
    default: return 'not known';
  }
}

export const sayLines = (view: View): string[] => view.say.map((text) => clean(`coach: ${text}`));

export function historyLines(entries: readonly HistoryEntry[]): string[] {
  if (entries.length === 0) return ['Nothing is in the history yet.'];
  const lines = entries.map(({ seq, what, came, back }) =>
    clean(`  ${seq}. ${what}${came ? `; it came to: ${came}` : ''}${back === null ? '' : ` (bring the bow back to this with: put back ${back.to})`}`));
  return ['history, oldest first', ...lines];
}

export function recordLines(record: BowRecord): string[] {
  return [
    record.title, ...(record.invented ? ['(an invented bow, for practice)'] : []),
    ...record.sections.flatMap(({ title, rows }) => [`== ${title}`, ...rows.map(({ name, value }) => `  ${name}: ${value}`)]),
  ].map(clean);
}

/** Why it is asked, and the words of the trade that the question uses. */
export function whyLines(ask: Ask, glossary: Readonly<Record<string, string>>): string[] {
  const text = [ask.short, ...ask.text, ...ask.why].join(' ').toLowerCase();
  const used = Object.entries(glossary).filter(([word]) => hasWord(text, word.toLowerCase()));
  return [...ask.why, ...used.map(([word, meaning]) => `${word}: ${meaning}`)].map(clean);
}

/** Whether the word stands in the text at the start of a word: "tear" is in "tears", not in "yoke" or "forty". */
function hasWord(text: string, word: string): boolean {
  for (let at = text.indexOf(word); at !== -1; at = text.indexOf(word, at + 1)) {
    if (at === 0 || !/\p{L}/u.test(text[at - 1] ?? '')) return true;
  }
  return false;
}
