// The program as the compiler sees it, from the one tsconfig; and small ones in memory, for the tests of the rules.

import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const CONFIG = join(ROOT, 'tsconfig.json');

function configured(): ts.ParsedCommandLine {
  const { config, error } = ts.readConfigFile(CONFIG, ts.sys.readFile);
  if (error !== undefined) throw new Error(ts.flattenDiagnosticMessageText(error.messageText, '\n'));
  return ts.parseJsonConfigFileContent(config, ts.sys, dirname(CONFIG));
}

export function wholeProgram(): ts.Program {
  const { fileNames, options } = configured();
  return ts.createProgram(fileNames, options);
}

/** One file of `text`, with the options of the house. */
export function programOf(text: string): { readonly source: ts.SourceFile; readonly checker: ts.TypeChecker; readonly errors: readonly string[] } {
  const options: ts.CompilerOptions = { ...configured().options, types: [] };
  const host = ts.createCompilerHost(options);
  const source = ts.createSourceFile('planted.ts', text, ts.ScriptTarget.ES2022, true);
  const read = host.getSourceFile.bind(host);
  host.getSourceFile = (name, ...rest) => (name === 'planted.ts' ? source : libraryFile(name, () => read(name, ...rest)));
  const program = ts.createProgram(['planted.ts'], options, host);
  return { source, checker: program.getTypeChecker(), errors: program.getSemanticDiagnostics(source).map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n')) };
}

// The language's own declarations are the same for every small program: they are parsed once.
const LIBRARY = new Map<string, ts.SourceFile | undefined>();
function libraryFile(name: string, read: () => ts.SourceFile | undefined): ts.SourceFile | undefined {
  if (!LIBRARY.has(name)) LIBRARY.set(name, read());
  return LIBRARY.get(name);
}

/** A file's path from the top of the repository, with forward slashes. */
export const nameOf = (file: ts.SourceFile): string => relative(ROOT, file.fileName).split(sep).join('/');
