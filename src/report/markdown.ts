// The bow record as Markdown that is as readable in a terminal of 80 columns as where Markdown is shown: a list a section,
// wrapped, each row beginning with its name.

import type { BowRecord, RecordRow } from '../machine/types.ts';

/** The widest line written; a single word that is longer stands on a line of its own. */
const WIDEST = 78;

/** What the archer typed stays text: no mark-up, no HTML, no line of its own. */
function escape(text: string): string {
  const oneLine = text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, ' ').trim();
  return oneLine.replace(/[\\`*_[\]<>~]/g, '\\$&').replace(/&/g, '&amp;');
}

/** Words on lines of at most WIDEST, the later ones indented under the first; none of them begins like a list or a heading. */
function wrap(text: string): string[] {
  const lines: string[] = [];
  let line = '-';
  for (const word of text.split(/ +/)) {
    if (line !== '  ' && line.length + 1 + word.length > WIDEST) {
      lines.push(line);
      line = '  ';
    }
    line = line === '  ' ? `  ${word.replace(/^([-+#=|]|\d+[.)]$)/, (mark) => (/^\d/.test(mark) ? `${mark.slice(0, -1)}\\${mark.slice(-1)}` : `\\${mark}`))}` : `${line} ${word}`;
  }
  return [...lines, line];
}

const row = ({ name, value }: RecordRow): string[] => wrap(`**${escape(name)}:** ${escape(value) || '-'}`);

/** The record as one Markdown document, ending in a newline. An invented bow says so under its title. */
export function recordMarkdown(record: BowRecord): string {
  const lines = [
    `# ${escape(record.title)}`,
    ...(record.invented ? ['', '**An invented bow, for practice. None of this was measured.**'] : []),
    ...record.sections.flatMap(({ title, rows }) => ['', `## ${escape(title)}`, '', ...(rows.length === 0 ? ['Nothing was noted.'] : rows.flatMap(row))]),
  ];
  return `${lines.join('\n')}\n`;
}
