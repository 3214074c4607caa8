// How often everything comes that a practice bow, its archer and its arrows are drawn with: all chances in one table. None is measured. Each is assumed, so
// that a bow by its number has one or two things wrong and each trouble comes often enough to be met; how an adjustment answers comes from content's book.

export const OFTEN = {
  bow: {
    /** Nothing is off on an axis. */
    inOrder: 0.25,
    /** Of what is off: which adjustment, on each axis. The other half sideways lies in the cams or their cables. */
    height: { 'rest-height': 0.6, 'nock-height': 0.25, 'cam-sync': 0.15 },
    side: { 'rest-side': 0.5, 'of the cams': 0.5 },
    /** The limb bolts stand off besides. */
    bolts: 0.06,
    /** An axis is off and no adjustment can mend it: its screws end too early, or answer too weakly inside their limits. */
    beyondReach: 0.05, screwsEnd: 0.5,
    /** A screw stands near its end on one side, each. */
    nearItsEnd: 0.05,
    contact: 0.08, loose: 0.05, creep: 0.15,
    /** Must not be shot before a dealer had it, and, of all others, not before the archer has mended it. */
    deadly: 0.03, mendable: 0.05,
    figureKnown: 0.8, sixtyPounds: 0.6,
  },
  hardware: { rightHand: 0.85, fineScrew: 0.75 },
  archer: {
    /** Of shots: failed, that called before the hole is looked at, and a good one called bad. */
    fails: 0.05, callsIt: 0.6, callsGood: 0.02,
    twists: 0.12,
    /** Now and then reads a sheet from behind, and how often then. */
    readsFromBehind: 0.1, fromBehind: 0.03,
    /** Of moves: a step too many or too few, and of these seen and told. */
    wrongAmount: 0.03, wrongTold: 0.6,
    /** Of looks for what is there. */
    finds: 0.85,
    hunts: 0.6, bladesThatOpen: 0.25, shootsAll: 0.5,
  },
  arrows: { oneBad: 0.2, fourVanes: 0.15, unevenShafts: 0.5 },
} as const;
