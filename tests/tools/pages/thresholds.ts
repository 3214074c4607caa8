// The figures that judgements rest on, read from the sources where they live, so that the page about them cannot lag behind.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const SRC = fileURLToPath(new URL('../../../src/', import.meta.url));

/** File, name there, and what hangs on it. A name may stand for several figures in braces. */
const FIGURES: readonly (readonly [file: string, name: string, meaning: string])[] = [
  ['archery/bows-before.ts', 'READING_VARIANCE', 'how far a reading itself strays: by eye, and told to 1/16 in; inches squared'],
  ['archery/bows-left.ts', 'STRAYING', 'chance that a shot went astray'],
  ['archery/bows-left.ts', 'FOURFOLD', 'and so many times as far as the others'],
  ['machine/loop/gauge-paper.ts', 'IN_FROM', 'chance of being in tolerance, by all shots on paper, from which an axis is called tuned'],
  ['machine/loop/gauge-paper.ts', 'FIRST_LOOK', 'who has more shots than so many at this setting'],
  ['machine/loop/gauge-paper.ts', 'LESS_A_SHOT', 'is let off so much of that chance for each one more'],
  ['machine/loop/judge.ts', 'OWN_CHECK', 'and by the shots at this very setting alone'],
  ['machine/loop/gauge-paper.ts', 'SURE', 'the same chance at the second distance; and that nothing in reach will do, away from paper'],
  ['machine/loop/gauge-paper.ts', 'NEAR', 'from this chance on a shot is cheaper than a move'],
  ['machine/loop/gauge-paper.ts', 'MOST_SHOTS', 'up to so many shots at one setting; then leaving it is the choice of the archer'],
  ['machine/loop/judge.ts', 'MAY_BE_IN', 'where nothing was moved yet, already from this one on: a bow in tune is not touched'],
  ['machine/loop/judge.ts', 'DOUBTFUL', 'after a move, from this one on as well'],
  ['machine/loop/judge.ts', 'GAIN_OF_STEP', 'unless a step gains so much of it'],
  ['machine/loop/judge.ts', 'MOST_AT_BEST', 'up to so many shots where no step comes nearer'],
  ['machine/loop/judge.ts', 'HARDLY', 'but where the travel ends none beyond the first ones below this chance: the adjustment is used up'],
  ['machine/loop/judge.ts', 'AGAINST', 'a step that leads away by the shots here alone waits for so many of them'],
  ['machine/loop/judge.ts', 'BEYOND', 'chance that no setting within reach will do, from which that is said'],
  ['machine/loop/judge.ts', 'ENOUGH_TRAVEL', 'after this share of the travel was tried at three settings, or two first steps'],
  ['machine/loop/size.ts', 'MIDDLE', 'moves aim at so much of the tolerance, around its middle'],
  ['machine/loop/size.ts', 'WORSE_BY', 'a first move may make it worse by so much, inches'],
  ['machine/loop/size.ts', 'EXCURSION', 'with this chance, beside that of the other side; else it is shortened'],
  ['machine/loop/judge.ts', 'WORSE_FROM', 'chance of being worse than before at which a move is put back and proved'],
  ['machine/loop/judge.ts', 'LIKELY_WORSE', 'from here one more shot is taken before the side is given up or kept'],
  ['machine/loop/judge.ts', 'BY_SIGHT', 'the same by the shots at the two settings alone, where a line cannot bend: from the third setting on'],
  ['machine/loop/side-effect.ts', 'MATTERS', 'what an adjustment did on the other axis, inches, from which it is told'],
  ['machine/loop/side-effect.ts', 'SURE', 'and the chance of its side from which it is'],
  ['machine/turn-paper.ts', 'MOST_ROUNDS', 'how often a chapter is gone through again because one axis was moved after the other was judged'],
  ['machine/loop/leaving.ts', 'SURE', 'standard errors beyond which two distances tell how an arrow leaves'],
  ['machine/loop/judge-set.ts', 'MOST_SPREAD', 'spread of one shot, inches, above which nothing is adjusted: look elsewhere'],
  ['machine/loop/judge-set.ts', 'LOOKS', 'how often scatter is looked into; from then on a stray is weighed as one'],
  ['machine/loop/judge-set.ts', 'WANDERS_AT', 'after so many shots at one setting it is asked whether they wander from the first to the last'],
  ['machine/loop/judge-set.ts', 'WANDERS_BY', 'and by more than so much, inches, it is looked into like scatter'],
  ['machine/loop/judge-set.ts', 'SCATTERS_FROM', 'looked into, and nothing found: the spread from which a set is five shots'],
  ['machine/loop/judge-set.ts', 'MOST_ONCE_LOOKED', 'and the spread, but for strays, above which it ends as scatter'],
  ['machine/adopt-judgement.ts', 'OWN_SHARE', 'what may be left of the uncertainty of the book before a response is called learned'],
  ['machine/loop/evidence.ts', 'SETTING_ERROR', 'how far a rest moved by a loosened bolt may be from where it was set, inches (one standard deviation)'],
  ['machine/loop/judge-set.ts', 'GROSS', 'a mean tear above this, in inches, is looked into before any adjustment'],
  ['machine/loop/judge-set.ts', 'VERY_GROSS', 'and above this shafts and spine come first'],
  ['machine/loop/compare.ts', 'PROVEN_DIFFERENT', 'quantile beyond which a bow did not come back (both sides: twice the rest)'],
  ['machine/loop/compare.ts', 'DOUBTFUL', 'quantile beyond which the first set of another day is shot on to six'],
  ['machine/loop/size.ts', 'TRIAL_FROM', 'chance of the wrong side at which a move is announced as a trial, one normal step at most'],
  ['archery/two-groups.ts', 'SURE_SAME', 'two groups at a target: chance from which they land together'],
  ['archery/two-groups.ts', 'SURE_DIFFERENT', 'and chance beyond the margin from which they are apart; both hold for a plumb line, too'],
  ['machine/loop/gauge-groups.ts', 'RATHER_APART', 'undecided after the second look, and together by less than this chance: a move is worth more than a shot'],
  ['archery/two-groups.ts', 'LOOKS', 'judged after so many of each; the machine begins at three'],
  ['machine/loop/gauge-groups.ts', 'RATIO', 'inches of impact difference at 20 yd for one inch of tear, by a rigid-arrow flight model'],
  ['machine/loop/gauge-groups.ts', 'UNSURE', 'and how unsure that is, as a share'],
  ['machine/loop/gauge-groups.ts', 'AGREED_SIDE', 'the most doubt about the side of a rest move there, where guides agree'],
  ['archery/third-round.ts', 'MAY_DIFFER', 'chance of luck below which the arrows of a set may differ, and all are shot a third time'],
  ['archery/third-round.ts', 'SUSPECT', 'or an arrow lies so many spreads from the typical one'],
  ['archery/drift.ts', 'HARMS', 'spreads of drift from the first shot of a set to the last from which no arrow is blamed'],
  ['archery/set-read.ts', 'PROVEN', 'chance of luck below which the arrows of a set truly differ, and turning all nocks may be offered'],
  ['archery/set-index.ts', 'WORTH', 'the share of their scatter that must be expected to go'],
  ['machine/turn-broadheads.ts', 'WIDEST_GROUP', 'inches of group for each yard beyond which nothing is compared farther out'],
  ['machine/loop/gauge-plumb.ts', 'PLUMB_YARDS', 'where shots down a plumb line are taken from'],
  ['archery/spread.ts', 'USUAL_PRIOR', 'spread of one shot before anything is known of the archer: inches, and degrees of freedom an axis'],
  ['archery/spread.ts', 'MOST_CARRIED_DF', 'the most that an old spread may weigh in the next tune'],
  ['machine/limits.ts', 'MASS_FLOOR', 'grains of arrow for each pound of draw weight: never less'],
  ['machine/limits.ts', 'AHEAD', 'shaft ahead of the rest at full draw, inches'],
];

/** The text of a constant as it stands in the source, alone or in a row of several. Throws where it is not found: it was renamed or moved. */
function valueOf(file: string, name: string): string {
  const source = readFileSync(`${SRC}${file}`, 'utf8');
  const found = new RegExp(`^(?:export )?const ${name}\\b[^=]*(?:=> *)?= ([^;]+);`, 'm').exec(source)?.[1] ?? inRow(source, name);
  if (found === undefined) throw new Error(`src/${file} has no constant ${name}; mend the list in tests/tools/pages/thresholds.ts`);
  return found.replace(/ as const$/, '').replace(/\s+/g, ' ').replace(/,? \}/g, ' }').trim();
}

/** `const [ONE, TWO] = [1, 2];`, of plain figures. */
function inRow(source: string, name: string): string | undefined {
  for (const [, names = '', values = ''] of source.matchAll(/^(?:export )?const \[([A-Z_, ]+)\] = \[([^[\](){};]+)\];/gm)) {
    const place = names.split(', ').indexOf(name);
    if (place >= 0) return values.split(', ')[place];
  }
  return undefined;
}

export function thresholds(): string {
  return ['| constant | value | what hangs on it | file in src/ |', '|---|---|---|---|',
    ...FIGURES.map(([file, name, meaning]) => `| \`${name}\` | \`${valueOf(file, name)}\` | ${meaning} | ${file} |`)].join('\n');
}
