// What was wrong with a practice bow, in rows.

import { fill } from '../content/fill.ts';
import type { PracticeWords } from '../content/practice-words.ts';
import { knobEntries, type Content, type KnobId } from '../content/types.ts';
import type { RecordRow } from '../machine/types.ts';
import { formatQuantity } from '../maths/fractions.ts';
import { bookOf, type Adjustment } from '../practice/adjustment.ts';
import { AS_FOUND } from '../practice/condition.ts';
import type { Danger } from '../practice/danger.ts';
import type { Flight } from '../practice/flight.ts';
import { quietTear, type Trace } from '../practice/trace.ts';
import { truth } from '../practice/truth.ts';
import type { World } from '../practice/world.ts';
import { inInches, settingIn } from './debrief-words.ts';

type Says = PracticeWords['debrief'];

export function truthRows(content: Content, says: Says, words: PracticeWords, world: World, traced: Trace, flight: Flight): readonly RecordRow[] {
  const off = knobEntries(world.bow.adjustments).filter(([, { optimum, works }]) => optimum !== 0 && works !== 'not at all');
  const else_ = elseWords(content, says, words, world, traced);
  return [
    ...off.map(([id, one]) => ({
      name: content.knobs[id].name,
      value: fill(says['stood-off'], { to: settingIn(content, id, one.optimum), works: worksWords(says, one), gain: gainWords(content, says, world, id, flight) }),
    })),
    ...(off.length === 0 ? [{ name: says.adjustments, value: says['nothing-wrong'] }] : []),
    { name: says['other-wrong'], value: else_.length === 0 ? says['rest-sound'] : else_.join(' ') },
  ];
}

const worksWords = (says: Says, { works }: Adjustment): string =>
  ({ 'as the book says': says['works-book'], 'the other way': says['works-other'], 'not at all': says['works-not'] })[works];

/** How strongly it truly works, beside what the book says of it. */
function gainWords(content: Content, says: Says, world: World, id: KnobId, flight: Flight): string {
  const knob = content.knobs[id];
  const step = knob.book?.per ?? knob.smallest;
  const { x, y } = quietTear(world, AS_FOUND, flight);
  const moved = quietTear(world, { ...AS_FOUND, settings: { [id]: step } }, flight);
  const is = inInches(knob.axis === 'side' ? moved.x - x : moved.y - y);
  const unit = formatQuantity({ value: step, unit: knob.unit });
  const { perUnit } = bookOf(knob, world.bow.hardware);
  return perUnit === null ? fill(says['gain-no-book'], { unit, is }) : fill(says.gain, { unit, is, book: inInches(perUnit * step) });
}

function elseWords(content: Content, says: Says, words: PracticeWords, world: World, { memory: { condition }, shots, dangerTold }: Trace): readonly string[] {
  const { bow: { contact, loose, creep, danger } } = world;
  const { arrows, trouble } = truth(world);
  const found = (was: boolean, yes: string, no: string): string => (was ? yes : no);
  return [
    ...(contact === null ? [] : [fill(says.contact, { share: `${Math.round(contact.often * 100)} %` }), found(condition.contactCured, says['contact-cured'], says['contact-not'])]),
    ...(loose === null ? [] : [fill(says.loose, { knob: content.knobs[loose.knob].name, from: loose.from }), found(condition.tightened, says['loose-found'], says['loose-not'])]),
    ...(creep === null ? [] : [fill(says.creep, { by: inInches(creep.nock) })]),
    ...(trouble.handTwists ? [says.hand, found(condition.handRelaxed, says['hand-found'], says['hand-not'])] : []),
    ...arrows.map(({ arrow, fault }) => fill(says[`arrow-${fault}`], { arrow })),
    ...(danger === null ? [] : [dangerWords(says, words, danger, dangerTold, shots.length)]),
  ];
}

function dangerWords(says: Says, words: PracticeWords, danger: Danger, told: boolean, shots: number): string {
  const what = whatIsWrong(words, danger);
  return fill(told ? says['danger-told'] : shots > 0 ? says['danger-missed'] : says['danger-open'], { what, shots: `${shots} ${shots === 1 ? 'arrow' : 'arrows'}` });
}

/** The same sentence that was seen at the bow. */
function whatIsWrong({ looks, checks, numbers }: PracticeWords, { at, says }: Danger): string {
  if ('check' in at) return checks[at.check]?.not ?? at.check;
  const about = at.about.replace(/^gate:/, '');
  return looks[about]?.[String(says)] ?? fill(numbers[about] ?? about, { n: String(says) });
}
