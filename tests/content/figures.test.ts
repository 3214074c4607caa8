// Which figures are left alone: a rule that cries over sound sentences is one that authors learn to write around.

import { describe, expect, test } from 'vitest';
import { spoilt, told } from './sound.ts';

const say = (text: string): string[] => told(spoilt('chapters/safety.yaml', 'text: Take the paper away and look through the frame.', `text: ${JSON.stringify(text)}`));

describe('a figure that says what it measures or counts', () => {
  test.each([
    'From 20 to 40 yd, and not at 60.', 'Mark the shaft 1/2, 1 and 2 in behind it.', 'Turn 1/4 turn at one end.', 'At the 20-yd mark.', 'Twist no more than 10 degrees.',
    'After 50, and after 100 to 1,000 shots.', 'The tuning arrows are 1, 2 and 3.', 'Round 2 is shot.', 'Under 18, or still growing.', '18 or over, and grown.',
    'As many half twists in as out, never more than 6.', 'A wrap takes 7 to 15 % of it.', 'Less than 5 mph (8 km/h).', 'Behind it are 1 1/8 in of foam.', 'Three arrows, then two more.',
  ])('%s', (text) => { expect(say(text)).toEqual([]); });
});

describe('a figure that does not', () => {
  test.each([
    ['Move it by 1/32 and look again.', '1/32'], ['Stand 3 away.', '3'], ['Stand at 20.', '20'], ['It reads .340 or more.', '.340'], ['Go to 2.5, then stop.', '2.5'],
    ['At 20 yd it is far. Look at 40.', '40'], ['Never over 1 1/8 from the riser.', '1 1/8'], ['Wait for 1,000 and stop.', '1,000'],
  ])('%s', (text, figure) => {
    expect(say(text)).toEqual([`content/chapters/safety.yaml:10:11: ${figure} stands here without a unit; write what it measures or counts, as in "3 in" or "3 shots"`]);
  });
});

test('what is asked in a unit says its figures in that unit', () => {
  expect(told(spoilt('chapters/safety.yaml', 'text: Pull slowly and read the highest figure.', 'text: Often 40 to 60. Pull slowly.'))).toEqual([]);
});
