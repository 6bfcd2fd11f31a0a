// Undo and redo as lists of patches with their words. Immutable: every function returns a new history.
import { applyPatches, enablePatches } from 'immer';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Change } from './apply';

enablePatches();

export interface History {
  /** Oldest first. */
  readonly done: readonly Change[];
  /** Next to redo last. */
  readonly undone: readonly Change[];
}

export const EMPTY_HISTORY: History = { done: [], undone: [] };
const MOST_STEPS = 1_000;

/** Adds a change; what had been undone is gone. One without patches is not recorded; one of the same slide joins the last. */
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

/** Takes the last change back. Null when there is none. */
export function undo(project: Project, history: History): { project: Project; history: History } | null {
  const last = history.done.at(-1);
  if (!last) return null;
  return {
    project: applyPatches(project, last.inverse as never),
    history: { done: history.done.slice(0, -1), undone: [...history.undone, last] },
  };
}

/** Makes the last change taken back again. Null when there is none. */
export function redo(project: Project, history: History): { project: Project; history: History } | null {
  const next = history.undone.at(-1);
  if (!next) return null;
  return {
    project: applyPatches(project, next.patches as never),
    history: { done: [...history.done, next], undone: history.undone.slice(0, -1) },
  };
}

/** The words of the next undo and redo. */
export function nextLabels(history: History): { undo: Phrase | null; redo: Phrase | null } {
  return { undo: history.done.at(-1)?.label ?? null, redo: history.undone.at(-1)?.label ?? null };
}
