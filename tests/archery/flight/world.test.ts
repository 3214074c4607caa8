import { expect, it } from 'vitest';
import { checkWorld, USUAL_WORLD } from '../../../src/archery/flight/world.ts';
import { said } from '../said.ts';
import { must } from './oracle.ts';

const refusal = (change: object): string => said(() => checkWorld(must, { ...USUAL_WORLD, ...change }));

it('usual are air of 1.2 kg/m3, standard gravity, a cylinder of 1.1 across (from memory) and steps of 4 ms', () => {
  expect(USUAL_WORLD).toEqual({ density: 1.2, gravity: 9.80665, crossFlow: 1.1, step: 0.004 });
});
it.each([
  ['density', 'the density of the air', 10], ['gravity', 'gravity', 100], ['crossFlow', 'the drag across the shaft', 10],
])('%s: 0 and the most are taken, beyond is not', (name, what, most) => {
  for (const right of [0, most]) expect(refusal({ [name]: right })).toBe('no error');
  for (const bad of [-1e-9, most + 1e-9, NaN, Infinity]) expect(refusal({ [name]: bad })).toBe(`oracle: ${what} is ${bad}; a number from 0 to ${most} is needed`);
});
it('a step of 0.2 to 10 ms is taken', () => {
  for (const right of [0.0002, 0.01]) expect(refusal({ step: right })).toBe('no error');
  for (const bad of [0.00019, 0.0101, 0, NaN]) expect(refusal({ step: bad })).toBe(`oracle: the step is ${bad}; a number from 0.0002 to 0.01 s is needed`);
});
