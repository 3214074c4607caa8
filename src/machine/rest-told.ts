// Another kind of rest than was told: arm and cord of a drop-away, the blade, the brushes were never looked at.

import type { Deciding } from './deciding.ts';
import { chosen } from './guards.ts';
import type { State } from './state.ts';

export function restTold(d: Deciding): void {
  const changed = d.before.answers['rest'] === undefined
    // What was looked at before anybody told what it is.
    ? d.state.answers['rest-check'] !== undefined
    : kindOf(d.before) !== kindOf(d.state);
  if (changed) d.add({ due: ['rest-check'] });
}

const kindOf = (state: State): string | undefined => chosen(state, 'rest');
