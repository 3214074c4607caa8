// Seeded chance, the same on every machine: for the practice bow, tests and benches. Never for verdicts.
// Generator: sfc32 (small fast counting, Chris Doty-Humphrey, PractRand), seeded by a 32-bit mixer.

import { checks } from './check.ts';

const must = checks('seededRandom');

export interface Random {
  /** A number from 0 (included) to 1 (not included). */
  uniform(): number;
  /** A normal number with mean 0 and standard deviation 1. */
  normal(): number;
}

/** A story of chance that is told alike for the same seed; seeds that differ by a whole number tell unrelated ones. Throws RangeError unless finite. */
// Example: seededRandom(1).uniform() is 0.563671773669; seededRandom(1).normal() is 1.022135144274.
export function seededRandom(seed: number): Random {
  must.seededRandom.finite(seed, 'the seed');
  const mix = mixer(seed);
  let a = mix();
  let b = mix();
  let c = mix();
  let counter = 1;
  const next = (): number => {
    const out = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + out) | 0;
    return out >>> 0;
  };
  for (let i = 0; i < 12; i++) next();

  const uniform = (): number => (next() * 2 ** 21 + (next() >>> 11)) / 2 ** 53;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    // Box and Muller (1958); 1 - uniform is never 0.
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform, normal };
}

/** Spreads the bits of a seed over as many 32-bit words as are wanted. */
function mixer(seed: number): () => number {
  let state = Math.floor(seed) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let word = state;
    word = Math.imul(word ^ (word >>> 16), 0x21f0aaad);
    word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
    return (word ^ (word >>> 15)) | 0;
  };
}
