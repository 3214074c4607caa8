// The caps of content on how far an adjustment may be moved, each lifted by itself in code: what does it cost, and what does it save?

import type { Content, Knob, KnobId } from '../../../src/content/types.ts';

interface Cap { readonly about: string; readonly knob: KnobId; readonly lifted: (knob: Knob) => Partial<Knob> }

export const CAPS = {
  'rest-height-soft': { about: 'rest height: as far as the hard limit', knob: 'rest-height', lifted: ({ hard }) => ({ soft: hard }) },
  'rest-height-steps': { about: 'rest height: any step inside the limits', knob: 'rest-height', lifted: ({ hard }) => ({ first: hard, firstWhenFar: null, later: hard }) },
  'rest-side-trial': { about: 'rest sideways: the first step up to the soft limit', knob: 'rest-side', lifted: ({ soft }) => ({ first: soft }) },
  'yoke': { about: 'yoke: any step, as far as the hard limit', knob: 'yoke', lifted: ({ hard }) => ({ first: hard, firstWhenFar: null, later: hard, soft: hard }) },
} as const satisfies Readonly<Record<string, Cap>>;

export type CapName = keyof typeof CAPS;
export const CAP_NAMES = Object.keys(CAPS).filter((name): name is CapName => name in CAPS);

export function withoutCap(shipped: Content, name: CapName): Content {
  const cap: Cap = CAPS[name];
  const knob = shipped.knobs[cap.knob];
  return { ...shipped, knobs: { ...shipped.knobs, [cap.knob]: { ...knob, ...cap.lifted(knob) } } };
}
