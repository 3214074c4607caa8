// Stops lie on one another: a word said while the bow waits for a dealer adds its own question and takes none away.
// Only when the questions of all of them are answered does the walk go on.

import type { Stop } from './notes.ts';

/**
 * A new stop on top of what still stands; an older one that asks nothing besides is taken up in it. But what sent the bow to a
 * dealer for another reason stays: taking back the newer reason must not take the dealer's word with it.
 */
export function stopOver(standing: Stop | null, stop: Stop): Stop {
  const stays = (old: Stop): boolean => old.ask.some((id) => !stop.ask.includes(id)) || (old.ask.includes('released') && (old.from !== stop.from || old.line !== stop.line));
  return stack([stop, ...levels(standing).filter(stays)], stop);
}

/** What is left after this question was answered; once no question is left it may be released. */
export function afterQuestion(standing: Stop | null, id: string): Stop | null {
  if (standing === null) return null;
  return stack(levels(standing).map((stop) => ({ ...stop, ask: stop.ask.filter((asked) => asked !== id) })), standing);
}

/** Without the questions that belong to a way no longer taken: nobody is held by a gate that is not on the route. */
export function withoutQuestions(standing: Stop, offRoute: (id: string) => boolean): Stop | null {
  const gone = levels(standing).flatMap((stop) => stop.ask).filter(offRoute);
  return gone.length === 0 ? standing : gone.reduce<Stop | null>(afterQuestion, standing);
}

/**
 * Without the stop that the answer of this line raised, and without those that ask this step where that answer is the one in
 * force; null where there is none. What another line raised at the same step stands: that happened.
 */
export function takenBack(standing: Stop | null, { step, line, inForce }: { readonly step: string; readonly line: number; readonly inForce: boolean }): Stop | null {
  const raised = (stop: Stop): boolean => stop.from === step && (stop.line === undefined ? inForce : stop.line === line);
  const itsOwn = (stop: Stop): boolean => raised(stop) || (inForce && stop.ask.includes(step));
  if (standing === null || !levels(standing).some(itsOwn)) return null;
  return stack(levels(standing).filter((stop) => !itsOwn(stop)), standing);
}

/** The question that is next in each of them, the newest stop first. */
export const nextQuestions = (standing: Stop | null): readonly string[] => levels(standing).flatMap((stop) => stop.ask.slice(0, 1));

/** Whether any of them asks this. */
export const asksFor = (standing: Stop | null, id: string): boolean => levels(standing).some((stop) => stop.ask.includes(id));

const levels = (stop: Stop | null | undefined): readonly Stop[] => (stop === null || stop === undefined ? [] : [stop, ...levels(stop.under)]);

function stack(all: readonly Stop[], last: Stop): Stop {
  const asking = all.filter((stop) => stop.ask.length > 0);
  const lay = (under: Stop | null, { cause, ask, from, line }: Stop): Stop => ({ cause, ask, from, ...(line === undefined ? {} : { line }), ...(under === null ? {} : { under }) });
  return asking.reduceRight<Stop | null>(lay, null) ?? { cause: last.cause, ask: [], from: last.from };
}
