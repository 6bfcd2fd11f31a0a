// The messages of the worker that reads project files; workers/protocol.ts has the protocol.
import type { Phrase } from '../../model/phrase';
import type { PictureId, StoredPicture } from '../../model/picture/picture';
import type { Project } from '../../model/project';
import type { Problem, Result } from '../../model/result';

/** A file as it was read, with its pictures as a list; or why it is none. */
export type FileRead =
  | {
      readonly ok: true;
      readonly value: Project;
      readonly pictures: readonly { readonly id: PictureId; readonly picture: StoredPicture }[];
      readonly remarks: readonly Phrase[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface ReadingJobs {
  /** A document from the browser's storage. */
  readonly check: { readonly ask: object; readonly progress: null; readonly answer: Result<Project> };
  readonly read: { readonly ask: Uint8Array; readonly progress: null; readonly answer: FileRead };
}
