// What every job on a photograph has: the photograph it is about, how far it is, and what comes of it.
import type { Phrase } from '../../model/phrase';
import type { Result } from '../../model/result';

/** A photograph as it is sent: its bytes, or null where the worker has it already. Keys never repeat on a page. */
export interface SentPhoto {
  readonly key: number;
  readonly bytes: Uint8Array<ArrayBuffer> | null;
}

/** What the worker is doing, and the share of it; null where that is not known. */
export interface PhotoProgress {
  readonly doing: Phrase;
  readonly share: number | null;
}

/** A job on a photograph, as the protocol of workers has it. */
export interface Job<Ask, Value> {
  readonly ask: { readonly photo: SentPhoto } & Ask;
  readonly progress: PhotoProgress;
  readonly answer: Result<Value>;
}
