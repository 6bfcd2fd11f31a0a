// Part of the build: what the page has to fetch before it draws anything. The build ends with an error where that has grown beyond
// its budget.
import { gzipSync } from 'node:zlib';
import type { Plugin, Rolldown } from 'vite';
import { packageOf } from './licences.ts';

/** Bytes, compressed by gzip, that the first script may have, all that it imports included. */
export const BUDGET = 180_000;
/** How many of the largest parts are told. */
const TOLD = 8;

/** A file of script as the build writes it; `modules` have the length of the text of each module in it, before it is made small. */
export interface Script {
  readonly fileName: string;
  readonly code: string;
  readonly imports: readonly string[];
  readonly modules: Readonly<Record<string, { readonly renderedLength: number }>>;
}

/** By how much the first script of a page, the text of index.html, is too large, in a sentence, then its largest parts; null when all is well. */
export function budgetFault(page: string, scripts: readonly Script[], budget = BUDGET): string | null {
  const bytes = firstScriptBytes(page, scripts);
  if (bytes <= budget) return null;
  const parts = largestParts(fetchedFirst(page, scripts)).map(
    ([part, length]) => `  ${part}: ${kilobytes(length)} before it is made small`,
  );
  return [
    `The first script is ${kilobytes(bytes - budget)} too large: ${kilobytes(bytes)} by gzip, of ${kilobytes(budget)}. Its largest parts:`,
    ...parts,
  ].join('\n');
}

/** The length of the first script by gzip. */
export function firstScriptBytes(page: string, scripts: readonly Script[]): number {
  return fetchedFirst(page, scripts).reduce((sum, { code }) => sum + gzipSync(code).length, 0);
}

/** The scripts among the files of a build: its chunks, and what was built apart and is part of it as a file. */
export function scriptsOf(files: readonly (Rolldown.OutputChunk | Rolldown.OutputAsset)[]): Script[] {
  return files.flatMap((file) => {
    if (file.type === 'chunk') return file;
    const { fileName, source } = file;
    return fileName.endsWith('.js') ? { fileName, code: String(source), imports: [], modules: {} } : [];
  });
}

/** The scripts that a page names and all that they import. Throws where there is none. */
function fetchedFirst(page: string, scripts: readonly Script[]): Script[] {
  const byName = new Map(scripts.map((script) => [script.fileName, script]));
  const first = new Set(scripts.filter(({ fileName }) => page.includes(fileName)));
  if (first.size === 0) throw new Error('budgetFault: the page names no script');
  for (const script of first)
    for (const name of script.imports) {
      const imported = byName.get(name);
      if (imported) first.add(imported);
    }
  return [...first];
}

/** Packages and folders of the tool's own, with the characters of their modules, the largest first. */
function largestParts(scripts: readonly Script[]): [string, number][] {
  const lengths = new Map<string, number>();
  for (const { modules } of scripts)
    for (const [module, { renderedLength }] of Object.entries(modules)) {
      const part = packageOf(module) ?? folderOf(module);
      lengths.set(part, (lengths.get(part) ?? 0) + renderedLength);
    }
  return [...lengths].sort(([, one], [, other]) => other - one).slice(0, TOLD);
}

function folderOf(module: string): string {
  const at = module.lastIndexOf('/src/');
  return at < 0 ? module : module.slice(at + 1, module.lastIndexOf('/'));
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`;
}

/** Ends the build with an error when the first script is too large. */
export function firstScriptBudget(): Plugin {
  return {
    name: 'wedgewall-first-script',
    apply: 'build',
    // When all else is done: only now are the scripts as they are written.
    writeBundle(_options, bundle) {
      const page = bundle['index.html'];
      if (page?.type !== 'asset') return;
      const fault = budgetFault(String(page.source), scriptsOf(Object.values(bundle)));
      if (fault) this.error(fault);
    },
  };
}

/** Of which files the build consists, besides one for each part that comes later: few, because many small ones are larger together. */
export const FILES = [
  { name: 'first', tags: ['$initial' as const], priority: 2 },
  { name: 'menus', test: /node_modules\/(@?react-(aria|stately|types)|@internationalized)/, priority: 1 },
];
