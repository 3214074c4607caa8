// What the shots of the present setting look like, as data: the same ones that the coach's figures are made of.

import type { Content } from '../content/types.ts';
import { arrowsPicture } from './arrows/picture.ts';
import { centreOf } from './loop/centre.ts';
import { spreadOf, toleranceOn } from './loop/evidence.ts';
import { groupsIn } from './loop/gauge-groups.ts';
import { plumbPoints } from './loop/gauge-plumb.ts';
import { currentSet, shotsHere } from './loop/sets.ts';
import type { Shot, State } from './state.ts';
import type { GroupsPicture, PaperPicture, Picture, PlumbPicture, Tear } from './types.ts';
import { phrase } from './words.ts';

export function pictureOf(content: Content, state: State): Picture | null {
  const good = shotsHere(state);
  const bad = (currentSet(state)?.shots ?? []).filter((shot) => !shot.good);
  const shots = [...good, ...bad].sort((a, b) => a.seq - b.seq);
  switch (state.notes.of) {
    case 'paper': return paperPicture(state, good, shots);
    case 'arrows': return arrowsPicture(state);
    case 'plumb': return plumbPicture(good);
    case 'broadheads': case 'unfletched': return groupsPicture(content, state, good, shots);
  }
}

const counted = ({ x, y, good }: Shot): Tear & { readonly counted: boolean } => ({ x, y, counted: good });

function paperPicture(state: State, good: readonly Shot[], all: readonly Shot[]): PaperPicture | null {
  const shots = all.map(counted);
  if (shots.length === 0) return null;
  if (good.length < 2) return { kind: 'paper', shots };
  const spread = spreadOf(state);
  const { mean, count } = centreOf(good, spread.sd);
  return { kind: 'paper', shots, mean, likely: { x: (2 * spread.sd) / Math.sqrt(count.x), y: (2 * spread.sd) / Math.sqrt(count.y) } };
}

function groupsPicture(content: Content, state: State, good: readonly Shot[], all: readonly Shot[]): GroupsPicture | null {
  const of = state.notes.of === 'unfletched' ? 'unfletched' : 'broadheads';
  if (all.length === 0) return null;
  const spread = spreadOf(state);
  const [shown, kept] = [groupsIn(all, of), groupsIn(good, of)];
  const middle = (shots: readonly Shot[]): Tear => centreOf(shots, spread.sd).mean;
  const { low, high, aim } = toleranceOn(content, state, 'side');
  const lower = toleranceOn(content, state, 'height').aim;
  return {
    kind: 'groups',
    names: of === 'broadheads' ? { a: phrase(content, 'what-field'), b: phrase(content, 'what-broadhead') } : { a: phrase(content, 'what-fletched'), b: phrase(content, 'what-unfletched') },
    a: shown.a.map(counted), b: shown.b.map(counted),
    means: { ...(kept.a.length > 0 ? { a: middle(kept.a) } : {}), ...(kept.b.length > 0 ? { b: middle(kept.b) } : {}) },
    margin: (high - low) / 2,
    ...(aim === 0 && lower === 0 ? {} : { aim: { x: aim, y: lower } }),
  };
}

function plumbPicture(good: readonly Shot[]): PlumbPicture | null {
  const points = plumbPoints(good).map(({ distance, mean, count }) => ({ distance: { value: distance, unit: 'yd' as const }, x: mean, shots: count }));
  return points.length === 0 ? null : { kind: 'plumb', points };
}
