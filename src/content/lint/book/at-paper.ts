// What is asked while the bow is adjusted: causes, after work, stops, ways without paper.

import type { StepRows } from './shape.ts';

export const AT_PAPER: StepRows = {
  'paper': {
    // common practice
    'cams': { as: 'choice', effect: 'chosen', pause: 'undrawn', flags: 'onDemand',
      route: 'yoke single-cam hybrid two-track screw-adjust unknown' },
    // common practice
    'rest': { as: 'choice', effect: 'chosen', pause: 'undrawn', flags: 'onDemand',
      route: 'drop-away-cable drop-away-limb blade containment prong unknown' },
    // common practice
    'press': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'onDemand', when: 'adult', only: 'adult', cautions: 'press',
      route: 'trained shop none' },
    // common practice
    'rest-scale': { as: 'choice', effect: 'chosen', pause: 'undrawn', flags: 'onDemand', route: 'fine-screw coarse' },
    // common practice
    'contact': { as: 'choice', effect: 'chosen', pause: 'shoot', flags: 'onDemand', cautions: 'draw', route: 'clean smear unknown' },
    // common practice
    'grip': { as: 'choice', effect: 'chosen', pause: 'shoot', flags: 'everyTune onDemand', cautions: 'draw', route: 'same moved' },
    // common practice
    'face': { as: 'choice', effect: 'chosen', pause: 'shoot', flags: 'everyTune onDemand', cautions: 'draw', route: 'same moved' },
    // common practice, read in excerpt
    'lean': { as: 'choice', effect: 'chosen', pause: 'draw', flags: 'everyTune onDemand', cautions: 'rig draw',
      route: 'straight leans-left leans-right not-seen' },
    // common practice
    'cam-range': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'noDefault onDemand', cautions: 'manual',
      route: 'known not-known' },
    // common practice
    'after-press': { as: 'chunk', pause: 'undrawn', flags: 'onDemand', cautions: 'press',
      shop: 'press-tracks press-loops press-clips press-no-crack',
      fix: 'press-counted press-legs press-timing-marks press-cable-guard press-peep' },
    // common practice, read in excerpt
    'after-bolts': { as: 'chunk', pause: 'undrawn', flags: 'onDemand', cautions: 'bolts', shop: 'bolts-pockets',
      fix: 'bolts-alike bolts-inside bolts-locks' },
    // common practice
    'rest-check': { as: 'chunk', pause: 'draw', flags: 'onDemand', cautions: 'draw let-down',
      fix: 'rest-tight rest-stays-on rest-cord@drop-away rest-arm-cable@cable-driven rest-arm-limb@limb-driven rest-blade@blade rest-brushes@containment rest-vanes' },
    // common practice
    'loop-check': { as: 'chunk', pause: 'undrawn', flags: 'onDemand', cautions: 'loop',
      fix: 'loop-knots loop-centred loop-breathing loop-height loop-to-peep' },
    // common practice
    'slow-draw': { as: 'chunk', pause: 'draw', flags: 'onDemand', cautions: 'draw let-down', shop: 'slow-tracks slow-noise',
      fix: 'slow-watcher slow-arrow-stayed slow-stops' },
    // common practice
    'first-shot': { as: 'chunk', pause: 'shoot', flags: 'onDemand', cautions: 'draw flex', shop: 'shot-sound shot-bow',
      fix: 'shot-lane shot-flew shot-arrow' },
    // common practice
    'marks': { as: 'chunk', pause: 'undrawn', flags: 'onDemand', shop: 'mark-axles mark-brace',
      fix: 'mark-witness mark-nock mark-centre' },
    // common practice, read in excerpt
    'arrow-check': { as: 'chunk', pause: 'undrawn', flags: 'onDemand', cautions: 'flex blades',
      fix: 'arrow-feel arrow-flexed arrow-nock arrow-point arrow-vanes arrow-same' },
    // common practice
    'fit-to-shoot': { as: 'choice', pause: 'talk', flags: 'noDefault onDemand', fix: 'tired', pass: 'fresh' },
    // common practice
    'what-happened': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'noDefault onDemand', cautions: 'let-down',
      route: 'bow arrow person nothing' },
    // common practice
    'released': { as: 'text', effect: 'chosen', pause: 'talk', flags: 'onDemand', cautions: 'manual' },
    // common practice
    'someone-hurt': { as: 'choice', pause: 'talk', flags: 'noDefault onDemand', fix: 'not-well', pass: 'well' },
    // common practice
    'what-was-changed': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune noDefault onDemand', route: 'arrows bolts other nothing' },
    // common practice, read in excerpt
    'method': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', when: 'no-paper',
      route: 'unfletched@adult plumb-line none' },
    // common practice, read in excerpt
    'unfletched-ready': { as: 'chunk', pause: 'undrawn', flags: 'everyTune onDemand', when: 'unfletched', only: 'unfletched',
      cautions: 'flex', fix: 'bare-grown bare-skill bare-shafts bare-tape bare-flexed bare-backstop bare-people bare-distance bare-air' },
    // common practice
    'first-unfletched': { as: 'chunk', pause: 'shoot', flags: 'everyTune onDemand', when: 'unfletched', only: 'unfletched',
      cautions: 'draw flex', fix: 'bare-landed bare-angle bare-clean bare-flexed-after' },
    // common practice, read in excerpt
    'plumb-ready': { as: 'chunk', pause: 'undrawn', flags: 'everyTune onDemand', when: 'plumb-line',
      fix: 'plumb-hung plumb-tall plumb-yards plumb-seen plumb-people plumb-air plumb-level plumb-aim plumb-skill' },
  },
};
