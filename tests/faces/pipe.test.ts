import { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { UNITS } from '../../src/maths/units.ts';
import { runPipe } from '../../src/screens/pipe.ts';
import { inSchema, outSchema, pipeSchema, type OutLine } from '../../src/screens/pipe-schema.ts';
import { ASKS, fakeSession, input, now, sink, type FakeSession } from './fake-session.ts';

async function talk(session: FakeSession, from: Readable, notices: string[] = []): Promise<OutLine[]> {
  const output = sink();
  await runPipe(session, { input: from, output, now, notices });
  // Every line that ever leaves is held against the printed schema.
  return output.lines().map((line) => outSchema.parse(JSON.parse(line)));
}
const say = (session: FakeSession, ...lines: (string | object)[]): Promise<OutLine[]> =>
  talk(session, input(lines.map((line) => `${typeof line === 'string' ? line : JSON.stringify(line)}\n`).join('')));
const types = (lines: readonly OutLine[]): string[] => lines.map((line) => (line.type === 'error' ? line.code : line.type));

describe('the pipe', () => {
  it('speaks first, answers each line with one line, and says that it left', async () => {
    const session = fakeSession([ASKS.choice, ASKS.number]);
    const lines = await say(session, { answer: 'right' }, { answer: 60 });
    expect(types(lines)).toEqual(['ask', 'ask', 'done', 'left']);
    expect(lines[3]).toEqual({ v: 1, type: 'left', seq: 3 });
    expect(session.intents).toEqual([{ kind: 'answer', answer: 'right' }, { kind: 'answer', answer: 60 }]);
  });

  it('keeps every field of every kind of ask, save the one about keys', async () => {
    for (const ask of Object.values(ASKS)) {
      const [line] = await say(fakeSession([ask]));
      const { noDefault: _keys, ...rest } = { noDefault: undefined, ...ask };
      expect(line).toMatchObject({ type: 'ask', ask: rest });
      expect(JSON.stringify(line)).not.toContain('noDefault');
    }
  });

  it('carries advice and ledger as data', async () => {
    const [line] = await say(fakeSession([ASKS.amount]));
    expect(line).toMatchObject({
      bow: { 'rest-height': { value: 0.03125, unit: 'in' } },
      advice: { kind: 'adjust', knob: 'rest-height', direction: 'up', amount: { value: 0.03125, unit: 'in' }, expect: { x: 0.1, y: 0.2, sdX: 0.1, sdY: 0.1 }, trial: true, press: false },
    });
  });

  it('puts the record on the last line', async () => {
    const lines = await say(fakeSession([ASKS.choice]), { answer: 'left' });
    expect(lines[1]).toMatchObject({ type: 'done', ask: null, record: { title: 'Bow record' } });
  });

  it('tells notices with the first line only', async () => {
    const lines = await talk(fakeSession([ASKS.choice]), input('\n'), ['A torn last line was set aside.']);
    expect(lines.map((line) => ('say' in line ? line.say[0] : null))).toEqual(['A torn last line was set aside.', 'Line 1 was taken.', null]);
  });

  it('turns every request into its intent', async () => {
    const session = fakeSession([ASKS.amount]);
    await say(session,
      { back: true }, { back: false }, { back: 12 }, { putBack: true }, { putBack: 12 }, { stop: 'crack' }, { stop: ' ' }, { note: 'windy' },
      { moved: { knob: 'rest-side', direction: 'left', amount: '1/64' } }, { changed: 'string' }, { changed: 'other', note: 'new tiller' });
    expect(session.intents).toEqual([
      { kind: 'back' }, { kind: 'keep' }, { kind: 'back', to: 12 }, { kind: 'putBack' }, { kind: 'putBack', to: 12 }, { kind: 'stop', words: 'crack' }, { kind: 'stop', words: 'stop' }, { kind: 'note', note: 'windy' },
      { kind: 'moved', knob: 'rest-side', direction: 'left', amount: '1/64' }, { kind: 'changed', what: 'string' }, { kind: 'changed', what: 'other', note: 'new tiller' },
    ]);
  });

  it('answers a note by the standing ask, marked', async () => {
    const lines = await say(fakeSession([ASKS.choice]), { note: 'windy' });
    expect(lines[1]).toMatchObject({ type: 'ask', noted: true, ask: { about: 'hand' } });
    expect(lines[0]).not.toHaveProperty('noted');
  });

  it('gives the standing ask again on a blank line, and tells no finding twice', async () => {
    const session = fakeSession([ASKS.choice]);
    const lines = await say(session, '', '  ');
    expect(types(lines)).toEqual(['ask', 'ask', 'ask', 'left']);
    expect(lines[1]).toEqual({ ...lines[0], findings: [] });
    expect(session.intents).toEqual([]);
  });

  it('tells an error with its code and the ask that stands', async () => {
    const session = fakeSession([ASKS.choice]);
    const lines = await say(session, { answer: 'wrong' }, { putBack: true }, { answer: 'full disk' }, { answer: 'crash' }, { answer: 'right' });
    expect(types(lines)).toEqual(['ask', 'not-an-option', 'nothing-to-put-back', 'cannot-write', 'internal', 'done', 'left']);
    expect(lines[1]).toMatchObject({ seq: 1, message: 'That is not one of the options.', ask: { about: 'hand' } });
    expect(JSON.stringify(lines[4])).not.toContain(' at ');
  });

  it.each([
    ['words', 'hello', 'not-json'], ['half an object', '{"answer":', 'not-json'], ['a list', '[1]', 'not-json'],
    ['a number', '5', 'not-json'], ['null', 'null', 'not-json'], ['NaN', '{"answer":NaN}', 'not-json'],
    ['an empty object', '{}', 'not-understood'], ['an unknown name', '{"jump":3}', 'not-understood'],
    ['two requests', '{"answer":1,"back":true}', 'not-understood'], ['a request and more', '{"answer":1,"extra":2}', 'not-understood'],
    ['a put-back of nothing', '{"putBack":false}', 'not-understood'], ['a put-back to half a line', '{"putBack":1.5}', 'not-understood'],
    ['an unknown knob', '{"moved":{"knob":"wheel","direction":"up","amount":1}}', 'not-understood'],
    ['a quit that is not', '{"quit":false}', 'not-understood'], ['an inherited name', '{"toString":1}', 'not-understood'],
    ['a name of the prototype', '{"__proto__":{"answer":1}}', 'not-understood'],
  ])('refuses %s and goes on', async (_name, line, code) => {
    const session = fakeSession([ASKS.choice]);
    const lines = await say(session, line, { answer: 'right' });
    expect(types(lines)).toEqual(['ask', code, 'done', 'left']);
    expect(session.intents).toHaveLength(1);
  });

  it('refuses bytes that are not UTF-8', async () => {
    const lines = await talk(fakeSession([ASKS.choice]), input(Buffer.from([0x7b, 0xff, 0xfe, 0x7d, 0x0a]), '{"answer":"right"}\n'));
    expect(types(lines)).toEqual(['ask', 'not-json', 'done', 'left']);
  });

  it('takes letters whose bytes come apart', async () => {
    const session = fakeSession([ASKS.choice]);
    const bytes = Buffer.from('{"note":"K\u00f6cher"}\n');
    const cut = bytes.indexOf(0xc3) + 1;
    await talk(session, input(bytes.subarray(0, cut), bytes.subarray(cut)));
    expect(session.intents).toEqual([{ kind: 'note', note: 'K\u00f6cher' }]);
  });

  it('takes a last line without its end, and CR LF', async () => {
    const session = fakeSession([ASKS.choice, ASKS.number]);
    const lines = await talk(session, input('{"answer":"right"}\r\n{"answer":60}'));
    expect(types(lines)).toEqual(['ask', 'ask', 'done', 'left']);
  });

  it('takes a line of 64 KiB and refuses one byte more', async () => {
    const noteOf = (bytes: number): string => `{"note":"${'x'.repeat(bytes - '{"note":""}'.length)}"}`;
    const lines = await say(fakeSession([ASKS.choice]), noteOf(65536), noteOf(65537), { note: 'still here' });
    expect(types(lines)).toEqual(['ask', 'ask', 'line-too-long', 'ask', 'left']);
  });

  it('reads a huge line to its end without keeping it', async () => {
    let most = 0;
    const flood = async function* () {
      for (let i = 0; i < 400; i += 1) {
        yield Buffer.alloc(1 << 20, 0x78);
        most = Math.max(most, process.memoryUsage().arrayBuffers);
      }
      yield Buffer.from('\n{"answer":"right"}\n');
    };
    const before = process.memoryUsage().arrayBuffers;
    const lines = await talk(fakeSession([ASKS.choice]), Readable.from(flood(), { objectMode: true }));
    expect(types(lines)).toEqual(['ask', 'line-too-long', 'done', 'left']);
    expect(most - before).toBeLessThan(200 << 20);
  });

  it('leaves on quit, and takes nothing after it', async () => {
    const session = fakeSession([ASKS.choice]);
    const lines = await say(session, { quit: true }, { answer: 'right' });
    expect(types(lines)).toEqual(['ask', 'left']);
    expect(session.intents).toEqual([]);
  });

  it('answers any line after the end with the same error, and quits', async () => {
    const session = fakeSession([ASKS.choice]);
    const lines = await say(session, { answer: 'right' }, { answer: 1 }, '', 'junk', { back: true }, { quit: true });
    expect(types(lines)).toEqual(['ask', 'done', 'walk-is-done', 'walk-is-done', 'walk-is-done', 'walk-is-done', 'left']);
    expect(session.intents).toHaveLength(1);
  });

  it('stops asking once its reader has left', async () => {
    const output = sink();
    const session = fakeSession([ASKS.choice]);
    output.destroy();
    await runPipe(session, { input: input('{"answer":"right"}\n'), output, now });
    expect(session.intents).toEqual([]);
  });
});

describe('the printed schema', () => {
  it('is one JSON object with both directions, names, units and errors', () => {
    const schema = JSON.parse(JSON.stringify(pipeSchema(['hand', 'tear']))) as Record<string, unknown>;
    expect(Object.keys(schema)).toEqual(['v', 'in', 'out', 'about', 'units', 'errors']);
    expect(schema['about']).toEqual(['hand', 'tear']);
    expect(schema['units']).toEqual([...UNITS]);
    expect(schema['errors']).toContainEqual({ code: 'not-json', says: 'the line is not a JSON object', exit: null });
  });

  it.each([
    { answer: 'right' }, { answer: 1.5 }, { answer: true }, { answer: ['a', 'b'] }, { answer: { x: 0.1, y: -0.2 } },
    { answer: { x: '1/8', y: '0,5', called: 'bad' } }, { answer: [{ x: 0, y: 0 }, { missed: true }] }, { answer: { value: 3, unit: 'mm' } },
    { back: false }, { back: 4 }, { putBack: 4 }, { stop: '' }, { note: 'x' }, { quit: true }, { changed: 'fell', note: 'x' },
    { moved: { knob: 'yoke', direction: 'left', amount: { value: 1, unit: 'half-twist-pair' } } },
  ])('takes what the page says: %j', (line) => {
    expect(inSchema.safeParse(line).success).toBe(true);
  });
});
