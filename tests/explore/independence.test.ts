// What the program is held against must not be computed by the program: books and promises take types from the sources, and the
// closed lists of names that the types are made from.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const NAMES = ['KNOBS', 'bowKnobOf'];
const IMPORT = /^import (type )?\{([^}]*)\} from '([^']+)';$/gm;

/** Everything but types that a file takes from src/. */
function takenFromSources(text: string): readonly string[] {
  return [...text.matchAll(IMPORT)].flatMap(([, type, names = '', from = '']) => (type !== undefined || !from.includes('/src/') ? []
    : names.split(',').map((name) => name.trim()).filter((name) => name !== '' && !name.startsWith('type '))));
}

const files = ['books', 'invariants'].flatMap((folder) => readdirSync(HERE + folder).map((name) => `${folder}/${name}`));

describe('books and promises', () => {
  test.each(files)('%s shares no code with the program', (file) => {
    const text = readFileSync(HERE + file, 'utf8');
    // Every import is seen: none is written in a way that the pattern passes by.
    expect([...text.matchAll(IMPORT)].length).toBe([...text.matchAll(/^import /gm)].length);
    expect(takenFromSources(text).filter((name) => !NAMES.includes(name))).toEqual([]);
  });

  test('one that does is caught', () => {
    expect(takenFromSources("import { settingsOf, type State } from '../../../src/machine/state.ts';")).toEqual(['settingsOf']);
  });
});
