// The built program in practice: what is typed wrongly gets one line that teaches, a practice lies apart from the tunes, is refused among them,
// comes back after a kill, and is told at the end.

import { copyFileSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readArguments } from '../../src/arguments.ts';
import { CodedError } from '../../src/errors.ts';
import { newHome, run } from './program.ts';
import { Talker } from './talker.ts';

describe('the command line', () => {
  it.each([
    [['practice'], { what: 'menu' }], [['practice', '--bow', '12'], { what: 'bow', name: '12' }], [['practice', '--lesson', 'one bad arrow'], { what: 'lesson', name: 'one bad arrow' }],
    [['practice', 'list'], { what: 'list' }], [['practice', 'resume'], { what: 'resume', id: null }], [['practice', 'debrief', '2026-01-01-a'], { what: 'debrief', id: '2026-01-01-a' }],
    [['practice', 'record', '--plain'], { what: 'record', id: null }],
  ])('%j is understood', (args, what) => expect(readArguments(args)).toMatchObject({ command: 'practice', ...what }));

  it.each([
    [['--bow', '12'], /go with practice/], [['new', '--lesson', 'x'], /go with practice/], [['practice', '--bow', '1', '--lesson', 'x'], /do not go together/],
    [['practice', 'bow', '12'], /"practice bow" is not known.*--bow N/], [['practice', 'list', 'x'], /takes nothing/], [['practice', 'resume', 'a', 'b'], /takes one practice/],
    [['practice', 'list', '--bow', '3'], /goes by itself/],
  ])('%j is refused in one line', (args, says) => {
    expect(() => readArguments(args)).toThrow(CodedError);
    expect(() => readArguments(args)).toThrow(says);
  });
});

describe('the program', () => {
  it.each([
    [['--bow', 'many'], /^quarterturn: "many" is no number of a practice bow\. Write a whole number from 1 to 999999, like: quarterturn practice --bow 12\.\n$/],
    [['--lesson', 'two bad arrows'], /^quarterturn: There is no lesson "two bad arrows"\. The lessons are: "two things wrong", .*"do not shoot this bow"\.\n$/],
  ])('says what would be right for %j, and begins nothing', async (args, says) => {
    const home = newHome();
    const { code, stderr, stdout } = await run(['practice', ...args, '--home', home], '');
    expect([code, stdout, readdirSync(home)]).toEqual([2, '', []]);
    expect(stderr).toMatch(says);
  });

  it('keeps a practice apart, goes on with it after a kill, refuses it among the tunes, and tells it once it is over', async () => {
    const home = newHome();
    const first = new Talker(['practice', '--lesson', 'Do-not-shoot-this-bow', '--pipe', '--home', home]);
    expect(await first.hear()).toMatchObject({ type: 'ask', practice: { of: 'lesson: do not shoot this bow, bow 1', seen: ['On your wrist hangs a release aid.'] } });
    await first.say({ answer: 'release-aid' });
    expect(await first.say({ answer: 'grown' })).toMatchObject({ seq: 3 });
    first.kill('SIGKILL');
    await first.ended;
    expect(readdirSync(home)).toEqual(['practice']);
    const name = readdirSync(join(home, 'practice')).find((one) => one.endsWith('.jsonl')) ?? '';
    const id = name.replace('.jsonl', '');

    const unfinished = await run(['practice', 'debrief', id, '--home', home]);
    expect([unfinished.code, unfinished.stdout]).toEqual([3, '']);
    expect(unfinished.stderr).toMatch(/is not over yet, and its debrief would spoil it\. Go on with it: quarterturn practice resume/);

    const again = new Talker(['practice', 'resume', '--pipe', '--home', home]);
    expect(await again.hear()).toMatchObject({ practice: { of: 'lesson: do not shoot this bow, bow 1' }, seq: 4, ask: { about: 'place' } });
    expect(await again.say({ debrief: true })).toMatchObject({ type: 'done', practice: { debrief: { invented: true } } });
    again.end();
    await again.ended;

    // Of the folder's tunes none; copied among them it is refused, by name and in the list, and no new tune knows of its bow.
    expect((await run(['list', '--home', home])).stdout).toContain('No tune is kept');
    copyFileSync(join(home, 'practice', name), join(home, name));
    expect((await run(['list', '--home', home])).stdout).toContain('it is a practice on an invented bow, and no tune');
    for (const refused of await Promise.all(['resume', 'record'].map((command) => run([command, id, '--plain', '--home', home])))) {
      expect([refused.code, refused.stdout]).toEqual([5, '']);
      expect(refused.stderr).toMatch(/is a practice on an invented bow: it is no tune/);
    }
    const [list, debrief, record] = await Promise.all([['list'], ['debrief'], ['record', id]].map((args) => run(['practice', ...args, '--home', home])));
    expect(list?.stdout).toMatch(/^PRACTICE \d{4}-\d\d-\d\d-a {2}last .* 0 shots {2}over {2}lesson: do not shoot this bow, bow 1\n$/);
    expect(debrief?.stdout).toMatch(/^# PRACTICE, the debrief: what was true of lesson: do not shoot this bow, bow 1\n\n\*\*An invented bow, for practice\. None of this was measured\.\*\*/);
    expect(record?.stdout).toMatch(/^# PRACTICE, lesson: do not shoot this bow, bow 1: .*\n\n\*\*An invented bow/);
  });

  it('takes no tune of a real bow for a practice', async () => {
    const home = newHome();
    await run(['new', '--plain', '--home', home], 'quit\n');
    const name = readdirSync(home).find((one) => one.endsWith('.jsonl')) ?? '';
    mkdirSync(join(home, 'practice'));
    copyFileSync(join(home, name), join(home, 'practice', name));
    const { code, stderr } = await run(['practice', 'resume', name.replace('.jsonl', ''), '--plain', '--home', home]);
    expect(code).toBe(5);
    expect(stderr).toMatch(/is the tune of a real bow, not a practice\. The file was left as it is\./);
  });
});
