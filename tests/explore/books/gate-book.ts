// A second book of the safety gates, kept from the journal's lines alone: what was answered, what happened, and what the
// page of rules makes of it. It shares no line of code with the program, so that each can catch the other.

import type { Content, Step } from '../../../src/content/types.ts';
import type { Answer, Fact } from '../../../src/machine/types.ts';

type Answered = Extract<Fact, { kind: 'answered' }>;
interface Failure { readonly gate: string; readonly of: number; readonly dealer: boolean }

const HOUR = 3_600_000;
/** What an arrow is added up from where nobody has weighed it. */
const SUMMED = ['shaft-grains', 'shaft-length', 'point-grains', 'insert-grains', 'nock-grains', 'vane-count', 'vane-grains', 'wrap-grains'] as const;
/** Questions that belong together: a rule over several answers is mended by answering any of them. */
const TOGETHER: readonly (readonly string[])[] = [
  ['bolts-top', 'bolts-bottom', 'bolt-limit'],
  ['arrow-mass', 'peak-weight', 'rated-weight', 'scale-error'],
  ['arrow-count', 'arrows-flexed', 'arrows-set-aside'],
  ['arrow-mass', 'mass-way', ...SUMMED],
];

export class GateBook {
  /** In force: the last answer of each step. */
  private answers = new Map<string, { answer: Answer; seq: number }>();
  /** Those among them that a known bow brought along. */
  private carried = new Set<string>();
  private due = new Set<string>();
  private failures: Failure[] = [];
  /** A stop word was said and not yet cleared. */
  private word: string | null = null;
  /** Questions of everything that raised the present stop. */
  private raised = new Set<string>();
  private readonly facts: Fact[] = [];
  /** The newest answer, and what was due before it. */
  private choice: { readonly seq: number; readonly due: ReadonlySet<string> } | null = null;
  /** A hole was read: there is paper. */
  private holed = false;
  private shots = 0;
  private shotsAtRest = 0;
  /** The line at which cables or cams were last worked on. */
  private cablesAt = 0;
  /** How often it was looked for why shots left no hole, since a dealer had the bow. */
  private looksForMisses = 0;

  constructor(private readonly content: Content) {}

  /** Takes one more line, and whether the walk stood still after it. */
  read(fact: Fact, stopped: boolean): void {
    this.take(fact);
    // What was corrected may itself be what the stop is about, also where a later answer is in force.
    const of = fact.kind === 'corrected' ? this.facts.find((f) => f.seq === fact.of) : undefined;
    if (stopped) for (const id of [...this.reasons(), ...(of?.kind === 'answered' ? [of.step, 'released'] : [])]) this.raised.add(id);
    else this.raised.clear();
  }

  private take(fact: Fact): void {
    // Whether broadheads are shot is asked anew once the bow is judged anew; no gate hangs on when that is.
    if (fact.decided.loop?.suggest?.includes('broadheads-wanted') === true) this.answers.delete('broadheads-wanted');
    const last = this.facts.at(-1);
    this.facts.push(fact);
    if (fact.kind === 'answered' && fact.about === 'tear' && fact.answer.kind === 'shots' && fact.answer.shots.some((shot) => !('missed' in shot))) this.holed = true;
    switch (fact.kind) {
      case 'answered':
        this.answered(fact);
        break;
      case 'corrected':
        this.corrected(fact);
        break;
      case 'resumed':
        this.raise(this.list('start'));
        if (fact.away >= 4 * HOUR) this.longBreak();
        break;
      case 'stopped':
        this.word = 'what-happened';
        break;
      case 'moved':
        this.raise([...this.list(this.trigger(fact.knob)), ...this.list('unadvised-move')]);
        if (CABLES.includes(fact.knob)) this.cablesAt = fact.seq;
        break;
      case 'changed':
        if (fact.what === 'place') this.longBreak();
        else this.raise(this.list(CHANGED[fact.what]));
        break;
      default:
    }
    if (fact.kind !== 'resumed' && fact.kind !== 'begun' && last !== undefined && Date.parse(fact.time) - Date.parse(last.time) >= 2 * HOUR) {
      this.raise(this.list('start'));
      this.longBreak();
    }
  }

  // Who grows draws farther from one time to the next.
  private longBreak(): void {
    this.raise(this.list('long-break'));
    if (this.growing) this.raise(['shaft-ahead']);
  }

  private list(trigger: string): readonly string[] {
    return trigger === '' ? [] : (this.content.rechecks as Record<string, readonly string[]>)[trigger] ?? [];
  }

  private trigger(knob: string): string {
    return (this.content.knobs as Record<string, { trigger: string }>)[knob]?.trigger ?? '';
  }

  // A measure that was never taken is not taken again: the walk comes to it in its own order (and must, before a shot).
  private raise(ids: readonly string[]): void {
    for (const id of ids) {
      const step = this.stepOf(id);
      if (step?.effect !== 'measured' || step.onDemand || this.answers.has(id)) this.due.add(id);
      // Which of its checks belong to this bow hangs on the kind of rest.
      if (id.startsWith('rest-check') && !this.answers.has('rest')) this.due.add('rest');
    }
  }

  // ---- answers -----------------------------------------------------------------------------------------------------

  private answered(fact: Answered): void {
    const { step, answer, seq } = fact;
    this.choice = { seq, due: new Set(this.due) };
    if (answer.kind === 'shots') {
      this.shots += answer.shots.length;
      if (answer.shots.some((shot) => 'missed' in shot)) this.raise(this.list('clash'));
      if (this.shots - this.shotsAtRest >= 40) {
        this.shotsAtRest = this.shots;
        this.raise(this.list('forty-shots'));
      }
      return;
    }
    if (answer.kind === 'moved') {
      const told = fact.decided.loop?.told;
      if (answer.moved !== 'not now' && told !== undefined) this.raise(this.list(this.trigger(told.knob)));
      if (answer.moved !== 'not now' && told !== undefined && CABLES.includes(told.knob)) this.cablesAt = seq;
      return;
    }
    this.due.delete(step);
    this.takenAgain(step, answer);
    if (step === 'rest') this.restTold(valueOf(answer));
    if (step === 'arrow-mass') this.partsAnew();
    this.answers.set(step, { answer, seq });
    this.carried.delete(step);
    if (step === 'bow') this.carry(valueOf(answer), seq);
    this.failures = this.failures.filter((f) => f.gate !== step || f.dealer);
    this.rule(step, answer, seq);
    if (fact.decided.findings.some((f) => f.kind === 'gate' && f.gate === 'arrow-mass' && f.result === 'failed')) this.raise(['what-was-changed']);
    this.consequences(step, valueOf(answer));
    this.dropOffRoute();
  }

  private corrected(fact: Extract<Fact, { kind: 'corrected' }>): void {
    const of = this.facts.find((f): f is Answered => f.kind === 'answered' && f.seq === fact.of);
    if (of === undefined) return;
    // A choice of the walk is taken back whole, with what it asked for.
    if (of.step.startsWith('inspect-') && this.choice?.seq === of.seq) this.due = new Set(this.choice.due);
    const { answer } = fact;
    if (answer.kind === 'shots') {
      if (answer.shots.some((shot) => 'missed' in shot)) this.raise(this.list('clash'));
      // It was another number of shots: the arm counts those that were shot.
      const earlier = this.facts.findLast((f) => f.kind === 'corrected' && f.of === fact.of && f !== fact) ?? of;
      const was = 'answer' in earlier && earlier.answer.kind === 'shots' ? earlier.answer.shots.length : 0;
      this.shots += answer.shots.length - was;
      return;
    }
    if (answer.kind === 'moved') return;
    const { step } = of;
    const inForce = this.answers.get(step);
    // The words of this very line were wrong: what it alone had raised is gone.
    this.failures = this.failures.filter((f) => f.of !== fact.of);
    if (step === 'bow' && inForce !== undefined && valueOf(inForce.answer) !== valueOf(answer)) this.carryInstead(valueOf(answer), fact.of);
    if (step === 'rest' && inForce?.seq === fact.of) this.restTold(valueOf(answer));
    if (inForce?.seq === fact.of) this.answers.set(step, { answer, seq: fact.of });
    if (step === 'arrow-mass' && inForce?.seq === fact.of) this.partsAnew();
    this.rule(step, answer, fact.of, true);
    // An answer that another has replaced since brings about nothing, but for what happened to the bow and where.
    if (inForce?.seq === fact.of || step === 'history' || step === 'place') this.consequences(step, valueOf(answer));
    this.dropOffRoute();
  }

  // The mass is asked once more: it may be another arrow's, and so may its parts.
  private partsAnew(): void {
    for (const id of ['mass-way', ...SUMMED]) this.answers.delete(id);
  }

  // Bolts that read otherwise than when they were counted last were turned; a bow that became lighter to carry its arrows as well.
  private takenAgain(step: string, answer: Answer): void {
    const last = this.answers.get(step);
    if (last === undefined) return;
    const since = (id: string): boolean => this.due.has(id) || this.answeredAt(id) > last.seq;
    const figure = (one: Answer): number | null => (one.kind === 'number' ? one.value : null);
    const [was, is] = [figure(last.answer), figure(answer)];
    if ((step === 'bolts-top' || step === 'bolts-bottom') && was !== is && !since('after-bolts')) this.boltsTurned(false);
    const light = this.raised.has('arrow-mass') && this.raised.has('peak-weight') && this.broken().some((ids) => ids.includes('arrow-mass'));
    if (step === 'peak-weight' && light && was !== null && is !== null && is < was && !since('bolts-top')) this.raise(['bolts-top', 'bolts-bottom']);
  }

  // Locks and pockets at once; what was measured or drawn before is measured and drawn anew.
  private boltsTurned(counted: boolean): void {
    const drawn = this.answers.has('first-draw') || this.answers.has('peak-weight');
    const again = (id: string): boolean => id === 'after-bolts' || (id === 'slow-draw' ? drawn : this.answers.has(id));
    this.raise(this.list('limb-bolts').filter((id) => again(id) && (counted || !id.startsWith('bolts-'))));
  }

  // Another kind of rest than was told, or told only after it was looked at: its own checks were never made.
  private restTold(value: string): void {
    const was = this.answers.get('rest');
    if (was === undefined ? this.answers.has('rest-check') : valueOf(was.answer) !== value) this.raise(['rest-check']);
  }

  // A known bow answers what need not be asked in every tune; another one answers nothing.
  private carry(from: string, seq: number): void {
    for (const id of this.carried) this.answers.delete(id);
    this.carried.clear();
    const begun = this.facts[0];
    // Where one bow alone is known, "one of these, but ..." can only be that one.
    const of = (bow: { readonly from: string }): boolean => bow.from === from || from === 'replaced' || from === 'other-archer';
    const known = begun?.kind === 'begun' ? begun.known.find(of) : undefined;
    for (const [id, answer] of Object.entries(known?.answers ?? {})) {
      if (this.content.steps[id]?.everyTune !== false || id === 'bow') continue;
      // Nothing that was measured on it is taken over with a part replaced, nothing of the archer's with another one.
      if (from === 'replaced' && !['hand', 'release', 'growing', 'cams', 'press', 'rated-weight', 'use'].includes(id)) continue;
      if (id === 'shaft-ahead' && valueOf(known?.answers['growing'] ?? { kind: 'not known' }) === 'growing') continue;
      if (from === 'other-archer' && ['release', 'growing', 'shaft-ahead', 'use'].includes(id)) continue;
      this.answers.set(id, { answer, seq });
      this.carried.add(id);
      // What was to be told only because nobody had is told by this.
      if (id === 'rest') this.due.delete(id);
    }
  }

  // It was another bow all along: what that one brings counts in the place of what the first one brought, and of nothing else.
  private carryInstead(from: string, seq: number): void {
    const before = new Map(this.answers);
    const brought = new Set(this.carried);
    this.carry(from, seq);
    for (const id of this.carried) {
      if (brought.has(id)) continue;
      this.carried.delete(id);
      const own = before.get(id);
      if (own === undefined) this.answers.delete(id);
      else this.answers.set(id, own);
    }
  }

  // Answers that a choice took off the route count no more.
  private dropOffRoute(): void {
    for (const id of this.answers.keys()) {
      const step = this.stepOf(id);
      // The maker's limit stays what it is while the bolts happen to be seated, and the scale's error while the arrows are heavy enough.
      if (step !== undefined && id !== 'bolt-limit' && id !== 'scale-error' && !this.on(step.when)) this.answers.delete(id);
    }
    // Nor does a gate that only the way left behind asks; a dealer's word is still needed where one was.
    this.failures = this.failures.filter((f) => f.dealer || this.on(this.stepOf(f.gate)?.when ?? []));
  }

  private consequences(step: string, value: string): void {
    const raise = (trigger: string): void => this.raise(this.list(trigger));
    if (step === 'history' && value === 'heat-or-fall') raise('heat-or-fall');
    if (step === 'place' && value === 'other') this.longBreak();
    // An adult must be there, and the shaft must reach farther.
    if (step === 'growing' && value === 'growing') this.raise(['backstop', 'shaft-ahead']);
    // Kept and set aside must add up again once an arrow failed, or nobody knows.
    if (TAKES_ONE_OUT.some((check) => this.pickedAt(step).includes(check))) this.raise(['arrow-count', 'arrows-flexed']);
    if (step === 'arrows-flexed' && value === 'some-bad') this.raise(['arrows-set-aside']);
    if (step === 'bow' && value === 'other-archer') this.raise(['slow-draw']);
    const reaches = !this.failures.some((f) => f.gate === 'shaft-ahead') && !this.broken().some((ids) => ids.includes('shaft-ahead'));
    if (step === 'shaft-ahead' && reaches && this.on(['shoots-broadheads'])) this.raise(['blades-ahead']);
    if (step === 'contact' && value === 'smear') this.raise(['rest-check', 'contact']);
    if (step === 'released') {
      this.failures = this.failures.filter((f) => !f.dealer);
      this.looksForMisses = 0;
      if (this.word === 'released') this.word = null;
      raise('released-by-dealer');
      if (this.answers.has('contact')) this.raise(['contact']);
    }
    if (step === 'what-was-changed') {
      if (value === 'arrows') this.raise(this.list('arrow-changed').filter((id) => id !== 'arrow-mass'));
      if (value === 'bolts') this.boltsTurned(true);
      if (value === 'other') this.raise(this.list('part-replaced').filter((id) => this.answers.has(id) || ['after-press', 'loop-check'].includes(id)));
    }
    if (step === 'what-happened') {
      this.word = { bow: 'released', arrow: 'arrow-check', person: 'someone-hurt' }[value] ?? null;
      // Whatever hurt somebody may have come off the bow or an arrow.
      if (value === 'person') this.raise(['backstop', 'range', 'history', 'limbs', 'axle-clips', 'bow-at-rest', 'arrow-check']);
    }
    if ((step === 'someone-hurt' && value === 'well') || (step === 'arrow-check' && this.word === 'arrow-check')) this.word = null;
    if (step === 'inspect-missed') this.looksForMisses++;
    if (step.startsWith('inspect-')) {
      const found = Object.values(this.content.inspections).find((i) => `inspect-${i.id}` === step)?.options.find((o) => o.value === value);
      if (found?.cause === 'loose part' || (step === 'inspect-not-returned' && (found === undefined || found.cause === null))) raise('something-moved');
      if (found?.cause === 'contact') this.raise(['rest-check']);
      if (found !== undefined && value === 'nock-fit') this.raise(['arrow-check', 'loop-check', 'slow-draw', 'first-shot']);
      if (found?.cause === 'tired archer') raise('forty-shots');
    }
  }

  /** Checks that the answer in force at this step says are not true, or not known. */
  private pickedAt(step: string): readonly string[] {
    const answer = this.answers.get(step)?.answer;
    const [, check] = step.split('/');
    if (check !== undefined) return answer !== undefined && valueOf(answer) === 'true' ? [] : [check];
    return answer?.kind === 'choice' ? answer.values : [];
  }

  // ---- what an answer means for a gate -------------------------------------------------------------------------------

  private stepOf(id: string): Step | undefined {
    return this.content.steps[id.split('/')[0] ?? ''];
  }

  private rule(id: string, answer: Answer, of: number, again = false): void {
    const step = this.stepOf(id);
    if (step === undefined || step.effect !== 'gate') return;
    const fail = (dealer: boolean): void => { this.failures.push({ gate: id, of, dealer }); };
    const [, checkId] = id.split('/');
    if (step.kind === 'chunk' && checkId === undefined) {
      const picked = answer.kind === 'choice' ? answer.values.filter((v) => v !== 'all true') : step.checks.map((c) => c.id);
      // What was once said not to be true is looked at one by one, whatever is said of the list later.
      if (!again) for (const check of step.checks) this.due.delete(`${id}/${check.id}`);
      this.failures = this.failures.filter((f) => !f.gate.startsWith(`${id}/`) || f.dealer);
      this.raise(picked.map((check) => `${id}/${check}`));
      return;
    }
    if (step.kind === 'chunk') {
      const check = step.checks.find((c) => c.id === checkId);
      if (valueOf(answer) !== 'true' && check?.fail !== 'note') fail(check?.fail === 'shop');
      return;
    }
    if (answer.kind === 'not known') return fail(false);
    if (step.kind === 'choice') {
      const gate = step.options.find((o) => o.value === valueOf(answer))?.gate;
      if (gate !== 'pass' && gate !== 'note') fail(gate === 'shop');
    } else if (step.kind === 'number' && answer.kind === 'number') {
      const { min = -Infinity, max = Infinity } = step.pass ?? {};
      if (answer.value < min || answer.value > max) fail(step.fail === 'shop');
      const rated = this.number('rated-weight');
      if (id === 'shaft-ahead' && answer.value < (this.growing ? 2 : 1)) {
        fail(false);
        // Nobody draws an arrow for the next figure that was not looked at.
        this.raise(['what-was-changed']);
      }
      if (id === 'peak-weight' && rated !== undefined && answer.value > rated + 2) fail(true);
    } else if (step.kind === 'confirm' && answer.kind === 'confirm' && !answer.value) fail(false);
  }

  /** The figure in force at this step. */
  number(id: string): number | undefined {
    const answer = this.answers.get(id)?.answer;
    return answer?.kind === 'number' ? answer.value : undefined;
  }

  /** The choice in force at this step, '' where there is none. */
  value(id: string): string {
    const answer = this.answers.get(id)?.answer;
    return answer === undefined ? '' : valueOf(answer);
  }

  /**
   * What the arrow weighs at the least: as weighed; of its parts, half an inch of shaft less and then 3 in 100, since makers' figures
   * scatter. NaN where it is not known, or one part is not.
   */
  private mass(): number {
    const weighed = this.number('arrow-mass');
    if (weighed !== undefined) return weighed;
    if (this.value('mass-way') !== 'add-up') return NaN;
    const [shaft = NaN, length = NaN, point = NaN, insert = NaN, nock = NaN, count = NaN, each = NaN, wrap = NaN] = SUMMED.map((id) => this.number(id) ?? NaN);
    return 0.97 * (shaft * (length - 0.5) + point + insert + nock + (count === 0 ? 0 : count * each) + wrap);
  }

  /** Failed or not known as it stands: a mass that nobody weighed is known once all its parts are, and only then. */
  private failing(): readonly Failure[] {
    const asked = this.answers.get('arrow-mass');
    if (asked?.answer.kind !== 'not known') return this.failures;
    const others = this.failures.filter((f) => f.gate !== 'arrow-mass');
    return Number.isNaN(this.mass()) ? [...others, { gate: 'arrow-mass', of: asked.seq, dealer: false }] : others;
  }

  /** Rules over several answers, as they stand: the questions of each that is broken. */
  private broken(): readonly (readonly string[])[] {
    const n = (id: string): number => this.number(id) ?? NaN;
    const out: (readonly string[])[] = [];
    const [bolts = [], mass = [], arrows = []] = TOGETHER;
    if (n('bolts-top') !== n('bolts-bottom') && this.has('bolts-top', 'bolts-bottom')) out.push(bolts);
    if (Math.max(n('bolts-top'), n('bolts-bottom')) > n('bolt-limit')) out.push(bolts);
    const peak = this.number('peak-weight') ?? n('rated-weight');
    const hidden = this.number('peak-weight') === undefined ? 2 : (this.number('scale-error') ?? 2);
    const asksForError = this.on(['mass-is-close']) && this.number('scale-error') === undefined;
    if (this.mass() / (peak + hidden) < 5 && !asksForError) out.push(mass);
    if (n('peak-weight') > n('rated-weight') + 2) out.push(mass);
    if (n('arrow-count') < 3) out.push(arrows);
    if (this.value('arrows-flexed') === 'some-bad' && n('arrow-count') - n('arrows-set-aside') < 3) out.push(arrows);
    if (n('shaft-ahead') < (this.value('growing') === 'growing' ? 2 : 1)) out.push(['shaft-ahead']);
    return out;
  }

  // Figures that are being taken anew are held together once they are in.
  private brokenNow(): readonly (readonly string[])[] {
    return this.broken().filter((ids) => !ids.some((id) => this.due.has(id)));
  }

  private has(...ids: readonly string[]): boolean {
    return ids.every((id) => this.number(id) !== undefined);
  }

  // ---- conditions ----------------------------------------------------------------------------------------------------

  private on(names: readonly string[]): boolean {
    return names.every((name) => {
      const known = !['', 'another', 'replaced'].includes(this.value('bow')) && this.value('which-bow') !== 'another';
      switch (name) {
        case 'release-aid': return this.value('release') === 'release-aid';
        case 'fingers': return this.value('release') === 'fingers';
        case 'growing': return this.value('growing') === 'growing';
        case 'adult': return this.value('growing') !== 'growing';
        case 'known-bow': return known;
        case 'new-bow': return !known;
        case 'bolts-turned-out': return (this.number('bolts-top') ?? 0) > 0 || (this.number('bolts-bottom') ?? 0) > 0;
        case 'arrow-set-aside': return this.value('arrows-flexed') === 'some-bad';
        case 'hunts': return this.value('use') === 'hunting';
        // Only the wish for broadheads hangs on the one, and the proving shot on the other: neither is a gate.
        case 'launch-settled':
        case 'nock-was-turned': return true;
        case 'shoots-broadheads': return ['fixed', 'mechanical'].includes(this.value('broadheads-wanted'));
        case 'paper': return !this.withoutPaper();
        case 'no-paper': return this.withoutPaper();
        case 'unfletched':
        case 'plumb-line': return this.withoutPaper() && this.value('method') === name;
        case 'shoots-groups': return this.on(['shoots-broadheads']) || this.on(['unfletched']) || this.on(['plumb-line']);
        // Shots that scatter rule it out as well; no gate hangs on that.
        case 'arrows-by-paper': return this.value('release') === 'release-aid' && !this.withoutPaper();
        case 'all-arrows': return this.value('arrows-wanted') === 'all';
        case 'mass-not-weighed': return this.answers.get('arrow-mass')?.answer.kind === 'not known';
        case 'mass-added-up': return this.on(['mass-not-weighed']) && this.value('mass-way') === 'add-up';
        // Of figures for the card: no gate hangs on them.
        case 'figures-wanted':
        case 'length-not-told':
        case 'speed-told':
        case 'second-arrow-told':
        case 'papers-tell-speed':
        case 'spine-not-printed': return true;
        case 'peak-not-measured': return this.number('peak-weight') === undefined;
        case 'mass-is-close': {
          const [m, p] = [this.mass(), this.number('peak-weight') ?? NaN];
          return m / p >= 5 && m / (p + 2) < 5;
        }
        default: throw new Error(`the book of gates does not know the condition "${name}"`);
      }
    });
  }

  // Once a tear was read there is paper, whatever is said of a later backstop; once another way was chosen there is none.
  private withoutPaper(): boolean {
    if (this.holed) return false;
    return this.value('backstop') === 'no-paper' || ['unfletched', 'plumb-line'].includes(this.value('method'));
  }

  // ---- what it is asked ------------------------------------------------------------------------------------------------

  get fingers(): boolean {
    return this.value('release') === 'fingers';
  }

  get growing(): boolean {
    return this.value('growing') === 'growing';
  }

  /** The arrow's mass is a sum of its parts, and none is missing. */
  get addedUp(): boolean {
    return this.number('arrow-mass') === undefined && !Number.isNaN(this.mass());
  }

  /** The line that gave the answer in force, 0 where there is none. */
  answeredAt(id: string): number {
    return this.answers.get(id)?.seq ?? 0;
  }

  /** What failed or was not known at this line, by the gate's own name. */
  failedAt(seq: number): readonly string[] {
    return this.failures.filter((f) => f.of === seq).map((f) => f.gate.split('/')[1] ?? f.gate);
  }

  /** What the walk must stand still for, in words; figures that do not agree are being seen to where one of them is `asked`. */
  holds(asked: string): readonly string[] {
    return [...this.failing().map((f) => `${f.gate} failed or not known`), ...this.brokenNow().filter((ids) => !ids.includes(asked)).map((ids) => `${ids.join('/')} do not agree with their rule`), ...(this.word === null ? [] : [`a stop word: ${this.word}`])];
  }

  /** Steps whose answer in force is "not known". */
  notKnown(): readonly string[] {
    return [...this.answers].filter(([, { answer }]) => answer.kind === 'not known').map(([id]) => id);
  }

  /** Everything that forbids a shot or an adjustment now, in words. */
  forbids(): readonly string[] {
    const required = this.routeOf('safety', 'baseline', 'warm-up').filter((id) => !this.answers.has(id));
    return [
      ...this.failing().map((f) => `${f.gate} failed or not known`),
      ...this.brokenNow().map((ids) => `${ids.join('/')} do not agree with their rule`),
      ...this.open().map((id) => `${id} is due`),
      ...required.map((id) => `${id} was never answered`),
      ...(this.word === null ? [] : [`a stop word: ${this.word}`]),
    ];
  }

  /** Everything that forbids this very shot besides, in words: who never shoots it, and the gates that are its own. */
  forbidsShot({ head, shaft, kind }: { readonly head: string; readonly shaft: string; readonly kind: string }): readonly string[] {
    const plumb = kind === 'impact' && head === 'field' && shaft === 'fletched' && this.on(['plumb-line']);
    const own = head === 'broadhead' ? BROADHEAD : shaft === 'unfletched' ? UNFLETCHED : plumb ? PLUMB : [];
    const growing = this.growing && (head === 'broadhead' || shaft === 'unfletched');
    return [
      ...own.filter((id) => !this.answers.has(id)).map((id) => `${id} was never passed`),
      // Warm again after a break or a dealer, or with other cables: the first such arrow flies from near.
      ...own.filter((id) => FROM_NEAR.includes(id) && this.answers.has(id) && this.answeredAt(id) < Math.max(this.answeredAt('warm-up'), this.cablesAt)).map((id) => `${id} was before the last warm-up or work on cables`),
      ...(growing ? [`a growing archer shoots no ${head === 'broadhead' ? head : shaft}`] : []),
      ...(head === 'broadhead' && shaft === 'unfletched' ? ['a broadhead on a shaft without vanes'] : []),
    ];
  }

  /** Everything that forbids drawing the bow for a question, in words; `asked` may be what is missing itself. */
  forbidsDraw(asked: string): readonly string[] {
    const undrawn = (id: string): boolean => ['undrawn', 'talk'].includes(this.stepOf(id)?.pause ?? '');
    // The weight is measured on a rig, with no arrow on the bow: how far a shaft reaches does not matter there.
    const onRig = (gate: string): boolean => asked === 'peak-weight' && gate === 'shaft-ahead';
    const own = (gate: string): boolean => gate === asked || onRig(gate) || TOGETHER.some((t) => t.includes(asked) && t.includes(gate));
    return [
      ...this.failing().filter((f) => !own(f.gate)).map((f) => `${f.gate} failed or not known`),
      ...this.brokenNow().filter((ids) => !ids.includes(asked) && !ids.some(onRig)).map((ids) => `${ids.join('/')} do not agree with their rule`),
      ...this.open().filter(undrawn).map((id) => `${id} is due`),
      ...this.routeOf('safety').filter((id) => !this.answers.has(id) && undrawn(id) && id !== 'scale-error').map((id) => `${id} was never answered`),
    ];
  }

  /** Questions that a stop may ask now: those of the gates that raised it, and what must be looked at before one that draws. */
  waysOut(): ReadonlySet<string> {
    const ways = new Set([...this.raised, ...this.reasons()]);
    const draws = [...ways].some((id) => ['draw', 'shoot'].includes(this.stepOf(id)?.pause ?? ''));
    // Anything may be told or looked at undrawn first.
    const looks = Object.values(this.content.steps).filter(({ pause }) => pause === 'talk' || pause === 'undrawn').map(({ id }) => id);
    return draws ? new Set([...ways, ...this.open(), ...looks]) : ways;
  }

  private reasons(): readonly string[] {
    const together = (gate: string): readonly string[] => TOGETHER.filter((t) => t.includes(gate)).flat();
    return [
      ...this.failing().flatMap((f) => (f.dealer ? ['released'] : [f.gate, ...together(f.gate)])),
      ...this.broken().flat(),
      // More pull than the limbs are made for is a dealer's matter.
      ...((this.number('peak-weight') ?? 0) > (this.number('rated-weight') ?? Infinity) + 2 ? ['released'] : []),
      // Looked for again and again, and still no hole: a dealer may be asked to see the bow.
      ...(this.looksForMisses >= 2 ? ['released'] : []),
      ...(this.word === null ? [] : [this.word]),
    ];
  }

  /** Due questions that belong to this bow. */
  private open(): readonly string[] {
    return [...this.due].filter((id) => {
      const step = this.stepOf(id);
      return step !== undefined && this.on(step.when);
    });
  }

  /** Steps of these chapters in this archer's route. */
  private routeOf(...chapters: readonly string[]): readonly string[] {
    return this.content.chapters
      .filter((chapter) => chapters.includes(chapter.id))
      .flatMap((chapter) => chapter.blocks.flatMap((block) => block.steps))
      .filter((id) => {
        const step = this.content.steps[id];
        return step !== undefined && !step.onDemand && this.on(step.when);
      });
  }
}

const FROM_NEAR: readonly string[] = ['first-broadhead', 'first-unfletched'];
const CABLES: readonly string[] = ['yoke', 'cam-spacers', 'cam-screw', 'cam-sync'];
const BROADHEAD = ['broadhead-place', 'broadhead-arrows', 'blades-ahead', 'first-broadhead'] as const;
/** Looks, feels and flexes of whole arrows: one that fails is set aside. */
const TAKES_ONE_OUT = ['arrows-feel', 'arrows-twist', 'recorded-arrows', 'arrow-feel', 'arrow-flexed', 'shot-arrow', 'bench-flexed', 'heads-sound', 'first-head-arrow', 'swap-looked', 'points-shafts'] as const;
const UNFLETCHED = ['unfletched-ready', 'first-unfletched'] as const;
const PLUMB = ['plumb-ready'] as const;
const CHANGED = {
  string: 'string-replaced', rest: 'rest-replaced', release: 'release-replaced', arrow: 'arrow-changed',
  loop: 'nock-height', sight: '', fell: 'heat-or-fall', other: 'part-replaced',
} as const;
const valueOf = (answer: Answer): string => (answer.kind === 'choice' ? (answer.values[0] ?? '') : answer.kind === 'confirm' ? String(answer.value) : '');
