// What each adjustment needs, whose it is, and where it stands on a ladder. How far it may go stands in ../limits.ts.
// Common practice but where a row says more. A yoke, spacers and timing are work in a press: for trained hands alone.

import type { Book } from './shape.ts';

export const ADJUSTING: Book['knobs'] = {
  // Undrawn, one screw at a time: tightening can move it.
  'rest-height': {
    press: false, from: 'start', trigger: 'rest-height', instead: 'nock-height', cams: 'any',
    says: [/bow undrawn/i, /loosen only/i, /tighten, then read again/i],
  },
  // Contact first: a vane that touches makes a tear that no rest cures. Counted from the maker's figure, and at most 1/32 in to
  // finish beside a yoke or side screws: a rest far from centre hides a lean.
  'rest-side': {
    press: false, from: 'maker', trigger: 'rest-side', needs: 'contact', cams: 'any', after: 'yoke cam-screw',
    beside: { 'yoke': 1 / 32, 'cam-screw': 1 / 32 },
    says: [/bow undrawn/i, /loosen only/i, /tighten, then read again/i],
  },
  // A loop that slips at full draw is a blow to the face; a nock below level bounces off the rest.
  'nock-height': {
    press: false, from: 'start', trigger: 'nock-height', cautions: 'loop', instead: 'rest-height', cams: 'any', after: 'rest-height',
    says: [/bow undrawn/i, /measure the nock height first/i, /pull the knots hard/i, /measure again/i, /never below level, never over 1\/4 in/i],
  },
  // As many half twists in as out, read in excerpt; lean at full draw is looked at first.
  'yoke': {
    press: true, from: 'start', trigger: 'yoke', cautions: 'press', needs: 'contact lean', cams: 'yoke single-cam',
    says: [/press only as far/i, /as many the other way/i, /before you let the press off: string and cables in every track/i],
  },
  // Only by the maker's sheet; the total width stays.
  'cam-spacers': {
    press: true, from: 'start', trigger: 'cam-spacers', cautions: 'press', needs: 'contact cam-range', cams: 'two-track hybrid', after: 'rest-side',
    says: [/only as the maker's sheet shows, both cams alike/i, /never past the end of the set/i, /clips on at both ends/i],
  },
  // The maker's range, bow undrawn, locked afterwards.
  'cam-screw': {
    press: false, from: 'start', trigger: 'cam-screw', cautions: 'manual', needs: 'contact cam-range', cams: 'screw-adjust',
    says: [/only with the bow undrawn/i, /only inside the maker's range/i, /still growing: a dealer/i, /both cams alike/i, /lock it again/i],
  },
  // Until both stops touch, by the cable that the manual names: never one rung of a ladder.
  'cam-sync': {
    press: true, from: 'start', trigger: 'cam-sync', cautions: 'press', needs: 'cam-range', cams: '',
    says: [/the manual names the cable; if it does not, leave this to an authorised dealer/i, /one half twist, then look again/i, /within 1\/16 in: then leave it/i],
  },
  // Both alike, by quarter turns, inside the maker's turns; locks first and last. Read in excerpt: few turns.
  'limb-bolts': {
    press: false, from: 'start', trigger: 'limb-bolts', cautions: 'bolts', cams: '',
    says: [/loosen the lock screws/i, /1\/4 turn at one end, then 1\/4 turn at the other/i, /never one bolt more than half a turn ahead/i,
      /never past the maker's limit/i, /tighten the locks/i, /measure the draw weight again/i],
  },
  // Read in excerpt: at least 5 grains for each pound.
  'point-weight': {
    press: false, from: 'start', trigger: 'arrow-changed', cams: '',
    says: [/field points only/i, /weigh the lightest finished arrow again/i, /at least 5\.0 gr for each lb/i],
  },
  // Set undrawn, then seen in one slow draw.
  'drop-cord': {
    press: false, from: 'start', trigger: 'drop-cord', cautions: 'draw let-down', cams: '',
    says: [/draw slowly once with an arrow on/i],
  },
};
