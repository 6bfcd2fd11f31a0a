// What the jobs on photographs work with: the browser's means, the worker's messages, and the pixels of the photograph asked about.
import type { Result } from '../../model/result';
import type { Pixels } from '../../photo/pixels/pixels';
import type { AtWork } from '../workers/protocol';
import type { decodePhoto, encodedPicture } from './decode';
import type { PhotoProgress, SentPhoto } from './sentPhoto';

export type Work = AtWork<PhotoProgress>;

/** The browser's means; tests bring their own. */
export interface Codec {
  readonly decode: typeof decodePhoto;
  readonly encode: typeof encodedPicture;
}

/** A job on the pixels of the photograph that is asked about. */
export type OnPixels = <Ask extends { readonly photo: SentPhoto }, Value>(
  job: (pixels: Pixels, ask: Ask, work: Work) => Result<Value> | Promise<Result<Value>>,
) => (ask: Ask, work: Work) => Promise<Result<Value>>;
