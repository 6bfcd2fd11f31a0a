// Writes several files so that either all of them exist or none: each under a temporary name first, renamed at the end.
import { existsSync, mkdirSync, renameSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** The path itself where files can be written: a folder, or a path below a folder that does not exist yet. Else the reason. */
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
 * Makes a folder and the missing folders above it, one by one: the recursive mkdir of Node 20 never ends where the system
 * refuses with "no such entry", as in /proc. Returns the folders made, outermost first; removes them again on a failure.
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

/** Thrown where the person stops the command. Nothing is written by then. */
export class Stopped extends Error {}

/**
 * Writes the files that `make` gives for each folder of `paths`. On a failure, and where `stop` is given before all are there,
 * removes what it wrote, folders too, and throws.
 */
export async function writeAll(
  paths: readonly string[],
  make: (index: number) => OutputFile[],
  stop?: AbortSignal,
): Promise<void> {
  const temporary: { from: string; to: string }[] = [];
  const folders: string[] = [];
  try {
    for (const [index, folder] of paths.entries()) {
      folders.push(...makeFolders(folder));
      for (const { path, content } of make(index)) {
        const to = join(folder, path);
        if (existsSync(to) && statSync(to).isDirectory()) throw new Error(`${to} is a folder`);
        const from = `${to}.${process.pid}.part`;
        temporary.push({ from, to });
        writeFileSync(from, content);
        // Signals are heard only in between.
        await setImmediate();
        if (stop?.aborted) throw new Stopped('Stopped; nothing is written.');
      }
    }
  } catch (error) {
    for (const { from } of temporary) rmSync(from, { force: true });
    for (const folder of folders.toReversed()) rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  for (const { from, to } of temporary) renameSync(from, to);
}
