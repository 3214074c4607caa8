// Beyond a hard limit the bow is brought back before anything else.

import { KNOBS, type KnobId } from '../../../src/content/types.ts';
import { adjustmentTold, asked, shotAsked, stepOf, type Invariant, type Moment } from '../moment.ts';
import { offsetOf } from './advice.ts';

export const nothingBeyondALimit: Invariant = {
  id: 'nothing-beyond-a-limit',
  rule: 'While an adjustment stands beyond its hard limit, or the nocking point outside level to 1/4 in above, nothing is drawn or shot and nothing else is adjusted: it is brought back first, whoever moved it.',
  held: 'machine/loop/inside.ts, brought-inside.ts, agenda.ts',
  broken(m) {
    const over = KNOBS.filter((knob) => beyond(m, knob));
    if (over.length === 0) return null;
    const told = adjustmentTold(m);
    const ask = asked(m);
    const drawn = ask !== null && (shotAsked(m) !== null || ['draw', 'shoot'].includes(stepOf(m.content, ask.step)?.pause ?? ''));
    if (drawn) return `${ask.step} is asked, and ${over.join(', ')} ${settingsIn(m, over)} is too far away`;
    return told === null ? null : `${told.advice.what}, and ${over.join(', ')} ${settingsIn(m, over)} is too far away`;
  },
};

const settingsIn = ({ bow }: Moment, knobs: readonly KnobId[]): string => `(${knobs.map((knob) => bow.settings()[knob] ?? 0).join(', ')})`;

/** What goes with a part that was replaced: what was moved of the old one says nothing of the new one. */
const GOES_WITH: Readonly<Record<string, readonly KnobId[]>> = {
  string: ['yoke', 'cam-sync', 'nock-height', 'drop-cord'], rest: ['rest-height', 'rest-side', 'drop-cord'], loop: ['nock-height'], arrow: ['point-weight'],
};

/** Finer than this nobody reads it: 1/64 in of nock height, 1/512 of anything else. */
const READ = { 'nock-height': 1 / 64 + 1 / 512 };
const UNSEEN = 1 / 512;

/** True of an adjustment that stands, or would stand at `now`, where nothing may be drawn. */
export function beyond(m: Moment, id: KnobId, now = m.bow.settings()[id] ?? 0): boolean {
  const { bow, gates, content, lines } = m;
  if (!bow.turned.some((turn) => turn.knob === id)) return false;
  const since = lines.findLast((line) => line.kind === 'changed' && GOES_WITH[line.what]?.includes(id))?.seq ?? 0;
  const then = bow.settingsBefore(since)[id] ?? 0;
  if (Math.abs(now - then) < UNSEEN) return false;
  const knob = content.knobs[id];
  const measuredSince = (step: string): boolean => gates.number(step) !== undefined && gates.answeredAt(step) >= since;
  if (id === 'nock-height' && measuredSince('nock-height')) {
    const moved = bow.settingsBefore(gates.answeredAt('nock-height'))[id] ?? 0;
    const level = moved - (gates.number('nock-height') ?? 0);
    const give = READ['nock-height'];
    // Measured anew after it was moved, the figure is all that counts.
    const origin = Math.min(level + 1 / 4, Math.max(level, then));
    const far = moved === 0 ? knob.hard : Infinity;
    return now < Math.max(origin - far, level) - give || now > Math.min(origin + far, level + 1 / 4) + give;
  }
  const origin = knob.from === 'maker' && measuredSince('centre-shot') ? -offsetOf(m, knob) : then;
  return Math.abs(now - origin) > knob.hard + UNSEEN;
}
