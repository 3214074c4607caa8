// The keys of the screen and the words of the plain face, as tables for the README.

import { COMMANDS } from '../../../src/screens/key-table.ts';
import { ANSWERING } from '../../../src/screens/help-page.ts';
import { COMMANDS as PLAIN } from '../../../src/screens/plain-commands.ts';

const row = (key: string, text: string): string => `| \`${key}\` | ${text.replaceAll('|', '\\|')} |`;

export const keys = (): string => ['| key | what it does |', '|---|---|',
  ...ANSWERING.map(([key, text]) => row(key, text)),
  row('g, b', 'call a shot good or bad, before its hole is looked at'),
  ...COMMANDS.map(({ key, help }) => row(key, help)),
].join('\n');

export const plainWords = (): string => ['```text', ...PLAIN, '```'].join('\n');
