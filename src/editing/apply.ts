// Makes one change to a project or refuses it: runs moves and a recipe by Immer, checks the result, and returns patches with the
// words for undo. A preview comes through here too, so that it shows exactly what accepting gives.
import { enablePatches, type Patch, produceWithPatches } from 'immer';
import { checkWedges } from '../cutting/wedges/ledger';
import { checkReferences } from '../model/check';
import { type Move, movedIfFree } from '../model/moves';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Problem } from '../model/result';

enablePatches();

/**
 * What a person does to the project: its words ("turn block 4") and what is done. One that is all moves is plain data, which
 * can be sent and kept.
 */
export interface Command {
  readonly label: Phrase;
  /** Steps of one sliding control share a name here and are undone together. */
  readonly slide?: string;
  /** Carried out first, in order, each of them only if nothing is in its way as things stand by then. */
  readonly moves?: readonly Move[];
  /** Changes the draft in place, after the moves. It may throw a Refusal; anything else thrown is a broken invariant. */
  readonly change?: (draft: Project) => void;
}

/** A command of moves, and perhaps of more. */
export interface Rearrangement extends Command {
  readonly moves: readonly Move[];
}

/** Thrown by a command that cannot be carried out; carries the sentence for the person. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(code: string, path: string, message: Phrase) {
    super(message.say);
    this.name = 'Refusal';
    this.problem = { code, path, message };
  }
}

export interface Change {
  readonly label: Phrase;
  readonly slide?: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
}

export type Outcome =
  | { readonly ok: true; readonly project: Project; readonly change: Change }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Runs a command on a project. The project passed in is never altered; a change that would leave a broken reference or
 * more wedges used than cut is refused with the reason.
 */
export function apply(project: Project, command: Command): Outcome {
  try {
    const after = rearranged(project, command.moves ?? []);
    const [mid, moving, movingBack] = produceWithPatches(project, (draft) => {
      lay(draft as Project, project, after);
    });
    const [next, changing, changingBack] = produceWithPatches(mid, (draft) => {
      command.change?.(draft as Project);
    });
    const patches = [...moving, ...changing];
    const inverse = [...changingBack, ...movingBack];
    const problems = patches.length === 0 ? [] : [...checkReferences(next), ...checkWedges(next)];
    if (problems.length > 0) return { ok: false, problems };
    const { label, slide } = command;
    return {
      ok: true,
      project: next,
      change: { label, ...(slide === undefined ? {} : { slide }), patches, inverse },
    };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, problems: [error.problem] };
    throw error;
  }
}

function rearranged(project: Project, moves: readonly Move[]): Project {
  if (moves.length === 0) return project;
  const { project: after, reason } = movedIfFree(project, moves);
  if (reason) throw new Refusal('held', 'wall', reason);
  return after;
}

/**
 * Lays the blocks, the wall and the sets of `after` into the draft of `before`, only those that are not the same any more. Moves
 * are carried out on plain lists: on a draft the many look-ups of a wall of 400 blocks take thirty times as long (measured).
 */
function lay(draft: Project, before: Project, after: Project): void {
  if (after === before) return;
  layIn(draft.blocks, before.blocks, after.blocks);
  layIn(draft.wall.cells, before.wall.cells, after.wall.cells);
  layIn(draft.stripSets, before.stripSets, after.stripSets);
}

function layIn<T>(draft: T[], before: readonly T[], after: readonly T[]): void {
  after.forEach((one, at) => {
    if (one !== before[at] && JSON.stringify(one) !== JSON.stringify(before[at])) draft[at] = one;
  });
}
