// Keeps, at the start of a visit, what earlier pages left unsaved (leaving.ts), as if it had been saved in time.
import { readHistory } from '../../editing/keptHistory';
import { openDocument } from '../../editing/openDocument';
import { nameWith } from '../../model/name';
import type { Project } from '../../model/project';
import type { LeavingNotes } from './leaving';
import { type ProjectStorage, sameText } from './storage';

/** A copy made of what was left unsaved: the name of the quilt, and the copy's own. */
export interface LeftCopy {
  readonly of: string;
  readonly name: string;
}

/**
 * Saves what earlier pages left unsaved. If the project has been changed or removed elsewhere since, the unsaved state becomes a copy with
 * a name of its own, which is returned to be told; if it was saved after all, the note is dropped. `copyId` makes the id of a copy.
 */
export async function keepLeft(
  storage: ProjectStorage,
  notes: LeavingNotes,
  copyId: (id: string) => string,
): Promise<readonly LeftCopy[]> {
  const copies: LeftCopy[] = [];
  for (const { document, revision, history: steps } of notes.takeAll()) {
    const history = readHistory(steps);
    const left = openDocument(document);
    if (!left.ok) continue;
    const saved = await storage.save(left.value, revision, history);
    if (saved.ok || (await isKept(storage, left.value))) continue;
    const copy = { ...left.value, id: copyId(left.value.id) };
    const elsewhere = ELSEWHERE.has(saved.problems[0]?.code ?? '');
    const name = await freeName(storage, left.value.name);
    if (elsewhere && (await storage.save({ ...copy, name }, 0, history)).ok)
      copies.push({ of: left.value.name, name });
    // For want of room, or for a passing trouble: the note waits for the next visit.
    else notes.leave(left.value, revision, history);
  }
  return copies;
}

const ELSEWHERE = new Set(['changed-elsewhere', 'removed-elsewhere']);

/** A name that no kept project has, so that copies are told apart. */
async function freeName(storage: ProjectStorage, name: string): Promise<string> {
  const list = await storage.list();
  const taken = new Set(list.ok ? list.value.map((one) => one.name) : []);
  for (let count = 1; ; count += 1) {
    const free = nameWith(name, count === 1 ? ' (left unsaved)' : ` (left unsaved ${count})`);
    if (!taken.has(free)) return free;
  }
}

/** Whether this state is what is kept. */
async function isKept(storage: ProjectStorage, project: Project): Promise<boolean> {
  const kept = await storage.load(project.id);
  return kept.ok && sameText(kept.value.project, project);
}
