// Plays the tunes of tests/journal/frozen-tunes.ts and freezes each as a journal of the present version. Run once for each version
// (`npx tsx tests/tools/freeze-journal.ts`), after a build; a file that is there already is never written anew.

import { existsSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { encodeLine } from '../../src/journal/line.ts';
import { CURRENT_VERSION } from '../../src/journal/versions.ts';
import { FROZEN } from '../journal/frozen-tunes.ts';

for (const { name, play } of FROZEN) {
  const file = `journal-v${CURRENT_VERSION}-${name}.jsonl`;
  const path = fileURLToPath(new URL(`../fixtures/${file}`, import.meta.url));
  if (existsSync(path)) {
    process.stdout.write(`${file}: frozen already, left as it is\n`);
    continue;
  }
  const facts = play();
  writeFileSync(path, facts.map(encodeLine).join(''), { flag: 'wx' });
  process.stdout.write(`${file}: ${facts.length} lines\n`);
}
