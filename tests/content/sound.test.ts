import { expect, test } from 'vitest';
import { checkContent } from '../../src/content/lint.ts';
import { SMALL_BOOK } from './small-book.ts';
import { sound, told } from './sound.ts';

test('the sound content has no problem, not even a warning', () => {
  expect(told(sound())).toEqual([]);
  expect(told(sound(), SMALL_BOOK)).toEqual([]);
});

test('what authors leave out is filled in', () => {
  const { content } = checkContent(sound());
  expect(content?.steps['backstop']).toEqual({
    id: 'backstop', about: 'gate:backstop', kind: 'choice', pause: 'undrawn', effect: 'gate', when: [],
    onDemand: false, everyTune: true, unknown: true, noDefault: true, unknownFail: 'look-up', cautions: [], why: [], source: ['habit'],
    short: 'What stands behind the paper?', text: ['Take the paper away and look through the frame.'],
    options: [{ value: 'solid', label: 'A sound backstop', gate: 'pass' }, { value: 'weak', label: 'None, or a worn one', gate: 'fix' }],
    thenDo: 'Set up a backstop first.',
  });
  expect(content?.steps['peak']).toMatchObject({ about: 'peak-weight', max: 100, pass: { max: 80 }, fail: 'fix' });
  expect(content?.steps['strings']).toMatchObject({ checks: [{ source: ['habit'], when: [] }, { source: ['habit'], when: ['growing'] }] });
  expect(content?.steps['rest']?.about).toBe('rest');
  expect(content?.steps['centre-shot-figure']).toMatchObject({ min: 0.5, max: 1.125 });
  expect(content?.knobs['rest-height']).toMatchObject({ book: { change: -0.1875, per: 0.03125 }, firstWhenFar: null, alternative: null, soft: 0.0625 });
  expect(content?.inspections.scatter).toMatchObject({ id: 'scatter', say: ['The shots lie too far apart to judge the bow.'] });
});
