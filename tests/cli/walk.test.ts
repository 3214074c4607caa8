import { appendFileSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newHome, run, start } from './program.ts';
import { healthy, Talker } from './talker.ts';

const begin = (home: string): Talker => new Talker(['new', '--pipe', '--home', home]);
const journal = (home: string): string => join(home, readdirSync(home).find((name) => name.endsWith('.jsonl')) ?? '');
const inTune = healthy({ x: 0, y: 0.05 });

describe('a tune over the pipe', () => {
  it('goes from the first question to the record, which is then told as Markdown', async () => {
    const home = newHome();
    const talker = begin(home);
    const done = await talker.walk(inTune, () => false);
    expect(done).toMatchObject({ type: 'done' });
    if (done.type !== 'done') return;
    expect(done.record?.sections.length).toBeGreaterThan(2);
    expect(await talker.say({ answer: 1 })).toMatchObject({ type: 'error', code: 'walk-is-done', seq: done.seq });
    talker.end();
    expect(await talker.hear()).toEqual({ v: 1, type: 'left', seq: done.seq });
    expect(await talker.ended).toBe(0);

    const { code, stdout } = await run(['record', '--home', home]);
    expect(code).toBe(0);
    expect(stdout).toContain(`# ${done.record?.title}`);
    expect((await run(['list', '--home', home])).stdout).toMatch(/ finished/);
    // Nothing is left to go on with, so that a plain start begins another.
    const again = await run(['--pipe', '--home', home], '{"quit":true}\n');
    expect(again.stdout).toContain('"seq":1');
    expect(readdirSync(home).filter((name) => name.endsWith('.jsonl'))).toHaveLength(2);
  });

  it('keeps every answer, killed at any moment, and goes on from the last', async () => {
    const home = newHome();
    let talker = begin(home);
    const line = await talker.walk(inTune, ({ type, ...rest }) => type === 'ask' && 'chapter' in rest && rest.chapter === 'paper');
    talker.kill('SIGKILL');
    expect(await talker.ended).toBe(null);
    const kept = readFileSync(journal(home), 'utf8').trimEnd().split('\n');
    expect(kept).toHaveLength(line.seq);

    talker = new Talker(['--pipe', '--home', home]);
    const first = await talker.hear();
    expect(first.seq).toBeGreaterThanOrEqual(line.seq);
    const done = await talker.walk(inTune, () => false);
    expect(done).toMatchObject({ type: 'done' });
  });

  it('sets a torn last line aside, says so, and goes on from the line before', async () => {
    const home = newHome();
    const talker = begin(home);
    await talker.hear();
    await talker.say({ answer: 'release-aid' });
    talker.kill('SIGKILL');
    await talker.ended;
    appendFileSync(journal(home), '{"seq":3,"ti');
    const { code, stdout } = await run(['--pipe', '--home', home]);
    expect(code).toBe(0);
    const [first] = stdout.split('\n');
    const line = JSON.parse(first ?? '') as { seq: number; say: string[] };
    expect(line.say.join(' ')).toMatch(/cut short|set aside|torn/i);
    // Two whole lines were kept; the third says that the tune was taken up again.
    expect(line.seq).toBe(3);
    expect(readFileSync(journal(home), 'utf8')).not.toContain('"ti{');
    expect(readdirSync(home).some((name) => name.includes('torn'))).toBe(true);
  });

  it('has one writer at a time, and gives the lock back on a signal', async () => {
    const home = newHome();
    const talker = begin(home);
    await talker.hear();
    const second = await run(['resume', '--pipe', '--home', home]);
    expect(second.code).toBe(4);
    expect(second.stderr).toMatch(/^quarterturn: [^\n]+\n$/);
    talker.kill('SIGTERM');
    expect(await talker.ended).toBe(143);
    expect(readdirSync(home).filter((name) => name.includes('lock'))).toEqual([]);
  });

  it('ends by itself on quit, although its input stays open', async () => {
    const talker = begin(newHome());
    await talker.hear();
    expect(await talker.say({ quit: true })).toEqual({ v: 1, type: 'left', seq: 1 });
    expect(await talker.ended).toBe(0);
  });

  it('ends quietly when its reader leaves', async () => {
    const child = start(['new', '--pipe', '--home', newHome()]);
    let stderr = '';
    child.stderr.on('data', (data: Buffer) => { stderr += data; });
    child.stdout.destroy();
    child.stdin.on('error', () => undefined);
    const answers = setInterval(() => child.stdin.write('\n'), 10);
    const code = await new Promise((resolve) => child.on('close', resolve));
    clearInterval(answers);
    expect([code, stderr]).toEqual([0, '']);
  });
});

describe('a tune in plain lines', () => {
  it('is taken where there is no terminal, and takes the same answers', async () => {
    const home = newHome();
    const { code, stdout, stderr } = await run(['--home', home], '1\nwhy\nnonsense\nquit\n');
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toContain('not taken: "nonsense" is not among the answers.');
    expect(stdout.trimEnd()).toMatch(/Everything is kept\. Start quarterturn again to go on\.$/);
    expect(stdout).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
    expect(readFileSync(journal(home), 'utf8').trimEnd().split('\n')).toHaveLength(2);
  });
});

describe('--pipe --schema', () => {
  it('prints one JSON object, and its names cover what a walk asks', async () => {
    const { code, stdout } = await run(['--pipe', '--schema']);
    expect(code).toBe(0);
    const schema = JSON.parse(stdout) as { about: string[]; units: string[]; errors: { code: string }[] };
    expect(Object.keys(schema)).toEqual(['v', 'in', 'out', 'about', 'units', 'errors']);

    const asked = new Set<string>();
    const talker = begin(newHome());
    await talker.walk((ask) => { asked.add(ask.about); return inTune(ask); }, () => false);
    expect([...asked].filter((about) => !schema.about.includes(about))).toEqual([]);
    expect(asked.size).toBeGreaterThan(15);
  });
});
