// Bad input in all three faces: one clear line that says what is wrong and what to write instead, the same question again,
// nothing in the journal, no stack trace. The session behind is the real one.

import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/arguments.ts';
import { runPipe } from '../../src/screens/pipe.ts';
import { runPlain } from '../../src/screens/plain.ts';
import { input, now, sink } from './fake-session.ts';
import { QUESTIONS, sessionAt, type At, type Question } from './real-session.ts';
import { screenOn } from './screen-on.ts';

const TEAR = 'Write it like "high 1/2 left 1/8", or x and y like "-0.1 0.5" (right and high are plus).';
const MOVED = 'Answer "as told", "not now", "another", "at its end", or how far it was really moved, like 1/32 in.';
const LONG = 'x'.repeat(10_240);
const RED = '\u001b[31m60\u001b[0m';

/** What is typed, and the whole line that answers it. */
const TYPED: readonly (readonly [Question, string, string])[] = [
  ['weight', 'far too much', 'That is not a number; write it as 3 lb. It can be from 5 to 120 lb.'],
  ['weight', '-60', '-60 lb is outside 5 to 120 lb. Look again, then write it.'],
  ['weight', '1/0', 'A fraction cannot have 0 below its line. It can be from 5 to 120 lb.'],
  ['weight', '1e999', 'Write the number out in digits, like 3 lb. It can be from 5 to 120 lb.'],
  ['weight', 'NaN', 'That is not a number; write it as 3 lb. It can be from 5 to 120 lb.'],
  ['weight', '60 61', 'There is more than one number; write one, like 3 lb. It can be from 5 to 120 lb.'],
  ['weight', '1,234', 'The comma can be read two ways; write 1234 or 1.234. It can be from 5 to 120 lb.'],
  ['weight', '60 in', '"in" cannot be turned into lb; write it as 3 lb. It can be from 5 to 120 lb.'],
  ['weight', '60 stone', 'The words after the number are not a unit known here; write it as 3 lb. It can be from 5 to 120 lb.'],
  ['weight', '\u0663\u0664 \u{1f3f9}', 'That is not a number; write it as 3 lb. It can be from 5 to 120 lb.'],
  ['turns', '14', '14 turns is outside 0 to 12 turns. Look again, then write it.'],
  ['turns', 'all the way', 'That is not a number; write it as 1/2 turn. It can be from 0 to 12 turns.'],
  ['count', '5', '5 is outside 0 to 4. Look again, then write it.'],
  ['length', '13 in', '13 in is outside -4 to 12 in. Look again, then write it.'],
  ['tear', 'banana', `That is not read as a tear. ${TEAR}`],
  ['tear', '14 in', `That is not read as a tear. ${TEAR}`],
  ['tear', 'high 14', 'A tear of more than 4 in is asked again: measure from the point hole to where the slits of the vanes meet. If it truly is more: "missed".'],
  ['tear', 'high 1/2 left', `The figure for "left" is missing or not read. ${TEAR}`],
  ['tear', 'high -1/2', `Leave out the minus sign where a side is named. ${TEAR}`],
  ['tear', 'left 1/8 right 1/4', `Two figures are given for the same axis. ${TEAR}`],
  ['tear', '1/0 1/8', `That is not read as a tear. ${TEAR}`],
  ['amount', 'a bit', `That is not a number; write it as 1/32 or 1 1/8. ${MOVED}`],
  ['amount', '14 in', '14 in is more than this adjustment can move (1/2 in). Look again, then write it.'],
  ['amount', '1/0', `A fraction cannot have 0 below its line. ${MOVED}`],
];

/** What only programs and plain typing can send: on the screen these questions are picked from. */
const PICKED: readonly (readonly [Question, string, string])[] = [
  ['choice', 'both', '"both" is not among the answers. Choose one of: right, left.'],
  ['choice', '3', '"3" is not among the answers. Choose one of: right, left.'],
  ['choice', 'not known', '"not known" is no answer here. Choose one of: right, left.'],
  ['gate', 'a scratch', '"a scratch" is not among the answers. Choose one of: clean, found.'],
  ['chunk', '1, 3', 'Either all are true, or name the ones that are not.'],
  ['confirm', 'perhaps', '"perhaps" is neither yes nor no. Answer yes or no.'],
];

/** Wrong types on the pipe, as the JSON that is sent. */
const SENT: readonly (readonly [Question, string, string])[] = [
  ['weight', '1e999', 'That is not a number. It can be from 5 to 120 lb.'],
  ['weight', 'true', '"true" is not a number. It can be from 5 to 120 lb.'],
  ['weight', '[60]', '"[60]" is not a number. It can be from 5 to 120 lb.'],
  ['weight', 'null', 'Nothing was entered. Write a number from 5 to 120 lb.'],
  ['weight', '{"value":60,"unit":"stone"}', '"stone" is not a unit known here. It can be from 5 to 120 lb.'],
  ['weight', '{"value":60,"unit":"in"}', '"in" cannot be turned into lb. It can be from 5 to 120 lb.'],
  ['choice', '["right","left"]', 'Only one can be chosen. Choose one of: right, left.'],
  ['choice', '[]', 'Nothing was chosen. Choose one of: right, left.'],
  ['choice', '{"x":1}', '"{"x":1}" is not among the answers. Choose one of: right, left.'],
  ['chunk', '[["range-lane"]]', '"["range-lane"]" is not among the answers. Choose from: '],
  ['confirm', '1', '"1" is neither yes nor no. Answer yes or no.'],
  ['text', '7', 'Write it as plain text.'],
  ['text', '"Joe"', 'Write who released the bow, when, and what was found.'],
  ['text', '"the dealer said \\u202ecool on this very day"', 'That has control characters in it. Write plain text.'],
  ['tear', '5', `A shot needs two figures. ${TEAR}`],
  ['tear', '{"x":0.1}', `A shot needs x and y. ${TEAR}`],
  ['tear', '{"x":"wide","y":0}', `x and y must be numbers in inches. ${TEAR}`],
  ['tear', '{"x":1e999,"y":0}', `x and y must be numbers in inches. ${TEAR}`],
  ['tear', '{"x":0,"y":14}', 'A tear of more than 4 in is asked again: '],
  ['tear', '{"x":0,"y":0,"called":"odd"}', 'A shot is called "good" or "bad".'],
  ['tear', `[${Array.from({ length: 500 }, () => '{"x":0,"y":0.5}').join(',')}]`, 'That is 500 shots; at most 12 are taken at once. Write one set at a time.'],
  ['tear', '[{"x":0,"y":0.5},{"x":0,"y":9}]', 'A tear of more than 4 in is asked again: '],
  ['amount', '{"value":"some"}', `That is not a number; write it as 1/32 or 1 1/8. ${MOVED}`],
];

const clear = (message: string): void => {
  expect(message).toMatch(/^["A-Z0-9x-][^\n]*[.]$/);
  expect(message.length).toBeLessThan(260);
  expect(message).not.toMatch(/\bat .*:\d+|undefined|\[object|Error|[\u0000-\u001f]/);
};

/** Nothing was written, and the very question stands. */
function untouched({ session, store, ask }: At, kept: number): void {
  expect(store.facts).toHaveLength(kept);
  expect(session.view().ask).toEqual(ask);
}

async function pipe(at: At, line: string): Promise<Record<string, unknown>> {
  const output = sink();
  await runPipe(at.session, { input: input(`${line}\n`), output, now });
  const lines = output.lines().map((text) => JSON.parse(text) as Record<string, unknown>);
  expect(lines.map(({ type }) => type)).toEqual(['ask', 'error', 'left'].map((type) => (type === 'ask' ? at.session.view().type : type)));
  return lines[1] ?? {};
}

async function plain(at: At, line: string): Promise<string> {
  const output = sink();
  await runPlain(at.session, { input: input(`${line}\n`), output, now, echo: false });
  return output.text().split('> ').slice(1).join('> ');
}

describe('the pipe', () => {
  it.each([...TYPED, ...PICKED].map((row) => [row[0], JSON.stringify(row[1]), row[2]] as const).concat(SENT.map((row) => [row[0], row[1], row[2]] as const)))('%s: %.60s', async (question, json, message) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    const line = await pipe(at, `{"answer":${json}}`);
    expect(String(line['message'])).toContain(message);
    clear(String(line['message']));
    expect(line['ask']).toMatchObject({ about: QUESTIONS[question] });
    untouched(at, kept);
  });

  it.each([['a bare word', 'heavy'], ['NaN', '{"answer":NaN}'], ['half a line', '{"answer":'], ['an unknown request', '{"reply":60}'], ['escape codes', RED]])('%s is no request', async (_name, line) => {
    const at = sessionAt('weight');
    const kept = at.store.facts.length;
    clear(String((await pipe(at, line))['message']).replace('"..."}', '"..."'));
    untouched(at, kept);
  });
});

describe('the plain face', () => {
  it.each([...TYPED, ...PICKED])('%s: %s', async (question, typed, message) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    const text = await plain(at, typed);
    // Numbered answers follow at once, so the names that programs use are left out.
    const told = message.replace(/ Choose one of: .*/, '');
    expect(text.split('\n')[0]).toBe(`not taken: ${told}`);
    expect(text.match(/not taken:/g)).toHaveLength(1);
    expect(text.split('\n')).toContain(at.ask.short);
    expect(text).not.toMatch(/ {4}at /);
    untouched(at, kept);
  });

  it.each(Object.keys(QUESTIONS) as Question[])('%s: an empty line, 10 kB of text, and escape codes', async (question) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    expect((await plain(at, '')).split('\n')[0]).toBe('not taken: Nothing was typed. "help" lists what can be typed.');
    expect((await plain(at, LONG)).split('\n')[0]).toBe('not taken: That is 10240 characters; at most 2000 can be kept. Write it shorter.');
    const red = await plain(at, RED);
    expect(red.split('\n')[0]).toBe('not taken: That has control characters in it. Write plain text.');
    expect(red).not.toContain('\u001b');
    untouched(at, kept);
  });
});

describe('the screen', () => {
  // Where a number is typed, n as the first letter opens a note.
  it.each(TYPED.filter(([, typed]) => !typed.startsWith('N')))('%s: %s', (question, typed, message) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    const screen = screenOn(at.session);
    if (question === 'tear') screen.press('g');
    // "Another amount" opens the line to type on.
    if (question === 'amount') screen.press('2', '\r');
    screen.press(typed, '\r');
    expect(screen.mistakes).toEqual([]);
    expect(screen.message()).toBe(message);
    expect(screen.words()).toContain(`! ${message.slice(0, 60)}`);
    // What was typed stands to be mended, and so does the question (a called shot was read, and makes way for the sheet).
    expect(screen.words()).toContain(`> ${typed.normalize('NFC')}`);
    if (question !== 'tear') expect(screen.words()).toContain(at.ask.short);
    untouched(at, kept);
  });

  it.each(Object.keys(QUESTIONS) as Question[])('%s: Enter on nothing, a paste of 10 kB, escape codes', (question) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    const screen = screenOn(at.session);
    // Where something is preselected Enter takes it, so it is left out there; nothing that passes a gate ever is.
    if (!['choice', 'amount'].includes(question)) screen.press('\r');
    screen.press(`\u001b[200~${LONG}\u001b[201~`);
    screen.press('\u001b[31m');
    expect(screen.mistakes).toEqual([]);
    expect(screen.words()).toContain(at.ask.short);
    expect(screen.words()).not.toMatch(/\u001b|x{200}/);
    untouched(at, kept);
  });
});

describe('the screen, where a letter is a key', () => {
  it('keeps no note of who types "not known" in place of its key', () => {
    const at = sessionAt('weight');
    const kept = at.store.facts.length;
    const screen = screenOn(at.session);
    screen.press(...'not known', '\r');
    expect(screen.message()).toBe('this is a note: for "not known" press Esc, then u');
    untouched(at, kept);
  });
});

describe('a stop word', () => {
  it.each(['weight', 'tear', 'amount', 'choice'] as const)('is heard where a %s was asked for, and stops the walk', async (question) => {
    const at = sessionAt(question);
    const kept = at.store.facts.length;
    await plain(at, 'there is a crack in the limb');
    expect(at.session.view()).toMatchObject({ type: 'stop', ask: { about: 'what-happened' } });
    expect(at.store.facts).toHaveLength(kept + 1);
  });
});

describe('options of the program', () => {
  it.each([
    [['new', '--colour'], 'Unknown option \'--colour\'. "quarterturn --help" lists what there is.'],
    [['tune'], 'There is no command "tune". The commands are new, resume, list, record, practice. "quarterturn --help" lists what there is.'],
    [['--pipe', '--plain'], '--pipe and --plain do not go together: choose one. "quarterturn --help" lists what there is.'],
  ])('that are not known are told in one line: %j', (args, message) => {
    expect(() => readArguments(args)).toThrow(message);
  });
});
