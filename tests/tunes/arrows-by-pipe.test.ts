// The arrows one by one over the pipe, from the first line to the record: what a program sees and answers.

import { describe, expect, it } from 'vitest';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { Finding, View } from '../../src/machine/types.ts';
import type { OutLine } from '../../src/screens/pipe-schema.ts';
import { TestArcher, type Bow } from './archer.ts';
import { Clock, talkInProcess } from './pipe-talk.ts';
import { NOON } from './play.ts';

type WalkLine = Exclude<OutLine, { type: 'error' | 'left' }>;

/** Every line until the record, each checked against the schema that the pipe prints. */
async function linesOf(bow: Bow): Promise<readonly WalkLine[]> {
  const talk = talkInProcess(memoryStore(), new Clock(NOON));
  const archer = new TestArcher(bow);
  const lines: WalkLine[] = [];
  for (let line = await talk.hear(); ; line = await talk.say({ answer: archer.answer(lines.at(-1) as unknown as View) })) {
    if (line.type === 'error' || line.type === 'left') throw new Error(JSON.stringify(line));
    lines.push(line);
    if (line.type === 'done') return lines;
    if (lines.length > 300) throw new Error(`no end: ${JSON.stringify(line)}`);
  }
}

const inTune = (arrows: Bow['arrows']): Bow => ({
  start: { x: 0.03, y: 0.06 }, gain: {}, sd: 0.08, seed: 3, answers: { 'arrows-wanted': 'all', 'cams': 'screw-adjust' }, ...(arrows === undefined ? {} : { arrows }),
});
const classes = (lines: readonly WalkLine[]): readonly Extract<Finding, { kind: 'arrow' }>[] =>
  lines.flatMap((line) => (line.findings as readonly Finding[]).filter((one) => one.kind === 'arrow'));
const changed = (lines: readonly WalkLine[]): readonly string[] =>
  lines.flatMap(({ ask, advice }) => (ask?.about === 'moved' ? [`${advice?.arrow ?? 'bow'} ${advice?.knob ?? ''}`] : []));

describe('over the pipe, of twelve arrows', () => {
  it('one bent and one with a bad nock are found and named as data, ten are cleared, the bow is left alone', async () => {
    const lines = await linesOf(inTune({ 4: { error: { x: -0.7, y: 0.1 }, look: 'wobble' }, 9: { nock: { x: 0.1, y: 0.6 } } }));
    const of = (arrow: string): string | undefined => classes(lines).find((one) => one.arrow === arrow)?.class;
    expect(classes(lines)).toHaveLength(12);
    expect([of('4'), of('9')]).toEqual(['repair', 'first choice']);
    expect(classes(lines).filter((one) => one.class === 'first choice')).toHaveLength(11);
    expect(new Set(changed(lines))).toEqual(new Set(['4 nock-swap', '4 nock-turn', '9 nock-swap']));
    // A turned nock stands in the question that asks for its shots.
    const turned = lines.flatMap(({ ask }) => (ask?.kind === 'tear' && ask.arrow === '4' ? [ask.nockTurn] : []));
    expect(new Set(turned)).toEqual(new Set([0, 1, 2]));
    expect(lines.at(-1)?.bow).toEqual({});
  });

  it('five bad ones: nobody is culled, the bow and the batch are looked at, and the shop is written to', async () => {
    const lines = await linesOf(inTune({ 4: { error: { x: -0.7, y: 0.1 } }, 5: { error: { x: 0.6, y: 0.3 } }, 9: { error: { x: 0, y: 0.6 } }, 10: { error: { x: 0.6, y: 0 } }, 12: { error: { x: 0, y: -0.6 } } }));
    expect(classes(lines)).toEqual([]);
    expect(changed(lines)).toEqual([]);
    expect(lines.flatMap(({ ask }) => (ask?.about === 'inspected' ? [ask.step] : []))).toEqual(['inspect-many-odd']);
    expect(JSON.stringify(lines.at(-1))).toContain('5 of 12');
  });
});
