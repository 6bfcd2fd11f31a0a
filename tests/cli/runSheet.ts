// The sheet as tests run it: in this process, or as a shop does, as a process of its own.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { makeSheets } from '../../src/cli/sheet';

export const root = join(import.meta.dirname, '..', '..');

/** What a terminal shows of one call. */
export interface SheetRun {
  readonly status: number | null;
  readonly out: string;
  readonly error: string;
}

/** Runs the sheet in this process, with paths from `folder`. */
export async function runSheet(folder: string, ...words: string[]): Promise<SheetRun> {
  let out = '';
  let error = '';
  const status = await makeSheets(words, {
    folder,
    print: (line) => (out += `${line}\n`),
    complain: (line) => (error += `${line}\n`),
  });
  return { status, out, error };
}

/** Runs it as `npm run sheet` does, without the second process of the tsx command. */
export function startSheet(folder: string, ...words: string[]): SheetRun {
  const command = ['--import', import.meta.resolve('tsx'), join(root, 'src/cli/main.ts'), ...words];
  const run = spawnSync(process.execPath, command, { encoding: 'utf8', cwd: folder });
  return { status: run.status, out: run.stdout, error: run.stderr };
}
