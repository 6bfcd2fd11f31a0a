// The messages of the worker that reads photographs; workers/protocol.ts has the protocol. Every job names the photograph it is about.
import type { StoredPicture } from '../../model/picture/picture';
import type { WedgePlan } from '../../model/project';
import type { StripThere } from '../../photo/block/strip';
import type { FabricReading, FabricWish } from '../../photo/fabric/readFabric';
import type { Spot } from '../../photo/light/patch';
import type { WhiteProposal } from '../../photo/light/propose';
import type { Frame } from '../../photo/pixels/frame';
import type { BlockJobs } from './blockJobs';
import type { Job } from './sentPhoto';

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
export interface FabricRead extends Omit<FabricReading, 'tile'> {
  readonly tile: StoredPicture;
}

export interface FabricFound extends FabricRead {
  /** What is inside the frame as photographed, and with the cast taken out. */
  readonly before: StoredPicture;
  readonly after: StoredPicture;
}

export interface PhotoJobs extends BlockJobs {
  readonly open: Job<{ readonly longest: number }, OpenedPhoto>;
  /** The light of a spot that was tapped. */
  readonly spot: Job<{ readonly frame: Frame }, Spot>;
  /** The frame of one fabric of many, by a tap on it. */
  readonly tapped: Job<{ readonly x: number; readonly y: number; readonly seed: number }, Frame>;
  readonly fabric: Job<{ readonly wish: FabricAsk }, FabricFound>;
  /** The fabric of one strip of a block. */
  readonly strip: Job<{ readonly strip: StripThere; readonly wedge: WedgePlan }, FabricRead>;
}
