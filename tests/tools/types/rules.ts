// What the compiler lets pass and this house does not: values that nothing is known of, assertions that a value is there,
// switches that swallow what is added later, and casts.

import ts from 'typescript';

export interface Problem {
  readonly file: string;
  readonly line: number;
  readonly rule: 'any' | 'non-null' | 'switch' | 'cast';
  readonly says: string;
}

type Rule = (node: ts.Node, checker: ts.TypeChecker) => { readonly rule: Problem['rule']; readonly says: string } | null;

/** Every problem in one file, top to bottom. Casts are all told: how many a file may have is for the caller to say. */
export function problemsIn(source: ts.SourceFile, checker: ts.TypeChecker, name: string): readonly Problem[] {
  const problems: Problem[] = [];
  const visit = (node: ts.Node): void => {
    for (const rule of RULES) {
      const found = rule(node, checker);
      if (found !== null) problems.push({ file: name, line: source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1, ...found });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return problems;
}

const shortOf = (node: ts.Node): string => node.getText().replace(/\s+/g, ' ').slice(0, 60);
const isAny = (type: ts.Type): boolean => (type.flags & ts.TypeFlags.Any) !== 0;

const writtenAny: Rule = (node) =>
  (node.kind === ts.SyntaxKind.AnyKeyword ? { rule: 'any', says: '`any` switches the compiler off; write `unknown` and look at what it is' } : null);

/** A value of type `any` may only be taken as `unknown`: by the name that it is given to, the result, or the parameter. */
const flowingAny: Rule = (node, checker) => {
  if (!ts.isExpression(node) || !isValue(node) || !isAny(checker.getTypeAtLocation(node))) return null;
  // Of a whole that flows on, only the whole is told, not its parts; but looking into it is no way to take it.
  const part = ts.isExpression(node.parent) && isValue(node.parent) && !ts.isCallExpression(node.parent) && isAny(checker.getTypeAtLocation(node.parent));
  if (!isLookedInto(node) && (part || isDropped(node) || takenAsUnknown(node, checker))) return null;
  return { rule: 'any', says: `nothing is known of \`${shortOf(node)}\`; take it as \`unknown\` at once, and look at what it is` };
};

function isValue(node: ts.Expression): boolean {
  if (ts.isIdentifier(node)) return isRead(node);
  if (ts.isPrivateIdentifier(node) || node.kind === ts.SyntaxKind.ImportKeyword) return false;
  return !ts.isLiteralExpression(node) && !ts.isTypeNode(node) && !ts.isExpressionWithTypeArguments(node) && !ts.isOmittedExpression(node);
}

// A name that is read, and not one that is declared, imported, or the key of something.
function isRead(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isShorthandPropertyAssignment(parent)) return true;
  if (ts.isVariableDeclaration(parent) || ts.isPropertyAssignment(parent) || ts.isParameter(parent)) return parent.initializer === node;
  return ts.isExpression(parent) || ts.isStatement(parent) || ts.isSpreadAssignment(parent) || ts.isTemplateSpan(parent);
}

const isLookedInto = (node: ts.Expression): boolean =>
  (ts.isPropertyAccessExpression(node.parent) || ts.isElementAccessExpression(node.parent) || ts.isCallExpression(node.parent)) && node.parent.expression === node;

const isDropped = (node: ts.Expression): boolean =>
  ts.isExpressionStatement(node.parent) || ts.isTypeOfExpression(node.parent)
  || (ts.isBinaryExpression(node.parent) && node.parent.operatorToken.kind === ts.SyntaxKind.EqualsToken && node.parent.left === node);

function takenAsUnknown(node: ts.Expression, checker: ts.TypeChecker): boolean {
  const { parent } = node;
  if (ts.isAsExpression(parent)) return parent.type.kind === ts.SyntaxKind.UnknownKeyword;
  if (ts.isBinaryExpression(parent) && parent.operatorToken.kind === ts.SyntaxKind.EqualsToken) {
    return isUnknown(declaredType(parent.left, checker));
  }
  if (ts.isConditionalExpression(parent) || ts.isParenthesizedExpression(parent) || ts.isYieldExpression(parent)) return takenAsUnknown(parent, checker);
  const wanted = checker.getContextualType(node);
  return wanted !== undefined && isUnknown(wanted);
}

const declaredType = (node: ts.Expression, checker: ts.TypeChecker): ts.Type | undefined => {
  const symbol = checker.getSymbolAtLocation(node);
  return symbol === undefined ? undefined : checker.getTypeOfSymbol(symbol);
};
const isUnknown = (type: ts.Type | undefined): boolean => type !== undefined && (type.flags & ts.TypeFlags.Unknown) !== 0;

const nonNull: Rule = (node) => {
  const asserted = ts.isNonNullExpression(node) || ((ts.isVariableDeclaration(node) || ts.isPropertyDeclaration(node)) && node.exclamationToken !== undefined);
  return asserted ? { rule: 'non-null', says: `\`${shortOf(node)}\` asserts what it does not show; say what happens where it is not there` } : null;
};

/** Over a closed union: a case for each member and no default, or a default that holds by `never` that none is left. */
const wholeSwitch: Rule = (node, checker) => {
  if (!ts.isSwitchStatement(node)) return null;
  const members = membersOf(checker.getTypeAtLocation(node.expression));
  if (members === null) return null;
  const covered = new Set(node.caseBlock.clauses.flatMap((clause) => (ts.isCaseClause(clause) ? (membersOf(checker.getTypeAtLocation(clause.expression)) ?? []) : [])));
  const left = members.filter((member) => !covered.has(member)).map((member) => checker.typeToString(member));
  const otherwise = node.caseBlock.clauses.find(ts.isDefaultClause);
  if (otherwise === undefined) return left.length === 0 ? null : { rule: 'switch', says: `no case for ${listOf(left)}; add it, or what it means that nothing happens` };
  if (handsToNever(otherwise, checker)) return null;
  return { rule: 'switch', says: left.length === 0 ? 'its default can only be reached by what is added later, and would swallow that; leave it out' : `its default swallows ${listOf(left)} and whatever is added later; give each its case` };
};

const listOf = (names: readonly string[]): string => names.slice(0, 4).join(', ') + (names.length > 4 ? ` and ${names.length - 4} more` : '');

/** The single values of a closed union; null of a type that is open (string, number, an object). */
function membersOf(type: ts.Type): readonly ts.Type[] | null {
  const parts = type.isUnion() ? type.types : [type];
  const single = ts.TypeFlags.StringLiteral | ts.TypeFlags.NumberLiteral | ts.TypeFlags.BooleanLiteral | ts.TypeFlags.Undefined | ts.TypeFlags.Null;
  return parts.every((part) => (part.flags & single) !== 0) ? parts.map(regular) : null;
}

// A literal as it is written and the same literal in a union are two types with one value.
const regular = (type: ts.Type): ts.Type => (type as ts.Type & { readonly regularType?: ts.Type }).regularType ?? type;

function handsToNever(clause: ts.DefaultClause, checker: ts.TypeChecker): boolean {
  let found = false;
  const visit = (node: ts.Node): void => {
    if (ts.isSatisfiesExpression(node) && node.type.kind === ts.SyntaxKind.NeverKeyword) found = true;
    if (ts.isVariableDeclaration(node) && node.type?.kind === ts.SyntaxKind.NeverKeyword) found = true;
    if (ts.isCallExpression(node)) {
      const wanted = node.arguments.map((argument) => checker.getContextualType(argument));
      if (wanted.some((type) => type !== undefined && (type.flags & ts.TypeFlags.Never) !== 0)) found = true;
    }
    ts.forEachChild(node, visit);
  };
  clause.statements.forEach(visit);
  return found;
}

const cast: Rule = (node) => {
  if (!ts.isAsExpression(node) && !ts.isTypeAssertionExpression(node)) return null;
  if (node.type.kind === ts.SyntaxKind.UnknownKeyword || ts.isConstTypeReference(node.type)) return null;
  return { rule: 'cast', says: `\`as ${shortOf(node.type)}\` claims what nothing has shown` };
};

const RULES: readonly Rule[] = [writtenAny, flowingAny, nonNull, wholeSwitch, cast];
