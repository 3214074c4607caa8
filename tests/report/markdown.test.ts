import { describe, expect, it } from 'vitest';
import { recordMarkdown } from '../../src/report/markdown.ts';

const one = (name: string, value: string): string => recordMarkdown({ title: 't', sections: [{ title: 's', rows: [{ name, value }] }] });

describe('the record as Markdown', () => {
  it('has a title, sections and rows in order', () => {
    const text = recordMarkdown({
      title: 'Bow record: the blue one',
      sections: [{ title: 'Settings', rows: [{ name: 'Rest', value: '1/32 in up' }, { name: 'Nock', value: '' }] }, { title: 'What did nothing', rows: [] }],
    });
    expect(text).toBe([
      '# Bow record: the blue one', '', '## Settings', '', '- **Rest:** 1/32 in up', '- **Nock:** -',
      '', '## What did nothing', '', 'Nothing was noted.', '',
    ].join('\n'));
  });
  it('says that an invented bow is one', () => {
    expect(recordMarkdown({ title: 'x', invented: true, sections: [] })).toContain('An invented bow, for practice.');
    expect(recordMarkdown({ title: 'x', sections: [] })).not.toContain('invented');
  });
  it('lets nothing that was typed break the page', () => {
    const text = recordMarkdown({ title: 'a\nb', sections: [{ title: '<b>', rows: [{ name: 'x | y', value: '*1*\u001b[31m & `2`\r\n# z' }] }] });
    expect(text).toContain('# a b\n');
    expect(text).toContain('## \\<b\\>');
    expect(text).toContain('- **x | y:** \\*1\\* \\[31m &amp; \\`2\\` # z\n');
    expect(text.split('\n')).toHaveLength(6);
  });
  it('wraps at 78 columns, and loses no word', () => {
    const words = Array.from({ length: 60 }, (_, i) => `word${i}`);
    const lines = one('Note', words.join(' ')).trimEnd().split('\n').slice(4);
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.every((line) => line.length <= 78)).toBe(true);
    expect(lines.slice(1).every((line) => line.startsWith('  word'))).toBe(true);
    expect(lines.join(' ').split(/\s+/).slice(2)).toEqual(words);
  });
  it('gives a word that is longer than a line a line of its own', () => {
    expect(one('Note', `a ${'b'.repeat(90)} c`).trimEnd().split('\n').slice(4)).toEqual(['- **Note:** a', `  ${'b'.repeat(90)}`, '  c']);
  });
  it('lets no wrapped line begin a list, a heading or a rule', () => {
    // "- **Note:** " and 66 letters fill the first line.
    const filler = 'x'.repeat(66);
    for (const [word, shown] of [['-', '\\-'], ['+', '\\+'], ['#', '\\#'], ['1.', '1\\.'], ['2)', '2\\)'], ['===', '\\===']] as const) {
      expect(one('Note', `${filler} ${word} end`).trimEnd().split('\n').slice(4)).toEqual([`- **Note:** ${filler}`, `  ${shown} end`]);
    }
  });
});
