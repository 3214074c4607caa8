// What an archer typed is shown again on terminals: nothing in it may move the cursor, colour the screen or turn text around.

const ESCAPES = /\u001b(?:\[[0-?]*[ -/]*[@-~]|[\]PX^_][^\u0007\u001b]*(?:\u0007|\u001b\\)?|[ -/]*[0-~])?|\u009b[0-?]*[ -/]*[@-~]/g;
const LINE_ENDS = /[\r\n\t\u2028\u2029]+/g;
const CONTROLS = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]/g;

/** The text on one line, without escape sequences, control characters and marks that turn the direction of writing. */
export function clean(text: string): string {
  return text.replace(ESCAPES, '').replace(LINE_ENDS, ' ').replace(CONTROLS, '');
}
