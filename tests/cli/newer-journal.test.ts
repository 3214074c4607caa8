// A tune of a newer program among others, through the built program: one clear line about it wherever it is asked for or would
// have been used, the error's own exit code, the others as usable as ever, and not a byte, a time or a name in the folder changed.

import { createHash } from 'node:crypto';
import { copyFileSync, readFileSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ERRORS } from '../../src/errors.ts';
import { newHome, run } from './program.ts';

const frozen = (name: string): string => new URL(`../fixtures/journal-v1-${name}.jsonl`, import.meta.url).pathname;
const FINISHED = '2026-03-02-c';
const UNFINISHED = '2026-03-02-a';
const NEWER = '2026-04-11-a';

/** A line as a newer program may write it: known in nothing but its version. */
const LATER = '{"v":3,"nr":"40","what":"taken up again","check":"none"}\n{"nr":"41"}\n';
const lines = readFileSync(frozen('known'), 'utf8').split('\n');
type Asking = readonly string[];
const JOURNALS: Readonly<Record<string, readonly [text: string, line: number, ...asking: readonly Asking[]]>> = {
  'its first line': [`{"v":3,"nr":"1","what":"begun"}\n${LATER}`, 1, ['resume', NEWER, '--plain'], ['record']],
  'a line in its middle': [`${lines.slice(0, 39).join('\n')}\n${LATER}{"torn`, 40, ['resume', NEWER, '--pipe'], ['record', NEWER]],
};

/** Two good tunes, one finished, and the newer one as the latest of all, with the lock of a sitting that was killed. */
function homeWith(text: string): string {
  const home = newHome();
  copyFileSync(frozen('press'), join(home, `${FINISHED}.jsonl`));
  copyFileSync(frozen('paper'), join(home, `${UNFINISHED}.jsonl`));
  writeFileSync(join(home, `${NEWER}.jsonl`), text);
  writeFileSync(join(home, `${NEWER}.jsonl.lock`), '{"pid":4194305,"host":"elsewhere","startTime":null,"since":"2026-04-11T09:00:00.000Z"}\n');
  utimesSync(join(home, `${NEWER}.jsonl`), new Date('2026-05-01T09:00:00Z'), new Date('2026-05-01T09:00:00Z'));
  return home;
}

/** Names, bytes and times of all that lies in the folder. */
const stateOf = (home: string): Readonly<Record<string, string>> => Object.fromEntries(readdirSync(home).map((name) => {
  const path = join(home, name);
  return [name, `${createHash('sha256').update(readFileSync(path)).digest('hex')} ${statSync(path).mtimeMs}`];
}));

const about = (text: string): readonly string[] => text.split('\n').filter((line) => line.includes(NEWER));

describe.each(Object.entries(JOURNALS))('a tune that is newer from %s on', (_, [text, line, ...asking]) => {
  const which = new RegExp(`line ${line}\\b.* newer .*version 3 .*version 1\\b`);

  it('is refused by name in one line, in each face and by record, and nothing in the folder changes', async () => {
    const home = homeWith(text);
    const before = stateOf(home);
    for (const args of asking) {
      const { code, stdout, stderr } = await run([...args, '--home', home]);
      expect([args, code, stdout]).toEqual([args, ERRORS['newer-journal'].exit, '']);
      expect(stderr).toMatch(/^quarterturn: [^\n]+\n$/);
      expect(stderr).toContain(join(home, `${NEWER}.jsonl`));
      expect(stderr).toMatch(line === 1 ? /newer .*version 3 .*version 1\b/ : /line 40.*newer .*version 3 .*version 1\b/);
      expect(stderr).toContain('The file was left as it is. Install the newer quarterturn');
    }
    expect(stateOf(home)).toEqual(before);
  });

  it('is one row of the list', async () => {
    const home = homeWith(text);
    const before = stateOf(home);
    const list = await run(['list', '--home', home]);
    expect([list.code, list.stderr]).toEqual([0, '']);
    expect(list.stdout.trimEnd().split('\n')).toHaveLength(3);
    expect(about(list.stdout)).toEqual([expect.stringMatching(which)]);
    expect(about(list.stdout)[0]).toContain('open it with the newer one');
    expect(stateOf(home)).toEqual(before);
  });
});

describe('the others', () => {
  const homeBeside = (): string => homeWith(JOURNALS['a line in its middle']?.[0] ?? '');
  const newerIn = (home: string): readonly string[] => Object.entries(stateOf(home)).filter(([name]) => name.includes(NEWER)).map((file) => file.join(' '));
  const names = (home: string): readonly string[] => readdirSync(home);

  it('are gone on with: where none was named, one line says which was passed over', async () => {
    const home = homeBeside();
    const [newer, listed] = [newerIn(home), names(home)];
    const { code, stdout, stderr } = await run(['--plain', '--home', home], 'quit\n');
    expect([code, stderr]).toEqual([0, '']);
    expect(about(stdout)).toEqual([expect.stringMatching(/left as it is.*line 40 was written by a newer.*version 3 .*version 1; open it with the newer one\.$/)]);
    expect(stdout).toContain('Welcome back');
    const named = await run(['resume', UNFINISHED, '--pipe', '--home', home]);
    expect([named.code, named.stderr, about(named.stdout)]).toEqual([0, '', []]);
    const record = await run(['record', FINISHED, '--home', home]);
    expect([record.code, record.stderr, about(record.stdout)]).toEqual([0, '', []]);
    expect(record.stdout).toMatch(/^# /);
    expect([newerIn(home), names(home)]).toEqual([newer, listed]);
  });

  it('hand over their bows to a new tune, which says once whose is not offered', async () => {
    const home = homeBeside();
    const [newer, listed] = [newerIn(home), names(home)];
    const { code, stdout, stderr } = await run(['new', '--pipe', '--home', home], '{"quit":true}\n');
    expect([code, stderr]).toEqual([0, '']);
    const [first = '', ...more] = stdout.trimEnd().split('\n');
    const { say, ask } = JSON.parse(first) as { say: string[]; ask: { about: string; options: { value: string }[] } };
    expect(say.filter((each) => each.includes(NEWER))).toHaveLength(1);
    expect(ask.about).toBe('bow');
    expect(ask.options.map(({ value }) => value)).toContain(FINISHED);
    expect(ask.options.map(({ value }) => value)).not.toContain(NEWER);
    expect(about(more.join('\n'))).toEqual([]);
    expect(newerIn(home)).toEqual(newer);
    expect(names(home).filter((name) => !listed.includes(name))).toEqual([expect.stringMatching(/^\d{4}-\d{2}-\d{2}-a\.jsonl$/)]);
  });
});

describe('where only newer tunes are left', () => {
  it('"resume" says so, and what to do', async () => {
    const home = newHome();
    writeFileSync(join(home, `${NEWER}.jsonl`), LATER);
    const { code, stderr } = await run(['resume', '--home', home]);
    expect([code, readdirSync(home)]).toEqual([ERRORS['newer-journal'].exit, [`${NEWER}.jsonl`]]);
    expect(stderr).toMatch(/^quarterturn: .*version 3 .*Install the newer quarterturn.*\n$/);
  });
});
