// One screen of a practice, for the README: a hole that is to be read.

import { liveLines } from '../../../src/screens/live.ts';
import { lineText } from '../../../src/screens/look.ts';
import { promptFor } from '../../../src/screens/state.ts';
import { playLearner, practiceOn } from '../../training/learner.ts';

export function practiceScreen(): string {
  const session = practiceOn({ lesson: 'two things wrong', seed: 3 });
  while (session.view().ask?.kind !== 'tear') playLearner(session, () => null, 1);
  const view = session.view();
  const state = {
    size: { columns: 80, rows: 24 }, view, prompt: { ...promptFor(view.ask), loosed: true, called: 'good' as const }, overlay: null, menu: false, run: null, message: null, items: [], leaving: null,
  };
  const needs = { preview: () => ({ ok: false as const, code: 'empty' as const, message: '' }), glossary: {}, braille: false };
  return liveLines(state, needs).map((line) => lineText(line).trimEnd()).join('\n').trim().replace(/^/, '  ');
}
