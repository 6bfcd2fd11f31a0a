// Keeps forms that are filled in part. They stay while the person is at another step, and are no part of the project or its
// history.
import type { WedgesCounted } from '../editing/entering/enterBlocks';
import type { Entry } from '../editing/entering/entry';
import type { Block, ClothOnHand, Fabric, FabricId } from '../model/project';
import type { Inches } from '../model/units';

/** A new row of cloth before its fabric is chosen. */
type Of<Row extends { readonly fabric: FabricId }> = Omit<Row, 'id' | 'fabric'> & {
  readonly fabric: FabricId | null;
};

export interface Draft<Values> {
  /** Whether the form is open. */
  readonly open: boolean;
  readonly values: Values;
}

export const WAYS_TO_BEGIN = ['strips', 'fabric', 'sewn', 'size', 'roll', 'example'] as const;
export type WayToBegin = (typeof WAYS_TO_BEGIN)[number];

/** What an empty quilt begins with, as far as it is filled in. */
export interface BeginningForm {
  /** The way that is open; null: none. */
  readonly way: WayToBegin | null;
  /** The step whose own work takes the place of the ways, where it was chosen. */
  readonly aside: 'fabrics' | 'blocks' | null;
  readonly fabrics: number;
  /** Strips of each fabric, and their length. */
  readonly strips: readonly { readonly width: Inches; readonly count: number }[];
  readonly length: Inches;
  /** Pieces of each fabric. */
  readonly cloth: Pick<ClothOnHand, 'kind' | 'depth' | 'stripLength' | 'count'>;
  readonly size: { readonly width: Inches; readonly height: Inches };
  readonly roll: { readonly strips: number; readonly width: Inches; readonly fabrics: number };
}

/** Blocks that are being entered as they are sewn. */
export interface EnteringValues {
  /** The block at hand; null before its first key. */
  readonly entry: Entry | null;
  /** How far the blocks are. */
  readonly progress: Block['progress'];
  /** Counts that were corrected for the block at hand. */
  readonly counts: readonly WedgesCounted[];
  /** The list of blocks as it is typed. */
  readonly text: string;
  /** The sets to stand in for those of the blocks. */
  readonly standing: { readonly sets: number; readonly strips: number; readonly fabrics: number };
}

export interface Drafts {
  /** What was changed in it; the rest is as usual in the person's unit. */
  readonly beginning?: Draft<Partial<BeginningForm>>;
  readonly fabric?: Draft<Omit<Fabric, 'id'>>;
  readonly cloth?: Draft<Of<ClothOnHand>>;
  readonly entering?: Draft<EnteringValues>;
}

export type DraftOf<K extends keyof Drafts> = NonNullable<Drafts[K]>;
