// Everything about types, in one go, on one program: what the compiler says of sources and tests, and what this house holds of
// the sources besides. `node --import tsx tests/tools/types/types.ts` prints what is wrong and ends with 1.

import ts from 'typescript';
import { overCeiling } from './casts.ts';
import { nameOf, ROOT, wholeProgram } from './program.ts';
import { problemsIn, type Problem } from './rules.ts';

const program = wholeProgram();
const compiler = ts.getPreEmitDiagnostics(program);
if (compiler.length > 0) {
  const host: ts.FormatDiagnosticsHost = { getCurrentDirectory: () => ROOT, getNewLine: () => '\n', getCanonicalFileName: (name) => name };
  console.log(ts.formatDiagnostics(compiler, host).trimEnd());
}

const checker = program.getTypeChecker();
const own = program.getSourceFiles().filter((file) => nameOf(file).startsWith('src/'));
if (own.length < 100) throw new Error(`only ${own.length} sources were found; look at the paths in tests/tools/types/program.ts`);
const problems = own.flatMap((file) => problemsIn(file, checker, nameOf(file)));
const wrong: readonly Pick<Problem, 'file' | 'line' | 'says'>[] = [...problems.filter(({ rule }) => rule !== 'cast'), ...overCeiling(problems)];
for (const { file, line, says } of wrong) console.log(`${file}:${line}: ${says}`);
process.exitCode = compiler.length + wrong.length === 0 ? 0 : 1;
