// One change to a project, made or refused: a recipe run by Immer, checked, and kept as patches with the words for undo.
import { enablePatches, type Patch, produceWithPatches } from 'immer';
import { checkWedges } from '../cutting/wedges/ledger';
import { checkReferences } from '../model/check';
import type { Phrase } from '../model/phrase';
import type { Project } from '../model/project';
import type { Problem } from '../model/result';

enablePatches();

/** What a person does to the project, as data: its words ("turn block 4") and the recipe that does it to a draft. */
export interface Command {
  readonly label: Phrase;
  /** Steps of one sliding control share a name here and are undone together. */
  readonly slide?: string;
  /** Changes the draft in place. It may throw a Refusal; anything else thrown is a broken invariant. */
  readonly change: (draft: Project) => void;
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
    const [next, patches, inverse] = produceWithPatches(project, (draft) => {
      command.change(draft as Project);
    });
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
