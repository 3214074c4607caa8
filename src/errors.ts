// The one table of errors: code, what it means, and the exit code where it ends the program.
// Floor 0: any file may use it. A code is a promise to programs on the pipe: add, never rename.

export const ERRORS = {
  // the answer
  'empty': { says: 'nothing was entered', exit: null },
  'not-an-option': { says: 'the answer is not one of the options', exit: null },
  'not-a-number': { says: 'a number was needed', exit: null },
  'out-of-range': { says: 'the number is outside what is possible here', exit: null },
  'not-a-tear': { says: 'a tear needs up or down and left or right', exit: null },
  'too-large-tear': { says: 'a tear of more than 4 in is asked again', exit: null },
  'not-an-amount': { says: 'an amount was needed', exit: null },
  'not-a-confirm': { says: 'yes or no was needed', exit: null },
  'too-long': { says: 'the text is longer than can be kept', exit: null },
  'unreadable': { says: 'the text has characters that cannot be kept', exit: null },
  'not-known-not-taken': { says: '"not known" is no answer here', exit: null },
  // the moment
  'nothing-earlier': { says: 'there is no earlier answer to correct', exit: null },
  'not-correcting': { says: 'no earlier answer is open', exit: null },
  'nothing-to-put-back': { says: 'no adjustment is there to put back', exit: null },
  'not-now': { says: 'that cannot be done at this point', exit: null },
  'walk-is-done': { says: 'the tune is finished', exit: null },
  // the pipe
  'not-json': { says: 'the line is not a JSON object', exit: null },
  'not-understood': { says: 'the object is none of those that the schema lists', exit: null },
  'line-too-long': { says: 'the line is longer than 64 KiB', exit: null },
  // the program
  'bad-argument': { says: 'the command line is not understood', exit: 2 },
  'no-tune': { says: 'there is no such tune', exit: 3 },
  'locked': { says: 'another quarterturn has this tune open', exit: 4 },
  'bad-journal': { says: 'the journal has a line that cannot be read', exit: 5 },
  'newer-journal': { says: 'the journal was written by a newer quarterturn', exit: 5 },
  'practice-journal': { says: 'the journal is of a practice bow, not of a real one', exit: 5 },
  'not-practice': { says: 'the journal is of a real bow, not of a practice', exit: 5 },
  'cannot-write': { says: 'the answer could not be written to disk', exit: 6 },
  'home-not-writable': { says: 'the folder for tunes cannot be used', exit: 6 },
  'bad-content': { says: 'the content has mistakes', exit: 7 },
  'no-terminal': { says: 'the screen needs a terminal', exit: 8 },
  'internal': { says: 'a mistake in the program itself', exit: 70 },
} as const satisfies Record<string, { says: string; exit: number | null }>;

export type ErrorCode = keyof typeof ERRORS;

/** An error with a code from the table; its message is for people: what is wrong, where, what to do. */
export class CodedError extends Error {
  override readonly name = 'CodedError';
  constructor(readonly code: ErrorCode, message: string) {
    super(message);
  }
}
