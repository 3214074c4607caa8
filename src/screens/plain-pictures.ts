// Pictures in words alone, for the plain face: every shot, what it comes to, and what to hold it against.

import { formatInches } from '../maths/fractions.ts';
import type { Answer, Ask, GroupsPicture, PaperPicture, Picture, Tear } from '../machine/types.ts';
import { arrowsWords } from './arrows-picture.ts';
import { middlesWords, togetherWords } from './groups-picture.ts';
import { plumbWords } from './plumb-picture.ts';

/** A tear or an impact in the words that are also taken as an answer: high 1/2, left 1/8. */
export function tearWords({ x, y }: Tear, onTheSpot: 'clean' | 'on the dot' = 'clean'): string {
  const up = formatInches(Math.abs(y), 32);
  const side = formatInches(Math.abs(x), 32);
  const words = [...(up === '0' ? [] : [`${y > 0 ? 'high' : 'low'} ${up}`]), ...(side === '0' ? [] : [`${x > 0 ? 'right' : 'left'} ${side}`])];
  return words.join(', ') || onTheSpot;
}

type Shown = PaperPicture['shots'][number];
const shotInWords = (shot: Shown, onTheSpot: 'clean' | 'on the dot'): string => `${tearWords(shot, onTheSpot)}${shot.counted ? '' : ' (called bad, not counted)'}`;
const shots = (count: number): string => `${count} ${count === 1 ? 'shot' : 'shots'}`;

/** The shots of a picture in words; nothing where there are none. */
export function pictureLines(picture: Picture): string[] {
  switch (picture.kind) {
    case 'paper': return paperLines(picture);
    case 'groups': return groupsLines(picture);
    case 'arrows': return picture.arrows.length === 0 ? [] : arrowsWords(picture).map((words) => `  ${words}`);
    case 'plumb': return picture.points.length === 0 ? [] : ['  from the plumb line, each distance on average', ...plumbWords(picture, false).map((words) => `  ${words}`)];
  }
}

function paperLines({ shots: all, mean, likely }: PaperPicture): string[] {
  if (all.length === 0) return [];
  const middle = mean ? [`  on average: ${tearWords(mean)}${likely ? `; likely within ${formatInches(likely.y, 32)} up and down and ${formatInches(likely.x, 32)} sideways of that` : ''}`] : [];
  return [`  tears at this setting, in inches: ${all.map((shot) => shotInWords(shot, 'clean')).join('; ')}`, ...middle];
}

function groupsLines(picture: GroupsPicture): string[] {
  const { a, b, names } = picture;
  const of = (all: readonly Shown[], name: string): string[] => (all.length === 0 ? [] : [`  ${name}, inches from the dot: ${all.map((shot) => shotInWords(shot, 'on the dot')).join('; ')}`]);
  return [...of(a, names.a), ...of(b, names.b), ...middlesWords(picture).map((words) => `  ${words}`), ...togetherWords(picture, '  ')];
}

/** While a set is being shot: how the last shot was understood, and where the set stands. */
export function takenLines(ask: Ask, answer: Answer, picture: Picture | undefined): string[] {
  if (answer.kind !== 'shots' || (ask.kind !== 'tear' && ask.kind !== 'impact')) return [];
  const last = answer.shots.at(-1);
  if (last === undefined) return [];
  if ('missed' in last) return ['  taken: missed, and not counted'];
  const words = shotInWords({ ...last, counted: last.called !== 'bad' }, ask.kind === 'impact' ? 'on the dot' : 'clean');
  const stands = picture === undefined ? '' : standing(ask, picture);
  return [`  taken: ${words}${stands === '' ? '' : `; ${stands}`}`];
}

/** What the shots of this kind come to so far. */
function standing(ask: Extract<Ask, { kind: 'tear' | 'impact' }>, picture: Picture): string {
  switch (picture.kind) {
    case 'paper': return picture.mean ? `on average of ${picture.shots.filter((shot) => shot.counted).length} at this setting: ${tearWords(picture.mean)}` : '';
    case 'groups': {
      const second = ask.head === 'broadhead' || ask.shaft === 'unfletched';
      const [all, mean, name] = second ? [picture.b, picture.means.b, picture.names.b] : [picture.a, picture.means.a, picture.names.a];
      const counted = all.filter((shot) => shot.counted).length;
      return mean !== undefined && counted > 1 ? `on average of ${counted} ${name}s: ${tearWords(mean, 'on the dot')}` : '';
    }
    case 'arrows': {
      const own = picture.arrows.find(({ arrow }) => arrow === ask.arrow);
      return own !== undefined && own.shots > 1 ? `arrow ${own.arrow} on average of ${shots(own.shots)}: ${tearWords(own.mean)}` : '';
    }
    case 'plumb': {
      const own = picture.points.find(({ distance }) => distance.value === ask.distance.value && distance.unit === ask.distance.unit);
      return own !== undefined && own.shots > 1 ? `sideways on average of ${shots(own.shots)} from here: ${tearWords({ x: own.x, y: 0 }, 'on the dot').replace('on the dot', 'on the line')}` : '';
    }
  }
}
