// One row of what has to be cut, before anyone thinks of cloth: so many pieces of one size from one fabric, with the
// working behind the size. New settings add rows; nothing after this file has to know them.
import { downToStep, upToStep } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { FabricId } from '../../model/project';
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit } from '../../model/units';

/** Where in the order of work a piece is sewn. */
export const CUTTING_STEPS = [
  'sets',
  'corners',
  'setting',
  'sashing',
  'borders',
  'backing',
  'binding',
] as const;
export type CuttingStep = (typeof CUTTING_STEPS)[number];

/** Words for each step. */
export const STEP_NAMES: Readonly<Record<CuttingStep, Phrase>> = {
  sets: phrase('Strip sets'),
  corners: phrase('Corners of the blocks'),
  setting: phrase('Setting'),
  sashing: phrase('Sashing'),
  borders: phrase('Borders'),
  backing: phrase('Backing'),
  binding: phrase('Binding'),
};

/**
 * What becomes of the rectangle once it is cut: it stays as it is, or is cut once or twice on its diagonals. A `run` is a
 * length of strip that may be joined from any number of strips (binding); a `length` lies along the cloth and is never joined
 * (backing).
 */
export type PieceShape = 'rectangle' | 'halved' | 'quartered' | 'run' | 'length';

export interface NeededPiece {
  readonly step: CuttingStep;
  readonly fabric: FabricId;
  readonly what: Phrase;
  /** The letter its pieces go by in steps and drawings; of what lies between and round the blocks, inside the borders. */
  readonly letter?: string;
  /** A row of a pieced border, whose pieces are written down in the order they are sewn. */
  readonly inPiecedBorder?: true;
  readonly shape: PieceShape;
  /** Across and down as it stands in the quilt, as cut, inches. Of a run: the strip's cut width, and its whole length. Of a length: across the cloth, and along it. */
  readonly width: Inches;
  readonly height: Inches;
  /** Rectangles to cut (not triangles). */
  readonly count: number;
  /** Of those, how many lie on the table already cut. */
  readonly onHand: number;
  /** In one-way cloth its height has to run along the cloth. False where it is turned every way anyway. */
  readonly upright: boolean;
  /** How size and number came about. */
  readonly why: readonly Phrase[];
}

/**
 * A size to cut: up to the next sixteenth of an inch or millimetre, so that what is read off the list is what was reckoned
 * with. Sizes already on the ruler stay.
 */
export function onRuler(inches: Inches, unit: LengthUnit): Inches {
  return upToStep(inches, rulerStep(unit));
}

/** A size that cloth gives: down to the last sixteenth of an inch or millimetre, so that no more is reckoned with than is there. */
export function withinRuler(inches: Inches, unit: LengthUnit): Inches {
  return downToStep(inches, rulerStep(unit));
}

function rulerStep(unit: LengthUnit): Inches {
  return unit === 'in' ? 1 / 16 : 0.1 / CENTIMETRES_PER_INCH;
}

/** A square for triangles: up to the next eighth of an inch or half centimetre, as the charts give them. */
export function squareOnRuler(inches: Inches, unit: LengthUnit): Inches {
  return upToStep(inches, unit === 'in' ? 1 / 8 : 0.5 / CENTIMETRES_PER_INCH);
}
