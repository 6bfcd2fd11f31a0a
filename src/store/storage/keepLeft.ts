// Keeps, at the start of a visit, what earlier pages left unsaved (leaving.ts), as if it had been saved in time.
import { readHistory } from '../../editing/keptHistory';
import { openDocument } from '../../editing/openProject';
import type { Project } from '../../model/project';
import type { LeavingNotes } from './leaving';
import type { ProjectStorage } from './storage';

/**
 * Saves what earlier pages left unsaved. If the project has been changed elsewhere since, the unsaved state becomes a copy; if
 * it has been removed, or was saved after all, the note is dropped. `copyId` makes the id of a copy.
 */
export async function keepLeft(
  storage: ProjectStorage,
  notes: LeavingNotes,
  copyId: (id: string) => string,
): Promise<void> {
  for (const { document, revision, history: steps } of notes.takeAll()) {
    const history = readHistory(steps);
    const left = openDocument(document);
    if (!left.ok) continue;
    const saved = await storage.save(left.value, revision, history);
    if (saved.ok || saved.problems[0]?.code === 'removed-elsewhere') continue;
    if (saved.problems[0]?.code !== 'changed-elsewhere') {
      // For want of room, or for a passing trouble: the note waits for the next visit.
      notes.leave(left.value, revision, history);
      continue;
    }
    const kept = await storage.load(left.value.id);
    if (kept.ok && sameText(kept.value.project, left.value)) continue;
    const name = `${left.value.name.slice(0, 100)} (left unsaved)`;
    await storage.save({ ...left.value, id: copyId(left.value.id), name }, 0, history);
  }
}

function sameText(one: Project, other: Project): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
