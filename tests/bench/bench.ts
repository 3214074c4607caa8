// `npm run bench`: what the kernel can do, measured. Without a name it lists the benches.
//
//   npm run bench -- methods                       every table, a line a figure; ends with 1 where a figure is out of its error
//   npm run bench -- methods --only A3,B1 --json   some tables, as one JSON list and nothing else
//   npm run bench -- methods --seed 7              other trials, the same tables
//   npm run bench -- coach --bows 400 --seed 901-903   the coach on invented bows of one adjustment, beside its rivals; --world all, --json
//   npm run bench -- coach --only walk --bows 200      whole tunes of practice bows alone
//   npm run bench -- coach --only caps --bows 75       what each cap of content costs and prevents
//   npm run bench -- speed                         decisions in a second on this machine; nothing passes or fails

import { parseArgs } from 'node:util';
import { coachBench, coachOptions } from './coach/bench.ts';
import { codeOf, runTables, TABLES } from './methods/methods.ts';
import { endLines, tableLines } from './methods/print.ts';
import { speedLines } from './speed/speed.ts';

interface Options {
  readonly only: string; readonly json: boolean; readonly seed: string;
  readonly bows: string; readonly world: string; readonly workers: string;
}

const BENCHES: Readonly<Record<string, { readonly about: string; readonly run: (options: Options) => number | Promise<number> }>> = {
  methods: { about: 'the published tables of the decision methods, simulated anew: --only A3,B1 --json --seed N', run: methods },
  coach: { about: 'the coach on invented bows of one adjustment beside its rivals, and whole tunes: --bows N --seed A-B --world NAME --only coach,chart or walk or caps --workers N --json', run: coach },
  speed: { about: 'decisions in a second of the main functions, on this machine', run: speed },
};

const WRONG_USE = 2;

/** Returns the exit code: 0 where every figure is within its error, 1 where one is not, 2 where the call was wrong. */
function methods(options: Options): number {
  const [only, seed, { json }] = [options.only.split(',').filter((id) => id !== ''), Number(options.seed), options];
  if (!Number.isInteger(seed) || seed < 0) return wrong(`the seed is ${options.seed}; a whole number, 0 or more, is needed`);
  const ids = [...new Set(TABLES.map((table) => table.id))];
  const unknown = only.filter((id) => !ids.includes(id));
  if (unknown.length > 0) return wrong(`there is no table ${unknown.join(', ')}; there are ${ids.join(', ')}`);
  const tables = only.length === 0 ? TABLES : TABLES.filter((table) => only.includes(table.id));
  const ran = runTables(tables, seed, json ? undefined : (one) => console.log(tableLines(one).join('\n')));
  console.log(json ? JSON.stringify(ran.flatMap((one) => one.cells)) : endLines(ran).join('\n'));
  return codeOf(ran);
}

function coach(options: Options): number | Promise<number> {
  const found = coachOptions(options);
  return typeof found === 'string' ? wrong(found) : coachBench(found, options.json);
}

function speed(): number {
  console.log(speedLines().join('\n'));
  return 0;
}

function wrong(why: string): number {
  console.error(`${why}.`);
  return WRONG_USE;
}

function main(args: readonly string[]): number | Promise<number> {
  const { values, positionals: [name, ...more] } = parseArgs({
    args: [...args], allowPositionals: true,
    options: {
      only: { type: 'string', default: '' }, json: { type: 'boolean', default: false }, seed: { type: 'string', default: '1' },
      bows: { type: 'string', default: '400' }, world: { type: 'string', default: 'nominal' }, workers: { type: 'string', default: '' },
    },
  });
  if (name === undefined) {
    console.log(Object.entries(BENCHES).map(([id, { about }]) => `npm run bench -- ${id.padEnd(9)} ${about}`).join('\n'));
    return 0;
  }
  const bench = BENCHES[name];
  if (bench === undefined || more.length > 0) return wrong(`there is no bench ${[name, ...more].join(' ')}; there are ${Object.keys(BENCHES).join(', ')}`);
  return bench.run(values);
}

// Who reads only the first lines has read what was wanted.
process.stdout.on('error', () => process.exit());
try {
  process.exitCode = await main(process.argv.slice(2));
} catch (error) {
  // An option that is not known: parseArgs says which.
  if (!(error instanceof TypeError) || !('code' in error)) throw error;
  process.exitCode = wrong(error.message);
}
