// `npm run explore`: the machine explored whole, and random walks through the session by the thousand, every promise held after
// every event. `npm run explore -- 2000 7` walks 2,000 from seed 7.

import { fork } from 'node:child_process';
import { join } from 'node:path';
import { ROOT } from '../tools/build.mjs';
import { bundle } from './bundle.ts';
import { BEGINS, BOWS } from './begins.ts';
import { TEMPERS } from './careless.ts';
import { faultTable } from './fault-table.ts';
import { INVARIANTS } from './invariants.ts';
import { CAMS, CELLS, endOf, nameOf, PRESSES, shopEndOf, wrongIn } from './ladder-cells.ts';
import { exploreMachine, type MachineGraph } from './machine-graph.ts';
import { addTo, noTally, type Tally } from './tally.ts';
import type { Told } from './walker.ts';

const WALKERS = 2;
const [asked = '20000', seed = '1'] = process.argv.slice(2);
const began = Date.now();
const seconds = (): string => `${((Date.now() - began) / 1000).toFixed(0)} s`;

function tellMachine({ states, edges, places, unreached, defined, untaken }: MachineGraph): boolean {
  console.log(`machine  ${states.size} states, ${edges.length} edges; ${places.length - unreached.length} of ${places.length} places reached, ${defined - untaken.length} of ${defined} transitions taken`);
  for (const place of unreached) console.log(`         never reached: ${place}`);
  for (const edge of untaken) console.log(`         never taken: ${edge}`);
  return unreached.length === 0 && untaken.length === 0;
}

/** True where each cell ends in its one next step, and each ladder on which nothing helps in a note for the shop. */
function tellLadder(): boolean {
  const wrong = CELLS.map((cell) => ({ cell, what: wrongIn(cell, endOf(cell)) })).filter(({ what }) => what.length > 0);
  const ladders = CAMS.flatMap((cams) => PRESSES.flatMap((press) => (['left', 'high'] as const).map((tear) => ({ hand: 'right', rest: 'blade', cams, press, tear }) as const)));
  const shop = ladders.filter((cell) => shopEndOf(cell).view.advice?.kind === 'shop').length;
  console.log(`ladder   ${CELLS.length} cells of tear, hand, cams, rest and press: ${CELLS.length - wrong.length} end in the one next step of common practice`);
  console.log(`         ${ladders.length} ladders on which nothing helps: ${shop} end in a note for the shop`);
  for (const { cell, what } of wrong) console.log(`         wrong: ${nameOf(cell)}: ${what.join('; ')}`);
  return wrong.length === 0 && shop === ladders.length;
}

interface Walked { readonly tally: Tally; readonly broken: readonly string[] }

async function walkAll(total: number): Promise<Walked> {
  const file = await bundle('tests/explore/walker.ts', 'walker');
  const sum = noTally();
  const broken: string[] = [];
  const soFar = Array.from({ length: WALKERS }, () => 0);
  let told = 0;
  await Promise.all(soFar.map((_, i) => new Promise<void>((resolve) => {
    const walks = Math.floor(total / WALKERS) + (i < total % WALKERS ? 1 : 0);
    const own = Number(seed) * 1000 + i;
    const child = fork(file, [String(walks), String(own), join(ROOT, 'dist', 'content.json')]);
    let done = false;
    child.on('message', (message: Told) => {
      if (message.kind === 'so far') {
        soFar[i] = message.walks;
        const now = soFar.reduce((a, b) => a + b, 0);
        if (now - told < 2500) return;
        told = now;
        console.log(`walks    ${now} so far, ${seconds()}`);
        return;
      }
      done = true;
      addTo(sum, { ...message.tally, places: new Set(message.tally.places) });
      if (message.found !== null) broken.push(`${message.found.how}\n         again: WALKS=${walks} WALKS_SEED=${own} WALKS_PATH=${message.found.path} npx vitest run tests/explore/walks.test.ts`);
    });
    child.on('exit', (code) => {
      if (!done) broken.push(`walker ${i} ended with ${code} and told nothing`);
      resolve();
    });
  })));
  return { tally: sum, broken };
}

const machine = exploreMachine();
const whole = [tellMachine(machine), tellLadder()].every((held) => held);
const { tally, broken } = await walkAll(Number(asked));
console.log(`walks    ${tally.walks} of up to 400 events: ${BOWS.length} bows, ${BEGINS.length} beginnings, ${TEMPERS.map(({ name }) => name).join(', ')} archers`);
console.log(`events   ${tally.turns}: ${tally.lines} lines written, ${tally.refused} refused, ${tally.killed} kills; ${tally.shots} answers of shots, ${tally.impacts} impacts asked, ${tally.advices} adjustments told, ${tally.corrected} corrections, ${tally.stops} stop words, ${tally.stopped} turns in a stop, ${tally.done} tunes finished`);
const { places } = machine;
const quiet = places.filter((place) => !tally.places.has(place));
console.log(`places   a question stood in ${tally.places.size} of ${places.length}; passed through without one: ${quiet.join(', ') || 'none'}`);
for (const one of broken) console.log(`BROKEN   ${one}`);
console.log(`promises ${INVARIANTS.length} held after each event: ${broken.length} violations`);
const caught = await faultTable((line) => console.log(line));
console.log(`in ${seconds()}`);
process.exitCode = whole && broken.length === 0 && caught && tally.walks >= Number(asked) ? 0 : 1;
