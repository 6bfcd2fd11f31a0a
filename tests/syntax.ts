// Sources as syntax trees, each parsed once for all tests of one process that read them.
import { parseSync } from 'vite';

/** A node of the syntax tree as the parser gives it (ESTree). */
export type SyntaxNode = { readonly type: string; readonly start: number } & Readonly<
  Record<string, unknown>
>;

const trees = new Map<string, SyntaxNode>();

/** The tree of a source; its ending says how it is read. Throws on a source that does not parse. */
export function parsed(path: string, text: string): SyntaxNode {
  const key = `${path}\n${text}`;
  const known = trees.get(key);
  if (known) return known;
  const { program, errors } = parseSync(path, text);
  if (errors.length > 0) throw new Error(`${path}: ${errors[0]?.message}`);
  const tree = program as unknown as SyntaxNode;
  trees.set(key, tree);
  return tree;
}

export function isNode(value: unknown): value is SyntaxNode {
  return typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';
}

/** The nodes directly under a node. */
export function childNodes(node: SyntaxNode): SyntaxNode[] {
  const found: SyntaxNode[] = [];
  for (const key in node) {
    const value = node[key];
    if (Array.isArray(value)) {
      for (const one of value) if (isNode(one)) found.push(one);
    } else if (isNode(value)) found.push(value);
  }
  return found;
}
