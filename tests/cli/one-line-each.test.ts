import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/maths/random.ts';
import type { Ask } from '../../src/machine/types.ts';
import { CHANGED } from '../../src/machine/types.ts';
import { KNOBS, DIRECTIONS } from '../../src/content/types.ts';
import { newHome } from './program.ts';
import { healthy, Talker } from './talker.ts';

const JUNK = ['', '   ', 'junk', '[]', '{}', '{"answer":null}', '{"answer":[]}', '{"answer":{}}', '{"answer":1e999}', '{"answer":"\\u0000"}', '{"answer":"\\ud800"}',
  '{"answer":{"x":9,"y":0}}', '{"answer":{"x":"1/8","y":"0,5","called":"bad"}}', '{"answer":[{"x":0,"y":0},{"missed":true}]}', '{"answer":"not known"}', '{"answer":true}',
  '{"stop":""}', '{"note":""}', '{"note":"fine"}', '{"putBack":999}', '{"answer":-1}', '{"answer":"1 1/8 in"}', '{"answer":{"value":3,"unit":"mm"}}', '{"answer":"crack"}'];

describe('every line in gets one line out, as the schema says', () => {
  it.each([1, 2, 3])('through a walk of hits, slips and interruptions (seed %i)', async (seed) => {
    const { uniform } = seededRandom(seed);
    const pick = <T>(list: readonly T[]): T => list[Math.floor(uniform() * list.length)] as T;
    const talker = new Talker(['new', '--pipe', '--home', newHome()]);
    let line = await talker.hear();
    const seen = new Set<string>();
    for (let at = 0; at < 400 && line.type !== 'done'; at += 1) {
      const seq: number = line.seq;
      const ask = 'ask' in line ? (line.ask as Ask | null) : null;
      const dice = uniform();
      let say: unknown;
      if (dice < 0.12 || ask === null) say = pick(JUNK);
      else if (dice < 0.16) say = pick([{ back: true }, { back: false }, { putBack: true }]);
      else if (dice < 0.17) say = { changed: pick(CHANGED), note: 'x' };
      else if (dice < 0.18) say = { moved: { knob: pick(KNOBS), direction: pick(DIRECTIONS), amount: '1/32' } };
      else say = { answer: healthy({ x: 0.3 * uniform() - 0.4, y: 0.3 * uniform() + 0.3 })(ask) };
      line = await talker.say(say);
      seen.add(line.type === 'error' ? line.code : line.type);
      // An error takes nothing; anything taken adds lines and never removes any.
      if (line.type === 'error') expect([say, line.seq]).toEqual([say, seq]);
      else expect(line.seq).toBeGreaterThanOrEqual(seq);
      expect(line).not.toMatchObject({ code: 'internal' });
    }
    expect(seen.size).toBeGreaterThanOrEqual(5);
    talker.end();
    expect(await talker.hear()).toMatchObject({ type: 'left', seq: line.seq });
    expect(await talker.ended).toBe(0);
  });
});
