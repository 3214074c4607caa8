// Talks to the built program over its pipe, one line each way, and holds every line it says against the printed schema.

import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';
import type { Ask } from '../../src/machine/types.ts';
import { outSchema, type OutLine } from '../../src/screens/pipe-schema.ts';
import { start } from './program.ts';

export class Talker {
  private readonly child;
  private readonly lines;
  readonly ended: Promise<number | null>;
  last: OutLine | null = null;

  constructor(args: readonly string[]) {
    this.child = start(args);
    this.lines = createInterface({ input: this.child.stdout })[Symbol.asyncIterator]();
    this.ended = new Promise((resolve) => this.child.on('close', resolve));
    this.child.stdin.on('error', () => undefined);
    // A test that fails half-way must not leave its program behind.
    onTestFinished(() => { this.child.kill('SIGKILL'); });
  }

  async hear(): Promise<OutLine> {
    const { value, done } = await this.lines.next();
    if (done) throw new Error('the program ended without a line');
    this.last = outSchema.parse(JSON.parse(value));
    return this.last;
  }

  say(line: unknown): Promise<OutLine> {
    this.child.stdin.write(`${typeof line === 'string' ? line : JSON.stringify(line)}\n`);
    return this.hear();
  }

  /** The ask that stands after the last line. */
  ask(): Ask {
    if (this.last === null || !('ask' in this.last) || this.last.ask === null) throw new Error(`nothing is asked: ${JSON.stringify(this.last)}`);
    return this.last.ask as Ask;
  }

  /** Answers as `answerFor` says until it says stop, or the walk ends. */
  async walk(answerFor: (ask: Ask) => unknown, until: (line: OutLine) => boolean): Promise<OutLine> {
    for (let step = 0; step < 300; step += 1) {
      const line = this.last ?? await this.hear();
      if (line.type === 'done' || line.type === 'error' || until(line)) return line;
      await this.say({ answer: answerFor(this.ask()) });
    }
    throw new Error(`300 answers and no end: ${JSON.stringify(this.last)}`);
  }

  end(): void { this.child.stdin.end(); }
  kill(signal: NodeJS.Signals): void { this.child.kill(signal); }
}

/** A healthy bow of a grown archer, with everything in order. Numbers are invented. */
const HEALTHY: Readonly<Record<string, number>> = {
  'axle-clips': 4, 'rated-weight': 65, 'scale-error': 1, 'bolts-top': 2, 'bolts-bottom': 2, 'bolt-limit': 6, 'arrow-count': 6, 'arrow-mass': 400,
  'peak-weight': 60, 'shaft-ahead': 2, 'axle-to-axle': 32, 'brace-height': 6.5, 'nock-height': 0,
};

/** Passes every gate, and shoots tears of exactly `tear` inches. */
export const healthy = (tear: { x: number; y: number }) => (ask: Ask): unknown => {
  switch (ask.kind) {
    case 'choice': {
      const option = ask.options.find(({ pass }) => pass) ?? ask.options[0];
      return ask.many ? [option?.value] : option?.value;
    }
    case 'number': return HEALTHY[ask.about] ?? ask.pass?.min ?? ask.min;
    case 'confirm': return true;
    case 'text': return 'the blue one';
    case 'amount': return 'as told';
    default: return tear;
  }
};
