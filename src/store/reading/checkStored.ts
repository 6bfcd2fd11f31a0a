// Checks a saved quilt: a small one at once, a large one in the worker that reads files, so that the page has its turns.
import { openDocument } from '../../editing/openDocument';
import type { Project } from '../../model/project';
import type { Result } from '../../model/result';

/** Values in a document from which it is checked in the worker: about 60 milliseconds of work, more than starting a worker. */
const MANY = 60_000;

/** The quilt of a document, or why it is not sound, as openDocument says. A worker that cannot be had is done without. */
export async function checkStored(document: unknown): Promise<Result<Project>> {
  if (typeof document !== 'object' || document === null || !holdsMany(document, MANY))
    return openDocument(document);
  const client = await import('./checkBeside').catch(() => null);
  return client ? client.checkBeside(document) : openDocument(document);
}

/** Whether there are at least so many values in plain data, looking no further. */
export function holdsMany(data: unknown, many: number): boolean {
  const left = [data];
  for (let count = 0; left.length > 0; count += 1) {
    if (count + left.length >= many) return true;
    const next = left.pop();
    if (typeof next !== 'object' || next === null || ArrayBuffer.isView(next)) continue;
    for (const value of Object.values(next)) left.push(value);
  }
  return false;
}
