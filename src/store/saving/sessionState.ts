// What the screen shows of the session: saving, problems, the saved quilts.
import type { Phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import type { AutosaveState } from '../storage/autosave';
import type { DamagedProject } from '../storage/storage';
import type { ProjectSummary } from '../storage/summary';

export interface SessionState {
  readonly saving: AutosaveState;
  /** The problem shown beside the project's name; null when all is well. */
  readonly problem: Problem | null;
  readonly projects: readonly ProjectSummary[];
  /** What is to be told of the open quilt's pictures: those that are missing or were refused. */
  readonly remarks: readonly Phrase[];
  /** The damaged quilt that could not be opened last, with its problems; null for none. */
  readonly damaged: (DamagedProject & { readonly problems: readonly Problem[] }) | null;
  /** The copy that this window's state is saved as while another window has changed the open quilt too; null while none has. */
  readonly conflict: { readonly copy: string } | null;
  /** A file that is being read; null while none is. */
  readonly reading: { readonly stop: () => void } | null;
  /** What is to be told once of the saved quilts. */
  readonly toTell: readonly Phrase[];
  /** How long what is saved lasts, where that is to be told; null where it lasts, or nobody knows yet. */
  readonly lasting: { readonly room: number | null; readonly removed: boolean } | null;
}
