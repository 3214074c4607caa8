// The bow record as Markdown: readable as it stands, and a table wherever Markdown is shown.

import type { BowRecord } from '../machine/types.ts';

/** What the archer typed stays text: no mark-up, no HTML, no line of its own. */
function escape(text: string): string {
  const oneLine = text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, ' ').trim();
  return oneLine.replace(/[\\`*_[\]<>|#~]/g, '\\$&').replace(/&/g, '&amp;');
}

function table(rows: BowRecord['sections'][number]['rows']): string[] {
  if (rows.length === 0) return ['Nothing was noted.'];
  return ['| | |', '|---|---|', ...rows.map(({ name, value }) => `| ${escape(name)} | ${escape(value) || '-'} |`)];
}

/** The record as one Markdown document, ending in a newline. An invented bow says so under its title. */
export function recordMarkdown(record: BowRecord): string {
  const lines = [
    `# ${escape(record.title)}`,
    ...(record.invented ? ['', '**An invented bow, for practice. None of this was measured.**'] : []),
    ...record.sections.flatMap(({ title, rows }) => ['', `## ${escape(title)}`, '', ...table(rows)]),
  ];
  return `${lines.join('\n')}\n`;
}
