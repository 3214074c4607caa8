// The promises that keep people whole, each with where it is kept and the faults that it catches: from the explorer's own list.

import { FAULTS } from '../../explore/faults.ts';
import { INVARIANTS } from '../../explore/invariants.ts';

const cell = (text: string): string => text.replaceAll('|', '\\|');

export function promises(): string {
  const rows = INVARIANTS.map(({ id, rule, held }) => {
    const caught = FAULTS.filter(({ breaks }) => breaks === id).map(({ what }) => what).join('; ');
    return `| \`${id}\` | ${cell(rule)} | ${cell(held)} | ${cell(caught)} |`;
  });
  return ['| promise | rule | where it is kept | planted faults that it catches |', '|---|---|---|---|', ...rows].join('\n');
}
