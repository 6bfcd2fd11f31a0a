// Rules for all lengths: when two are the same, rounding to a step, how many pieces a length gives, when a strip is too narrow,
// and the usual sizes in either unit. units.ts owns units and their words, geometry/stripSet.ts the sewn strips.
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit } from './units';

/** Lengths that differ by no more than this are equal: adding and halving fractions leaves rounding errors of this order. */
export const HAIR: Inches = 1e-9;

/** A length that misses a step by no more than this part of the step counts as on it. */
const PART_OF_STEP = 1e-6;

/** The length rounded up to a whole step, inches; a length on a step does not change. */
export function upToStep(inches: Inches, step: Inches): Inches {
  return Math.ceil(inches / step - PART_OF_STEP) * step;
}

/** The length rounded down to a whole step, inches; a length on a step does not change. */
export function downToStep(inches: Inches, step: Inches): Inches {
  return Math.floor(inches / step + PART_OF_STEP) * step;
}

/** The sum of lengths or counts; 0 for none. */
export function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0);
}

/** How many pieces of `size` (above 0) a length gives; negative for a negative length. */
export function piecesIn(length: Inches, size: Inches): number {
  return Math.floor((length + HAIR) / size);
}

/** The least n with n·length − (n − 1)·loss ≥ run: pieces that span a run when each join takes `loss` (less than `length`). */
export function joinedPieces(run: Inches, length: Inches, loss: Inches): number {
  return run <= length + HAIR ? 1 : Math.ceil((run - loss) / (length - loss) - HAIR);
}

/** Whether a strip or piece of this cut width vanishes in its two seams: w ≤ 2s. */
export function isTooNarrow(width: Inches, seam: Inches): boolean {
  return width <= 2 * seam + HAIR;
}

/** The least finished width of a piece in a pieced border: strips are cut in 64ths. */
const LEAST_SHOWN: Inches = 1 / 64;

/** The least cut width of a piece in a pieced border sewn with this seam. */
export function leastKeyWidth(seam: Inches): Inches {
  return 2 * seam + LEAST_SHOWN;
}

/** Whether a piece of this cut width is too narrow for a pieced border: less than 1/64" of it would show. */
export function isKeyTooNarrow(width: Inches, seam: Inches): boolean {
  return width < leastKeyWidth(seam) - HAIR;
}

/** The sizes makers start from, inches. Each is a round number of its unit: nobody who cuts by centimetres cuts 3.81. */
export interface UsualSizes {
  /** Cut height of a wedge, and the seam it is sewn with everywhere. */
  readonly cutHeight: Inches;
  readonly seam: Inches;
  /** What a fabric gives between its selvages, and the length of strips cut across it. */
  readonly usableWidth: Inches;
  /** Cut widths of narrow, middle and wide strips. */
  readonly strips: readonly [narrow: Inches, middle: Inches, wide: Inches];
  /** A strip of a roll: its width, its length, and the wider part when it is split in two. */
  readonly precut: { readonly width: Inches; readonly length: Inches; readonly split: Inches };
  /** Finished widths of sashing, the usual one and those worth trying. */
  readonly sashing: Inches;
  readonly sashings: readonly Inches[];
  /** Finished width of a border. Widths between `least` and the widest are tried in steps. */
  readonly border: Inches;
  readonly borders: { readonly least: Inches; readonly step: Inches };
  /** Cut widths of a double binding, and the first one of another width. */
  readonly binding: { readonly narrow: Inches; readonly wide: Inches; readonly other: Inches };
  readonly bindingExtra: Inches;
  /** Spare length at each end of a mitred border. */
  readonly mitreSpare: Inches;
  /** Cut off to straighten the edge of a fabric. */
  readonly straighten: Inches;
  /** How far the backing reaches beyond the top: for a domestic machine least and most, for long-arm quilting; its seam. */
  readonly overhang: { readonly least: Inches; readonly most: Inches; readonly longArm: Inches };
  readonly backingSeam: Inches;
  /** Fabric on a full bolt. */
  readonly bolt: Inches;
  /** Short sides of pieces on hand. */
  readonly yardage: Inches;
  readonly remnant: Inches;
  /** A top to begin with. */
  readonly top: { readonly width: Inches; readonly height: Inches };
  /** From how far a design wall is looked at. */
  readonly viewing: Inches;
  /** What a comfortable square is larger than its need, at least, and the step it is rounded up to. */
  readonly comfort: { readonly room: Inches; readonly step: Inches };
  /** Widths of strips and borders that are worked out come on this step. */
  readonly widthStep: Inches;
}

const cm = (centimetres: number): Inches => centimetres / CENTIMETRES_PER_INCH;

/** Usual sizes by the unit (common practice, no source). */
export const USUAL: Readonly<Record<LengthUnit, UsualSizes>> = {
  in: {
    cutHeight: 7.5,
    seam: 0.25,
    usableWidth: 40,
    strips: [1, 1.5, 2],
    precut: { width: 2.5, length: 42, split: 1.5 },
    sashing: 1.5,
    sashings: [1, 1.5, 2, 2.5, 3],
    border: 3,
    borders: { least: 1, step: 0.5 },
    binding: { narrow: 2.25, wide: 2.5, other: 2.375 },
    bindingExtra: 12,
    mitreSpare: 2,
    straighten: 1,
    overhang: { least: 2, most: 3, longArm: 4 },
    backingSeam: 0.5,
    bolt: 540,
    yardage: 18,
    remnant: 9,
    top: { width: 42, height: 56 },
    viewing: 120,
    comfort: { room: 0.5, step: 0.5 },
    widthStep: 0.25,
  },
  cm: {
    cutHeight: cm(20),
    seam: cm(0.75),
    // Fabric 110 cm wide.
    usableWidth: cm(105),
    strips: [cm(2.5), cm(4), cm(5)],
    precut: { width: cm(6.5), length: cm(110), split: cm(4) },
    sashing: cm(4),
    sashings: [cm(2.5), cm(4), cm(5), cm(6), cm(8)],
    border: cm(8),
    borders: { least: cm(2), step: cm(1) },
    binding: { narrow: cm(6), wide: cm(6.5), other: cm(7) },
    bindingExtra: cm(30),
    mitreSpare: cm(5),
    straighten: cm(2.5),
    overhang: { least: cm(5), most: cm(8), longArm: cm(10) },
    backingSeam: cm(1.5),
    bolt: cm(1500),
    yardage: cm(50),
    remnant: cm(25),
    top: { width: cm(100), height: cm(140) },
    viewing: cm(300),
    comfort: { room: cm(1), step: cm(1) },
    widthStep: cm(0.5),
  },
};
