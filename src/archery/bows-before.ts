// What may be before a shot: how an adjustment answers on this bow, and how far this archer's shots stray.

import { checks, type Checks } from '../maths/check.ts';
import { checkSpread, type Spread } from './shots.ts';

const must = checks('bowsBefore');

/** One way in which an adjustment may work, and how likely it is beforehand: a response (in for one unit) of about so much, on a scale of
 *  ratios; a response that was learned; or none. */
export type Answers =
  | { readonly share: number; readonly about: number; readonly logSd: number }
  | { readonly share: number; readonly mean: number; readonly sd: number }
  | { readonly share: number; readonly about: null };

/** Nodes of a normal number, in standard deviations: of a response, of the spread. */
const RESPONSE_NODES = { from: -2.8, to: 2.8, count: 23 };
/** Further down than up: some archers are far steadier than the usual one, and scatter is looked into otherwise. */
const SPREAD_NODES = { from: -4, to: 2.4, count: 9 };
/** Variance of a reading that nobody takes closer than 0.03 in, and tells to the nearest 1/16 in (derived: width squared / 12). */
const READING_VARIANCE = 0.03 ** 2 + (1 / 16) ** 2 / 12;

/** Responses (in for one unit) and spreads of a reading (in) that may be, and the chance of each pair of them: responses by row. */
export interface BowsBefore { readonly gains: readonly number[]; readonly sds: readonly number[]; readonly shares: readonly number[] }

/** By all ways in which the adjustment may work, and by what is known of one reading. Throws RangeError on numbers that cannot be meant. */
// Example: bowsBefore([{ share: 1, about: null }], { sd: 0.2, df: 3 }).sds is [0.0520, 0.0638, 0.0818, 0.1083, 0.1463, 0.2000, 0.2752, 0.3800, 0.5257].
export function bowsBefore(answers: readonly Answers[], spread: Spread): BowsBefore {
  checkSpread(must.bowsBefore, spread);
  checkAnswers(must.bowsBefore, answers);
  const responses = answers.flatMap(responsesOf);
  const spreads = nodesOf(SPREAD_NODES);
  const own = Math.sqrt(Math.max(READING_VARIANCE / 4, spread.sd ** 2 - READING_VARIANCE));
  const logSd = spread.df === Infinity ? 0 : Math.sqrt(1 / (2 * spread.df));
  const all = responses.reduce((total, { weight }) => total + weight, 0);
  return {
    gains: responses.map(({ gain }) => gain),
    sds: spreads.map(({ z }) => Math.sqrt((own * Math.exp(logSd * z)) ** 2 + READING_VARIANCE)),
    shares: responses.flatMap((one) => spreads.map(({ weight }) => (one.weight / all) * weight)),
  };
}

/** What the ways must be. Throws RangeError in the name that `must` carries unless there is one, and each figure can be meant. */
// Example: checkAnswers(checks('checkAnswers').checkAnswers, []) throws 'checkAnswers: there is no way in which it may work; give at least one'.
export function checkAnswers(by: Checks, answers: readonly Answers[]): void {
  if (answers.length === 0) throw by.error('there is no way in which it may work; give at least one');
  for (const one of answers) {
    by.size(one.share, 'the share of a way');
    if ('mean' in one) {
      by.measure(one.mean, 'the response of a way');
      by.size(one.sd, 'the spread of a response');
    } else if (one.about !== null) {
      by.measure(one.about, 'the response of a way');
      by.size(one.logSd, 'the spread of a response');
    }
  }
}

function nodesOf({ from, to, count }: typeof RESPONSE_NODES): readonly { readonly z: number; readonly weight: number }[] {
  const zs = Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const all = zs.reduce((total, z) => total + Math.exp(-(z * z) / 2), 0);
  return zs.map((z) => ({ z, weight: Math.exp(-(z * z) / 2) / all }));
}

function responsesOf(one: Answers): readonly { readonly gain: number; readonly weight: number }[] {
  if ('mean' in one) return nodesOf(RESPONSE_NODES).map(({ z, weight }) => ({ gain: one.mean + one.sd * z, weight: one.share * weight }));
  const { about } = one;
  if (about === null) return [{ gain: 0, weight: one.share }];
  return nodesOf(RESPONSE_NODES).map(({ z, weight }) => ({ gain: about * Math.exp(one.logSd * z), weight: one.share * weight }));
}
