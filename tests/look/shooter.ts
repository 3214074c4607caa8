// Answers by keys, for an invented bow whose true answer to every adjustment is known.

import type { Ask, Ledger, Option, Tear } from '../../src/machine/types.ts';
import type { KnobId, Step } from '../../src/content/types.ts';
import { formatInches } from '../../src/maths/fractions.ts';
import { TestArcher, type Bow } from '../tunes/archer.ts';
import type { Asked, ShotRead } from './read-screen.ts';

export class Shooter {
  private readonly archer: TestArcher;
  private readonly ledger: Partial<Record<KnobId, number>> = {};

  constructor(bow: Bow, private readonly byArrows: boolean) {
    this.archer = new TestArcher(bow);
  }

  /** The keys that answer, in the order in which a person would press them. `below`: a part of the list is out of sight. */
  keysFor(asked: Asked, below: boolean): readonly (readonly string[])[] {
    switch (asked.kind) {
      case 'finished': return [['q']];
      case 'call': return [['g']];
      case 'shot': return this.shot(asked);
      case 'nock': {
        const ask = { kind: 'amount', about: 'moved' } as unknown as Ask;
        this.archer.answer({ ask, bow: {}, advice: { kind: 'adjust', knob: asked.swap ? 'nock-swap' : 'nock-turn', arrow: asked.arrow, what: '', why: '', caution: [] } });
        return [['1'], ['Enter']];
      }
      case 'leave it': case 'nothing found': return [['1'], ['Enter']];
      case 'moved': {
        this.ledger[asked.knob] = (this.ledger[asked.knob] ?? 0) + asked.delta;
        return [['1'], ['Enter']];
      }
      case 'step': return this.step(asked.step, below);
    }
  }

  private shot({ of, head, shaft, arrow, nockTurn, yards }: ShotRead): readonly (readonly string[])[] {
    const settings = Object.fromEntries(Object.entries(this.ledger).map(([knob, value]) => [knob, { value, unit: 'in' as const }])) as Ledger;
    const ask = { kind: of, about: of, head, shaft, arrow, nockTurn, distance: { value: yards, unit: 'yd' } } as unknown as Ask;
    const { x, y } = this.archer.answer({ ask, bow: settings }) as Tear;
    if (this.byArrows && (x !== 0 || y !== 0)) {
      const steps = of === 'tear' ? 16 : 4;
      const press = (key: string, value: number): string[] => Array.from({ length: Math.round(Math.abs(value) * steps) }, () => key);
      return [[...press(x > 0 ? 'Right' : 'Left', x), ...press(y > 0 ? 'Up' : 'Down', y)], ['Enter']];
    }
    return [[`${y < 0 ? 'low' : 'high'} ${formatInches(Math.abs(y))} ${x < 0 ? 'left' : 'right'} ${formatInches(Math.abs(x))}`], ['Enter']];
  }

  private step(step: Step, below: boolean): readonly (readonly string[])[] {
    // What a chunk offers first is that all of it is true; it is taken only of a list that was seen to its end.
    if (step.kind === 'chunk') return [...(below ? [step.checks.map(() => 'Down').concat('Down')] : []), ['1'], ['Enter']];
    const options: readonly Option[] = step.kind === 'choice'
      ? step.options.map(({ value, label, gate }) => ({ value, label, ...(gate === 'pass' ? { pass: true as const } : {}) })) : [];
    const ask = { kind: step.kind, about: step.about.replace(/^gate:/, step.kind === 'number' ? '' : 'gate:'), options } as unknown as Ask;
    const answer = this.archer.answer({ ask, bow: {} });
    if (step.kind !== 'choice') return [[step.kind === 'confirm' ? 'y' : String(answer)], ['Enter']];
    const at = options.findIndex((option) => option.value === answer);
    if (at === -1) throw new Error(`"${String(answer)}" is no option of ${step.id}: ${options.map((one) => one.value).join(', ')}`);
    return [[String(at + 1)], ['Enter']];
  }

  /** The content's word for a place, for the name of a picture. */
  static nameOf(asked: Asked | null): string {
    return asked === null ? 'not-understood' : asked.kind === 'step' ? asked.step.id : asked.kind.replaceAll(' ', '-');
  }
}
