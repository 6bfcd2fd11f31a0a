// The glossary of DEVELOPERS.md: every word that it gives for the code is a name that other files can use: an export, a part of an
// exported interface, a file, or a key of the project's schema. Read from the parsed sources, so that a comment does not count.
import { basename } from 'node:path';
import { expect, it } from 'vitest';
import { projectSchema } from '../src/model/project';
import { GLOSSARY, meaningOf, termsLike } from '../src/model/words/glossary';
import { sentences } from './sentences';
import { filesUnder, textOf } from './srcFiles';
import { childNodes, isNode, parsed, type SyntaxNode } from './syntax';

/** The rows of the tables under a heading, without their heads: trade, code, meaning. */
function rowsUnder(heading: string, document: string): string[][] {
  const [, part = ''] = document.split(`\n${heading}\n`);
  const end = new RegExp(`\\n#{2,${heading.indexOf(' ')}} `);
  return part
    .split(end)[0]!
    .split('\n')
    .filter((line) => line.startsWith('|') && !/^\| (trade|---) \|/.test(line))
    .map((row) => row.split('|').slice(1, -1).map((cell) => cell.trim()));
} // biome-ignore format: a chain

/** The code words of each row of the tables under "## Words". */
function codeWords(document: string): string[] {
  return rowsUnder('## Words', document).flatMap(([trade, code]) => {
    const words = [...code!.matchAll(/`([^`]+)`/g)].map((found) => found[1]!);
    if (words.length === 0) throw new Error(`no code word: ${trade}`);
    return words;
  });
}

function nameOf(node: unknown): string[] {
  if (!isNode(node)) return [];
  const named = node as SyntaxNode & { name?: unknown };
  return node.type === 'Identifier' && typeof named.name === 'string' ? [named.name] : [];
}

/** Names that a source exports, and the parts of the interfaces and types among them. */
function exported(path: string, text: string): string[] {
  return (parsed(path, text).body as SyntaxNode[])
    .filter((node) => node.type === 'ExportNamedDeclaration' && isNode(node.declaration))
    .flatMap((node) => {
      const declared = node.declaration as SyntaxNode;
      if (declared.type === 'VariableDeclaration') {
        return (declared.declarations as SyntaxNode[]).flatMap((one) => nameOf(one.id));
      }
      return [...nameOf(declared.id), ...(declared.type === 'TSInterfaceDeclaration' ? parts(declared) : [])];
    });
}

function parts(node: SyntaxNode): string[] {
  const own = node.type === 'TSPropertySignature' ? nameOf(node.key) : [];
  return [...own, ...childNodes(node).flatMap((child) => parts(child))];
}

interface Schema {
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly wrapped?: Schema;
  readonly item?: Schema;
  readonly pipe?: readonly object[];
  readonly options?: readonly unknown[];
  readonly literal?: string | number;
}

/** Keys and written values of a schema, to its depth. */
function schemaWords(schema: Schema): string[] {
  const options = (schema.options ?? []).flatMap((one) =>
    typeof one === 'object' && one !== null ? schemaWords(one as Schema) : [String(one)],
  );
  return [
    ...Object.entries(schema.entries ?? {}).flatMap(([key, one]) => [key, ...schemaWords(one)]),
    ...(schema.wrapped ? schemaWords(schema.wrapped) : []),
    ...(schema.item ? schemaWords(schema.item) : []),
    // A list looks at its length before it looks at its items.
    ...(schema.pipe ?? []).slice(1).flatMap((part) => schemaWords(part as Schema)),
    ...(schema.literal === undefined ? [] : [String(schema.literal)]),
    ...options,
  ];
}

const sources = filesUnder('src').filter((path) => /\.tsx?$/.test(path));
const known = new Set([
  ...sources.flatMap((path) => [basename(path).replace(/\.tsx?$/, ''), ...exported(path, textOf(path))]),
  ...schemaWords(projectSchema as unknown as Schema),
]);

it('gives makers’ words as the glossary does, in its order', () => {
  const rows = rowsUnder('### What makers read', textOf('DEVELOPERS.md'));
  expect(rows.map(([term, , means]) => ({ term, means }))).toEqual(GLOSSARY);
});

it('has each term once, and a sentence for each', () => {
  const terms = rowsUnder('## Words', textOf('DEVELOPERS.md')).map(([term]) => term);
  expect(new Set(terms).size).toBe(terms.length);
  for (const { means } of GLOSSARY) expect(means).toMatch(/^\p{Lu}[^.]*\.$/u);
});

it('finds a word by any part of its name or meaning, in any letters, the nearest first', () => {
  expect(termsLike('  ')).toEqual(GLOSSARY);
  const cases = GLOSSARY.flatMap((term) => [
    ...Array.from(term.term, (_, at) => [term, term.term.slice(0, at + 1), true] as const),
    ...term.means.split(' ').map((word) => [term, word.toUpperCase(), false] as const),
  ]);
  for (const [term, sought, isBeginning] of cases) {
    const found = termsLike(sought);
    expect(found).toContain(term);
    const begins = (one: { term: string }) => one.term.startsWith(sought.trim().toLowerCase());
    const first = found.findIndex((one) => !begins(one));
    if (isBeginning) expect(found.slice(0, first < 0 ? undefined : first)).toContain(term);
    for (const one of found)
      expect(`${one.term} ${one.means}`.toLowerCase()).toContain(sought.trim().toLowerCase());
  }
  expect(termsLike('no such word')).toEqual([]);
  expect(meaningOf('colourway')).toBe('The same quilt in other fabrics.');
});

it('is the one place that says what a word means', () => {
  const meanings = new Set(GLOSSARY.map(({ means }) => means));
  const own = ['src/model/words/glossary.ts', 'src/model/words/score.ts'];
  const said = sources.filter((path) => !own.includes(path)).flatMap((path) => sentences(path, textOf(path)));
  expect(said.filter(({ text }) => meanings.has(text))).toEqual([]);
});

const lost = (document: string) => codeWords(document).filter((word) => !known.has(word));

it('gives the names that the code has', () => {
  const document = textOf('DEVELOPERS.md');
  expect(codeWords(document).length).toBeGreaterThan(60);
  expect(lost(document)).toEqual([]);
});

it('finds a made-up word, and one that only a comment or the inside of a function has', () => {
  const table = '\n## Words\n\n| trade | code | |\n| --- | --- | --- |\n';
  // 'thumb' stands in comments (rules of thumb), 'soFar' is a variable inside functions.
  expect(
    lost(`${table}| set | \`StripSet\`, \`stripSett\` | |\n| a | \`thumb\` | |\n| b | \`soFar\` | |\n`),
  ).toEqual(['stripSett', 'thumb', 'soFar']);
});
