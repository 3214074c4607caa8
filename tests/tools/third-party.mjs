// The licences of everything that is bundled, as one text: whoever gets dist/ gets them with it.
// What is in the bundle is read from esbuild's own account of it, so a new library cannot be forgotten.

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

const PACKAGE = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//;

/** Folders of the packages that put at least one byte into the bundle, with the files that did. */
function bundled(metafile) {
  const found = new Map();
  for (const { inputs } of Object.values(metafile.outputs)) {
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      const folder = PACKAGE.exec(file)?.[1];
      if (folder !== undefined && bytesInOutput > 0) found.set(folder, [...(found.get(folder) ?? []), file]);
    }
  }
  return found;
}

/** The licence files and notices of a package, or null where it ships none. */
function shipped(folder) {
  const names = readdirSync(folder).filter((name) => /^(licen[cs]e|notice|copying)/i.test(name)).sort();
  return names.length === 0 ? null : names.map((name) => readFileSync(join(folder, name), 'utf8').trim()).join('\n\n');
}

/** For a package that names the MIT licence and ships no text of it: whose it is, from its sources, and the text itself. */
function standard(root, files) {
  const owners = new Set(files.flatMap((file) => readFileSync(join(root, file), 'utf8').slice(0, 2000).match(/Copyright \(c\)[^\n*]*/g) ?? []));
  if (owners.size === 0) return null;
  const mit = readFileSync(join(root, 'LICENSE'), 'utf8');
  return ['MIT License', [...owners].map((line) => line.trim()).join('\n'), mit.slice(mit.indexOf('Permission is hereby')).trim()].join('\n\n');
}

/** Throws an Error where the licence of a bundled package cannot be told: then nothing may be shipped. */
export function thirdParty(root, metafile) {
  const parts = [...bundled(metafile)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([folder, files]) => {
    const { name, version, license, licenses } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
    const called = license ?? licenses?.[0]?.type ?? 'see below';
    const text = shipped(join(root, folder)) ?? (called === 'MIT' ? standard(root, files) : null);
    if (text === null) throw new Error(`the package ${name} ${version} ships no licence text; add a way to tell it to tests/tools/third-party.mjs`);
    return `${'-'.repeat(80)}\n${name} ${version}, ${called}\n\n${text}\n`;
  });
  return `quarterturn's program holds code of these packages. Their licences follow.\n\n${parts.join('\n')}`;
}
