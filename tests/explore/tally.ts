// What the walks met: a harness that is refused everywhere proves nothing.

export interface Tally {
  walks: number; turns: number; lines: number; refused: number; advices: number; shots: number; impacts: number;
  stops: number; stopped: number; corrected: number; killed: number; done: number;
  /** Places of the walk in which a question stood. */
  readonly places: Set<string>;
}

export const noTally = (): Tally => ({ walks: 0, turns: 0, lines: 0, refused: 0, advices: 0, shots: 0, impacts: 0, stops: 0, stopped: 0, corrected: 0, killed: 0, done: 0, places: new Set() });

const COUNTS = ['walks', 'turns', 'lines', 'refused', 'advices', 'shots', 'impacts', 'stops', 'stopped', 'corrected', 'killed', 'done'] as const;

export function addTo(sum: Tally, one: Tally): void {
  for (const key of COUNTS) sum[key] += one[key];
  for (const place of one.places) sum.places.add(place);
}
