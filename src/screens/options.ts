// Every ask that is answered by picking becomes one list, so that arrows, numbers and marks work alike everywhere.

import type { Answer, Ask } from '../machine/types.ts';

export interface Pick {
  /** What is sent, or `another` where an amount is typed next. */
  readonly value: string | boolean;
  readonly label: string;
  readonly pass: boolean;
  /** A letter that picks it as a number does. */
  readonly letter?: string;
  /** Picked on its own, never together with others. */
  readonly alone?: true;
}

/** Checks that are all true in one answer: there, what is marked is what is NOT true. */
export const isChecks = (ask: Ask | null): boolean => ask?.kind === 'choice' && ask.many === true && ask.options.some((option) => option.pass === true);

export const ANOTHER_AMOUNT = 'another amount';
/** Of a practice bow: it is said, and the hands do nothing. */
export const SAY_ONLY = 'say only';
export const NOT_KNOWN = 'not known';

/** The list for an ask, or null where it is answered by typing. */
export const picksOf = (ask: Ask): readonly Pick[] | null => {
  switch (ask.kind) {
    case 'choice': return [
      ...ask.options.map((option) => ({ value: option.value, label: option.label, pass: option.pass === true, ...(option.pass === true && ask.many ? { alone: true as const } : {}) })),
      ...(ask.unknown ? [{ value: NOT_KNOWN, label: NOT_KNOWN, pass: false, alone: true as const }] : []),
    ];
    case 'confirm': return [
      { value: true, label: 'yes', pass: false, letter: 'y' },
      { value: false, label: 'no', pass: false, letter: 'n' },
      ...(ask.unknown ? [{ value: NOT_KNOWN, label: NOT_KNOWN, pass: false }] : []),
    ];
    case 'amount': return amountPicks(ask);
    case 'number': case 'text': case 'tear': case 'impact': return null;
  }
};

/** What may be said of an advice. What is to be put back comes before anything else: there, nothing else is offered. */
const amountPicks = ({ unit, max, step, practice }: Extract<Ask, { kind: 'amount' }>): readonly Pick[] => {
  const told = (value: string, label: string): Pick => ({ value, label, pass: false });
  const counted = unit === 'count';
  return [
    told('as told', counted ? 'done as told' : 'moved it as told'),
    // Of a thing that is done or not there is no other amount.
    ...(counted && max <= 1 ? [] : [told(ANOTHER_AMOUNT, counted ? 'turned by another number of vanes' : 'moved another amount')]),
    ...(practice === true && !counted ? [told(SAY_ONLY, 'say "as told" and turn nothing')] : []),
    told('not now', step === PUT_BACK ? 'not yet: the coach waits' : 'not now'),
    ...(step === PUT_BACK ? [] : [told('another', counted ? 'another change instead' : 'another adjustment instead')]),
    // What is counted is done or not; what goes back has come from there.
    ...(step === PUT_BACK || counted ? [] : [told('at its end', 'it goes no further that way')]),
  ];
};

/** The step that asks whether something was put back. */
export const PUT_BACK = 'put-it-back';

/** Where the cursor starts: nowhere (-1) wherever a stray Enter could pass a gate or claim a move that was not made. */
export const startingCursor = (ask: Ask, picks: readonly Pick[]): number => {
  if (ask.noDefault || ask.kind !== 'choice' || ask.many || picks.some((pick) => pick.pass)) return -1;
  const suggested = suggestedValue(ask.suggestion);
  return suggested === null ? 0 : Math.max(0, picks.findIndex((pick) => pick.value === suggested));
};

export const suggestedValue = (suggestion: Answer | undefined): string | boolean | null => {
  if (suggestion === undefined) return null;
  if (suggestion.kind === 'choice') return suggestion.values[0] ?? null;
  if (suggestion.kind === 'confirm') return suggestion.value;
  return suggestion.kind === 'not known' ? NOT_KNOWN : null;
};

/** An earlier answer of an ask that is typed, as text to start from. */
export const suggestedText = (suggestion: Answer | undefined): string => {
  if (suggestion?.kind === 'number') return String(suggestion.value);
  return suggestion?.kind === 'text' ? suggestion.value : '';
};
