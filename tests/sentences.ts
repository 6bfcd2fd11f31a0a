// The sentences of a source, read from its parsed text, so that code names and comments may say what they like.
import { childNodes, parsed, type SyntaxNode } from './syntax';

export interface Said {
  readonly at: string;
  readonly text: string;
}

/** Sources read already, by their text: several tests look through all of them. */
const read = new Map<string, readonly Said[]>();

/** What may be read on screen, on paper or in a terminal: texts with a space or a capital; no import, key, markup or programmer's error. */
export function sentences(path: string, text: string): readonly Said[] {
  const known = read.get(text);
  if (known) return known;
  const said: Said[] = [];
  const follow = (node: SyntaxNode, holder: SyntaxNode | null): void => {
    if (node.type.startsWith('TS') && node.type.endsWith('Type')) return;
    if (node.type === 'ImportDeclaration' || isClassName(node) || isProgrammersError(node)) return;
    const words = wordsOf(node);
    if (words !== null && isForPeople(words) && !(holder?.type === 'Property' && holder.key === node)) {
      said.push({ at: `${path}:${text.slice(0, node.start).split('\n').length}`, text: words.trim() });
    }
    for (const child of childNodes(node)) follow(child, node);
  };
  follow(parsed(path, text), null);
  read.set(text, said);
  return said;
}

function wordsOf(node: SyntaxNode): string | null {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : null;
  if (node.type === 'JSXText') return node.value as string;
  return node.type === 'TemplateElement' ? (node.value as { cooked: string }).cooked : null;
}

function isClassName(node: SyntaxNode): boolean {
  return node.type === 'JSXAttribute' && (node.name as { name?: unknown }).name === 'className';
}

const ERRORS = ['Error', 'RangeError', 'TypeError'];

function isProgrammersError(node: SyntaxNode): boolean {
  return node.type === 'NewExpression' && ERRORS.includes((node.callee as { name?: string }).name ?? '');
}

function isForPeople(text: string): boolean {
  const isMarkup = /[<>]|="|^[.[][a-z]/.test(text);
  return !isMarkup && (/\S\s+\S/.test(text) || /^\p{Lu}\p{Ll}+$/u.test(text.trim()));
}
