// What a finding is: one thing about the top worth a look, with the number behind it, its words and its marks.
import type { Outline, Point } from '../geometry/point';
import type { Phrase } from '../model/phrase';
import type { BlockId, FabricId } from '../model/project';
import type { Inches } from '../model/units';

/** A mark on the drawing. Seams inside a block are in the block's own inches (before it is turned), others in quilt inches. */
export type Mark =
  | {
      readonly kind: 'seam';
      readonly block: BlockId | null;
      readonly from: Point;
      readonly to: Point;
      readonly inches: Inches;
    }
  | { readonly kind: 'pool'; readonly outline: Outline };

/** The number behind a finding and what it counts. */
export interface Measure {
  readonly value: number;
  readonly unit: 'in' | 'L*' | 'ΔE' | 'Moran I' | 'ratio' | 'blocks' | 'warmth';
}

export interface Finding {
  /** Stable for the same thing in the same place, so that a list keeps its selection. */
  readonly id: string;
  readonly kind: string;
  /** 0 (hardly worth saying) to 1 (seen from across the room). Findings are listed by it. */
  readonly weight: number;
  readonly measure: Measure;
  readonly words: Phrase;
  readonly blocks: readonly BlockId[];
  readonly fabrics: readonly FabricId[];
  readonly marks: readonly Mark[];
}
