// Adjustments and ladders made looser, surer of themselves, or free of the press.

import type { Content, Knob, KnobId } from '../../src/content/types.ts';
import { AXES, KNOBS } from '../../src/content/types.ts';
import { moved, put, without } from './weakening.ts';
import type { Path, Weakening } from './weakening.ts';

export const ofAdjustments = (content: Content): Weakening[] => [
  ...KNOBS.flatMap((id) => knob(content, content.knobs[id])), ...rungs(content), ...rules(content), ...tuned(content),
];

const tuned = (content: Content): Weakening[] => AXES.flatMap((axis) => {
  const { low, high } = content.tolerance[axis];
  return [{ low: low - 1 / 16, high }, { low, high: high + 1 / 16 }, { low: high, high: low }]
    .map((to) => ({ group: 'more called tuned', name: `${axis}: ${to.low} to ${to.high}`, content: put(content, ['tolerance', axis], to) }));
});

function knob(content: Content, one: Knob): Weakening[] {
  const found: Weakening[] = [];
  const add = (group: string, name: string, path: Path, value: unknown): void => {
    found.push({ group, name: `${one.id}: ${name}`, content: put(content, ['knobs', one.id, ...path], value) });
  };
  for (const key of ['first', 'later', 'soft', 'hard'] as const) add('a limit raised', key, [key], one[key] + one.smallest);
  add('a smaller step than can be set', 'smallest', ['smallest'], one.smallest / 2);
  for (const key of ['wrongSign', 'dead'] as const) add('surer than is known', key, [key], one[key] - 0.01);
  one.books.forEach((row, index) => {
    const make = (name: string, to: Partial<typeof row>): void => add('a row of the book told better', `row ${index}: ${name}`, ['books', index], { ...row, ...to });
    for (const key of ['wrongSign', 'dead'] as const) make(`${key} surer`, { [key]: one[key] - 0.01 });
    make('to the other side', { change: -row.change });
    make('ten times as much', { change: 10 * row.change });
    make('next to nothing', { change: row.change / 10 });
    make('of any bow', { cams: 'any', rest: 'any' });
    make('of bows that nobody has', { cams: ['none such'] });
    add('a row of the book told better', `row ${index} twice`, ['books'], [...one.books.slice(0, index + 1), ...one.books.slice(index)]);
  });
  if (one.book === null) add('a row of the book told better', 'of what nobody knows', ['books'], [{ cams: 'any', rest: ['blade'], change: 1, per: 1, wrongSign: one.wrongSign, dead: one.dead, source: one.source }]);
  const far = one.firstWhenFar;
  add('a far move looser', 'step', ['firstWhenFar'], { over: far?.over ?? 0.5, step: (far?.step ?? one.first) + one.smallest });
  if (far !== null) add('a far move looser', 'over', ['firstWhenFar'], { ...far, over: far.over - 1 / 8 });
  if (one.press) add('a press called none', 'press', ['press'], false);
  if (one.press) add('a press called none', 'press and caution', [], { ...one, press: false, cautions: without(one.cautions, one.cautions.indexOf('press')) });
  one.cautions.forEach((id, index) => add('caution taken off an adjustment', id, ['cautions'], without(one.cautions, index)));
  one.needs.forEach((id, index) => add('moved without what it needs', id, ['needs'], without(one.needs, index)));
  if (one.trigger !== 'sight-moved') add('nothing asked after it moved', 'trigger', ['trigger'], 'sight-moved');
  add('counted from elsewhere', 'from', ['from'], one.from === 'maker' ? 'start' : 'maker');
  add('in another unit', 'unit', ['unit'], one.unit === 'in' ? 'mm' : 'in');
  for (const other of KNOBS) if (other !== one.id && other !== one.alternative) add('another adjustment offered instead', other, ['alternative'], other);
  return found;
}

function rungs(content: Content): Weakening[] {
  return content.ladders.flatMap((rule, r) => {
    const found: Weakening[] = [];
    const name = `${r} (${rule.axis}, ${String(rule.cams)}, ${String(rule.press)})`;
    const add = (group: string, what: string, to: unknown): void => {
      found.push({ group, name: `ladder ${name}: ${what}`, content: put(content, ['ladders', r, 'rungs'], to) });
    };
    rule.rungs.forEach((rung, index) => {
      const { smallest, soft } = content.knobs[rung.knob];
      add('a rung goes farther', `${rung.knob} soft`, put(rule.rungs, [index, 'soft'], (rung.soft ?? soft) + smallest));
      // Without one of its own the adjustment's holds: the same, where they are alike.
      if (rung.soft !== undefined && rung.soft !== soft) add('a rung goes farther', `${rung.knob} no soft`, put(rule.rungs, [index, 'soft'], undefined));
      if (index > 0) add('a rung too early', rung.knob, moved(rule.rungs, index, 0));
    });
    for (const extra of KNOBS) {
      if (rule.rungs.some((rung) => rung.knob === extra)) continue;
      add('a rung that does not belong', `${extra} first`, [{ knob: extra }, ...rule.rungs]);
      add('a rung that does not belong', `${extra} last`, [...rule.rungs, { knob: extra }]);
    }
    return found;
  });
}

function rules(content: Content): Weakening[] {
  const pressed: readonly KnobId[] = KNOBS.filter((id) => content.knobs[id].press);
  return content.ladders.flatMap((rule, r) => {
    const found: Weakening[] = [];
    const add = (group: string, what: string, to: Content): void => { found.push({ group, name: `ladder ${r}: ${what}`, content: to }); };
    if (rule.rungs.some(({ knob: id }) => pressed.includes(id))) {
      for (const press of ['any', ['trained', 'shop'], ['shop'], ['none']]) add('press work for untrained hands', String(press), put(content, ['ladders', r, 'press'], press));
    }
    if (rule.cams !== 'any') add('for cams that lack it', 'any', put(content, ['ladders', r, 'cams'], 'any'));
    if (rule.cams === 'any' && rule.press === 'any') add('a bow without a ladder', 'left out', { ...content, ladders: without(content.ladders, r) });
    return found;
  });
}
