// The names a source file uses without declaring them, that is, what it takes from its surroundings: document, Date, Math.
// Follows scopes, so that a parameter called `document` is not taken for the page. Types are left out: they are gone at run time.
import { childNodes, isNode, type SyntaxNode } from './syntax';

/** One use of a name; `member` is what is taken from it by a dot (Math.random), null for any other use. */
export interface FreeName {
  readonly name: string;
  readonly member: string | null;
  readonly start: number;
}

/** Every use of a name nothing in the file declares. */
export function freeNames(program: SyntaxNode): FreeName[] {
  const found: FreeName[] = [];
  follow(program, [], null, found);
  return found;
}

type Scopes = readonly ReadonlySet<string>[];

function follow(node: SyntaxNode, outer: Scopes, holder: SyntaxNode | null, found: FreeName[]): void {
  if (node.type === 'Identifier') {
    const name = node.name as string;
    if (outer.some((scope) => scope.has(name))) return;
    found.push({ name, member: memberOf(node, holder), start: node.start });
    return;
  }
  const declared = declaredBy(node);
  const scopes = declared.length > 0 ? [...outer, new Set(declared)] : outer;
  for (const child of usedParts(node)) follow(child, scopes, node, found);
}

function memberOf(node: SyntaxNode, holder: SyntaxNode | null): string | null {
  if (holder?.type !== 'MemberExpression' || holder.object !== node || holder.computed) return null;
  return isNode(holder.property) ? (holder.property.name as string) : null;
}

/** The parts of a node in which names are used, not merely written (keys, labels, types). */
function usedParts(node: SyntaxNode): SyntaxNode[] {
  if (node.type.startsWith('TS')) return [node.expression, node.parameter].filter(isNode);
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ImportExpression':
    case 'ExportAllDeclaration':
    case 'MetaProperty':
    case 'BreakStatement':
    case 'ContinueStatement':
      return [];
    case 'ExportNamedDeclaration':
      return [node.declaration].filter(isNode);
    case 'LabeledStatement':
      return [node.body].filter(isNode);
    case 'MemberExpression':
      return node.computed ? childNodes(node) : [node.object].filter(isNode);
    case 'Property':
    case 'MethodDefinition':
    case 'PropertyDefinition':
      return node.computed ? childNodes(node) : [node.value].filter(isNode);
    default:
      return childNodes(node);
  }
}

/** Names that hold throughout a node because it declares them. */
function declaredBy(node: SyntaxNode): string[] {
  switch (node.type) {
    case 'Program':
    case 'BlockStatement':
    case 'StaticBlock':
      return (node.body as SyntaxNode[]).flatMap(declaredIn);
    case 'SwitchStatement':
      return (node.cases as SyntaxNode[]).flatMap((one) =>
        (one.consequent as SyntaxNode[]).flatMap(declaredIn),
      );
    case 'ForStatement':
      return isNode(node.init) ? declaredIn(node.init) : [];
    case 'ForOfStatement':
    case 'ForInStatement':
      return declaredIn(node.left as SyntaxNode);
    case 'CatchClause':
      return isNode(node.param) ? namesIn(node.param) : [];
    case 'ClassExpression':
      return isNode(node.id) ? namesIn(node.id) : [];
    case 'FunctionDeclaration':
    case 'FunctionExpression':
    case 'ArrowFunctionExpression':
      return [...(node.params as SyntaxNode[]), node.id].filter(isNode).flatMap(namesIn).concat('arguments');
    default:
      return [];
  }
}

function declaredIn(statement: SyntaxNode): string[] {
  switch (statement.type) {
    case 'VariableDeclaration':
      return (statement.declarations as SyntaxNode[]).flatMap((one) => namesIn(one.id as SyntaxNode));
    case 'ImportDeclaration':
      return (statement.specifiers as SyntaxNode[]).flatMap((one) => namesIn(one.local as SyntaxNode));
    case 'ExportNamedDeclaration':
      return isNode(statement.declaration) ? declaredIn(statement.declaration) : [];
    case 'ExportDefaultDeclaration':
      return declaredIn(statement.declaration as SyntaxNode);
    case 'FunctionDeclaration':
    case 'ClassDeclaration':
    case 'TSEnumDeclaration':
      return isNode(statement.id) ? namesIn(statement.id) : [];
    default:
      return [];
  }
}

/** The names a pattern gives values to: a, { a, b: c }, [a = 1], ...a. */
function namesIn(pattern: SyntaxNode): string[] {
  switch (pattern.type) {
    case 'Identifier':
      return [pattern.name as string];
    case 'ObjectPattern':
      return (pattern.properties as SyntaxNode[]).flatMap((one) => namesIn((one.value ?? one) as SyntaxNode));
    case 'ArrayPattern':
      return (pattern.elements as unknown[]).filter(isNode).flatMap(namesIn);
    case 'AssignmentPattern':
      return namesIn(pattern.left as SyntaxNode);
    case 'RestElement':
      return namesIn(pattern.argument as SyntaxNode);
    case 'TSParameterProperty':
      return namesIn(pattern.parameter as SyntaxNode);
    default:
      return [];
  }
}
