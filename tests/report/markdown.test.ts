import { describe, expect, it } from 'vitest';
import { recordMarkdown } from '../../src/report/markdown.ts';

describe('the record as Markdown', () => {
  it('has a title, sections and rows in order', () => {
    const text = recordMarkdown({
      title: 'Bow record: the blue one',
      sections: [{ title: 'Settings', rows: [{ name: 'Rest', value: '1/32 in up' }, { name: 'Nock', value: '' }] }, { title: 'What did nothing', rows: [] }],
    });
    expect(text).toBe([
      '# Bow record: the blue one', '', '## Settings', '', '| | |', '|---|---|', '| Rest | 1/32 in up |', '| Nock | - |',
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
    expect(text).toContain('| x \\| y | \\*1\\* \\[31m &amp; \\`2\\` \\# z |');
    expect(text.split('\n')).toHaveLength(8);
  });
});
