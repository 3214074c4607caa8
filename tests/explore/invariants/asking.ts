// What a question must carry: a deliberate pick where it can hurt most, and the caution that belongs to the work.

import type { Content } from '../../../src/content/types.ts';
import { asked, first, stepOf, workTold, type Invariant, type Moment } from '../moment.ts';

/** What happened to the bow, the limbs, the axle ends, the arrows flexed, what stands behind the paper. */
export const THE_FIVE: readonly string[] = ['history', 'limbs', 'axle-clips', 'arrows-flexed', 'backstop'];

export const pickedOnPurpose: Invariant = {
  id: 'picked-on-purpose',
  rule: 'What can hurt most is asked by itself and answered by a deliberate pick: no default, nothing filled in, never as part of a list that one key ticks.',
  held: 'content (noDefault), content/lint/safety.ts, machine/ask.ts; screens for the keys',
  broken(m) {
    const ask = asked(m);
    if (ask === null) return null;
    const [id = '', check] = ask.step.split('/');
    const chunk = stepOf(m.content, id)?.kind === 'chunk';
    if (!THE_FIVE.includes(id) && !chunk) return null;
    if (ask.noDefault !== true) return `${ask.step} can be answered without a pick`;
    if (THE_FIVE.includes(id) && ask.kind === 'choice' && ask.many === true) return `${ask.step} is one of a list`;
    if (chunk && check !== undefined && ask.kind === 'choice' && ask.unknown !== true) return `${ask.step} does not take "not known"`;
    return null;
  },
};

interface Cautioned {
  readonly work: string;
  readonly at: (m: Moment) => boolean;
  /** All of these are said. */
  readonly words: readonly RegExp[];
}

const step = (...ids: readonly string[]) => (m: Moment): boolean => ids.includes(asked(m)?.step.split('/')[0] ?? '') && !(asked(m)?.step ?? '').includes('/');
const knob = (...ids: readonly string[]) => (m: Moment): boolean => ids.includes(workTold(m)?.knob ?? '');
const drawn = ({ pause }: Content['steps'][string]): boolean => pause === 'draw' || pause === 'shoot';

// Common practice, and what manuals of bows, presses and arrows ask for. By hand nobody draws for a draw weight: that is a rig.
const CAUTIONED: readonly Cautioned[] = [
  { work: 'a press', at: (m) => workTold(m)?.press === true || knob('yoke', 'cam-spacers', 'cam-sync')(m) || step('press', 'after-press')(m), words: [/press/i, /maker allows/i, /shown how/i, /dealer/i] },
  { work: 'limb bolts', at: (m) => knob('limb-bolts')(m) || step('bolts-top', 'bolts-bottom', 'after-bolts')(m), words: [/lock/i, /alike/i, /limit/i] },
  { work: 'flexing', at: step('arrows-flexed', 'arrow-check', 'broadhead-arrows', 'points-back', 'unfletched-ready'), words: [/carbon/i, /away from your face/i, /gloves/i] },
  { work: 'the loop', at: (m) => knob('nock-height')(m) || step('loop-check')(m), words: [/loop/i, /full draw/i] },
  { work: 'nocks', at: (m) => m.view.advice?.arrow !== undefined || step('turn-the-set')(m), words: [/whole/i, /seated/i, /dry\s+fire/i] },
  { work: 'broadheads', at: (m) => step('broadheads-wanted', 'broadhead-place', 'broadhead-arrows', 'blades-ahead', 'first-broadhead', 'heads-swapped', 'points-back')(m) || isBroadhead(m), words: [/head/i, /covered/i] },
  { work: 'a rig', at: step('peak-weight', 'lean'), words: [/rig|board|stand/i, /cannot\s+let go/i, /no arrow/i] },
  { work: 'a draw by hand', at: (m) => isShot(m) || (stepOf(m.content, asked(m)?.step ?? '') !== undefined && drawn(stepOf(m.content, asked(m)?.step ?? '')!) && !step('peak-weight')(m)), words: [/checked arrow/i, /backstop/i, /finger|thumb/i] },
];

const isShot = (m: Moment): boolean => ['tear', 'impact'].includes(asked(m)?.kind ?? '');
function isBroadhead(m: Moment): boolean {
  const ask = asked(m);
  return ask?.kind === 'impact' && ask.head === 'broadhead';
}

export const cautionStandsThere: Invariant = {
  id: 'caution-stands-there',
  rule: 'Every press, bolt, flexing, nock, loop, broadhead and drawing step carries its caution, at that very step.',
  held: 'content (cautions), content/lint; machine/ask.ts, loop/advise.ts',
  broken(m) {
    const said = [...(asked(m)?.caution ?? []), ...(workTold(m)?.caution ?? [])].join(' ');
    if (asked(m) === null && workTold(m) === null) return null;
    return first(CAUTIONED.filter(({ at, words }) => at(m) && !words.every((word) => word.test(said)))
      .map(({ work, words }) => `${m.view.step} is work with ${work}, and its caution lacks ${words.find((word) => !word.test(said))}`));
  },
};
