// What is asked again after what. Common practice: whatever was touched, and all that rests on it, is looked at before the
// next draw; after work on string, cams, rest or loop one slow draw, then one shot at the bare backstop.

import type { Book } from './shape.ts';

export const AGAIN: Book['again'] = {
  // People, range and what happened, at every start; the whole bow after a break.
  'start': 'place backstop range history',
  'long-break': 'backstop range history limbs axle-clips bow-at-rest as-recorded arrows-flexed marks warm-up',
  // Heat and falls do not show: all that a look can find, the lengths, and a slow draw before the next shot.
  'heat-or-fall': 'limbs axle-clips bow-at-rest as-recorded marks slow-draw',
  'place-changed': 'backstop range',
  'distance-changed': 'backstop range',
  'broadheads-distance': 'backstop broadhead-place',
  'broadheads-long-break': 'broadhead-place broadhead-arrows',
  'broadheads-again': 'sight-at-20 first-broadhead',
  'broadheads-away': 'points-back',
  // Bolts change the weight, and the arrow's share of it; nock height, brace and timing go along.
  'limb-bolts': 'after-bolts bolts-top bolts-bottom bolt-limit axle-to-axle brace-height nock-height slow-draw peak-weight arrow-mass',
  // Point, insert, head or cut: mass, length, stiffness, and where blades would stand.
  'arrow-changed': 'arrow-count arrows-flexed arrows-looked-at arrow-check arrow-mass broadhead-arrows shaft-ahead',
  // Press work: tracks, clips and peep; weight and draw length; slow draw; one shot.
  'yoke': 'after-press axle-to-axle brace-height nock-height slow-draw peak-weight shaft-ahead first-shot',
  'cam-spacers': 'after-press axle-to-axle brace-height nock-height slow-draw peak-weight shaft-ahead first-shot',
  'cam-sync': 'after-press axle-to-axle brace-height nock-height slow-draw peak-weight shaft-ahead first-shot',
  'cam-screw': 'after-press nock-height slow-draw shaft-ahead first-shot',
  'nock-height': 'loop-check slow-draw first-shot',
  'rest-height': 'rest-check',
  'rest-side': 'rest-check',
  'drop-cord': 'rest-check slow-draw first-shot',
  // A clash, a miss, a hard stop: that arrow, before it is shot again.
  'clash': 'arrow-check',
  'forty-shots': 'fit-to-shoot',
  // Another part: all of it, as of a bow that nobody knows.
  'string-replaced': 'history limbs axle-clips bow-at-rest after-press bolts-top bolts-bottom bolt-limit rest rest-check loop-check axle-to-axle '
    + 'brace-height nock-height centre-shot arrows-flexed slow-draw peak-weight arrow-mass shaft-ahead warm-up contact',
  // One that nobody knows may be limbs, cams or modules.
  'part-replaced': 'history limbs axle-clips bow-at-rest rated-weight after-press bolts-top bolts-bottom bolt-limit cams rest rest-scale rest-check '
    + 'loop-check axle-to-axle brace-height nock-height centre-shot arrows-flexed slow-draw peak-weight arrow-mass shaft-ahead warm-up contact',
  'rest-replaced': 'history limbs axle-clips bow-at-rest rest rest-scale rest-check loop-check nock-height centre-shot arrows-flexed '
    + 'slow-draw shaft-ahead warm-up contact',
  'release-replaced': 'release history limbs axle-clips bow-at-rest as-recorded arrows-flexed slow-draw shaft-ahead warm-up',
  // The sight does not touch how an arrow leaves.
  'sight-moved': '',
  // Back from the dealer's: the range has stood alone meanwhile.
  'released-by-dealer': 'history limbs axle-clips bow-at-rest as-recorded rated-weight bolts-top bolts-bottom bolt-limit after-press rest rest-check '
    + 'loop-check axle-to-axle brace-height nock-height centre-shot arrow-count arrows-flexed arrow-check backstop range slow-draw peak-weight arrow-mass '
    + 'shaft-ahead warm-up',
  // What hurts somebody may have come off the bow or an arrow: both, before anybody draws.
  'someone-hurt': 'backstop range history limbs axle-clips bow-at-rest arrow-check',
  // Whatever was loose or changed: its neighbours too, screws, loop and rest.
  'something-moved': 'bow-at-rest marks axle-to-axle brace-height nock-height centre-shot rest-check',
  'unadvised-move': 'marks',
};
