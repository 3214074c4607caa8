// A step that is asked undrawn asks for no draw: which words do, and which only speak of one.

import { describe, expect, test } from 'vitest';
import { NO_BOOK } from './small-book.ts';
import { spoilt, told } from './sound.ts';
import { DRAWS } from './weakened-words.ts';

const saying = (text: string): string[] => told(spoilt('chapters/bow.yaml', 'short: Where }', `short: Where, text: ["${text}"] }`), NO_BOOK);

const ASKED = [
  ...DRAWS, 'Nock an arrow and draw.', 'With a checked arrow on, draw slowly.', 'Then slowly draw it.', 'Please draw once.', 'Now, shoot one.',
  'Look at the limbs; then let it down.', 'Pull the string back a little.', 'Take aim, and shoot.', 'You draw it to the stop.', 'Hold it at full draw.',
];
const SPOKEN_OF = [
  'Do not draw it.', 'Nobody draws a bow that was not looked at.', 'Never draw with a broadhead on.', 'Read the draw weight of the limbs.',
  'The draw length stands on the limb.', 'Draw a fine line across both halves.', 'Draw fresh witness marks.', 'Hold it beside the bow as it lies at full draw.',
  'If the bow is drawn, let down.', 'You can hold it and let down.', 'Stand where you shoot.', 'All that you mean to shoot with this bow.',
  'Less than 5 gr for each lb is not shot.', 'An undrawn bow, on the table.', 'Without a shot, look again.', 'Do grip and anchor feel the same?',
  'Not pinched when the string bends at full draw.', 'Pull the knots hard.', 'The shot that was called bad does not count.',
];

describe('asked undrawn', () => {
  test.each(ASKED)('a draw or a shot is asked for: %s', (text) => {
    expect(saying(text)).toEqual([expect.stringMatching(/^content\/chapters\/bow\.yaml:15:\d+: ".*" asks for a draw or a shot, and "place" is asked in passing; /)]);
  });
  test.each(SPOKEN_OF)('it is only spoken of: %s', (text) => {
    expect(saying(text).filter((one) => one.includes('asks for'))).toEqual([]);
  });
});
