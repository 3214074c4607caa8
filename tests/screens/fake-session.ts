// A session that plays a list of views, keeps what was sent, and decides nothing. Its bows and shots are invented.

import { CodedError, type ErrorCode } from '../../src/errors.ts';
import type { Advice, Answer, AnswerEntry, ArrowsPicture, Ask, GroupsPicture, HistoryEntry, Intent, PlumbPicture, Reply, SessionLike, TranscriptEntry, View } from '../../src/machine/types.ts';
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
  numbered: {
    ...base, about: 'tear', step: 'shoot-each-arrow', short: 'Arrow 7, shot 1 of 3: the tear?', text: ['Now arrow 7, its nock turned by one vane.'], kind: 'tear',
    ...shotPlan, arrow: '7', nockTurn: 1, shots: { taken: 0, wanted: 3 },
  },
  unfletched: {
    ...base, about: 'impact', step: 'shoot-shooting', short: 'Shot 2 of 6 at 20 yd, unfletched shaft: where did it land?', text: ['Now an unfletched one, flexed since its last shot.'], kind: 'impact',
    ...shotPlan, arrow: null, shaft: 'unfletched', distance: { value: 20, unit: 'yd' },
  },
  plumb: {
    ...base, about: 'impact', step: 'shoot-shooting', short: 'Shot 5 of 6 at 30 yd, fletched arrow: where did it land?', text: ['Now from 30 yd. Bubble level.'], kind: 'impact',
    ...shotPlan, arrow: null, distance: { value: 30, unit: 'yd' },
  },
  turn: { ...base, about: 'moved', step: 'change-the-arrow', short: 'ARROW 7: HOLD THE NOCK, TURN THE SHAFT 1 VANE CLOCKWISE: done?', text: ['Seen from the nock, hold the nock and turn the shaft clockwise.'], kind: 'amount', unit: 'count', max: 2 },
  swap: { ...base, about: 'moved', step: 'change-the-arrow', short: 'ARROW 7: A NEW NOCK, SAME TURN: done?', text: ['Pull the old nock straight out.'], kind: 'amount', unit: 'count', max: 1 },
  back: { ...base, about: 'moved', step: 'put-it-back', short: 'REST DOWN 1/32 in: done?', text: [], kind: 'amount', unit: 'in', max: 0.5 },
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

export const ARROW_ADVICE: Advice = {
  kind: 'adjust', knob: 'nock-turn', arrow: '7', amount: { value: 1, unit: 'count' }, to: { value: 1, unit: 'count' },
  expect: { x: 0.05, y: 0.1, sdX: 0.09, sdY: 0.09 }, what: 'ARROW 7: HOLD THE NOCK, TURN THE SHAFT 1 VANE CLOCKWISE',
  why: 'A shaft bends a little differently on each side. Turned, arrow 7 leaves from another one.',
  wrongIf: 'If the 3 shots after it lie as far off as before, it was not this side of the shaft.',
  undo: 'Turn the shaft back by 1 vane, the other way round; the marks on nock and shaft show it.',
  caution: ['Before it is shot: nock whole, fully seated, snaps on the string and holds.'],
};

export const BACK_ADVICE: Advice = { kind: 'put-back', knob: 'rest-height', direction: 'down', amount: { value: 1 / 32, unit: 'in' }, what: 'REST DOWN 1/32 in', why: 'It got worse.', caution: [] };

export const GROUPS: GroupsPicture = {
  kind: 'groups', names: { a: 'field point', b: 'broadhead' },
  a: [{ x: -0.5, y: 1, counted: true }, { x: 0.75, y: -0.5, counted: true }, { x: 0.25, y: 0.5, counted: true }],
  b: [{ x: 2, y: -3, counted: true }, { x: 3.25, y: -2.5, counted: true }, { x: -6, y: -6, counted: false }],
  means: { a: { x: 0.17, y: 0.33 }, b: { x: 2.63, y: -2.75 } }, margin: 1.2, aim: { x: 0, y: -0.5 },
};

export const ARROWS: ArrowsPicture = {
  kind: 'arrows', typical: { x: -0.04, y: 0.11 },
  arrows: Array.from({ length: 12 }, (_, at) => ({
    arrow: String(at + 1), mean: at === 6 ? { x: -0.4, y: 0.52 } : { x: -0.04 + Math.sin(at) / 12, y: 0.11 + Math.cos(at * 2) / 12 }, shots: 3, standsOut: at === 6,
  })),
};

export const PLUMB: PlumbPicture = {
  kind: 'plumb', points: [20, 30, 40].map((yards, at) => ({ distance: { value: yards, unit: 'yd' as const }, x: [0.4, 1.3, 2.6][at] ?? 0, shots: 2 })),
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
  tear: viewOf(ASKS.tear, { picture: { kind: 'paper', shots: SHOTS } }),
  impact: viewOf(ASKS.impact),
  groups: viewOf(ASKS.impact, { where: { title: 'Broadheads', part: 'up and down', day: 2, shots: 61 }, picture: GROUPS }),
  unfletched: viewOf(ASKS.unfletched, { where: { title: 'Unfletched', part: 'sideways', day: 2, shots: 61 } }),
  plumb: viewOf(ASKS.plumb, { where: { title: 'Plumb line', part: 'sideways', day: 2, shots: 61 }, picture: PLUMB }),
  arrows: viewOf(ASKS.numbered, { where: { title: 'Arrows', part: 'round 3 of 3', day: 2, shots: 90 }, picture: ARROWS }),
  turn: viewOf(ASKS.turn, { where: { title: 'Arrows', part: 'arrow 7', day: 2, shots: 90 }, advice: ARROW_ADVICE, picture: ARROWS }),
  swap: viewOf(ASKS.swap, { where: { title: 'Arrows', part: 'arrow 7', day: 2, shots: 90 }, advice: { ...ARROW_ADVICE, knob: 'nock-swap', what: 'ARROW 7: A NEW NOCK, SAME TURN' } }),
  back: viewOf(ASKS.back, { advice: BACK_ADVICE }),
  amount: viewOf(ASKS.amount, { advice: ADVICE, picture: { kind: 'paper', shots: SHOTS, mean: { x: -0.41, y: 0.47 }, likely: { x: 0.2, y: 0.2 } } }),
  confirm: viewOf(ASKS.confirm),
  text: viewOf(ASKS.text),
  stopped: viewOf(ASKS.released, { type: 'stop', chapter: 'stopped', where: { title: 'Stopped', part: 'a limb is cracked', day: 1, shots: 38 }, may: { back: true, putBack: 'the bow is not to be touched' } }),
  correcting: viewOf({ ...ASKS.tear, correcting: 11 }),
  done: viewOf(null, {
    type: 'done', chapter: 'record', where: { title: 'Bow record', part: '', day: 2, shots: 61 }, may: { back: true, putBack: 'the tune is finished' },
    record: { title: 'Old Faithful, day 2', sections: [{ title: 'Settings', rows: [{ name: 'rest, up and down', value: '1/16 in up from where it began' }] }] },
  }),
} satisfies Record<string, View>;

const inches = (value: number) => ({ value, unit: 'in' as const });

/** Invented: up twice, and a look from each point. */
export const HISTORY: readonly HistoryEntry[] = [
  { seq: 0, time: '2031-05-01T10:00:00Z', what: 'as found', came: '0.74 in high, from 3 shots', bow: {}, back: { to: 8, steps: ['REST DOWN 1/16 in'] } },
  { seq: 8, time: '2031-05-01T10:20:00Z', what: 'REST UP 1/32 in', came: '0.47 in high, from 2 shots', bow: { 'rest-height': inches(1 / 32) }, back: { to: 11, steps: ['REST DOWN 1/32 in'] } },
  { seq: 11, time: '2031-05-01T10:40:00Z', what: 'REST UP 1/32 in', bow: { 'rest-height': inches(1 / 16) }, back: null },
];

/** Invented: fifteen changes, as many as a long day has. */
export const LONG_HISTORY: readonly HistoryEntry[] = Array.from({ length: 16 }, (_, at): HistoryEntry => ({
  seq: at === 0 ? 0 : 20 + at, time: '2031-05-01T10:00:00Z', what: at === 0 ? 'as found' : at % 2 === 0 ? 'REST UP 1/64 in' : 'YOKE, into the right leg and out of the left: 1/2 half-twist pair',
  came: `${(1 - at / 20).toFixed(2)} in high, 0.20 in left, from 3 shots`,
  bow: { 'rest-height': inches(Math.floor(at / 2) / 64), 'yoke': { value: Math.ceil(at / 2) / 2, unit: 'half-twist-pair' } },
  back: at === 15 ? null : { to: 21 + at, steps: ['YOKE, out of the right leg and into the left: 1/2 half-twist pair', 'REST DOWN 1/64 in'].slice(0, at === 14 ? 1 : 2) },
}));

export const ANSWERS: readonly AnswerEntry[] = [
  { seq: 2, question: 'Which hand holds the bow?', answer: 'Left hand holds it: right-handed', change: true },
  { seq: 5, question: 'Did you see a crack?', answer: 'no', change: 'that question led out of a stop; stop again if it was wrong' },
  { seq: 9, question: 'What is the peak weight, on a scale?', answer: '62 lb', change: true },
  { seq: 12, question: 'Shot', answer: 'tail 1/2 in high', change: true },
];

export interface Script { readonly views: readonly View[]; readonly transcript?: readonly TranscriptEntry[]; readonly history?: readonly HistoryEntry[]; readonly answers?: readonly AnswerEntry[] }

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

  /** What was sent as answers. */
  get given(): unknown[] {
    return this.sent.flatMap((intent) => (intent.kind === 'answer' ? [intent.answer] : []));
  }

  view(): View {
    // Each step is a line of the journal, so the number goes up.
    const view = this.script.views[Math.min(this.at, this.script.views.length - 1)] ?? VIEWS.choice;
    return Object.defineProperty(Object.create(view, Object.getOwnPropertyDescriptors(view)) as View, 'seq', { value: view.seq + this.at });
  }

  send(intent: Intent, now: Date): Reply {
    // The words of danger that this one knows; all else is not listened to, and nothing is written of it.
    if (intent.kind === 'say' && !/\b(cracked|stop|blood)\b/i.test(intent.words)) return { view: this.view(), error: { code: 'not-understood', message: 'No word of danger.' } };
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
      case 'amount': return answer === 'as told' || answer === 'not now' || answer === 'another' ? ok({ kind: 'moved', moved: answer }, answer) : moved(answer);
      default: return shot(answer);
    }
  }

  history(): readonly HistoryEntry[] {
    return this.script.history ?? HISTORY;
  }

  answers(): readonly AnswerEntry[] {
    return this.script.answers ?? ANSWERS;
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
