// What goes into the scroll-back: the coach's words, the archer's answers, a finished set, the record. Each is made once,
// at the width of that moment, and is never touched again.

import type { Advice, BowRecord, Intent, TranscriptEntry, View } from '../machine/types.ts';
import { adviceHeadline, undoWords } from './advice-lines.ts';
import { BLANK, type Line, paragraph, paragraphs, span } from './look.ts';
import { type PictureLook, setLines, shotsIn } from './shot-lines.ts';

const LABEL = { coach: '  coach  ', archer: '  you    ' } as const;

/** The archer's lines come with the question in front; here each says its own. */
const QUESTION_AND_ANSWER = /^([^?]+\?): (.+)$/s;

export const entryItem = ({ who, text }: Pick<TranscriptEntry, 'who' | 'text'>, width: number): Line[] => {
  const [, asked, given] = (who === 'archer' ? QUESTION_AND_ANSWER.exec(text) : null) ?? [];
  if (asked !== undefined && given !== undefined) {
    return [...paragraph(span(LABEL.coach, 'coach'), asked, width), ...paragraph(span(LABEL.archer, 'strong'), given, width)];
  }
  return paragraph(span(LABEL[who], who === 'coach' ? 'coach' : 'strong'), text, width);
};

const includes = (entries: readonly TranscriptEntry[], text: string): boolean => entries.some((entry) => entry.text.includes(text));

/** What one taken intent leaves behind: what was asked, what was said, and the picture of a set that is complete. */
export const takenLines = (before: View, intent: Intent, after: View, entries: readonly TranscriptEntry[], look: PictureLook): Line[] => {
  const { width } = look;
  const asked = intent.kind === 'answer' && before.ask !== null && !sameAsBefore(before) && !includes(entries, before.ask.short) ? before.ask.short : null;
  const followed = intent.kind === 'answer' && before.ask?.kind === 'amount' ? before.advice : null;
  // The finished set stands between the answer and what the coach makes of it.
  const answered = entries.findLastIndex((entry) => entry.who === 'archer') + 1;
  // An answer that is merely opened again adds no line, and its words were said before.
  const unsaid = after.seq === before.seq ? [] : after.say.filter((text) => !includes(entries, text));
  return [
    ...(followed === null || includes(entries.filter((entry) => entry.who === 'coach'), followed.what) ? [] : [...adviceHeadline(followed, width), ...undoLine(followed, width)]),
    ...(asked === null ? [] : entryItem({ who: 'coach', text: asked }, width)),
    ...entries.slice(0, answered).flatMap((entry) => entryItem(entry, width)),
    ...(isShot(before) && !isShot(after) && after.picture !== undefined && shotsIn(after.picture) > 1 ? setLines(after.picture, look) : []),
    ...entries.slice(answered).flatMap((entry) => entryItem(entry, width)),
    ...unsaid.flatMap((text) => entryItem({ who: 'coach', text }, width)),
    ...(after.record !== undefined && before.record === undefined ? recordLines(after.record, width) : []),
    ...(after.practice?.debrief !== undefined && before.practice?.debrief === undefined ? recordLines(after.practice.debrief, width) : []),
  ];
};

/** The second and later shots of a set answer the question that stands above the first. */
const sameAsBefore = ({ ask }: View): boolean => (ask?.kind === 'tear' || ask?.kind === 'impact') && ask.shots.taken > 0;
const isShot = ({ ask }: View): boolean => ask?.kind === 'tear' || ask?.kind === 'impact';
const undoLine = (advice: Advice, width: number): Line[] =>
  paragraphs(undoWords(advice), 9, width, 'soft');

export const recordLines = (record: BowRecord, width: number): Line[] => [
  BLANK,
  ...paragraph(span('  '), record.invented ? `${record.title} (invented, for practice)` : record.title, width, 'strong'),
  ...record.sections.flatMap((section) => [
    BLANK,
    ...paragraph(span('  '), section.title, width, 'strong'),
    ...section.rows.flatMap((row) => paragraph(span('    '), `${row.name}: ${row.value}`, width)),
  ]),
];

/** How much of an earlier day is repeated on resuming. More is in the history, and in the record. */
const REPEATED = 20;

/** What is written before the first frame: what was noticed, where we are, and the last lines of the conversation. */
export const openingLines = (view: View, entries: readonly TranscriptEntry[], notices: readonly string[], width: number): Line[] => {
  const last = entries.slice(-REPEATED);
  const left = entries.length - last.length;
  return [
    BLANK,
    ...(view.practice === undefined ? [] : paragraph(span('  '), `PRACTICE, on an invented bow${view.practice.of === '' ? '' : `: ${view.practice.of}`}`, width, 'strong')),
    ...notices.flatMap((notice) => paragraph(span('  note   '), notice, width)),
    ...(left > 0 ? paragraph(span('  '), `\u2026 ${left} earlier lines: r shows all answers`, width, 'soft') : []),
    ...last.flatMap((entry) => entryItem(entry, width)),
    ...view.say.filter((text) => !includes(last, text)).flatMap((text) => entryItem({ who: 'coach', text }, width)),
    ...(view.record === undefined ? [] : recordLines(view.record, width)),
    ...(view.practice?.debrief === undefined ? [] : recordLines(view.practice.debrief, width)),
  ];
};
