// Faults planted on purpose, one at a time: in a copy of the sources, or in a copy of the content. Each must be caught by the
// promise that it is named under; a promise that none of these can break does not count as one.

import type { Content, Step } from '../../src/content/types.ts';
import type { Patch } from './bundle.ts';
import type { Narrowed } from './walks.ts';

export interface Fault {
  readonly id: string;
  /** What went wrong, in words. */
  readonly what: string;
  /** The promise that must catch it. */
  readonly breaks: string;
  /** Where it shows, and a seed that soon comes to it, for what is rare elsewhere. */
  readonly at?: Narrowed & { readonly seed?: number };
  /** In the sources ... */
  readonly patch?: Patch;
  /** ... or in the content. */
  readonly spoil?: (content: Content) => Content;
}

type Loose<T> = { -readonly [K in keyof T]: T[K] };

const inSource = (id: string, breaks: string, what: string, file: string, find: string, replace: string, at?: Fault['at']): Fault =>
  ({ id, breaks, what, patch: { file: `src/${file}`, find, replace }, ...(at === undefined ? {} : { at }) });

const inContent = (id: string, breaks: string, what: string, change: (content: Content) => void): Fault => ({
  id, breaks, what,
  spoil: (content) => {
    const copy = structuredClone(content);
    change(copy);
    return copy;
  },
});

function spoilStep(content: Content, id: string, change: (step: Loose<Step>) => void): void {
  const step = content.steps[id];
  if (step === undefined) throw new Error(`the content has no step "${id}": mend tests/explore/faults.ts`);
  change(step);
}

const recheck = (content: Content, trigger: keyof Content['rechecks'], ids: readonly string[]): void => {
  (content.rechecks as Record<string, readonly string[]>)[trigger] = ids;
};

const unplaced = (content: Content, id: string): void => {
  for (const { blocks } of content.chapters) for (const block of blocks as Loose<typeof blocks[number]>[]) block.steps = block.steps.filter((step) => step !== id);
};

const UNEVEN = {
  find: `      return 2 * Math.min(a.length, b.length);
    },
    // Always as many of each: told three at once, one kind may be ahead.
    whole: (shots) => {
      const { a, b } = groupsIn(shots, of);
      return a.length === b.length;`,
  replace: `      return a.length + b.length;
    },
    whole: () => {
      return true;`,
};

export const FAULTS: readonly Fault[] = [
  // ---- gates ---------------------------------------------------------------------------------------------------------
  inSource('due-forgotten', 'looked-at-before-drawn', 'what is due to be asked again is not asked', 'machine/state.ts', 'due: dueAfter(next.due, fact),', 'due: next.due,', { begin: 'a new bow' }),
  inContent('rest-unchecked', 'gates-before-shots', 'a rest that was moved is not looked at', (c) => { recheck(c, 'rest-height', []); recheck(c, 'rest-side', []); }),
  inSource('long-day', 'gates-before-shots', 'the archer is asked after 400 shots, not after 40', 'machine/limits.ts', 'SHOTS_TO_REST = 40', 'SHOTS_TO_REST = 400'),
  inContent('another-target', 'looked-at-from-elsewhere', 'what stops the arrow is not looked at when distance or target change', (c) => { recheck(c, 'distance-changed', []); }),
  inSource('night-forgotten', 'gates-before-shots', 'a night between two shots asks for nothing', 'machine/decide.ts', 'LONG_GAP_MS = 2 * 60', 'LONG_GAP_MS = 2000 * 60'),
  inSource('drawn-first', 'looked-at-before-drawn', 'what draws the bow ranks with what is looked at', 'machine/agenda.ts', 'draw: 1, shoot: 2', 'draw: 0, shoot: 0'),
  inContent('limbs-left-out', 'looked-at-before-drawn', 'nobody asks for the limbs', (c) => { unplaced(c, 'limbs'); }),
  inSource('unknown-passes', 'not-known-never-passes', '"not known" passes a gate', 'machine/gates.ts', "if (answer.kind === 'not known') {", "if (answer.kind === 'not known') return { result: 'passed' };\n  if (answer.kind === 'not known') {", { begin: 'a new bow' }),
  inContent('dry-fire-passes', 'not-known-never-passes', 'a dry fire passes the gate', (c) => {
    spoilStep(c, 'history', (step) => { if (step.kind === 'choice') step.options = step.options.map((option) => ({ ...option, gate: 'pass' as const })); });
  }),
  inSource('blades-at-paper', 'own-gate-of-each-shot', 'broadheads are asked for at paper', 'machine/plan.ts', "    case 'paper':\n      return PLAIN;", "    case 'paper':\n      return { ...PLAIN, head: 'broadhead' };"),
  inContent('first-broadhead-left-out', 'own-gate-of-each-shot', 'no first broadhead is shot to see that it lands on the target', (c) => { unplaced(c, 'first-broadhead'); for (const [trigger, ids] of Object.entries(c.rechecks)) recheck(c, trigger as keyof Content['rechecks'], ids.filter((id) => id !== 'first-broadhead')); }),
  inContent('minors-and-blades', 'only-what-is-theirs', 'broadheads are offered to somebody still growing', (c) => { spoilStep(c, 'broadheads-wanted', (step) => { step.when = step.when.filter((guard) => guard !== 'adult'); }); }),
  inSource('everybody-is-grown', 'only-what-is-theirs', 'nobody counts as growing', 'machine/guards.ts', "'adult': (s) => chosen(s, 'growing') !== 'growing',", "'adult': () => true,"),
  inSource('fingers-at-paper', 'fingers-are-not-read', 'a finger release is tuned by paper', 'machine/advance.ts', "if (chosen(d.state, 'release') === 'fingers') return leave(d);", '', { begin: 'a new bow', temper: 'careless', least: 40, seed: 18 }),
  inSource('sum-counts', 'gates-before-shots', 'the plain sum of an arrow\'s parts counts, and not the least that it may be', 'archery/arrow-parts.ts', 'const SHORT = 0.03;', 'const SHORT = -0.03;'),

  // ---- stops ---------------------------------------------------------------------------------------------------------
  inSource('stop-only-noted', 'stop-word-is-heard', 'a stop word is written down and nothing stops', 'machine/after-happening.ts', "stopNow(d, { cause: 'word', ask: ['what-happened'], from: 'word' });", ''),
  inSource('words-not-heard', 'stop-word-is-heard', 'danger that is told in a note is only noted', 'session.ts', 'if (hasStopWord(text) && !this.state.notes.done) return this.stop(text, now);', ''),
  inSource('failed-and-on', 'stop-is-left-by-its-gate', 'a failed gate does not stop the walk', 'machine/after-answer.ts', '      stopNow(d, { ...ruling.stop, line });', '', { seed: 6 }),
  inSource('newer-hides-older', 'stop-is-left-by-its-gate', 'a word said while the bow waits for a dealer takes the dealer\'s question away', 'machine/stops.ts', 'return stack([stop, ...levels(standing).filter(stays)], stop);', 'return stack([stop, ...levels(standing).filter((old) => stays(old) && false)], stop);', { temper: 'unlucky' }),
  inSource('released-unasked', 'stop-is-left-by-its-gate', 'a stop is released before its questions are answered', 'machine/after-answer.ts', 'd.state.stop === null || d.state.stop.ask.length > 0', 'd.state.stop === null'),
  inSource('work-in-a-stop', 'stop-shows-its-way-out', 'a stop goes on showing the adjustment', 'machine/view.ts', "return !onBow || place.endsWith('.advising')", "return !onBow || place === 'stopped' || place.endsWith('.advising')", { seed: 47 }),
  inSource('wrong-way-out', 'stop-shows-its-way-out', 'a stop asks whatever comes next', 'machine/ask.ts', "if (place === 'stopped') return stoppedAsk(content, state);", "if (place === 'stopped') return askById(content, state, 'fit-to-shoot');"),
  inSource('no-question', 'always-a-way-on', 'the offer to leave an axis asks nothing', 'machine/ask.ts', "    case 'offering':\n      return {", "    case 'offering':\n      if (state.facts.length > 0) return null;\n      return {", { begin: 'the first advice', temper: 'hurried', seed: 7 }),
  inSource('half-a-sum', 'stop-is-left-by-its-gate', 'the walk goes on before the arrow\'s parts are told', 'machine/figures/arrow-mass.ts', 'return PARTS.filter((id) =>', 'return [].filter((id) =>'),

  // ---- asking --------------------------------------------------------------------------------------------------------
  inContent('limbs-by-enter', 'picked-on-purpose', 'the limbs have a default', (c) => { spoilStep(c, 'limbs', (step) => { step.noDefault = false; }); }),
  inSource('list-by-enter', 'picked-on-purpose', 'a list is ticked by one key', 'machine/ask.ts', "kind: 'choice', many: true, noDefault: true,", "kind: 'choice', many: true,"),
  inContent('flexed-without-caution', 'caution-stands-there', 'arrows are flexed without a caution', (c) => { spoilStep(c, 'arrows-flexed', (step) => { step.cautions = []; }); }),
  inContent('press-without-caution', 'caution-stands-there', 'the yoke is told without the caution of the press', (c) => { (c.knobs.yoke as Loose<typeof c.knobs.yoke>).cautions = []; }),
  inContent('bolts-without-caution', 'caution-stands-there', 'limb bolts are asked without their caution', (c) => { spoilStep(c, 'bolts-top', (step) => { step.cautions = []; }); }),
  inContent('loop-without-caution', 'caution-stands-there', 'a loop that was moved is looked at without its caution', (c) => { spoilStep(c, 'loop-check', (step) => { step.cautions = []; }); }),
  inSource('blades-without-caution', 'caution-stands-there', 'a broadhead is shot without the caution about blades', 'machine/ask.ts', "['draw', 'blades'] : ['draw']", "['draw'] : ['draw']"),
  inSource('advice-without-caution', 'caution-stands-there', 'an adjustment is told without its caution', 'machine/loop/advise.ts', 'const caution = knob.cautions.flatMap((id) => content.cautions[id] ?? []);', 'const caution: string[] = [];'),

  // ---- adjustments ---------------------------------------------------------------------------------------------------
  inSource('wrong-setting-told', 'one-change-at-a-time', 'the setting told is not the one the move leads to', 'machine/loop/advise.ts', 'to: { value: to, unit: knob.unit },', 'to: { value: to + knob.smallest, unit: knob.unit },'),
  inSource('other-direction', 'one-change-at-a-time', 'the direction told is the other one', 'machine/loop/advise.ts', 'direction: directionOf(knob, delta), amount', 'direction: directionOf(knob, -delta), amount'),
  inSource('no-cap', 'inside-the-limits', 'a move is as long as the estimate wants it', 'machine/loop/size.ts', 'const capped = clamp(wanted, -cap, cap);', 'const capped = wanted;'),
  inSource('no-soft-limit', 'inside-the-limits', 'the soft limit is not kept', 'machine/loop/ladder.ts', 'const reach = soft ?? knob.soft;', 'const reach = knob.hard;'),
  inSource('counted-from-here', 'inside-the-limits', 'the rest counts from where it was found, not from the maker\'s figure', 'machine/loop/ladder.ts', "const begin = knob.from === 'maker' ? offsetFromMaker(state) : 0;", 'const begin = 0;'),
  inContent('long-steps', 'inside-the-limits', 'the rest goes up twice as far at once', (c) => { const knob = c.knobs['rest-height'] as Loose<typeof c.knobs.yoke>; knob.first *= 4; knob.later *= 4; }),
  inSource('too-far-and-on', 'nothing-beyond-a-limit', 'what stands beyond its limit is not brought back', 'machine/loop/inside.ts', '  if (state.moves.length === 0) return null;', '  if (state.moves.length >= 0) return null;', { temper: 'contradictory', seed: 44 }),
  inSource('press-for-all', 'press-only-where-allowed', 'everybody counts as shown how to press', 'machine/guards.ts', "  const value = chosen(state, 'press');", "  const value: string = 'trained';", { begin: 'the side', temper: 'careful', least: 20 }),
  inSource('moved-on-one-shot', 'moved-only-on-shots', 'one shot at a new setting is enough', 'machine/after-answer.ts', 'wanted: gaugeOf(d.state).again, offered: null', 'wanted: 1, offered: null'),
  inSource('misses-go-on', 'misses-are-looked-for', 'shots that leave no hole are shot on', 'machine/turn-missed.ts', 'const IN_A_ROW = 2;', 'const IN_A_ROW = 20;', { temper: 'wild' }),
  inSource('told-before-shots', 'moved-only-on-shots', 'a set is judged before it is whole', 'machine/loop/gauge.ts', 'return taken(state) < state.notes.wanted ||', 'return taken(state) < 1 ||'),
  inContent('sight-moved', 'sight-stays', 'an adjustment tells to move the sight', (c) => { (c.knobs['rest-height'] as Loose<typeof c.knobs.yoke>).words = { plus: 'SIGHT UP', minus: 'SIGHT DOWN' }; }),

  // ---- ledger --------------------------------------------------------------------------------------------------------
  inSource('hand-moves-forgotten', 'ledger-is-what-was-done', 'what was moved by hand is not entered', 'machine/state.ts', "delta: fact.delta, why: 'unadvised' });", "delta: 0, why: 'unadvised' });", { temper: 'contradictory', seed: 1 }),
  inSource('as-told-is-more', 'ledger-is-what-was-done', 'a move by another amount counts as told', 'machine/state.ts', "Math.sign(told.delta) * answer.moved.value;", 'told.delta;'),
  inSource('correction-ignored', 'ledger-is-what-was-done', 'a corrected amount changes nothing', 'machine/state.ts', "return answer !== undefined && fact.kind === 'answered' ?", "return answer !== undefined && answer.kind !== 'moved' && fact.kind === 'answered' ?", { temper: 'contradictory' }),
  inSource('back-by-half', 'put-back-is-exact', 'a put-back goes half the way', 'machine/loop/advise.ts', 'tidy(from - back), phrase', 'tidy(from - back / 2), phrase'),
  inSource('one-line-too-few', 'put-back-is-exact', 'an earlier point is taken for the one after it', 'machine/undo.ts', 'state.moves.filter((move) => move.seq >= to)', 'state.moves.filter((move) => move.seq > to)', { begin: 'the first put-back', temper: 'contradictory' }),
  inSource('back-a-mark-short', 'put-back-is-exact', 'a put-back stops one 64th short', 'machine/loop/advise.ts', 'const back = moves.reduce((sum, move) => sum + move.delta, 0);', 'const back = moves.reduce((sum, move) => sum + move.delta, 0) - 1 / 64;', { begin: 'after a first change' }),
  inSource('not-proved', 'proved-after-put-back', 'one shot proves a put-back', 'machine/bring-back.ts', "newSet: true, purpose: 'prove', wanted: gaugeOf(d.state).first } });\n  if (d.state.notes.bringing !== 0) unmade", "newSet: true, purpose: 'prove', wanted: 1 } });\n  if (d.state.notes.bringing !== 0) unmade", { begin: 'the first put-back' }),

  // ---- answers and journal -------------------------------------------------------------------------------------------
  inSource('shots-dropped', 'no-answer-is-lost', 'a correction forgets the shots after it', 'machine/state.ts', "const data = booksOf(content, effectiveFacts([...facts, fact]).slice(0, -1));", "const data = booksOf(content, effectiveFacts([...facts, fact]).slice(0, -1).filter((each) => each.kind !== 'answered' || each.answer.kind !== 'shots' || each.seq <= fact.of));", { seed: 24 }),
  inSource('answers-dropped', 'no-answer-is-lost', 'answers that a choice took off the way are thrown away', 'machine/state.ts', 'if (answered !== undefined) suggestions[id] = answered.answer;', '', { temper: 'contradictory', seed: 11 }),
  inSource('refused-and-written', 'refusal-changes-nothing', 'what is refused is written down', 'session.ts', 'if (!parsed.ok) return danger ?', "if (!parsed.ok && !danger) this.take({ kind: 'noted', ...this.stamp(now), note: 'refused' });\n    if (!parsed.ok) return danger ?"),
  inSource('not-all-written', 'journal-tells-all', 'the line on disk lacks what was found', 'session.ts', 'this.store.append(fact);', 'this.store.append({ ...fact, decided: { ...fact.decided, findings: [] } });'),
  inSource('time-runs-back', 'lines-are-in-order', 'a stop is stamped with a time before the line before it', 'session.ts', "return this.take({ kind: 'stopped', ...this.stamp(now), words: text });", "return this.take({ kind: 'stopped', ...this.stamp(new Date(now.getTime() - 864e5)), words: text });", { seed: 7 }),

  // ---- shots and record ----------------------------------------------------------------------------------------------
  inSource('heads-stay', 'heads-change-shafts', 'heads never change shafts', 'machine/turn-broadheads.ts', "if (of !== 'broadheads' || set === null", "if (of === 'broadheads' || set === null", { begin: 'broadheads', seed: 8 }),
  inSource('uneven', 'judged-by-equal-numbers', 'two kinds are counted together, and compared when one is ahead', 'machine/loop/gauge-groups.ts', UNEVEN.find, UNEVEN.replace, { begin: 'broadheads', temper: 'careless', least: 60, seed: 102 }),
  inSource('set-turned-unsaid', 'nock-stands-as-told', 'nocks that were turned together are not entered', 'machine/arrows/turn-set.ts', 'tried: [to], turn: to }', 'tried: [to], turn: one?.turn ?? 0 }', { begin: 'all nocks' }),
  inSource('nock-turned-on', 'nock-stands-as-told', 'a nock that was turned by itself counts as turned one vane more', 'machine/arrows/after.ts', 'step: 1 }, one.turn + by);', 'step: 1 }, one.turn + by + 1);', { begin: 'all nocks', temper: 'careful', least: 80 }),
  inSource('nocks-without-caution', 'caution-stands-there', 'the list of nocks is told without its caution', 'machine/arrows/ask.ts', "caution: [phrase(content, 'caution-nock')],\n    options: TURN_ANSWERS", "caution: [],\n    options: TURN_ANSWERS", { begin: 'all nocks' }),
  inSource('tuned-by-wish', 'tuned-only-by-shots', 'half sure is called tuned', 'machine/loop/judge.ts', "e.says === 'in' && e.withinHere >= OWN_CHECK", 'e.within >= 0.02', { seed: 15 }),
  inSource('tuned-once', 'tuned-only-by-shots', 'what was moved since is still called tuned', 'machine/record-moved.ts', 'Math.abs(delta) > 1e-9 &&', 'Math.abs(delta) > 1e9 &&'),
  inSource('tuned-on-one-axis', 'tuned-only-by-shots', 'what was judged before the other axis was moved is still called tuned', 'machine/record-moved.ts', '(tuned || content', '(content', { begin: 'broadheads' }),
  inSource('broadheads-unsaid', 'not-checked-is-said', 'the record does not say that no broadhead was shot', 'machine/record-card.ts', "? ['broadheads'] : []", '? [] : []', { seed: 1 }),
  inSource('timing-unsaid', 'not-checked-is-said', 'the record does not say what this coach never measures', 'machine/figures/rows.ts', "const left = ['timing', 'tiller', ", "const left = ["),
  inSource('told-and-missing', 'not-checked-is-said', 'the record says that the draw length was not told, where it was', 'machine/figures/rows.ts', "'draw-length': drawOf(state) !== null,", "'draw-length': false,", { begin: 'the finish' }),
];
