// The messages of the worker that reads photographs; workers/protocol.ts has the protocol. Every job names the photograph it is about.
import type { StoredPicture } from '../../model/picture/picture';
import type { Result } from '../../model/result';
import type { FabricReading, FabricWish } from '../../photo/fabric/readFabric';
import type { Spot } from '../../photo/light/patch';
import type { WhiteProposal } from '../../photo/light/propose';
import type { Frame } from '../../photo/pixels/frame';
import type { BlockJobs } from './blockJobs';
import type { About, PhotoProgress } from './sentPhoto';

/** A photograph ready for work. Points and frames are in its pixels, upright as it was taken. */
export interface OpenedPhoto {
  readonly width: number;
  readonly height: number;
  /** The same, small, for the screen. */
  readonly shown: StoredPicture;
  readonly white: WhiteProposal | null;
}

/** What is to be read of a fabric. `white`: the frame of what was tapped as white, for light that is uneven across the picture. */
export type FabricAsk = Omit<FabricWish, 'uneven'> & { readonly white: Frame | null };

/** A fabric as it was read: pictures are encoded, and hold nothing of the camera. */
export interface FabricFound extends Omit<FabricReading, 'tile'> {
  readonly tile: StoredPicture;
  /** What is inside the frame as photographed, and with the cast taken out. */
  readonly before: StoredPicture;
  readonly after: StoredPicture;
}

export interface PhotoJobs extends BlockJobs {
  readonly open: {
    readonly ask: About & { readonly longest: number };
    readonly progress: PhotoProgress;
    readonly answer: Result<OpenedPhoto>;
  };
  /** The light of a spot that was tapped. */
  readonly spot: {
    readonly ask: About & { readonly frame: Frame };
    readonly progress: PhotoProgress;
    readonly answer: Result<Spot>;
  };
  /** The frame of one fabric of many, by a tap on it. */
  readonly tapped: {
    readonly ask: About & { readonly x: number; readonly y: number; readonly seed: number };
    readonly progress: PhotoProgress;
    readonly answer: Result<Frame>;
  };
  readonly fabric: {
    readonly ask: About & { readonly wish: FabricAsk };
    readonly progress: PhotoProgress;
    readonly answer: Result<FabricFound>;
  };
}
