// Defines a finding: one thing about the top that is worth a look, with its number, its words and its marks.
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
  | { readonly kind: 'pool'; readonly outline: Outline }
  /** Where something weighs, in quilt inches, and the middle it is measured from. */
  | { readonly kind: 'centre'; readonly of: CentreOf; readonly at: Point; readonly middle: Point }
  /** A part of the top that is shown while the rest is dimmed. Quilt inches; only on screen, in no picture. */
  | { readonly kind: 'light'; readonly outline: Outline };

export type CentreOf = 'light' | 'warmth' | 'fabric';

/** The number behind a finding and what it counts. */
export interface Measure {
  readonly value: number;
  readonly unit: 'in' | 'L*' | 'ΔE' | 'Moran I' | 'ratio' | 'blocks' | 'warmth';
}

/**
 * Kinds of clash. rim: neighbouring wedges with the cloth on both rims · radial: further in along the seam between two wedges ·
 * facing: block edge to block edge, straight or across sashing · setting: a rim against corner triangle, sashing, border,
 * plain square or setting triangle.
 */
export const CLASH_KINDS = ['rim', 'radial', 'facing', 'setting'] as const;
export type ClashKind = (typeof CLASH_KINDS)[number];

/** What a finding can be about: a clash or several told together, or something seen over the whole top. */
export type FindingKind = ClashKind | 'value-pool' | 'colour-pool' | 'fabric-spread' | 'whole-top';

export function isClashKind(kind: FindingKind): kind is ClashKind {
  return (CLASH_KINDS as readonly FindingKind[]).includes(kind);
}

export interface Finding {
  /** Stable for the same thing in the same place, so that a list keeps its selection. */
  readonly id: string;
  readonly kind: FindingKind;
  /** 0 (hardly worth saying) to 1 (seen from across the room). Findings are listed by it. */
  readonly weight: number;
  readonly measure: Measure;
  readonly words: Phrase;
  /** What was measured, with its unit and what chance or the whole would be. */
  readonly measured: Phrase;
  /** The clashes it stands for, heaviest first; none for what is seen over the whole top. */
  readonly clashes: readonly string[];
  readonly blocks: readonly BlockId[];
  readonly fabrics: readonly FabricId[];
  readonly marks: readonly Mark[];
}
