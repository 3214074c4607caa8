// The floors of the house as a table: what may use what, from the very rules that the check holds the sources to.

import { FLOORS, type Floor } from '../floors.ts';

const list = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.map((name) => (name === '' ? 'everything of ours' : `\`${name}\``)).join(' '));

const row = ({ floor, at, own, packages }: Floor): string => `| ${floor} | ${list(at)} | ${list(own)} | ${list(packages)} |`;

export const floorsTable = (): string => ['| floor | files in src/ | may import of ours | and from outside |', '|---|---|---|---|', ...FLOORS.map(row)].join('\n');
