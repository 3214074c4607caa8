// What is asked before the first shot, and what each answer means at least. Above each row is where it is from.

import type { StepRow, StepRows } from './shape.ts';

/** What an arrow is added up from where nobody has weighed it: "not known" leads back to the scale. */
const PART = { as: 'number', pause: 'undrawn', flags: 'noDefault unknown onDemand', when: 'mass-added-up', only: 'mass-added-up', fails: 'look-up' } as const satisfies StepRow;

export const BEFORE_THE_FIRST_SHOT: StepRows = {
  'safety': {
    // common practice
    'bow': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', route: 'replaced other-archer another' },
    // common practice
    'which-bow': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', route: 'another' },
    // common practice
    'release': { as: 'choice', effect: 'chosen', pause: 'talk', cautions: 'manual', route: 'release-aid fingers' },
    // common practice
    'growing': { as: 'choice', effect: 'chosen', pause: 'talk', route: 'grown growing' },
    // common practice
    'hand': { as: 'choice', effect: 'chosen', pause: 'talk', route: 'right left' },
    // common practice
    'place': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', route: 'same other' },
    // common practice
    'backstop': { as: 'choice', pause: 'undrawn', flags: 'everyTune noDefault unknown', fix: 'doubtful', pass: 'solid no-paper@not-at-broadheads',
      fails: 'fix' },
    // common practice
    'range': { as: 'chunk', pause: 'undrawn',
      fix: 'range-people range-lane range-gap@paper range-frame@paper range-beyond range-commands range-clear range-archer range-control' },
    // common practice, read in excerpt
    'history': { as: 'choice', pause: 'undrawn', flags: 'everyTune noDefault unknown', cautions: 'dry-fire',
      shop: 'dry-fire derailed arrow-broke dropped', note: 'heat-or-fall', pass: 'nothing', fails: 'look-up' },
    // common practice
    'limbs': { as: 'choice', pause: 'undrawn', flags: 'everyTune noDefault unknown', shop: 'found', pass: 'clean', fails: 'fix' },
    // common practice
    'axle-clips': { as: 'number', pause: 'undrawn', flags: 'everyTune noDefault unknown', range: ['count', 0, 4], least: 4,
      fails: 'shop' },
    // common practice, read in excerpt
    'bow-at-rest': { as: 'chunk', pause: 'undrawn', cautions: 'manual loop', shop: 'bow-riser bow-strands bow-cams',
      fix: 'bow-serving bow-screws bow-loop bow-rest-holds bow-guard bow-release-aid@release-aid' },
    // common practice
    'rated-weight': { as: 'number', pause: 'undrawn', flags: 'noDefault unknown', about: 'rated-weight', range: ['lb', 5, 100],
      fails: 'look-up' },
    // common practice, read in excerpt
    'bolts-top': { as: 'number', pause: 'undrawn', flags: 'noDefault unknown', about: 'bolts-top', cautions: 'bolts',
      range: ['turn', 0, 12], fails: 'fix' },
    // common practice, read in excerpt
    'bolts-bottom': { as: 'number', pause: 'undrawn', flags: 'noDefault unknown', about: 'bolts-bottom', cautions: 'bolts',
      range: ['turn', 0, 12], fails: 'fix' },
    // common practice, read in excerpt
    'bolt-limit': { as: 'number', pause: 'undrawn', flags: 'noDefault unknown', when: 'bolts-turned-out', about: 'bolt-limit',
      range: ['turn', 0, 12], fails: 'look-up' },
    // common practice
    'arrow-count': { as: 'number', pause: 'undrawn', flags: 'noDefault', about: 'arrow-count', range: ['count', 1, 60],
      fails: 'look-up' },
    // common practice, read in excerpt
    'arrows-flexed': { as: 'choice', pause: 'undrawn', flags: 'everyTune noDefault unknown', cautions: 'flex', fix: 'not-all',
      note: 'some-bad', pass: 'all', fails: 'fix' },
    // common practice
    'arrows-set-aside': { as: 'number', pause: 'undrawn', flags: 'noDefault', when: 'arrow-set-aside', range: ['count', 1, 60],
      fails: 'fix' },
    // common practice, read in excerpt
    'arrows-looked-at': { as: 'chunk', pause: 'undrawn', lookUp: 'arrows-material',
      fix: 'arrows-feel arrows-twist arrows-nock arrows-fit arrows-point arrows-same arrows-stiffness arrows-spin' },
    // common practice, read in excerpt
    'arrow-mass': { as: 'number', pause: 'undrawn', flags: 'noDefault unknown', about: 'arrow-mass', range: ['gr', 100, 1500],
      fails: 'fix' },
    // common practice; a sum lacks nothing, and every figure in it can be found or is not known
    'mass-way': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'noDefault onDemand', when: 'mass-not-weighed', only: 'mass-not-weighed',
      route: 'weigh add-up' },
    // common practice, from memory: heavier entries than there are would pass a light arrow
    'shaft-grains': { ...PART, range: ['gr/in', 4, 16] },
    'shaft-length': { ...PART, range: ['in', 18, 36] },
    'point-grains': { ...PART, range: ['gr', 20, 350] },
    'insert-grains': { ...PART, range: ['gr', 0, 250] },
    'nock-grains': { ...PART, range: ['gr', 0, 80] },
    'vane-count': { ...PART, range: ['count', 0, 6] },
    'vane-grains': { ...PART, range: ['gr', 0, 20] },
    'wrap-grains': { ...PART, range: ['gr', 0, 20] },
    // common practice
    'as-recorded': { as: 'chunk', pause: 'undrawn', flags: 'everyTune', when: 'known-bow', shop: 'recorded-strands recorded-lengths',
      fix: 'recorded-people recorded-paper@paper recorded-archer recorded-small-parts recorded-bolts recorded-marks recorded-arrows' },
    // common practice
    'first-draw': { as: 'chunk', pause: 'draw', when: 'new-bow', cautions: 'draw let-down', shop: 'draw-noise',
      fix: 'draw-control draw-stops draw-arrow-stayed draw-down' },
    // common practice
    'peak-weight': { as: 'number', pause: 'draw', flags: 'noDefault unknown', about: 'peak-weight', cautions: 'rig',
      range: ['lb', 5, 120], fails: 'shop' },
    // common practice
    'scale-error': { as: 'number', pause: 'talk', flags: 'noDefault', when: 'mass-is-close', about: 'scale-error', range: ['lb', 0, 10],
      fails: 'fix' },
    // common practice, from memory
    'shaft-ahead': { as: 'number', pause: 'draw', flags: 'noDefault unknown', about: 'shaft-ahead', cautions: 'draw let-down',
      range: ['in', -4, 12], fails: 'fix' },
  },
  'warm-up': {
    // common practice, read in excerpt
    'warm-up': { as: 'chunk', pause: 'shoot', flags: 'everyTune', when: 'release-aid', cautions: 'draw let-down',
      shop: 'warm-slow-draw warm-nothing-new',
      fix: 'warm-accessories warm-string warm-witness-marks warm-three-arrows warm-first-shot warm-steady warm-sheet@paper' },
  },
};
