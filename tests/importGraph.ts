// Reads who imports whom (types, re-exports, dynamic imports and workers included) and finds what breaks the rules of
// rooms.ts. Works on any set of files by path, so that it can be tried on made-up ones. Names in use: freeNames.ts.
import { posix } from 'node:path';
import { type FreeName, freeNames } from './freeNames';
import { FORBIDDEN_NAMES, PURE_ROOMS, ROOMS, SHELL_PACKAGES, SHORT_RULES, TYPES_ONLY } from './rooms';
import { childNodes, isNode, parsed, type SyntaxNode } from './syntax';

/** Paths from the root of the project ("src/model/find.ts") with their text. */
export type Sources = ReadonlyMap<string, string>;

/** `target` is a path from the root, or the name of a package. */
interface Import {
  readonly from: string;
  readonly target: string;
  readonly kind: 'package' | 'file';
  readonly typesOnly: boolean;
}

/** Everything that breaks a rule, one sentence each with the file in front; empty when all is well. */
export function faults(sources: Sources): string[] {
  const found: string[] = [];
  const links: Import[] = [];
  for (const [path, text] of sources) {
    const program = parsed(path, text);
    const imports = importsOf(path, program, sources);
    links.push(...imports.filter((one) => one.kind === 'file'));
    found.push(
      ...imports.flatMap((one) => importFault(one, sources) ?? []),
      ...fileFaults(path, program, text),
    );
  }
  return [...found, ...circles(links).map((files) => `${files.join(', ')} import each other in a circle`)];
}

function roomOf(path: string): string {
  return /^src\/([^/]+)\//.exec(path)?.[1] ?? '';
}

function isPure(path: string): boolean {
  return (PURE_ROOMS as readonly string[]).includes(roomOf(path));
}

function fileFaults(path: string, program: SyntaxNode, text: string): string[] {
  const found: string[] = [];
  if (!(roomOf(path) in ROOMS) && !path.endsWith('.d.ts')) found.push(`${path} lies in no known room`);
  if (isBarrel(program)) found.push(`${path} only passes on what others export`);
  if (!isPure(path)) return found;
  for (const { name, member, start } of freeNames(program).filter(isForbidden)) {
    const line = text.slice(0, start).split('\n').length;
    found.push(`${path} uses ${member === null ? name : `${name}.${member}`} in line ${line}`);
  }
  return path.endsWith('.tsx') ? [...found, `${path} is a screen file in a pure room`] : found;
}

function isForbidden({ name, member }: FreeName): boolean {
  if (!Object.hasOwn(FORBIDDEN_NAMES, name)) return false;
  const members = FORBIDDEN_NAMES[name];
  return !members || member === null || members.includes(member);
}

/** True for a file that exports only what it takes from elsewhere. */
function isBarrel(program: SyntaxNode): boolean {
  const statements = program.body as SyntaxNode[];
  const passesOn = statements.some((one) => one.type === 'ExportAllDeclaration' || isNamedExport(one));
  return (
    passesOn &&
    statements.every((one) => /^(Import|ExportAll)Declaration$/.test(one.type) || isNamedExport(one))
  );
}

function isNamedExport(node: SyntaxNode): boolean {
  return node.type === 'ExportNamedDeclaration' && node.declaration === null;
}

/** What is wrong with one import, or null. */
function importFault({ from, target, kind, typesOnly }: Import, sources: Sources): string | null {
  const fault = `${from} imports ${target}`;
  const [here, there] = [roomOf(from), roomOf(target)];
  if (kind === 'package') return isPure(from) && needsShell(target) ? fault : null;
  if (!target.startsWith('src/') || /\.(css|svg|json|woff2)$/.test(target)) {
    // Pictures, styles and demo quilts are for those who show them to a person.
    const shown = target.startsWith('src/') || target.startsWith('demo-data/');
    return shown && ['ui', 'store'].includes(here) ? null : fault;
  }
  if (!sources.has(target)) return `${fault}, which is not there`;
  if (here === there || ROOMS[here]?.includes(there)) return null;
  if (SHORT_RULES[target]?.includes(here)) return null;
  return typesOnly && TYPES_ONLY[here]?.includes(there) ? null : fault;
}

function needsShell(name: string): boolean {
  return name.startsWith('node:') || SHELL_PACKAGES.some((one) => name === one || name.startsWith(`${one}/`));
}

function importsOf(from: string, program: SyntaxNode, sources: Sources): Import[] {
  const imports: Import[] = [];
  const add = (source: unknown, typesOnly: boolean) => {
    const wanted = isNode(source) ? source.value : undefined;
    if (typeof wanted !== 'string') return;
    const kind = wanted.startsWith('.') ? 'file' : 'package';
    imports.push({ from, target: kind === 'file' ? fileAt(from, wanted, sources) : wanted, kind, typesOnly });
  };
  const visit = (node: SyntaxNode): void => {
    if (node.type === 'TSImportType') add(node.source, true);
    else if (node.type === 'ImportExpression') add(node.source, false);
    else if (node.type === 'NewExpression') add(workerAddress(node), false);
    else if (/^(Import|ExportNamed|ExportAll)Declaration$/.test(node.type))
      add(node.source, isTypesOnly(node));
    childNodes(node).forEach(visit);
  };
  visit(program);
  return imports;
}

/** The address in new URL('./worker.ts', import.meta.url). */
function workerAddress(node: SyntaxNode): SyntaxNode | undefined {
  const [address, base] = node.arguments as SyntaxNode[];
  const isUrl = isNode(node.callee) && node.callee.name === 'URL';
  return isUrl && base?.type === 'MemberExpression' ? address : undefined;
}

function isTypesOnly(node: SyntaxNode): boolean {
  if (node.importKind === 'type' || node.exportKind === 'type') return true;
  const parts = (node.specifiers ?? []) as SyntaxNode[];
  return parts.length > 0 && parts.every((one) => one.importKind === 'type' || one.exportKind === 'type');
}

/** The path from the root; imports of source files are written without their ending. */
function fileAt(from: string, wanted: string, sources: Sources): string {
  const path = posix.join(posix.dirname(from), wanted.replace(/\?\w+$/, ''));
  if (/\.\w+$/.test(path)) return path;
  return !sources.has(`${path}.ts`) && sources.has(`${path}.tsx`) ? `${path}.tsx` : `${path}.ts`;
}

/** Groups of files that reach each other by imports (strongly connected components, R. Tarjan 1972), each sorted. */
function circles(links: readonly Import[]): string[][] {
  const targets = new Map<string, Import[]>();
  for (const link of links) targets.set(link.from, [...(targets.get(link.from) ?? []), link]);
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const enter = (file: string): void => {
    order.set(file, order.size);
    lowest.set(file, order.get(file)!);
    open.push(file);
    for (const { target } of targets.get(file) ?? []) {
      if (!order.has(target)) enter(target);
      if (open.includes(target)) lowest.set(file, Math.min(lowest.get(file)!, lowest.get(target)!));
    }
    if (lowest.get(file) !== order.get(file)) return;
    const group = open.splice(open.indexOf(file)).sort();
    const self = targets.get(file)?.some(({ target }) => target === file);
    if (group.length > 1 || self) found.push(group);
  };
  for (const file of targets.keys()) if (!order.has(file)) enter(file);
  return found;
}
