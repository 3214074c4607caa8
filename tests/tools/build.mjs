#!/usr/bin/env node
// Makes dist/: the program in a few chunks (so that --help, plain and pipe never load Ink) and the checked content as JSON.
// Files are written beside the old ones and swapped in by rename, so a program that starts meanwhile finds a whole build.

import { chmodSync, existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { thirdParty } from './third-party.mjs';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const DIST = join(ROOT, 'dist');

/** Ink asks for a debugger's package that we do not ship, and yoga loads its wasm through fetch, which costs 25 ms at start. */
const patches = {
  name: 'patches',
  setup(build) {
    build.onLoad({ filter: /[\\/]ink[\\/]build[\\/]devtools\.js$/ }, () => ({ contents: 'export {};', loader: 'js' }));
    build.onLoad({ filter: /yoga-wasm-base64-esm\.js$/ }, ({ path }) => ({
      contents: `const fetch = undefined;\n${readFileSync(path, 'utf8')}`, loader: 'js',
    }));
  },
};

function fail(line) {
  console.error(`quarterturn: ${line}`);
  process.exit(1);
}

async function tools() {
  try {
    return await import('esbuild');
  } catch {
    return fail('it cannot be built without its development packages. Run "npm ci" without --omit=dev or --production.');
  }
}

async function bundle() {
  const esbuild = await tools();
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
  const result = await esbuild.build({
    absWorkingDir: ROOT,
    entryPoints: { quarterturn: 'src/main.tsx' },
    outdir: 'dist', entryNames: '[name]', chunkNames: 'part-[hash]',
    bundle: true, splitting: true, minify: true, write: false, metafile: true,
    format: 'esm', platform: 'node', target: 'node20', jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"', __VERSION__: JSON.stringify(version) },
    banner: { js: "import{createRequire as __cr}from'node:module';const require=__cr(import.meta.url);" },
    // Licences are told whole in THIRD-PARTY.txt, not in scraps beside each part.
    legalComments: 'none', logLevel: 'silent', plugins: [patches],
  }).catch((error) => fail(`the build failed.\n${(error.errors ?? []).map(told).join('\n') || error.message}`));
  return [{ name: 'THIRD-PARTY.txt', bytes: licencesOf(result.metafile) }, ...result.outputFiles.map((file) => ({ name: basename(file.path), bytes: file.contents }))];
}

function licencesOf(metafile) {
  try {
    return thirdParty(ROOT, metafile);
  } catch (error) {
    return fail(error.message);
  }
}

const told = (e) => `  ${e.location ? `${e.location.file}:${e.location.line}:${e.location.column} ` : ''}${e.text}`;

function put(name, bytes) {
  const path = join(DIST, name);
  const fresh = join(DIST, `.${name}.${process.pid}`);
  writeFileSync(fresh, bytes);
  if (name === 'quarterturn.js') chmodSync(fresh, 0o755);
  renameSync(fresh, path);
}

async function compileContent() {
  const compiler = join(ROOT, 'tests/tools/compile-content.mjs');
  if (!existsSync(compiler)) return fail('tests/tools/compile-content.mjs is missing, so the content cannot be compiled.');
  const { compileContent: compile, compilePractice } = await import(pathToFileURL(compiler).href);
  for (const [name, made] of [['content.json', compile], ['practice.json', compilePractice]]) {
    const fresh = join(DIST, `.${name}.${process.pid}`);
    try {
      await made({ root: ROOT, outFile: fresh });
    } catch (error) {
      return fail(`the content has mistakes.\n${error.message}`);
    }
    renameSync(fresh, join(DIST, name));
  }
}

export async function build() {
  const files = await bundle();
  mkdirSync(DIST, { recursive: true });
  await compileContent();
  // The entry goes last: until then the old entry still finds its own parts.
  const entryLast = files.toSorted((a, b) => Number(a.name === 'quarterturn.js') - Number(b.name === 'quarterturn.js'));
  for (const { name, bytes } of entryLast) put(name, bytes);
  const kept = new Set([...files.map((f) => f.name), 'content.json', 'practice.json']);
  for (const name of readdirSync(DIST)) if (!kept.has(name)) rmSync(join(DIST, name), { force: true });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build();
