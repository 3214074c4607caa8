// A session that plays a list of views, keeps what was sent, and decides nothing. Its bows and shots are invented.

import { CodedError, type ErrorCode } from '../../src/errors.ts';
import type { Advice, Answer, Ask, HistoryEntry, Intent, Reply, SessionLike, TranscriptEntry, View } from '../../src/machine/types.ts';
import { formatQuantity, parseQuantity } from '../../src/maths/fractions.ts';
import { formatTail } from '../../src/screens/words.ts';

type Kind<K extends Ask['kind']> = Extract<Ask, { kind: K }>;
type Preview = ReturnType<SessionLike['preview']>;

const base = {
  about: 'hand', step: 'hand', short: 'Which hand holds the bow?',
  text: ['A right-handed archer holds the bow in the left hand and draws with the right.'],
  why: ['Left and right on the sheet are the same for both. Only what lies towards the riser changes sides.'],
  caution: [],
} as const;

const shotPlan = {
  distance: { value: 6, unit: 'ft' }, shaft: 'fletched', head: 'field', arrow: '2', nockTurn: 0, shots: { taken: 1, wanted: 3 }, axis: 'height',
} as const;

const CHECKS = [
  'The limbs have no crack, splinter or lifted layer, front and back',
  'The string has no broken strand, and its serving sits tight at both cams and at the nocking point',
  'The cables run in their tracks, and no serving is parted where they cross the rod or slide',
  'Both cams turn true, without a bent rim or a burr',
  'The limb pockets are closed, with no gap that was not there before',
  'The rest is tight on the riser and does not turn by hand',
  'The sight and everything that is screwed on is tight',
  'The loop is tied fast, not fuzzy, and both knots are hard',
] as const;

/** One ask of each kind, and some that are awkward. */
export const ASKS = {
  choice: { ...base, kind: 'choice', options: [{ value: 'right', label: 'Left hand holds it: right-handed' }, { value: 'left', label: 'Right hand holds it: left-handed' }] },
  gate: {
    ...base, about: 'gate:backstop', step: 'backstop', short: 'What stands behind the paper?', text: ['Look past the frame: a miss goes on.'],
    caution: ['Nobody shoots before this is known.'], kind: 'choice', unknown: true, noDefault: true,
    options: [{ value: 'stops', label: 'A target that stops every arrow, and a wall or bank behind it', pass: true }, { value: 'open', label: 'Nothing, or something that an arrow goes through' }],
  },
  chunk: {
    ...base, about: 'gate:bow', step: 'bow-at-rest', short: 'Look the bow over, string at rest. Is all of this true?', text: ['Touch each thing as you read it. Mark what is not true, or what you do not know.'],
    caution: ['Do not draw the bow yet.'], kind: 'choice', many: true, noDefault: true,
    options: [{ value: 'all true', label: 'All of this is true', pass: true }, ...CHECKS.map((label, at) => ({ value: `check-${at + 1}`, label }))],
  },
  number: {
    ...base, about: 'peak-weight', step: 'peak-weight', short: 'What is the peak weight, on a scale?', text: ['Pull slowly on a rig that cannot let go, and read the largest figure.'],
    kind: 'number', unit: 'lb', min: 20, max: 90, unknown: true,
  },
  tear: {
    ...base, about: 'tear', step: 'shoot-paper', short: 'Shoot one arrow through the paper. Where did the tail go?',
    text: ['Stand with the bow hand 6 ft from the paper and shoot straight at it.'], caution: ['Nobody stands beside or behind the paper.'], kind: 'tear', ...shotPlan,
  },
  impact: {
    ...base, about: 'impact', step: 'shoot-broadhead', short: 'Where did it land, from its own dot?', text: [], kind: 'impact', ...shotPlan,
    distance: { value: 20, unit: 'yd' }, head: 'broadhead',
  },
  amount: { ...base, about: 'moved', step: 'make-the-move', short: 'Did you move it?', text: [], kind: 'amount', unit: 'in', max: 0.5 },
  confirm: { ...base, about: 'sheet-side', step: 'sheet-side', short: 'Did you read the sheet from the side where you stand to shoot?', text: [], kind: 'confirm' },
  text: { ...base, about: 'bow-name', step: 'bow-name', short: 'What do you call this bow?', text: ['Any words that tell it from your others.'], kind: 'text' },
  released: { ...base, about: 'released', step: 'released', short: 'Who looked at the bow, when, and what was found?', text: [], caution: ['Do not draw the bow until an authorised dealer has released it.'], kind: 'text' },
} as const satisfies { [K in Ask['kind']]: Kind<K> } & Record<string, Ask>;

export const ADVICE: Advice = {
  kind: 'adjust', knob: 'rest-height', direction: 'up', amount: { value: 1 / 32, unit: 'in' }, to: { value: 1 / 16, unit: 'in' },
  expect: { x: -0.4, y: 0.15, sdX: 0.1, sdY: 0.11 }, press: true, what: 'REST UP 1/32 in (half a mark on its scale)',
  why: 'It was 0.74 in high. One 1/32 in of rest is worth about 0.30 in on your bow: not there yet, and going the right way.',
  wrongIf: 'Above 0.35 in high I was wrong.', undo: 'REST DOWN 1/32 in', caution: ['Hold the launcher while the screw is loose, or it drops.'],
};

export const viewOf = (ask: Ask | null, more: Partial<View> = {}): View => ({
  type: 'ask', seq: 12, chapter: 'paper', step: ask?.step ?? 'done',
  where: { title: 'Paper', part: 'up and down, second set', day: 1, shots: 38 },
  say: [], ask, bow: {}, advice: null, findings: [], may: { back: true, putBack: true }, ...more,
});

export const SHOTS = [{ x: -0.375, y: 0.4375, counted: true }, { x: -0.4375, y: 0.5, counted: true }, { x: 0.75, y: -0.25, counted: false }] as const;

/** The views that the frames are taken of, by name. */
export const VIEWS = {
  choice: viewOf(ASKS.choice),
  gate: viewOf(ASKS.gate),
  chunk: viewOf(ASKS.chunk),
  number: viewOf({ ...ASKS.number, suggestion: { kind: 'number', value: 62 } }),
  tear: viewOf(ASKS.tear, { picture: { shots: SHOTS } }),
  impact: viewOf(ASKS.impact),
  amount: viewOf(ASKS.amount, { advice: ADVICE, picture: { shots: SHOTS, mean: { x: -0.41, y: 0.47 }, likely: { x: 0.2, y: 0.2 } } }),
  confirm: viewOf(ASKS.confirm),
  text: viewOf(ASKS.text),
  stopped: viewOf(ASKS.released, { type: 'stop', chapter: 'stopped', where: { title: 'Stopped', part: 'a limb is cracked', day: 1, shots: 38 }, may: { back: true, putBack: 'the bow is not to be touched' } }),
  correcting: viewOf({ ...ASKS.tear, correcting: 11 }),
  done: viewOf(null, {
    type: 'done', chapter: 'record', where: { title: 'Bow record', part: '', day: 2, shots: 61 }, may: { back: true, putBack: 'the tune is finished' },
    record: { title: 'Old Faithful, day 2', sections: [{ title: 'Settings', rows: [{ name: 'rest, up and down', value: '1/16 in up from where it began' }] }] },
  }),
} satisfies Record<string, View>;

const HISTORY: readonly HistoryEntry[] = [
  { seq: 4, time: '2031-05-01T10:00:00Z', what: 'safety: all gates passed', canPutBack: false },
  { seq: 8, time: '2031-05-01T10:20:00Z', what: 'rest up 1/32 in', came: 'high 0.74 to high 0.47', canPutBack: true },
  { seq: 11, time: '2031-05-01T10:40:00Z', what: 'rest up 1/32 in again', canPutBack: true },
];

export interface Script { readonly views: readonly View[]; readonly transcript?: readonly TranscriptEntry[]; readonly history?: readonly HistoryEntry[] }

export class FakeSession implements SessionLike {
  readonly sent: Intent[] = [];
  readonly times: Date[] = [];
  /** Thrown or refused at the next send. */
  fail: Error | { code: ErrorCode; message: string } | null = null;
  private at = 0;
  private readonly entries: TranscriptEntry[];

  constructor(private readonly script: Script) {
    this.entries = [...(script.transcript ?? [])];
  }

  get answers(): unknown[] {
    return this.sent.flatMap((intent) => (intent.kind === 'answer' ? [intent.answer] : []));
  }

  view(): View {
    // Each step is a line of the journal, so the number goes up.
    const view = this.script.views[Math.min(this.at, this.script.views.length - 1)] ?? VIEWS.choice;
    return Object.defineProperty(Object.create(view, Object.getOwnPropertyDescriptors(view)) as View, 'seq', { value: view.seq + this.at });
  }

  send(intent: Intent, now: Date): Reply {
    const { fail } = this;
    this.fail = null;
    if (fail instanceof Error) throw fail;
    if (fail !== null) return { view: this.view(), error: fail };
    if (intent.kind === 'answer') {
      const understood = this.preview(intent.answer);
      if (!understood.ok) return { view: this.view(), error: understood };
      this.entries.push({ seq: this.at, who: 'archer', text: understood.words });
    }
    this.sent.push(intent);
    this.times.push(now);
    if (intent.kind === 'note') return { view: this.view(), noted: true };
    this.at += 1;
    return { view: this.view() };
  }

  preview(answer: unknown): Preview {
    const { ask } = this.view();
    const words = typeof answer === 'string' ? answer : JSON.stringify(answer);
    if (answer === 'not known') return ok({ kind: 'not known' }, words);
    switch (ask?.kind) {
      case 'choice': return ok({ kind: 'choice', values: [answer].flat().map(String) }, words);
      case 'confirm': return ok({ kind: 'confirm', value: answer === true }, answer === true ? 'yes' : 'no');
      case 'text': return ok({ kind: 'text', value: words }, words);
      case 'number': return number(answer, ask);
      case 'amount': return answer === 'as told' || answer === 'not now' ? ok({ kind: 'moved', moved: answer }, answer) : moved(answer);
      default: return shot(answer);
    }
  }

  history(): readonly HistoryEntry[] {
    return this.script.history ?? HISTORY;
  }

  transcript(): readonly TranscriptEntry[] {
    return [...this.entries];
  }

  glossary(): Readonly<Record<string, string>> {
    return { riser: 'The stiff middle part of the bow.', cam: 'The wheel at the end of a limb.', sheet: 'The paper in its frame.', yoke: 'A cable that splits into two legs.' };
  }

  subscribe(): () => void {
    return () => undefined;
  }

  close(): void {
    this.entries.length = 0;
  }
}

const ok = (answer: Answer, words: string): Preview => ({ ok: true, answer, words });
const no = (code: ErrorCode, message: string): Preview => ({ ok: false, code, message });

const number = (answer: unknown, ask: Kind<'number'>): Preview => {
  const read = parseQuantity(String(answer), ask.unit);
  if (!read.ok) return no(read.code, read.why);
  if (read.value < ask.min || read.value > ask.max) return no('out-of-range', `${read.value} ${ask.unit} is outside ${ask.min} to ${ask.max} ${ask.unit}`);
  return ok({ kind: 'number', value: read.value }, formatQuantity({ value: read.value, unit: ask.unit }));
};

const moved = (answer: unknown): Preview => {
  const read = parseQuantity(String(answer), 'in');
  return read.ok ? ok({ kind: 'moved', moved: { value: read.value, unit: 'in' } }, formatQuantity({ value: read.value, unit: 'in' })) : no('not-an-amount', read.why);
};

const shot = (answer: unknown): Preview => {
  if (answer === 'missed') return ok({ kind: 'shots', shots: [{ missed: true }] }, 'missed the paper');
  const given = typeof answer === 'string' ? typedShots(answer) : [answer];
  const shots = given.flatMap((one) => (typeof one === 'object' && one !== null && ('missed' in one || ('x' in one && 'y' in one)) ? [one as { x: number; y: number }] : []));
  const first = shots[0];
  if (first === undefined || shots.length < given.length) return no('not-a-tear', 'a tear needs up or down and left or right');
  return ok({ kind: 'shots', shots }, 'missed' in first ? 'missed the paper' : formatTail({ x: first.x, y: first.y }));
};

const typedShots = (text: string): unknown[] =>
  text.split(';').map((part) => {
    const words = /^\s*(high|low) (\S+)(?: (left|right) (\S+))?\s*$/.exec(part);
    const read = (figure: string): number => {
      const parsed = parseQuantity(figure, 'in');
      return parsed.ok ? parsed.value : 0;
    };
    if (words !== null) return { y: read(words[2] ?? '0') * (words[1] === 'low' ? -1 : 1), x: read(words[4] ?? '0') * (words[3] === 'left' ? -1 : 1) };
    const figures = /^\s*(\S+) (\S+)\s*$/.exec(part);
    return figures === null || !/^[-\d.]+$/.test(`${figures[1]}${figures[2]}`) ? null : { x: read(figures[1] ?? '0'), y: read(figures[2] ?? '0') };
  });

export const diskFull = (): Error => new CodedError('cannot-write', 'the answer could not be written to disk: make room, then press Enter again');
