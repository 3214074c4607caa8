// What is asked around broadheads, arrows and the finish.

import type { StepRows } from './shape.ts';

export const LATER_ON: StepRows = {
  'broadheads': {
    // common practice, read in excerpt
    'use': { as: 'choice', effect: 'chosen', pause: 'talk', cautions: 'broadheads', route: 'target three-d hunting' },
    // common practice, read in excerpt
    'broadheads-wanted': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune', when: 'hunts adult launch-settled',
      only: 'adult', cautions: 'broadheads', route: 'fixed mechanical later never' },
    // common practice
    'broadhead-place': { as: 'chunk', pause: 'undrawn', flags: 'everyTune', when: 'shoots-broadheads', only: 'shoots-broadheads',
      cautions: 'blades', lookUp: 'place-allowed',
      fix: 'place-target place-behind place-people place-air place-dots place-distance place-covered' },
    // common practice, read in excerpt
    'broadhead-arrows': { as: 'chunk', pause: 'undrawn', flags: 'everyTune', when: 'shoots-broadheads', only: 'shoots-broadheads',
      cautions: 'blades flex',
      fix: 'heads-six heads-sound heads-same-mass heads-mass-floor heads-blades heads-wrench heads-inserts heads-spun' },
    // common practice
    'blades-ahead': { as: 'number', pause: 'undrawn', flags: 'everyTune noDefault unknown', when: 'shoots-broadheads',
      only: 'shoots-broadheads', cautions: 'blades', range: ['in', -2, 12], least: 0.5, fails: 'fix' },
    // common practice
    'sight-at-20': { as: 'confirm', effect: 'chosen', pause: 'shoot', flags: 'everyTune', when: 'shoots-broadheads',
      only: 'shoots-broadheads', cautions: 'draw' },
    // common practice
    'first-broadhead': { as: 'chunk', pause: 'shoot', flags: 'everyTune', when: 'shoots-broadheads', only: 'shoots-broadheads',
      cautions: 'draw blades flex', fix: 'first-head-flew first-head-landed first-head-bow first-head-arrow' },
    // common practice
    'heads-swapped': { as: 'chunk', pause: 'undrawn', flags: 'everyTune onDemand', when: 'shoots-broadheads', only: 'shoots-broadheads',
      cautions: 'blades flex', fix: 'swap-shafts swap-looked swap-wrench swap-spun swap-clear' },
    // common practice
    'broadheads-farther': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', when: 'shoots-broadheads',
      only: 'shoots-broadheads', route: 'farther enough' },
    // common practice
    'points-back': { as: 'chunk', pause: 'undrawn', anywhere: true, flags: 'everyTune onDemand', cautions: 'blades flex',
      fix: 'points-on points-counted points-shafts' },
  },
  'arrows': {
    // common practice
    'arrows-wanted': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune', when: 'arrows-by-paper', route: 'all later' },
    // common practice
    'arrow-bench': { as: 'chunk', pause: 'undrawn', flags: 'everyTune', when: 'arrows-by-paper all-arrows', cautions: 'flex',
      fix: 'bench-numbered bench-flexed bench-spin bench-straight bench-points bench-nocks bench-vanes', note: 'bench-mass' },
    // common practice
    'arrows-in-set': { as: 'number', effect: 'chosen', pause: 'undrawn', flags: 'everyTune noDefault onDemand' },
    // common practice
    'arrow-out': { as: 'number', effect: 'chosen', pause: 'undrawn', flags: 'everyTune noDefault onDemand' },
    // common practice
    'nock-stays': { as: 'number', effect: 'chosen', pause: 'undrawn', flags: 'everyTune noDefault onDemand' },
    // common practice
    'paper-again': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune onDemand', route: 'now leave' },
    // common practice
    'vanes': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'onDemand', route: 'three four-even four-uneven other' },
    // common practice
    'nock-turns': { as: 'choice', effect: 'chosen', pause: 'undrawn', flags: 'onDemand', route: 'turns fixed' },
    // common practice
    'turned-clears': { as: 'choice', effect: 'chosen', pause: 'undrawn', flags: 'onDemand', route: 'clears touches' },
  },
  'finish': {
    // common practice
    'tightened': { as: 'chunk', pause: 'undrawn', flags: 'everyTune',
      fix: 'tight-rest tight-sight tight-locks tight-stops tight-witness tight-written' },
    // common practice; with fingers nothing is shot with this coach, and nobody has warmed up
    'sight-last': { as: 'confirm', effect: 'chosen', pause: 'shoot', flags: 'everyTune', when: 'release-aid', cautions: 'draw' },
    // common practice
    'proving-shot': { as: 'confirm', effect: 'chosen', pause: 'shoot', flags: 'everyTune', when: 'nock-was-turned', cautions: 'draw' },
    // common practice: figures for the card, each of which may be left out
    'figures-wanted': { as: 'choice', effect: 'chosen', pause: 'talk', flags: 'everyTune', route: 'no yes' },
    'arrow-speed': { as: 'number', effect: 'measured', pause: 'shoot', flags: 'unknown', when: 'figures-wanted release-aid', only: 'figures-wanted release-aid',
      cautions: 'draw', range: ['fps', 100, 450] },
    // common practice: what is read off a rig, or in papers, and never off an archer who holds a bow drawn for it
    'second-mass': { as: 'number', effect: 'measured', pause: 'talk', flags: 'unknown', when: 'figures-wanted speed-told', range: ['gr', 100, 1500] },
    'holding-weight': { as: 'number', effect: 'measured', pause: 'talk', flags: 'unknown', when: 'figures-wanted', cautions: 'rig', range: ['lb', 1, 60] },
    'draw-mark': { as: 'number', effect: 'measured', pause: 'talk', flags: 'unknown', when: 'figures-wanted', cautions: 'rig', range: ['in', 14, 34] },
    'rated-speed': { as: 'number', effect: 'measured', pause: 'talk', flags: 'unknown', when: 'figures-wanted papers-tell-speed', range: ['fps', 150, 400] },
  },
};
