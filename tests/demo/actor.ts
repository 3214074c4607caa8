// What the demo's archer answers, as keys on the screen and as a line in the plain face.

import { formatInches } from '../../src/maths/fractions.ts';
import type { Ask, Intent, Tear, View } from '../../src/machine/types.ts';
import { type Key, key, textKeys } from '../../src/screens/key-names.ts';
import { isChecks, picksOf } from '../../src/screens/options.ts';
import { TestArcher } from '../tunes/archer.ts';
import type { Story } from './story.ts';

export interface Acted {
  /** In the order in which a person presses them; the last one takes the answer. */
  readonly keys: readonly Key[];
  readonly line: string;
  readonly intent: Intent;
}

const ENTER = key('enter');
const typed = (text: string): readonly Key[] => [...textKeys(text), ENTER];

export class Actor {
  private readonly archer: TestArcher;
  private shouted = false;

  constructor(private readonly story: Story) {
    this.archer = new TestArcher(story.bow);
  }

  /** `below`: whether a part of the list is out of sight, and is gone through first. Throws where the story has no answer. */
  act(view: View, below: () => boolean): Acted {
    const { ask } = view;
    if (ask === null) throw new Error('nothing is asked');
    if (!this.shouted && this.story.shout.at(view)) {
      this.shouted = true;
      const { words } = this.story.shout;
      return { keys: typed(words), line: `stop ${words}`, intent: { kind: 'stop', words } };
    }
    const said = this.archer.answer(view);
    const intent: Intent = { kind: 'answer', answer: said };
    if (ask.kind === 'tear' || ask.kind === 'impact') {
      const words = shotWords(said as Tear);
      return { keys: [...textKeys('g'), ...typed(words)], line: words, intent };
    }
    return { ...(picksOf(ask) === null ? { keys: typed(String(said)), line: String(said) } : picked(ask, said, below)), intent };
  }
}

const shotWords = ({ x, y }: Tear): string => `${y < 0 ? 'low' : 'high'} ${formatInches(Math.abs(y))} ${x < 0 ? 'left' : 'right'} ${formatInches(Math.abs(x))}`;

function picked(ask: Ask, said: unknown, below: () => boolean): Omit<Acted, 'intent'> {
  const picks = picksOf(ask) ?? [];
  const at = picks.findIndex(({ value }) => value === said);
  if (at < 0 || at > 8) throw new Error(`"${String(said)}" is no answer about ${ask.about}: ${picks.map(({ value }) => value).join(', ')}`);
  const down = isChecks(ask) && below() ? picks.map(() => key('down')) : [];
  const line = ask.kind === 'choice' ? String(at + 1) : ask.kind === 'confirm' ? 'yes' : String(said);
  return { keys: [...down, ...textKeys(String(at + 1)), ENTER], line };
}
