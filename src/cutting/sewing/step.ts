// What is sewn to what when the blocks are set, as plain data: pieces by their row of the cutting list, in the order they are
// sewn. Words and drawings of the pattern are made from it, and a test sews it. All seams are those round the blocks.
import type { Side } from '../../geometry/contact';
import type { SettingPiece } from '../../geometry/settingPiece';
import type { Inches } from '../../model/units';

/** A piece of the cutting list. */
export interface CutPiece {
  /** Its row of settingPieces (cutting/yardage), and the letter of that row; borders have none. */
  readonly row: number;
  readonly letter: string | null;
  /** What it becomes in the finished top. */
  readonly piece: SettingPiece;
}

/** A part of a line: a block, a piece that stays a rectangle, or a side triangle at an end. */
export type Part =
  | { readonly kind: 'block'; readonly at: number; readonly cell: number }
  | {
      readonly kind: 'piece';
      readonly at: number;
      readonly cut: CutPiece;
      /** Whether the height of the cutting list lies along the line or across it. */
      readonly height: 'along' | 'across';
    }
  | {
      readonly kind: 'triangle';
      readonly at: number;
      readonly cut: CutPiece;
      /** On which side of the row its square corner lies: of the row before, or of the row after. */
      readonly square: 'before' | 'after';
    };

/**
 * Parts sewn together one after the other. `at` counts half places along the line, so that the seam between two parts lies
 * half-way between theirs; lines are joined with seams of one place on each other.
 */
export interface Line {
  /** The row, from 1; of sashing the row it comes after, 0 before the first. */
  readonly number: number;
  readonly parts: readonly Part[];
}

export type Joined =
  | { readonly kind: 'row'; readonly line: Line }
  /** Sashing and cornerstones sewn to a line of their own. */
  | { readonly kind: 'sashing'; readonly line: Line }
  /**
   * One whole strip. Straight, it is as long as the rows. On point it reaches from the raw edge of the outermost piece of
   * sashing at one end to that at the other, in whichever of its two rows that lies further out.
   */
  | { readonly kind: 'strip'; readonly line: Line };

/** Where a setting corner goes: on an end of a row, or along the first or the last line. The middle of its long side on the middle of a part. */
export interface Corner {
  readonly cut: CutPiece;
  readonly on: { readonly row: number; readonly end: 'start' | 'end' } | 'first' | 'last';
}

export interface BorderRun {
  readonly side: Side;
  /** One strip, or the pieces of a pieced border as they follow each other clockwise; cornerstones at the ends. */
  readonly parts: readonly CutPiece[];
}

export type SewingStep =
  | { readonly does: 'rows'; readonly slanted: boolean; readonly lines: readonly Line[] }
  | { readonly does: 'sashing'; readonly slanted: boolean; readonly lines: readonly Line[] }
  | { readonly does: 'join'; readonly slanted: boolean; readonly joined: readonly Joined[] }
  | { readonly does: 'corners'; readonly corners: readonly Corner[] }
  /** Cut off on the line so far outside the outermost points of the squares of the wall, on all four sides. */
  | { readonly does: 'trim'; readonly beyond: Inches; readonly points: 'blocks' | 'plain' }
  /** In the order of `runs`, two by two; mitred: all four, then the corners. */
  | {
      readonly does: 'border';
      readonly border: number;
      readonly corners: 'butted' | 'mitred' | 'cornerstones';
      readonly runs: readonly BorderRun[];
    };
