// The question that stands, worked out from the state: a content step, a check, a shot, a move or a choice of the walk.

import type { Axis, Check, Content, Step } from '../content/types.ts';
import { agenda, chapterOf, lookUp, type Pending } from './agenda.ts';
import { arrowAsk } from './arrows/ask.ts';
import { holds, mayChoose } from './guards.ts';
import { PLUMB_YARDS } from './loop/gauge-plumb.ts';
import { insideAdvice } from './loop/inside-advice.ts';
import { currentSet } from './loop/sets.ts';
import { knownBows } from './known-bow.ts';
import { onceForBoth } from '../maths/once.ts';
import { isImpact, planOf } from './plan.ts';
import type { SetKind } from './notes.ts';
import type { State } from './state.ts';
import { nextQuestions } from './stops.ts';
import { bowKnobOf, type Advice, type Answer, type Ask, type Option, type ShotPlan } from './types.ts';
import { idOfPlace, phrase } from './words.ts';
import type { Place } from './places.ts';
import { axisOf, phaseOfPlace, placeOf } from './walk.ts';
import { AS_RECORDED, recordedFigures } from './recorded-figures.ts';

/** The standing ask; null where the walk is done. */
export const standingAsk: (content: Content, state: State) => Ask | null = onceForBoth((content: Content, state: State) => {
  const place = placeOf(state.walk);
  if (place === 'record') return null;
  if (place === 'stopped') return stoppedAsk(content, state);
  const [first] = agenda(content, state);
  if (first !== undefined) return askOf(content, state, first);
  if (place === 'asking') return insideAsk(content, state);
  return loopAsk(content, state, place);
});

// The question that leads out. Where it draws the bow, what must be looked at undrawn comes first even here.
function stoppedAsk(content: Content, state: State): Ask | null {
  const undrawn = (step: Step | undefined): boolean => step?.pause === 'talk' || step?.pause === 'undrawn';
  // Nobody draws for one stop while an older one waits for what is looked at, or for a dealer.
  const questions = nextQuestions(state.stop);
  const leadsOut = questions.find((id) => undrawn(lookUp(content, id)?.step)) ?? questions[0] ?? 'released';
  const ofSafety = new Set(content.chapters.filter((plan) => plan.id === 'safety').flatMap((plan) => plan.blocks.flatMap((block) => block.steps)));
  // What is asked on demand stands there only where it is due, or is told first for something that is.
  const first = agenda(content, state).find((p) => state.due.includes(p.id) || p.step.onDemand || ofSafety.has(p.step.id));
  const draws = !undrawn(lookUp(content, leadsOut)?.step);
  if (draws && first !== undefined && undrawn(first.step)) return askOf(content, state, first);
  return (draws ? insideAsk(content, state) : null) ?? askById(content, state, leadsOut);
}

// Nothing is drawn while something stands beyond its hard limit.
function insideAsk(content: Content, state: State): Ask | null {
  const advice = insideAdvice(content, state);
  return advice === null ? null : moveAsk(content, advice, 'put-it-back', phrase(content, 'why-putting-back'));
}

function moveAsk(content: Content, advice: Advice, step: 'make-the-move' | 'put-it-back', why: string): Ask | null {
  const knobId = bowKnobOf(advice);
  if (knobId === null) return null;
  const knob = content.knobs[knobId];
  return {
    kind: 'amount', about: 'moved', step, unit: knob.unit, max: Math.max(knob.hard * 4, advice.amount?.value ?? 0),
    short: phrase(content, 'moved-short', { what: advice.what }), text: knob.how, why: [advice.why, why], caution: advice.caution,
  };
}

export function askById(content: Content, state: State, id: string): Ask | null {
  const pending = lookUp(content, id);
  return pending === null ? null : askOf(content, state, pending);
}

/** `ask.about` of a step: measured facts keep their plain name, gates that are looked at are `gate:ID`. */
export const aboutOf = (step: Step): string => (step.kind === 'number' || step.effect !== 'gate' ? step.about.replace(/^gate:/, '') : `gate:${step.id}`);

export function askOf(content: Content, state: State, { id, step, check }: Pending): Ask {
  const cautions = step.cautions.flatMap((c) => content.cautions[c] ?? []);
  const suggestion = offered(state, step, state.suggestions[id]);
  const base = {
    step: id, why: step.why, caution: cautions,
    ...(suggestion === undefined ? {} : { suggestion }),
  };
  if (check !== undefined) return { ...base, ...checkAsk(content, check) };
  const common = {
    ...base, about: aboutOf(step), short: step.short, text: step.text,
    ...(step.unknown ? { unknown: true as const } : {}),
    ...(step.noDefault ? { noDefault: true as const } : {}),
  };
  switch (step.kind) {
    case 'choice':
      return { ...common, kind: 'choice', options: choiceOptions(state, id, step) };
    case 'number':
      return { ...common, kind: 'number', unit: step.unit, min: step.min, max: step.max, ...(step.pass === undefined ? {} : { pass: step.pass }) };
    case 'confirm':
      return { ...common, kind: 'confirm' };
    case 'text':
      return { ...common, kind: 'text' };
    case 'chunk':
      return {
        ...common, text: [...step.text, ...(id === AS_RECORDED ? recordedFigures(content, state) : []), phrase(content, 'pick-untrue')], kind: 'choice', many: true, noDefault: true,
        options: [
          { value: 'all true', label: phrase(content, 'all-true'), pass: true },
          ...step.checks.filter((c) => holds(state, c.when)).map((c) => ({ value: c.id, label: c.label })),
        ],
      };
  }
}

/** What was answered once is suggested only where it may still be chosen. */
function offered(state: State, step: Step, answer: Answer | undefined): Answer | undefined {
  return answer?.kind !== 'choice' || answer.values.every((value) => mayChoose(state, step, value)) ? answer : undefined;
}

function checkAsk(content: Content, check: Check) {
  return {
    kind: 'choice' as const, about: `gate:${check.id}`, short: check.label, text: [check.how, check.thenDo].filter((t) => t !== ''),
    unknown: true as const, noDefault: true as const,
    options: [
      { value: 'true', label: phrase(content, 'check-true'), pass: true as const },
      { value: 'false', label: phrase(content, 'check-false') },
    ],
  };
}

// Which bows are known is only known at run time.
function choiceOptions(state: State, id: string, step: Extract<Step, { kind: 'choice' }>): readonly Option[] {
  const own = step.options.filter((o) => holds(state, o.when ?? [])).map((o): Option => ({ value: o.value, label: o.label, ...(o.gate === 'pass' ? { pass: true as const } : {}) }));
  if (id !== 'bow' && id !== 'which-bow') return own;
  return [...knownBows(state).map((c) => ({ value: c.from, label: c.bow })), ...own];
}

function loopAsk(content: Content, state: State, place: Place): Ask | null {
  const ofArrows = arrowAsk(content, state, place);
  if (ofArrows !== null) return ofArrows;
  const phase = phaseOfPlace(place);
  const axis = axisOf(place);
  const none: readonly string[] = [];
  const base = { why: [phrase(content, `why-${idOfPlace(phase)}`)], caution: none };
  switch (phase) {
    case 'shooting':
    case 'proving':
    case 'proof':
      return shotAsk(content, state, phase, axis);
    case 'inspecting': {
      const inspection = content.inspections[state.notes.inspection ?? 'scatter'];
      return {
        ...base, kind: 'choice', about: 'inspected', step: `inspect-${inspection.id}`, short: phrase(content, 'inspect-short'), text: inspection.say,
        noDefault: true, options: inspection.options.map((o) => ({ value: o.value, label: o.label })),
      };
    }
    case 'advising':
    case 'puttingBack': {
      const { advice } = state;
      return advice === null ? null : moveAsk(content, advice, phase === 'advising' ? 'make-the-move' : 'put-it-back', phrase(content, `why-${idOfPlace(phase)}`));
    }
    case 'passed':
      return {
        ...base, kind: 'choice', about: 'finishing', step: 'finishing-step', short: phrase(content, 'finishing-short'), text: [phrase(content, 'finishing-text')],
        options: [
          { value: 'leave', label: phrase(content, 'finishing-leave') },
          { value: 'one more step', label: phrase(content, 'finishing-step') },
        ],
      };
    case 'offering':
      return {
        ...base, kind: 'choice', about: 'accept', step: 'leave-or-go-on', noDefault: true, short: phrase(content, 'accept-short'), text: [phrase(content, 'accept-text')],
        options: [
          { value: 'accept', label: phrase(content, 'accept-leave') },
          { value: 'go on', label: phrase(content, 'accept-go-on') },
        ],
      };
    // Where nothing of the loop is asked.
    case 'safety': case 'baseline': case 'warmUp': case 'preparing': case 'farther': case 'looking': case 'indexing': case 'tightening': case 'closing':
    case 'record': case 'asking': case 'stopped':
      return null;
  }
}

const PLUMB_DISTANCES = `${PLUMB_YARDS.slice(0, -1).join(', ')} and ${PLUMB_YARDS.at(-1)} yd`;

function shotAsk(content: Content, state: State, phase: string, axis: Axis | null): Ask {
  const plan = planOf(state);
  const { of } = state.notes;
  const why = phase === 'shooting' ? (state.notes.purpose === 'resume' ? 'resume' : 'shooting') : phase;
  const purpose = why === 'shooting' && of !== 'paper' ? of : why;
  const common = {
    step: `shoot-${why}`, ...plan, ...(axis === null ? {} : { axis }),
    why: [phrase(content, `why-${purpose}`), phrase(content, 'why-called')],
    // Blades are about through the whole of such a set, also while a field point is shot.
    caution: (of === 'broadheads' ? ['draw', 'blades'] : ['draw']).flatMap((id) => content.cautions[id] ?? []),
  };
  const { shots: { taken, wanted }, distance: { value: distance } } = plan;
  const n = Math.min(taken + 1, wanted);
  if (!isImpact(of)) {
    return {
      ...common, kind: 'tear', about: 'tear',
      short: phrase(content, 'shoot-short', { distance, n, of: wanted }),
      text: taken === 0 ? [phrase(content, `shoot-${why}`, { wanted, distance: `${distance} ft` }), phrase(content, 'shoot-how')] : [phrase(content, 'shoot-next')],
    };
  }
  // Groups count in pairs: which of them this is, is told by what is shot now.
  const shot = (currentSet(state)?.shots.filter((one) => one.good).length ?? 0) + 1;
  const kind = kindOf(of, plan);
  const next = of === 'plumb' ? phrase(content, 'shoot-next-plumb', { distance }) : phrase(content, `shoot-next-${kind}`);
  const opening = why === 'shooting' ? phrase(content, `shoot-${of}`, { wanted, distance }) : phrase(content, `shoot-${why}`, { wanted, distance: of === 'plumb' ? PLUMB_DISTANCES : `${distance} yd` });
  return {
    ...common, kind: 'impact', about: 'impact',
    short: phrase(content, 'shoot-impact-short', { n: Math.min(shot, wanted), of: wanted, distance, what: phrase(content, `what-${kind}`) }),
    text: shot === 1 ? [opening, phrase(content, of === 'plumb' ? 'shoot-plumb-how' : 'shoot-impact-how'), next] : [next],
  };
}

/** The one word that tells this shot from the others of its set. */
function kindOf(of: SetKind, { shaft, head }: ShotPlan): 'broadhead' | 'field' | 'unfletched' | 'fletched' {
  if (of === 'broadheads') return head === 'broadhead' ? 'broadhead' : 'field';
  return shaft;
}

/** Where the walk is, for a heading: chapter and the part under way. */
export const partOf = (content: Content, state: State): string => {
  const place = placeOf(state.walk);
  const chapter = chapterOf(state);
  if (place === 'stopped') return phrase(content, 'part-stopped');
  if (!['paper', 'broadheads', 'arrows'].includes(chapter)) return '';
  const stage = place.startsWith(`${chapter}.`) ? (place.split('.')[1] ?? '') : 'asking';
  return phrase(content, `part-${idOfPlace(stage)}`);
};
