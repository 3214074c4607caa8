// A second book of the nocks, kept from the journal's lines alone: how the nock of each numbered arrow stands, in vanes from as found.
// It goes by what the archer answered and was told, and shares no line of code with the program's own.

import type { Answer, Fact } from '../../../src/machine/types.ts';

/** Vanes once round. */
const VANES: Readonly<Record<string, number>> = { 'three': 3, 'four-even': 4, 'four-uneven': 4 };
/** `Turned: 1 vane clockwise: arrows 2, 5 and 7; 2 vanes clockwise: arrow 3. Mark ...`: what was told of a list that was done. */
const TOLD = /^Turned(?: back)?: (.*?)\. /;

interface Turned { readonly seq: number; readonly arrow: string; readonly stands: number }

export class NockBook {
  private vanes = 3;
  private turned: readonly Turned[] = [];
  private vanesAt = 0;

  /** Vanes by which it is turned from as found. */
  standsAt(arrow: string): number {
    return this.turned.findLast((one) => one.arrow === arrow)?.stands ?? 0;
  }

  read(fact: Fact): void {
    const { rewindTo, arrowTold } = fact.decided.loop ?? {};
    // A choice of the walk that is taken back whole was not made.
    if (rewindTo !== undefined) this.turned = this.turned.filter(({ seq }) => seq < rewindTo);
    // Other arrows have other nocks.
    if (fact.kind === 'changed' && fact.what === 'arrow') this.turned = [];
    if (fact.kind === 'answered' && fact.step === 'vanes') this.vanesAt = fact.seq;
    if (fact.kind === 'answered' && fact.step === 'vanes') this.countVanes(fact.answer);
    if (fact.kind === 'corrected' && fact.of === this.vanesAt) this.countVanes(fact.answer);
    if (arrowTold?.knob === 'nock-turn') this.turn(fact.seq, arrowTold.arrow, arrowTold.by);
    if (fact.kind !== 'answered' && rewindTo === undefined) return;
    for (const entry of fact.decided.say.flatMap((said) => TOLD.exec(said)?.[1]?.split('; ') ?? [])) {
      const [, by = '0', arrows = ''] = /^(\d+) vanes? clockwise: arrows? (.*)$/.exec(entry) ?? [];
      for (const [arrow] of arrows.matchAll(/\d+/g)) this.turn(fact.seq, arrow, Number(by));
    }
  }

  private countVanes(answer: Answer): void {
    this.vanes = (answer.kind === 'choice' ? VANES[answer.values[0] ?? ''] : undefined) ?? this.vanes;
  }

  private turn(seq: number, arrow: string, by: number): void {
    const stands = (((this.standsAt(arrow) + by) % this.vanes) + this.vanes) % this.vanes;
    this.turned = [...this.turned, { seq, arrow, stands }];
  }
}
