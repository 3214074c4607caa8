import { describe, expect, it } from 'vitest';
import { chooseFace, readArguments } from '../../src/arguments.ts';
import { CodedError } from '../../src/errors.ts';

const read = (line: string) => readArguments(line === '' ? [] : line.split(' '));

describe('the command line', () => {
  it.each([
    ['', { command: 'go-on', face: null }],
    ['new', { command: 'new', face: null }],
    ['new --pipe --home /tmp/x', { command: 'new', face: 'pipe', home: '/tmp/x' }],
    ['--home=/tmp/x list', { command: 'list', face: null, home: '/tmp/x' }],
    ['resume', { command: 'resume', id: null, face: null }],
    ['resume 2026-01-01-a --plain', { command: 'resume', id: '2026-01-01-a', face: 'plain' }],
    ['record 2026-01-01-a', { command: 'record', id: '2026-01-01-a', face: null }],
    ['--pipe --schema', { command: 'schema' }],
    ['--help new', { command: 'help' }], ['-h', { command: 'help' }], ['--version', { command: 'version' }],
  ])('%j', (line, wanted) => expect(read(line)).toEqual(wanted));

  it.each([
    ['tune', /no command "tune".*new, resume, list, record/], ['--colour', /Unknown option '--colour'/], ['-x', /Unknown option '-x'/],
    ['--schema', /goes with --pipe/], ['new --pipe --plain', /choose one/], ['new x', /"new" takes nothing after it, but "x"/],
    ['resume a b', /takes one tune/], ['list --home', /--home/], ['list --home=', /--home needs a folder/], ['--pipe=1', /--pipe/], ['new --pipe --schema', /by itself/],
  ])('teaches on %j in one line', (line, message) => {
    let error: unknown;
    try { read(line); } catch (caught) { error = caught; }
    expect(error).toBeInstanceOf(CodedError);
    expect(error).toMatchObject({ code: 'bad-argument' });
    expect((error as Error).message).toMatch(message);
    expect((error as Error).message).not.toContain('\n');
    expect((error as Error).message).toContain('--help');
  });
});

describe('the face', () => {
  it.each([
    [null, 'xterm', true, true, 'screen'], [null, undefined, true, true, 'screen'], [null, 'dumb', true, true, 'plain'],
    [null, 'xterm', false, true, 'plain'], [null, 'xterm', true, false, 'plain'], ['plain', 'xterm', true, true, 'plain'], ['pipe', 'dumb', false, false, 'pipe'],
  ] as const)('%s on %s (%s, %s) is %s', (asked, term, stdin, stdout, face) => expect(chooseFace(asked, term, stdin, stdout)).toBe(face));
});
