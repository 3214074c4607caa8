// The caps of content on how far an adjustment may be moved, each lifted by itself in code: what does it cost in shots and moves, and what does it prevent?
// Each is played on bows that have the adjustment, shipped and lifted, with the same luck.

import { knobEntries, type Axis, type Content, type Knob, type KnobId, type LadderRule } from '../../../src/content/types.ts';
import type { Hardware } from '../../../src/practice/hardware.ts';

interface Cap { readonly about: string; readonly knob: KnobId; readonly axis: Axis; readonly lifted: (knob: Knob) => Partial<Knob> }

/** A limit that is lifted: twice as far, where bows have their screws' ends. */
const lifted = ({ hard }: Knob): Partial<Knob> => ({ soft: 2 * hard, hard: 2 * hard });

export const CAPS = {
  'rest-height first': { about: 'first step 1/32 in: 1/16', knob: 'rest-height', axis: 'height', lifted: ({ later }) => ({ first: later, firstWhenFar: null }) },
  'rest-height far': { about: 'first step 1/16 in where far off: 1/32 always', knob: 'rest-height', axis: 'height', lifted: () => ({ firstWhenFar: null }) },
  'rest-height later': { about: 'later steps 1/16 in: any', knob: 'rest-height', axis: 'height', lifted: ({ hard }) => ({ later: 2 * hard }) },
  'rest-height soft': { about: 'soft limit 1/16 in: 1/8', knob: 'rest-height', axis: 'height', lifted: ({ hard }) => ({ soft: hard }) },
  'rest-height hard': { about: 'both limits: 1/4 in', knob: 'rest-height', axis: 'height', lifted },
  'rest-side first': { about: 'a trial of 1/32 in: 1/16', knob: 'rest-side', axis: 'side', lifted: ({ soft }) => ({ first: soft }) },
  'rest-side later': { about: 'later steps 1/32 in: any', knob: 'rest-side', axis: 'side', lifted: ({ hard }) => ({ later: 2 * hard }) },
  'rest-side soft': { about: "soft limit 1/16 in, 1/32 behind other rungs: 1/8", knob: 'rest-side', axis: 'side', lifted: ({ hard }) => ({ soft: hard }) },
  'rest-side hard': { about: 'all limits: 1/4 in', knob: 'rest-side', axis: 'side', lifted },
  'yoke first': { about: 'first step 1 pair, 2 where far off: 2', knob: 'yoke', axis: 'side', lifted: ({ later }) => ({ first: later, firstWhenFar: null }) },
  'yoke later': { about: 'later steps 2 pairs: any', knob: 'yoke', axis: 'side', lifted: ({ hard }) => ({ later: 2 * hard }) },
  'yoke soft': { about: 'soft limit 4 pairs: 6', knob: 'yoke', axis: 'side', lifted: ({ hard }) => ({ soft: hard }) },
  'yoke hard': { about: 'both limits: 12 pairs', knob: 'yoke', axis: 'side', lifted },
  'cam-screw first': { about: 'a trial of 1/4 turn: 1/2', knob: 'cam-screw', axis: 'side', lifted: ({ later }) => ({ first: later }) },
  'cam-screw soft': { about: 'soft limit 1 turn: 1 1/2', knob: 'cam-screw', axis: 'side', lifted: ({ hard }) => ({ soft: hard }) },
  'cam-screw hard': { about: 'both limits: 3 turns', knob: 'cam-screw', axis: 'side', lifted },
  'cam-spacers soft': { about: 'soft limit 2 sizes: 3', knob: 'cam-spacers', axis: 'side', lifted: ({ hard }) => ({ soft: hard }) },
  'cam-spacers hard': { about: 'both limits: 6 sizes', knob: 'cam-spacers', axis: 'side', lifted },
} as const satisfies Readonly<Record<string, Cap>>;

export type CapName = keyof typeof CAPS;
export const CAP_NAMES = Object.keys(CAPS).filter((name): name is CapName => name in CAPS);

/** Bows that have the adjustment, and whose archer may move it; and the adjustments that are played on each kind. */
export const KINDS = {
  'any bow': {},
  'a yoke and a press': { cams: 'yoke', press: 'trained' },
  'side screws': { cams: 'screw-adjust' },
  'spacers and a press': { cams: 'two-track', press: 'trained' },
} as const satisfies Readonly<Record<string, Partial<Hardware>>>;
export type Kind = keyof typeof KINDS;
export const KIND_NAMES = Object.keys(KINDS).filter((name): name is Kind => name in KINDS);

export const isKind = (name: string): name is Kind => name in KINDS;

const OF: Readonly<Partial<Record<KnobId, Kind>>> = { 'yoke': 'a yoke and a press', 'cam-screw': 'side screws', 'cam-spacers': 'spacers and a press' };
export const kindOf = (name: CapName): Kind => OF[CAPS[name].knob] ?? 'any bow';

const withoutSoft = ({ soft: _soft, ...rung }: LadderRule['rungs'][number]): LadderRule['rungs'][number] => rung;

export function withoutCap(shipped: Content, name: CapName): Content {
  const { knob: id, lifted: lift }: Cap = CAPS[name];
  const change = lift(shipped.knobs[id]);
  const knobs = Object.fromEntries(knobEntries(shipped.knobs).map(([other, knob]) => [other, other === id ? { ...knob, ...change } : knob]));
  // A ladder may hold an adjustment narrower than its own soft limit: lifted with it.
  const ladders = change.soft === undefined ? shipped.ladders
    : shipped.ladders.map((rule) => ({ ...rule, rungs: rule.rungs.map((rung) => (rung.knob === id ? withoutSoft(rung) : rung)) }));
  return { ...shipped, knobs: { ...shipped.knobs, ...knobs }, ladders };
}
