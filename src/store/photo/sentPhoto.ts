// What every job on a photograph has: the photograph it is about, and how far it is.
import type { Phrase } from '../../model/phrase';

/** A photograph as it is sent: its bytes, or null where the worker has it already. Keys never repeat on a page. */
export interface SentPhoto {
  readonly key: number;
  readonly bytes: Uint8Array<ArrayBuffer> | null;
}

/** What every job is about. */
export interface About {
  readonly photo: SentPhoto;
}

/** What the worker is doing, and the share of it; null where that is not known. */
export interface PhotoProgress {
  readonly doing: Phrase;
  readonly share: number | null;
}
