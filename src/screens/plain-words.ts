// A view as plain lines: no escape codes, no columns, one thought a line, so that a screen reader reads it in order.

import { formatInches, formatQuantity } from '../maths/fractions.ts';
import type { Unit } from '../maths/units.ts';
import type { Advice, AnswerEntry, Ask, BowRecord, HistoryEntry, View } from '../machine/types.ts';
import { clean } from './clean.ts';
import { PUT_BACK } from './options.ts';
import { answerWords } from './pages.ts';
import { tearWords } from './plain-pictures.ts';
import { KNOB_WORDS, ledgerWords, saidUnit, shotWords } from './words.ts';

export function whereLine({ where, practice }: View): string {
  const part = where.part === '' ? where.title : `${where.title}, ${where.part}`;
  return clean(`== ${practice === undefined ? '' : 'PRACTICE. '}${part}. Day ${where.day}, ${where.shots} ${where.shots === 1 ? 'shot' : 'shots'}.`);
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
    case 'amount': return `${amountLine(ask)}${ask.practice === true ? ' "say as told" says it and turns nothing.' : ''}`;
    case 'impact': if (ask.shots.taken > 0) return `Type where it landed, in inches from its own dot; "bad" before it if you called it bad; or "missed"${more}.`;
      return `Type it like "high 3 left 1 1/2", in inches from its own dot, or "on the dot", or x and y like "-1.5 3". Called bad before you looked: "bad high 3". Off the target: "missed"${more}.`;
    case 'tear': if (ask.shots.taken > 0) return `Type the tear; "bad" before it if you called it bad; or "missed"${more}.`;
      return `Type it like "high 1/2 left 1/8", or "clean", or x and y like "-0.1 0.5". Called bad before you looked: "bad high 1/2". No hole: "missed"${more}.`;
  }
}

function amountLine({ unit, max, step }: Extract<Ask, { kind: 'amount' }>): string {
  const counted = unit === 'count';
  const amount = counted ? (max <= 1 ? '' : ', or by how many vanes it was turned, like 1') : `, or how much it was, like ${AMOUNT_LIKE[unit] ?? `1/2 ${saidUnit(unit)}`}`;
  const other = step === PUT_BACK ? ', or "not now"' : ', or "not now", or "another" for another adjustment, if one is as right';
  const end = step === PUT_BACK || counted ? '' : ', or "at its end" where it goes no further';
  return `Type "as told"${amount}${other}${end}.`;
}

/** Amounts as they may be typed, by unit: those of the adjustments that have it. */
const AMOUNT_LIKE: Partial<Record<Unit, string>> = {
  'in': KNOB_WORDS['rest-height'].like, 'turn': KNOB_WORDS['cam-screw'].like, 'half-twist': KNOB_WORDS['cam-sync'].like,
  'half-twist-pair': KNOB_WORDS.yoke.like, 'size': KNOB_WORDS['cam-spacers'].like, 'gr': KNOB_WORDS['point-weight'].like,
};

function shotLine(ask: Ask): string[] {
  if (ask.kind !== 'tear' && ask.kind !== 'impact') return [];
  // The question says the distance and the count at paper; only what is out of the usual is told besides.
  const special = shotWords(ask);
  return special.length === 0 ? [] : [`shoot: ${special.join(', ')}`];
}

/** Said last before what may be typed: on a low terminal a long question would push them out of sight. */
export const cautionLines = (ask: Ask | null): string[] => (ask?.caution ?? []).map((text) => clean(`caution: ${text}`));

/** The question, what is `seen` of it, its cautions, and last what may be typed: `how`, where that is not as usual. A correction comes before all. */
export function askLines(ask: Ask, form: 'full' | 'short', { seen = [], how }: { readonly seen?: readonly string[]; readonly how?: string } = {}): string[] {
  const options = ask.kind === 'choice' ? ask.options.map(({ label }, at) => `  ${numberOf(ask, at)}. ${label}`) : [];
  return [
    ...(ask.correcting === undefined ? [] : ['You are correcting an earlier answer; the bow does not move by this. "keep" leaves it as it was.']),
    ask.short, ...(form === 'full' ? ask.text.filter((text) => text !== ask.short) : []),
    ...shotLine(ask), ...seen, ...options,
    ...(ask.suggestion ? [`Your answer before: ${suggested(ask)}. Type it again if it still holds.`] : []),
    ...cautionLines(ask),
    how ?? howLine(ask, form),
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
    case 'shots': return suggestion.shots.map((shot) => ('missed' in shot ? 'missed' : `${shot.called === 'bad' ? 'bad ' : ''}${tearWords(shot, ask.kind === 'impact' ? 'on the dot' : 'clean')}`)).join('; ');
    case 'not known': case undefined: return 'not known';
  }
}

export const sayLines = (view: View): string[] => view.say.map((text) => clean(`coach: ${text}`));

/** Every point the bow was at, by the number that "put back" takes. */
export function historyLines(entries: readonly HistoryEntry[]): string[] {
  if (entries.length === 0) return ['Nothing was done to the bow yet.'];
  const lines = entries.map(({ seq, what, came, bow, back }) => {
    const set = ledgerWords(bow);
    const there = back === null ? ' The bow stands there.' : '';
    return clean(`  ${seq}. ${what}${came ? `; shots there: ${came}` : ''}. The bow then: ${set.length === 0 ? 'as it was found' : set.join('; ')}.${there}`);
  });
  return [
    'Every point the bow was at, oldest first.', ...lines,
    ...(entries.some(({ back }) => back !== null) ? ['To bring the bow back to one of them, type: put back, and its number. What is to be undone is told first.'] : []),
  ];
}

/** What must be undone to come back to a point, in order. */
export const stepsLines = ({ what }: HistoryEntry, steps: readonly string[]): string[] => [
  `Back to this point: ${what}. To be put back, in this order:`, ...steps.map((step, at) => `  ${at + 1}. ${step}`),
].map(clean);

/** All answers, by the number that "change" takes. */
export function answersLines(entries: readonly AnswerEntry[]): string[] {
  if (entries.length === 0) return ['Nothing was answered yet.'];
  return [
    'All your answers, oldest first.',
    ...entries.map((entry) => clean(`  ${entry.seq}. ${answerWords(entry)}${entry.change === true ? '' : ` (not to be changed: ${entry.change})`}`)),
    ...(entries.some(({ change }) => change === true) ? ['To change one of them, type: change, and its number. The bow is not touched.'] : []),
  ];
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
