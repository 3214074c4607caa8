import { describe, expect, it } from 'vitest';
import type { Ask, Picture, ShotAnswer } from '../../src/machine/types.ts';
import { clean } from '../../src/screens/clean.ts';
import { runPlain } from '../../src/screens/plain.ts';
import { readCommand } from '../../src/screens/plain-commands.ts';
import { pictureLines, takenLines, tearWords } from '../../src/screens/plain-pictures.ts';
import { adviceLines, askLines, whyLines } from '../../src/screens/plain-words.ts';
import { ADVICE, ASKS, fakeSession, input, now, sink, type FakeSession } from './fake-session.ts';

async function talk(session: FakeSession, typed: string, options: { echo?: boolean; notices?: string[] } = {}): Promise<string> {
  const output = sink();
  await runPlain(session, { input: input(typed), output, now, echo: options.echo ?? true, notices: options.notices ?? [] });
  return output.text();
}

describe('the plain face', () => {
  it('tells where we are, the coach, the question, the numbered answers and a prompt', async () => {
    const text = await talk(fakeSession([ASKS.choice]), '');
    expect(text).toContain('== paper, up and down. Day 1, 4 shots.\ncoach: Line 1 was taken.\n\nWhich?\nWhich is it?\n  1. Right hand\n  2. Left hand\n');
    expect(text).toContain('Type a number, or the words, or "not known".\n> ');
  });

  it('says the place once, not with every question', async () => {
    const text = await talk(fakeSession([ASKS.choice, ASKS.number]), 'right\n');
    expect(text.match(/== paper/g)).toHaveLength(1);
  });

  it('hands on what was typed and leaves the reading to the session', async () => {
    const session = fakeSession([ASKS.choice, ASKS.number, ASKS.tear, ASKS.tear, ASKS.amount]);
    await talk(session, '2\n60,5 lb\nhigh 1/2 left 1/8\nbad 0.1 0.5\nas told\n');
    expect(session.intents.map((intent) => (intent.kind === 'answer' ? intent.answer : intent.kind))).toEqual(['2', '60,5 lb', 'high 1/2 left 1/8', 'bad 0.1 0.5', 'as told']);
  });

  it('shows advice with its reason, what to expect and the way back, once', async () => {
    const text = await talk(fakeSession([ASKS.amount]), 'wrong\n');
    expect(text.match(/next: REST UP 1\/32 in/g)).toHaveLength(1);
    expect(text).toContain('  caution: Let down first.\n  why: The tail is high.\n  what would prove it wrong: the tail is above 0.35\n  to put it back: REST DOWN 1/32 in\n');
  });

  it('tells no reason that the question tells itself', () => {
    expect(adviceLines(ADVICE, [ADVICE.why]).join('\n')).not.toContain(ADVICE.why);
    expect(adviceLines(ADVICE, ['Another.']).join('\n')).toContain(`why: ${ADVICE.why}`);
  });

  it('tells no way back from a put-back', () => {
    expect(adviceLines({ ...ADVICE, kind: 'put-back' }).join('\n')).not.toContain('to put it back');
  });

  it('tells how each tear was taken, and all of them when the set is done', () => {
    const picture = { kind: 'paper' as const, shots: [{ x: 0, y: 0.5, counted: true }, { x: -0.125, y: 0.25, counted: true }, { x: 0, y: 1, counted: false }], mean: { x: -0.0625, y: 0.375 }, likely: { x: 0.125, y: 0.125 } };
    const taken = (shot: ShotAnswer, shown: Picture) => takenLines(ASKS.tear, { kind: 'shots', shots: [shot] }, shown);
    expect(taken({ x: 0, y: 1, called: 'bad' }, picture)).toEqual(['  taken: high 1 (called bad, not counted); on average of 2 at this setting: high 3/8, left 1/16']);
    expect(taken({ x: 0, y: 0.5 }, { kind: 'paper', shots: picture.shots.slice(0, 1) })).toEqual(['  taken: high 1/2']);
    expect(taken({ missed: true }, picture)).toEqual(['  taken: missed, and not counted']);
    expect(pictureLines(picture)[0]).toBe('  tears at this setting, in inches: high 1/2; high 1/4, left 1/8; high 1 (called bad, not counted)');
  });

  it('says in figures what to expect, where nothing else does', () => {
    const { wrongIf: _left, ...advice } = ADVICE;
    expect(adviceLines(advice)).toContain('  expect: high 3/16, right 3/32, give or take 3/32 up and down and 3/32 sideways');
  });

  it('says that checks are picked when they are not true', () => {
    const chunk: Ask = { ...ASKS.many, options: [{ value: 'all true', label: 'All true', pass: true }, { value: 'a', label: 'Tight' }] };
    expect(askLines({ ...chunk, text: ['Pick each that is NOT true.'] }, 'full').at(-1)).toBe('Type 1, or the other numbers with commas between.');
    expect(askLines({ ...chunk, text: ['Pick each that is NOT true.'] }, 'short').at(-1)).toContain('NOT true or not known');
    expect(askLines(chunk, 'short').at(-1)).toContain('Type 1 when all of it is true. Else type the numbers of what is NOT true or not known');
    expect(askLines(ASKS.many, 'short').at(-1)).toBe('Type one or more numbers, with commas between, or the words.');
  });

  it('tells a mistake in one line and asks again', async () => {
    const text = await talk(fakeSession([ASKS.choice]), 'wrong\nright\n');
    expect(text).toContain('> wrong\nnot taken: That is not one of the options.\n\nWhich?\n  1. Right hand\n');
    expect(text).toContain('The tune is finished, and kept.');
  });

  it('tells a full disk in one line and goes on', async () => {
    const text = await talk(fakeSession([ASKS.choice]), 'full disk\nright\n');
    expect(text).toContain('not taken: The disk is full; nothing was taken.');
    expect(text).toContain('The tune is finished');
  });

  it('knows its commands', async () => {
    const session = fakeSession([ASKS.choice]);
    const text = await talk(session, 'why\nhistory\nhelp\nagain\nnote windy today\nback\nkeep\nput back 7\nchanged string new one\nmoved rest height up 1/32 in\nstop limb crack\n');
    expect(text).toContain('Because it matters.');
    expect(text).toContain('7. REST UP 1/32 in; shots there: better. The bow then: as it was found.');
    expect(text).toContain('To bring the bow back to one of them, type: put back, and its number.');
    expect(text).toContain('> put back 7\nBack to this point: REST UP 1/32 in. To be put back, in this order:\n  1. REST DOWN 1/32 in\n');
    expect(text).toContain('noted.');
    expect(text).toContain('coach: The walk is stopped.');
    expect(session.intents).toEqual([
      { kind: 'note', note: 'windy today' }, { kind: 'back' }, { kind: 'keep' }, { kind: 'putBack', to: 7 },
      { kind: 'changed', what: 'string', note: 'new one' }, { kind: 'moved', knob: 'rest-height', direction: 'up', amount: '1/32 in' },
      { kind: 'stop', words: 'limb crack' },
    ]);
  });

  it('leaves on quit and takes nothing more', async () => {
    const session = fakeSession([ASKS.choice]);
    const text = await talk(session, 'quit\nright\n');
    expect(text.trimEnd()).toMatch(/Everything is kept\. Start quarterturn again to go on\.$/);
    expect(session.intents).toEqual([]);
  });

  it('leaves quietly when the input ends, also in the middle of a line', async () => {
    const session = fakeSession([ASKS.choice, ASKS.number]);
    const text = await talk(session, 'right');
    expect(session.intents).toHaveLength(1);
    expect(text.trimEnd()).toMatch(/The input has ended\. Everything is kept\.$/);
  });

  it('ends with the record', async () => {
    const text = await talk(fakeSession([ASKS.choice]), 'right\n');
    expect(text).toContain('Bow record\n== Settings\n  rest: 1/32 in up\nThe tune is finished, and kept.\n');
  });

  it('writes no control character, whatever is typed', async () => {
    const evil = '\u001b[31mred\u001b]0;title\u0007 \u202eback\u0000\n';
    const text = await talk(fakeSession([ASKS.choice]), evil, { notices: ['a \u001b[2Jnotice'] });
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
    expect(text).toContain('> red back\n');
    expect(text).toContain('a notice');
  });

  it('does not repeat what a terminal shows by itself', async () => {
    const text = await talk(fakeSession([ASKS.choice]), 'right\n', { echo: false });
    expect(text).not.toContain('> right');
  });

  it('survives a line that is too long and bytes that are no text', async () => {
    const session = fakeSession([ASKS.choice]);
    const text = await talk(session, `${'x'.repeat(70_000)}\nright\n`);
    expect(text).toContain('not taken: That line is longer than 65536 bytes.');
    expect(session.intents).toHaveLength(1);
  });

  it('says the cautions again after whatever was looked up', async () => {
    for (const looked of ['why', 'history', 'answers', 'help']) {
      const text = await talk(fakeSession([ASKS.number]), `${looked}\n`);
      expect([looked, text.split('caution: Mind your fingers.').length]).toEqual([looked, 3]);
    }
  });

  it('teaches on an empty line', async () => {
    expect(await talk(fakeSession([ASKS.choice]), '\n')).toContain('not taken: Nothing was typed. "help" lists what can be typed.');
  });
});

describe('the history and the review, typed', () => {
  const withBook = (): FakeSession => ({
    ...fakeSession([ASKS.choice, ASKS.number]),
    history: () => [
      { seq: 0, time: '', what: 'as found', came: '0.74 in high', bow: {}, back: { to: 7, steps: ['REST RIGHT 1/32 in', 'REST DOWN 1/16 in'] } },
      { seq: 7, time: '', what: 'REST UP 1/16 in', bow: { 'rest-height': { value: 1 / 16, unit: 'in' }, 'rest-side': { value: -1 / 32, unit: 'in' } }, back: null },
    ],
    answers: () => [{ seq: 3, question: 'Which hand?', answer: 'left', change: true }, { seq: 4, question: 'Shot', answer: 'missed', change: 'it counts no more' }],
  });

  it('list every point with its setting, and tell the steps before the first one of them is asked', async () => {
    const session = withBook();
    const text = await talk(session, 'history\nput back 0\nput back 7\nput back 3\n');
    expect(text).toContain('  0. as found; shots there: 0.74 in high. The bow then: as it was found.\n');
    expect(text).toContain('  7. REST UP 1/16 in. The bow then: the rest, up and down: 1/16 in up; the rest, sideways: 1/32 in to the left. The bow stands there.\n');
    expect(text).toContain('> put back 0\nBack to this point: as found. To be put back, in this order:\n  1. REST RIGHT 1/32 in\n  2. REST DOWN 1/16 in\n');
    expect(text).toContain('not taken: The bow stands there already: nothing is to be put back.');
    expect(text).toContain('not taken: There is no point 3. "history" lists them with their numbers.');
    expect(session.intents).toEqual([{ kind: 'putBack', to: 7 }]);
  });

  it('list all answers, and open one by its number', async () => {
    const session = withBook();
    const text = await talk(session, 'answers\nchange 3\nchange\n');
    expect(text).toContain('  3. Which hand? left\n  4. Shot: missed (not to be changed: it counts no more)\nTo change one of them, type: change, and its number. The bow is not touched.\n');
    expect(text).toContain('not taken: Which answer? "answers" lists them with their numbers; then type it like: change 12.');
    expect(session.intents).toEqual([{ kind: 'back', to: 3 }]);
  });
});

describe('an advice in the plain face', () => {
  it('says what may be typed, by its unit, and that another may be asked for', () => {
    const last = (ask: Ask): string => askLines(ask, 'short').at(-1) ?? '';
    expect(last(ASKS.amount)).toBe('Type "as told", or how much it was, like 1/32 in, or "not now", or "another" for another adjustment, if one is as right, or "at its end" where it goes no further.');
    expect(last({ ...ASKS.amount, unit: 'half-twist-pair' })).toContain('like 1 half-twist pair');
    expect(last({ ...ASKS.amount, unit: 'count', max: 2 })).toBe('Type "as told", or by how many vanes it was turned, like 1, or "not now", or "another" for another adjustment, if one is as right.');
    expect(last({ ...ASKS.amount, unit: 'count', max: 1 })).toBe('Type "as told", or "not now", or "another" for another adjustment, if one is as right.');
    expect(last({ ...ASKS.amount, step: 'put-it-back' })).toBe('Type "as told", or how much it was, like 1/32 in, or "not now".');
  });
  it('hands on "another" and "not now" as they are', async () => {
    const session = fakeSession([ASKS.amount, ASKS.amount]);
    await talk(session, 'another\nnot now\n');
    expect(session.intents).toEqual([{ kind: 'answer', answer: 'another' }, { kind: 'answer', answer: 'not now' }]);
  });
});

describe('an impact in the plain face', () => {
  const { kind: _, ...shot } = ASKS.tear;
  const impact: Ask = { ...shot, kind: 'impact', arrow: null, head: 'broadhead', distance: { value: 20, unit: 'yd' }, shots: { taken: 0, wanted: 6 } };
  it('says what is shot, and how it is told', () => {
    const lines = askLines(impact, 'full');
    expect(lines).toContain('shoot: broadhead, 20 yd');
    expect(lines.at(-1)).toBe('Type it like "high 3 left 1 1/2", in inches from its own dot, or "on the dot", or x and y like "-1.5 3". Called bad before you looked: "bad high 3". Off the target: "missed".');
    expect(askLines({ ...impact, head: 'field', shaft: 'unfletched', shots: { taken: 1, wanted: 6 } }, 'full').slice(-2)).toEqual([
      'shoot: unfletched (no vanes), 20 yd', 'Type where it landed, in inches from its own dot; "bad" before it if you called it bad; or "missed".',
    ]);
    expect(askLines({ ...impact, correcting: 4, suggestion: { kind: 'shots', shots: [{ x: 0, y: 0 }] } }, 'full')).toContain('Your answer before: on the dot. Type it again if it still holds.');
  });
});

describe('a typed line', () => {
  it('is an answer where the question offers the same words', () => {
    expect(readCommand('Back', ['back'])).toEqual({ kind: 'intent', intent: { kind: 'answer', answer: 'Back' } });
    expect(readCommand('Put  Back')).toEqual({ kind: 'intent', intent: { kind: 'putBack' } });
  });
  it('stops, whatever the question offers', () => {
    for (const line of ['stop', 'STOP!', 'stop: limb cracked']) expect(readCommand(line, ['stop'])).toMatchObject({ intent: { kind: 'stop' } });
    expect(readCommand('stop: limb cracked')).toMatchObject({ intent: { words: 'limb cracked' } });
    expect(readCommand('stopper on the left')).toMatchObject({ intent: { kind: 'answer' } });
  });
  it('can be an answer by force', () => {
    expect(readCommand('answer note of thanks')).toEqual({ kind: 'intent', intent: { kind: 'answer', answer: 'note of thanks' } });
  });
  it.each([
    ['note', /A note needs words/], ['answer', /An answer needs words/], ['moved', /What was moved\?.*rest-height/], ['moved wheel up 1', /What was moved/],
    ['moved yoke sideways 1', /Which way\?.*right \(into the right leg, out of the left\) or left.*moved yoke right 1 half-twist pair/], ['moved yoke left', /By how much/], ['changed', /What changed\?.*string/], ['changed hat', /What changed/],
    ['moved limb bolts in', /By how much\? Type it like: moved limb-bolts in 1\/4 turn/], ['change', /Which answer\?/],
  ])('teaches on %j', (line, message) => {
    const command = readCommand(line);
    expect(command.kind === 'mistake' ? command.message : command.kind).toMatch(message);
  });
});

describe('plain words', () => {
  it('say a tear as it is typed', () => {
    expect([{ x: -0.125, y: 0.5 }, { x: 0.25, y: 0 }, { x: 0, y: -1.125 }, { x: 0.001, y: 0 }].map((tear) => tearWords(tear))).toEqual(['high 1/2, left 1/8', 'right 1/4', 'low 1 1/8', 'clean']);
  });
  it('number options by their own value where that is a number', () => {
    const arrows: Ask = { ...ASKS.choice, options: [{ value: '3', label: 'three' }, { value: '7', label: 'seven' }] };
    expect(askLines(arrows, 'full')).toEqual(expect.arrayContaining(['  3. three', '  7. seven']));
  });
  it('put cautions last before what may be typed, and say when an answer is being corrected', () => {
    const lines = askLines(ASKS.number, 'full');
    expect(lines.at(-2)).toBe('caution: Mind your fingers.');
    expect(lines.at(-1)).toBe('Type a number from 20 to 90, in pounds.');
    expect(askLines(ASKS.confirm, 'full')[0]).toContain('You are correcting an earlier answer');
    expect(askLines(ASKS.text, 'full')).toContain('Your answer before: the old one. Type it again if it still holds.');
  });
  it('say an earlier answer in the words of its question', () => {
    expect(askLines({ ...ASKS.choice, correcting: 2, suggestion: { kind: 'choice', values: ['left'] } }, 'full')).toContain('Your answer before: Left hand. Type it again if it still holds.');
    expect(askLines({ ...ASKS.number, suggestion: { kind: 'number', value: 60.5 } }, 'full')).toContain('Your answer before: 60.5 lb. Type it again if it still holds.');
  });
  it('say what a shot is shot with, where that is out of the usual', () => {
    expect(askLines(ASKS.tear, 'short')).toContain('shoot: arrow 2');
    expect(askLines({ ...ASKS.tear, arrow: null }, 'short').join('\n')).not.toContain('shoot:');
    expect(askLines({ ...ASKS.tear, shaft: 'unfletched', head: 'broadhead', nockTurn: 1 }, 'short')).toContain('shoot: arrow 2, unfletched (no vanes), broadhead, nock turned by 1 vane');
  });
  it('explain the words that the question uses, and no others', () => {
    expect(whyLines({ ...ASKS.text, text: ['Two tears.'] }, { tear: 'a hole', ear: 'for hearing', nock: 'an end' })).toEqual(['Because it matters.', 'tear: a hole']);
  });
});

describe('clean', () => {
  it.each([
    ['\u001b[1;31mred\u001b[0m', 'red'], ['\u001b]8;;http://x\u001b\\link', 'link'], ['\u009b31mx', 'x'], ['a\tb\nc', 'a b c'], ['a\u001bcb', 'ab'],
    ['\u202eabc', 'abc'], ['K\u00f6cher 1/2"', 'K\u00f6cher 1/2"'], ['half\u001b', 'half'],
  ])('%j is %j', (text, wanted) => expect(clean(text)).toBe(wanted));
});
