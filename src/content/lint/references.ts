// Every id that names something in another file must be there.

import { suggest } from '../nearest.ts';
import { error } from '../problem.ts';
import type { Path, Problem } from '../problem.ts';
import type { Where } from '../read.ts';
import type { Content } from '../types.ts';

export function references(content: Content, where: Where): Problem[] {
  const steps = new Set(Object.keys(content.steps));
  const cautions = new Set(Object.keys(content.cautions));
  const sources = new Set(Object.keys(content.sources));
  const found: Problem[] = [];
  const look = (what: string, ids: readonly string[], known: ReadonlySet<string>, file: string, path: Path): void => {
    ids.forEach((id, index) => {
      if (!known.has(id)) {
        found.push(error(where([...path, index]), `no ${what} is called "${id}" in ${file}; ${suggest(id, known)}`));
      }
    });
  };
  const step = (ids: readonly string[], path: Path): void => look('step', ids, steps, 'content/chapters', path);
  const caution = (ids: readonly string[], path: Path): void => look('caution', ids, cautions, 'content/cautions.yaml', path);
  const source = (ids: readonly string[], path: Path): void => look('source', ids, sources, 'content/sources.yaml', path);
  const answers = (about: string, values: readonly string[] | 'any', path: Path): void => {
    const asked = content.steps[about];
    if (values === 'any' || asked?.kind !== 'choice') return;
    look(`answer to the step "${about}"`, values, new Set(asked.options.map((one) => one.value)), 'content/chapters', path);
  };

  content.chapters.forEach((chapter, c) => chapter.blocks.forEach((block, b) => step(block.steps, ['chapters', c, 'blocks', b, 'steps'])));
  for (const [id, one] of Object.entries(content.steps)) {
    caution(one.cautions, ['steps', id, 'cautions']);
    source(one.source, ['steps', id, 'source']);
    if (one.kind === 'chunk') {
      one.checks.forEach((check, index) => {
        // A check without its own sources has the chunk's: those are looked up there.
        if (check.source !== one.source) source(check.source, ['steps', id, 'checks', index, 'source']);
      });
    }
  }
  for (const [id, knob] of Object.entries(content.knobs)) {
    step(knob.needs, ['knobs', id, 'needs']);
    caution(knob.cautions, ['knobs', id, 'cautions']);
    source(knob.source, ['knobs', id, 'source']);
    knob.books.forEach((row, index) => {
      source(row.source, ['knobs', id, 'books', index, 'source']);
      for (const about of ['cams', 'rest'] as const) answers(about, row[about], ['knobs', id, 'books', index, about]);
    });
  }
  for (const [trigger, ids] of Object.entries(content.rechecks)) step(ids, ['rechecks', trigger]);
  for (const [id, inspection] of Object.entries(content.inspections)) source(inspection.source, ['inspections', id, 'source']);
  content.ladders.forEach((rule, index) => {
    source(rule.source, ['ladders', index, 'source']);
    for (const about of ['cams', 'press'] as const) answers(about, rule[about], ['ladders', index, about]);
  });
  return found;
}
