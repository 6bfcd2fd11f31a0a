// Undo and redo, as lists of changes with their patches and labels. Immutable: every function returns a new history.
import { applyPatches, enablePatches } from 'immer';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Change } from './apply';

enablePatches();

export interface History {
  /** Oldest first. */
  readonly done: readonly Change[];
  /** The next change to redo is the last. */
  readonly undone: readonly Change[];
}

export const EMPTY_HISTORY: History = { done: [], undone: [] };
const MOST_STEPS = 1_000;

/**
 * Adds a change and forgets the undone ones. A change without patches is not recorded; a change of the same slide is joined
 * to the last one.
 */
export function record(history: History, change: Change): History {
  if (change.patches.length === 0) return history;
  const last = history.done.at(-1);
  if (last && change.slide !== undefined && last.slide === change.slide && history.undone.length === 0) {
    const joined = {
      ...change,
      patches: [...last.patches, ...change.patches],
      inverse: [...change.inverse, ...last.inverse],
    };
    return { done: [...history.done.slice(0, -1), joined], undone: [] };
  }
  return { done: [...history.done.slice(1 - MOST_STEPS), change], undone: [] };
}

/** Undoes the last change. Null when there is none. */
export function undo(project: Project, history: History): { project: Project; history: History } | null {
  const last = history.done.at(-1);
  if (!last) return null;
  return {
    project: applyPatches(project, last.inverse as never),
    history: { done: history.done.slice(0, -1), undone: [...history.undone, last] },
  };
}

/** Makes the change undone last again. Null when there is none. */
export function redo(project: Project, history: History): { project: Project; history: History } | null {
  const next = history.undone.at(-1);
  if (!next) return null;
  return {
    project: applyPatches(project, next.patches as never),
    history: { done: [...history.done, next], undone: history.undone.slice(0, -1) },
  };
}

/** The labels of the next undo and redo; null where there is none. */
export function nextLabels(history: History): { undo: Phrase | null; redo: Phrase | null } {
  return { undo: history.done.at(-1)?.label ?? null, redo: history.undone.at(-1)?.label ?? null };
}
