import { expect, it } from 'vitest';
import { namesOf, oneOf, tableOf } from '../../src/maths/closed.ts';

it('oneOf knows its own names and nothing else', () => {
  const isSide = oneOf(['left', 'right']);
  expect(['left', 'right', 'Left', '', 0, null, undefined, ['left']].map(isSide)).toEqual([true, true, false, false, false, false, false, false]);
});

it('namesOf and tableOf undo one another, in the order in which names are written', () => {
  const lengths = tableOf(['right', 'left', 'up'], (name) => name.length);
  expect(lengths).toEqual({ right: 5, left: 4, up: 2 });
  expect(namesOf(lengths)).toEqual(['right', 'left', 'up']);
});
