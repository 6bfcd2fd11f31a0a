// Runs a command on a project: makes the change, checks the result, and returns patches for undo; or refuses with a reason.
// Previews on the wall run through here too, so that they show exactly what accepting them gives.
import { enablePatches, type Patch, produceWithPatches } from 'immer';
import { checkWedges } from '../cutting/wedges/ledger';
import { checkPictured } from '../geometry/asPieced';
import { checkPieceCount } from '../geometry/pieceCount';
import { checkReferences } from '../model/check';
import { type Move, movedIfFree } from '../model/moves';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Problem } from '../model/result';

enablePatches();

/**
 * One act of a person on the project, with its label ("turn block 4"). A command of moves alone is plain data, which can be
 * sent to a worker and stored.
 */
export interface Command {
  readonly label: Phrase;
  /** Name of a sliding control; its steps are undone together. */
  readonly slide?: string;
  /** Carried out first, in order. The command is refused if one of them is locked when its turn comes. */
  readonly moves?: readonly Move[];
  /** Changes the draft in place, after the moves. It may throw a Refusal; anything else thrown is a broken invariant. */
  readonly change?: (draft: Project) => void;
}

/** A command with moves, and perhaps with a change as well. */
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
  /** Read back from what an earlier visit kept, and so perhaps damaged. */
  readonly kept?: true;
}

export type Outcome =
  | { readonly ok: true; readonly project: Project; readonly change: Change }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Runs a command on a project, which is never mutated. Refuses, with the reason, a change that would break a reference or use
 * more wedges than are cut.
 */
export function apply(project: Project, command: Command): Outcome {
  try {
    const after = rearranged(project, command.moves ?? []);
    const [mid, moving, movingBack] = produceWithPatches(project, (draft) => {
      writeMoved(draft as Project, project, after);
    });
    const [next, changing, changingBack] = produceWithPatches(mid, (draft) => {
      command.change?.(draft as Project);
    });
    const patches = [...moving, ...changing];
    const inverse = [...changingBack, ...movingBack];
    const problems = patches.length === 0 ? [] : problemsOf(next);
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

function problemsOf(project: Project): Problem[] {
  return [
    ...checkReferences(project),
    ...checkWedges(project),
    ...checkPieceCount(project),
    ...checkPictured(project),
  ];
}

function rearranged(project: Project, moves: readonly Move[]): Project {
  if (moves.length === 0) return project;
  const { project: after, reason } = movedIfFree(project, moves);
  if (reason) throw new Refusal('held', 'wall', reason);
  return after;
}

/**
 * Writes those blocks, cells and sets of `after` into the draft of `before` that are not equal any more. Moves are carried out
 * on plain lists, because look-ups in a draft of a wall of 400 blocks take thirty times as long (measured).
 */
function writeMoved(draft: Project, before: Project, after: Project): void {
  if (after === before) return;
  writeUnequal(draft.blocks, before.blocks, after.blocks);
  writeUnequal(draft.wall.cells, before.wall.cells, after.wall.cells);
  writeUnequal(draft.stripSets, before.stripSets, after.stripSets);
}

function writeUnequal<T>(draft: T[], before: readonly T[], after: readonly T[]): void {
  after.forEach((one, at) => {
    if (one !== before[at] && JSON.stringify(one) !== JSON.stringify(before[at])) draft[at] = one;
  });
}
