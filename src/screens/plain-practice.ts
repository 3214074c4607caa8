// What a practice adds to the plain face. A drawing says nothing to who listens: the hole is told as a rule on it reads, to the mark that the
// screen's drawing can be read to. What is left to learn there is which way a tear lies, and not to trust one shot; "draw" shows the drawing.

import type { Ask, Intent, PracticeHole, Tear, View } from '../machine/types.ts';
import { formatInches } from '../maths/fractions.ts';
import { clean } from './clean.ts';
import { drawHole, holeLegend } from './hole-picture.ts';
import { readCommand } from './plain-commands.ts';

export type PracticeCommand = { readonly kind: 'shoot' | 'draw' } | { readonly kind: 'intent'; readonly intent: Intent } | { readonly kind: 'mistake'; readonly message: string };

export const PRACTICE_COMMANDS = [
  'shoot           let the arrow go; Enter alone does the same',
  'draw            the hole as a drawing in characters',
  'turn KNOB DIRECTION AMOUNT    turn something on the bow, and the coach is not told',
  'say as told     say that it was moved as told, and turn nothing',
  'debrief         end the practice, and be told what was true',
] as const;

const SIMPLE: Readonly<Record<string, PracticeCommand>> = {
  'shoot': { kind: 'shoot' }, 'draw': { kind: 'draw' },
  'say as told': { kind: 'intent', intent: { kind: 'answer', answer: 'as told', hands: 'still' } },
  'debrief': { kind: 'intent', intent: { kind: 'debrief' } },
};

/** What is meant by a line in practice alone; null where it means what it means at a real bow. */
export function readPractice(line: string, held: boolean): PracticeCommand | null {
  const text = line.trim().toLowerCase().replace(/\s+/g, ' ');
  if (text === '') return held ? { kind: 'shoot' } : null;
  const simple = Object.hasOwn(SIMPLE, text) ? SIMPLE[text] : undefined;
  if (simple !== undefined) return simple;
  if (!/^turn\b/.test(text)) return null;
  const read = readCommand(`moved ${text.slice(4).trim()}`);
  if (read.kind === 'mistake') return { kind: 'mistake', message: read.message.replaceAll('moved ', 'turn ').replace('What was moved?', 'Turn what?') };
  if (read.kind !== 'intent' || read.intent.kind !== 'moved') return null;
  return { kind: 'intent', intent: { ...read.intent, kind: 'turned' } };
}

export const isHeld = (ask: Ask | null, loosed: boolean): boolean => ask?.practice === true && (ask.kind === 'tear' || ask.kind === 'impact') && !loosed;

export const HOLD_LINE = 'Press Enter to let the arrow go.';
export const SHOOT_FIRST = 'Let the arrow go first: press Enter. What it left is told then.';

export const seenLines = ({ practice }: View): string[] => (practice?.seen ?? []).map((text) => clean(`you see: ${text}`));

/** How letting go felt, and what the rule reads. */
export const shotLines = ({ practice }: View): string[] => {
  const shot = practice?.shot;
  return shot === undefined ? [] : [`felt: ${shot.felt}`, holeWords(shot.hole)].map(clean);
};

export const drawingLines = ({ practice }: View): string[] => {
  const hole = practice?.shot?.hole;
  return hole === undefined ? [] : [...drawHole(hole, { columns: 70, rows: 13 }), clean(holeLegend(hole))];
};

/** Marks of the rule, inches: on paper, and at a target. */
export const RULE = { sheet: 1 / 16, target: 1 / 4 } as const;

const onMark = (value: number, mark: number): number => Math.sign(value) * mark * Math.round(Math.abs(value) / mark) + 0;

/** The hole as a rule reads it, for who reads figures. */
export function asRead(hole: PracticeHole): PracticeHole {
  const read = ({ x, y }: Tear, mark: number): Tear => ({ x: onMark(x, mark), y: onMark(y, mark) });
  switch (hole.kind) {
    case 'none': return hole;
    case 'sheet': return { ...hole, tail: read(hole.tail, RULE.sheet) };
    case 'target': return { ...hole, at: read(hole.at, RULE.target) };
  }
}

/** Where the hole lies, as a rule reads. */
export function holeWords(hole: PracticeHole): string {
  switch (hole.kind) {
    case 'none': return 'No hole is to be found: it missed.';
    case 'sheet': return `On the sheet the rule, laid from the point's hole to where the cuts of the vanes meet, reads ${along(hole.tail, RULE.sheet, 'up', 'down')}.`;
    case 'target': return `In the target the rule, laid from the dot to the hole, reads ${along(hole.at, RULE.target, 'up', 'down')}.`;
  }
}

function along({ x, y }: { readonly x: number; readonly y: number }, mark: number, up: string, down: string): string {
  const read = (value: number): string => formatInches(Math.abs(onMark(value, mark)), 16);
  return `${read(y) === '0' ? '0' : `${read(y)} in ${y > 0 ? up : down}`} and ${read(x) === '0' ? '0 sideways' : `${read(x)} in to the ${x > 0 ? 'right' : 'left'}`}`;
}
