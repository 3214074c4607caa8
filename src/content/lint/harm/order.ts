// The order of the walk, and what is asked again: a look comes before the draw that it is for.

import { error } from '../../problem.ts';
import type { Path, Problem } from '../../problem.ts';
import type { Where } from '../../read.ts';
import type { Content } from '../../types.ts';
import type { Book } from '../book/shape.ts';
import { entries, words } from './book-words.ts';

interface Place { readonly chapter: string; readonly at: number; readonly path: Path }

export function order(content: Content, where: Where, book: Book): Problem[] {
  const places = placesOf(content);
  return [
    ...chapters(content, where, book), ...homes(places, where, book), ...pairs(places, where, book),
    ...drawnFirst(content, where), ...again(content, where, book),
  ];
}

function placesOf(content: Content): ReadonlyMap<string, Place> {
  const found = new Map<string, Place>();
  content.chapters.forEach((chapter, c) => chapter.blocks.forEach((block, b) => block.steps.forEach((id, s) => {
    if (!found.has(id)) found.set(id, { chapter: chapter.id, at: found.size, path: ['chapters', c, 'blocks', b, 'steps', s] });
  })));
  return found;
}

function chapters(content: Content, where: Where, book: Book): Problem[] {
  const wanted = words(book.chapters);
  const given = content.chapters.map((one) => one.id).filter((id) => wanted.includes(id));
  const missing = wanted.filter((id) => !given.includes(id));
  if (missing.length > 0) return [error(where(['chapters']), `the chapter "${missing.join('", "')}" is missing; the walk needs ${wanted.join(', ')}`)];
  const wrong = given.findIndex((id, index) => id !== wanted[index]);
  if (wrong < 0) return [];
  const at = content.chapters.findIndex((one) => one.id === given[wrong]);
  return [error(where(['chapters', at]), `the chapter "${given[wrong]}" stands where "${wanted[wrong]}" belongs; write them in the order ${wanted.join(', ')}`)];
}

function homes(places: ReadonlyMap<string, Place>, where: Where, book: Book): Problem[] {
  return entries(book).flatMap(([chapter, id, row]) => {
    const place = places.get(id);
    if (place?.chapter === chapter || (place === undefined && row.anywhere === true)) return [];
    if (place === undefined) return [error(where(['chapters']), `"${id}" stands in no block; put it into one of the chapter "${chapter}"`)];
    return [error(where(place.path), `"${id}" is asked in the chapter "${place.chapter}"; it belongs into "${chapter}": move it there`)];
  });
}

function pairs(places: ReadonlyMap<string, Place>, where: Where, book: Book): Problem[] {
  return book.before.flatMap(([first, second]) => {
    const [one, two] = [places.get(first), places.get(second)];
    if (one === undefined || two === undefined || one.at < two.at) return [];
    return [error(where(two.path), `"${second}" stands before "${first}"; put it after`)];
  });
}

/** In the chapter "safety" safety.ts sees to it, and there of every undrawn step. */
function drawnFirst(content: Content, where: Where): Problem[] {
  return content.chapters.flatMap((chapter, c) => {
    if (chapter.id === 'safety') return [];
    const route = chapter.blocks.flatMap((block, b) => block.steps.flatMap((id, s) => {
      const step = content.steps[id];
      return step === undefined || step.onDemand ? [] : [{ step, path: ['chapters', c, 'blocks', b, 'steps', s] }];
    }));
    const lastLook = route.findLastIndex(({ step }) => step.pause === 'undrawn' && step.effect === 'gate');
    return route.slice(0, Math.max(0, lastLook)).flatMap(({ step, path }) => (step.pause === 'draw' || step.pause === 'shoot'
      ? [error(where(path), `the step "${step.id}" (${step.pause}) stands before "${route[lastLook]?.step.id}", which is looked at undrawn; put it after`)] : []));
  });
}

function again(content: Content, where: Where, book: Book): Problem[] {
  const rechecks = new Map<string, readonly string[]>(Object.entries(content.rechecks));
  return Object.entries(book.again).flatMap(([trigger, wanted]) => {
    const given = rechecks.get(trigger) ?? [];
    const missing = words(wanted).filter((id) => !given.includes(id));
    return missing.length === 0 ? []
      : [error(where(['rechecks', trigger]), `after "${trigger}" common practice asks ${missing.map((id) => `"${id}"`).join(', ')} again; write ${missing.length > 1 ? 'them' : 'it'} into the list`)];
  });
}
