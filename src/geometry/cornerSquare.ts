// The square that is halved on its diagonal for two corner triangles of the square block (N = 8).
import type { WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { cornerLeg } from './block';

export interface CornerSquare {
  /** Side that just fits: leg + so (2 + √2), plane geometry. With a 1/4" seam that is the leg and just under 7/8". */
  readonly exact: Inches;
  /** The exact side rounded up to the next eighth. */
  readonly fits: Inches;
  /** At least half an inch larger, to the next half inch, trimmed after sewing (common practice, no source). */
  readonly comfortable: Inches;
}

/** The square to cut for two corner triangles. */
export function cornerSquare(wedge: WedgePlan): CornerSquare {
  const exact = cornerLeg(wedge) + wedge.outerSeam * (2 + Math.SQRT2);
  return { exact, fits: roundedUp(exact, 1 / 8), comfortable: roundedUp(exact + 0.5, 1 / 2) };
}

function roundedUp(inches: Inches, to: Inches): Inches {
  return Math.ceil(inches / to - 1e-9) * to;
}
