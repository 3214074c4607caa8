// Where what the coach says is from: each source of the content, how well it is known, and how much rests on it.

import { shippedContent } from '../../tunes/play.ts';

const HOW = ['read', 'common practice', 'memory'] as const;

/** A table by how a source is known; with how many steps, adjustments, ladders and inspections that name it. */
export function sources(): string {
  const content = shippedContent();
  const all = Object.entries(content.sources).map(([id, text]) => {
    const how = HOW.find((known) => text.startsWith(`${known}:`));
    if (how === undefined) throw new Error(`content/sources.yaml: "${id}" says neither of ${HOW.join(', ')} first`);
    return { how, what: text.slice(how.length + 1).trim(), on: restingOn(content, id) };
  });
  const rows = HOW.flatMap((how) => all.filter((one) => one.how === how)).map(({ how, what, on }) => `| ${how} | ${what} | ${on} |`);
  return ['| known by | what | rests on it |', '|---|---|---|', ...rows].join('\n');
}

function restingOn(content: ReturnType<typeof shippedContent>, id: string): string {
  const count = (of: readonly { readonly source: readonly string[] }[]): number => of.filter(({ source }) => source.includes(id)).length;
  const counts = [
    ['step', count(Object.values(content.steps))], ['adjustment', count(Object.values(content.knobs))],
    ['ladder', count(content.ladders)], ['inspection', count(Object.values(content.inspections))],
  ] as const;
  return counts.filter(([, n]) => n > 0).map(([name, n]) => `${n} ${name}${n === 1 ? '' : 's'}`).join(', ') || 'words and figures';
}
