// The walk's rows for people: shares in percent, means as they are, each with its 95 % interval.

import { aligned } from './print.ts';
import type { Interval } from './interval.ts';
import { CAP_FIGURES, isCount, type CapRow } from './walk-cap-rows.ts';
import { CAPS, KIND_NAMES } from './walk-caps.ts';
import type { WalkReport } from './walk-rows.ts';

const percent = ({ value, low, high }: Interval): string => `${(100 * value).toFixed(1)} (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)})`;
const mean = ({ value, low, high }: Interval): string => `${value.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`;
const share = (name: string, one: Interval): readonly string[] => [name, percent(one), `${one.of}`];
const count = (name: string, one: Interval): readonly string[] => [name, mean(one), `${one.of}`];

export const walkLines = (report: WalkReport): readonly string[] =>
  [...(report.any.counts.shots.of === 0 ? [] : tuneLines(report)), ...capLines(report.caps), '', ...faultLines(report), ''];

const faultLines = ({ faults }: WalkReport): readonly string[] => Object.entries(faults).flatMap(([name, found]) => [`${name}: ${found.length}`, ...found.map((line) => `  ${line}`)]);

function tuneLines({ seeds, bows, any, unfixable, unfixableEver, tooWeak, tooWeakEver, screwsEnd, screwsEndEver, contact, contactTwice, contactEver, danger, neverEnds }: WalkReport): readonly string[] {
  const { axes, worse, broadheads, arrows, counts, stops, second } = any;
  return [
    `walk (whole tunes, content as shipped), seed ${seeds.join(', ')}: ${bows} bows a seed. In percent or as a mean, with the 95 % interval.`,
    ...aligned([
      ['', 'value', 'of'],
      share('axes tuned', axes.tuned), share('axes that cannot be', axes.cannot), share('left at a borderline', axes.accepted), share('scatter', axes.inconsistent),
      share('called tuned, and not so by truth', axes.tunedButNot), share('axes outside of tolerance as found, by truth', any.beyondAsFound), share('  and as left', any.beyond),
      share('axes out of reach of what the archer may move, by truth', any.outOfReach.of), share('  told as such', any.outOfReach.told),
      share('axes left worse than found', worse.axis), share('  by what was moved', worse.byMoves), share('  and outside of tolerance', worse.andOutside),
      share('bows with an axis left worse', worse.bow),
      share('tunes that come to broadheads', broadheads.shot), share('broadheads inside the margin, of all tunes', broadheads.inside),
      share('  called so, of those that shot them', broadheads.calledOfShot), share('  inside, of those called so', broadheads.insideOfCalled),
      share('sets with a sound arrow set aside', arrows.soundAside), share('bad arrows found', arrows.badFound),
      count('shots in all', counts.shots), count('adjustments', counts.moves), count('questions', counts.questions),
      share('stopped unshot, of those that must be', stops.due), share('stopped, of those that need not be', stops.wrong),
      share('lesson "do not shoot this bow": stopped unshot', danger), share('an axis beyond mending: told within 25 shots', unfixable), share('  at all, as beyond mending', unfixableEver),
      share('an axis that answers too weakly: told within 25 shots', tooWeak), share('  at all', tooWeakEver),
      share('an axis whose screws end too early: told within 25 shots', screwsEnd), share('  at all', screwsEndEver),
      share('vanes that touch: told within 25 shots', contact),
      share('  of those that touched twice before paper was done', contactTwice), share('  found at all, in a whole tune', contactEver),
      share('never ends', neverEnds),
      ...(['known', 'fresh'] as const).flatMap((how) => {
        const name = `second tune, ${how === 'known' ? 'with what was carried' : 'without'}`;
        return [count(`${name}: shots`, second[how].shots), count(`${name}: adjustments`, second[how].moves), share(`${name}: axes tuned`, second[how].tuned)];
      }),
      count('shots saved by what was carried', second.savedShots), count('adjustments saved', second.savedMoves),
    ]),
  ];
}

/** Shares as percent of the axes that the adjustment is made for. */
function capLines(caps: readonly CapRow[]): readonly string[] {
  const told = (figure: (typeof CAP_FIGURES)[number], one: Interval): string => (isCount(figure) ? mean(one) : percent(one));
  const head = ['', 'shots', 'adjustments', 'tuned %', 'tried worse %', 'left worse %', 'outside %'];
  return KIND_NAMES.flatMap((kind) => {
    const [one, ...others] = caps.filter((row) => row.kind === kind && row.shipped.shots.of > 0);
    if (one === undefined) return [];
    return [
      '', `What each cap costs and prevents, to the end of paper: ${one.shipped.shots.of} bows, ${kind}; the figures as shipped, and how they change with one cap lifted`,
      ...aligned([head, ['as shipped', ...CAP_FIGURES.map((figure) => told(figure, one.shipped[figure]))],
        ...[one, ...others].map(({ name, lifted }) => [`${CAPS[name].knob}, ${CAPS[name].about}`, ...CAP_FIGURES.map((figure) => told(figure, lifted[figure]))])]),
    ];
  });
}
