#!/usr/bin/env node
// `npm run demo`: an invented tune of two days, played by itself at reading speed; `npm run demo -- --fast` is four times as quick.
// It opens no folder of tunes and writes no file: its journal is in memory.

import { parseArgs } from 'node:util';
import { shippedContent } from '../tunes/play.ts';
import { createPace } from './pace.ts';
import { STORY } from './story.ts';

const FAST = 4;

async function main(): Promise<void> {
  const { stdin, stdout, env } = process;
  const { values } = parseArgs({ options: { fast: { type: 'boolean' } }, strict: true });
  if (!stdin.isTTY || !stdout.isTTY || env['TERM'] === 'dumb') {
    const { plainDemo } = await import('./plain.ts');
    await plainDemo(shippedContent(), STORY, stdout);
    return;
  }
  // Ink paints nothing under CI and knows no NO_COLOR; both are read when it is imported.
  delete env['CI'];
  delete env['CONTINUOUS_INTEGRATION'];
  if (env['NO_COLOR']) env['FORCE_COLOR'] = '0';
  const { screenDemo } = await import('./screen.tsx');
  const pace = createPace((ms) => new Promise((done) => { setTimeout(done, ms); }), values.fast ? FAST : 1);
  await screenDemo(shippedContent(), STORY, pace, { stdin, stdout, env });
}

const leave = (code: number): void => { process.stdout.write('', () => process.exit(code)); };
process.stdout.on('error', () => process.exit(0));
main().then(() => leave(0), (error: unknown) => {
  process.stderr.write(`demo: ${error instanceof Error ? error.message.split('\n')[0] ?? '' : String(error)}\n`);
  leave(1);
});
