// Writing several files so that either all are there or none: each to a name of its own first, renamed at the very end.
import { existsSync, mkdirSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Why nothing can be written there, or the path itself: it must be a folder, or not exist below a folder. */
export function checkFolder(out: string): Result<string> {
  for (let at = out; ; at = dirname(at)) {
    if (existsSync(at)) {
      if (statSync(at).isDirectory()) return ok(out);
      return failed('out-is-file', at, phrase('This is a file, not a folder to write into.'));
    }
    if (dirname(at) === at) return ok(out);
  }
}

/**
 * Makes a folder and those above it that are missing, one by one: the recursive mkdir of Node 20 never ends where the
 * system refuses with "no such entry", as in /proc. Returns those made, outermost first; on a failure takes them back.
 */
function makeFolders(folder: string): string[] {
  const missing: string[] = [];
  for (let at = folder; !existsSync(at); at = dirname(at)) missing.unshift(at);
  const made: string[] = [];
  try {
    for (const at of missing) {
      mkdirSync(at);
      made.push(at);
    }
  } catch (error) {
    for (const at of made.toReversed()) rmdirSync(at);
    throw error;
  }
  return made;
}

/** Writes files one by one from `make`; on any failure takes back what it wrote, folders included, and throws. */
export function writeAll(paths: readonly string[], make: (index: number) => OutputFile[]): void {
  const temporary: { from: string; to: string }[] = [];
  const folders: string[] = [];
  try {
    paths.forEach((folder, index) => {
      folders.push(...makeFolders(folder));
      for (const { path, content } of make(index)) {
        const to = join(folder, path);
        if (existsSync(to) && statSync(to).isDirectory()) throw new Error(`${to} is a folder`);
        const from = `${to}.${process.pid}.part`;
        temporary.push({ from, to });
        writeFileSync(from, content);
      }
    });
  } catch (error) {
    for (const { from } of temporary) rmSync(from, { force: true });
    for (const folder of folders.toReversed()) rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  for (const { from, to } of temporary) renameSync(from, to);
}
