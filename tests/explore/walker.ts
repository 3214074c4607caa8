// One of the processes that walk: told by its arguments how many, from which seed and on which content, it tells what it met
// on its channel.

import { readFileSync } from 'node:fs';
import type { Content } from '../../src/content/types.ts';
import { hunt } from './hunt.ts';
import type { Tally } from './tally.ts';

/** What a walker tells. A Set does not pass the channel, so places go as a list. */
export type Told =
  | { readonly kind: 'so far'; readonly walks: number }
  | { readonly kind: 'done'; readonly tally: Omit<Tally, 'places'> & { readonly places: readonly string[] }; readonly found: ReturnType<typeof hunt>['found'] };

const [walks = '0', seed = '1', file = ''] = process.argv.slice(2);
const content = JSON.parse(readFileSync(file, 'utf8')) as Content;
const tell = (told: Told): void => { process.send?.(told); };
const { tally, found } = hunt({
  content, sound: content, walks: Number(walks), seed: Number(seed),
  tell: (t) => { if (t.walks % 250 === 0) tell({ kind: 'so far', walks: t.walks }); },
});
tell({ kind: 'done', tally: { ...tally, places: [...tally.places] }, found });
process.disconnect?.();
