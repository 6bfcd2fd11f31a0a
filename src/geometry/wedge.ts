// The wedge as cut and as finished, for any N: its measures, the block it makes, and the seam that a measured block was sewn
// with. Formulas follow from plane geometry (an isosceles triangle of apex angle 360/N with seam allowances).
import { type Phrase, phrase } from '../model/phrase';
import type { WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import { sizeWithSeams } from './allowance';

/** k = tan(180°/N): half the base for each inch of height. */
export function slope(perBlock: number): number {
  return Math.tan(Math.PI / perBlock);
}

/** Distance from the true apex of the cut wedge to its trimmed tip: t = s / sin a − s, inches. */
export function tipTrim(wedge: WedgePlan): Inches {
  return wedge.seam / Math.sin(Math.PI / wedge.perBlock) - wedge.seam;
}

/** The wedge as cut: its base and the width of its trimmed tip, inches. */
export function cutWedge(wedge: WedgePlan): { base: Inches; tip: Inches } {
  const k = slope(wedge.perBlock);
  const t = tipTrim(wedge);
  return { base: 2 * (wedge.cutHeight + t) * k, tip: 2 * t * k };
}

/** Finished apothem of the block (middle to rim): A = h + t − sa / sin a − so, inches. May be ≤ 0 for a bad plan. */
export function apothem(wedge: WedgePlan): Inches {
  const joined = wedge.assemblySeam / Math.sin(Math.PI / wedge.perBlock);
  return wedge.cutHeight + tipTrim(wedge) - joined - wedge.outerSeam;
}

/** Finished length of one rim: 2Ak, inches. */
export function rimLength(wedge: WedgePlan): Inches {
  return 2 * apothem(wedge) * slope(wedge.perBlock);
}

/**
 * The finished block on the wall, its setting pieces included: 2A square where N is divisible by 4; else as wide as it is
 * across its corners (2A / cos a) and 2A high. Inches.
 */
export function finishedBlock(wedge: WedgePlan): { width: Inches; height: Inches } {
  const height = 2 * apothem(wedge);
  return { width: wedge.perBlock % 4 === 0 ? height : height / Math.cos(Math.PI / wedge.perBlock), height };
}

/** The block before it is sewn into the top: one outer seam more on every side. Inches. */
export function unfinishedBlock(wedge: WedgePlan): { width: Inches; height: Inches } {
  return sizeWithSeams(finishedBlock(wedge), wedge.outerSeam);
}

/** The assembly seam of an unfinished block that measures m (`flatToFlat`) from flat to flat: sa = (h + t − so − (m − 2so)/2) sin a. */
export function seamFromMeasure(wedge: WedgePlan, flatToFlat: Inches): Inches {
  const finishedApothem = (flatToFlat - 2 * wedge.outerSeam) / 2;
  const reach = wedge.cutHeight + tipTrim(wedge) - wedge.outerSeam - finishedApothem;
  return reach * Math.sin(Math.PI / wedge.perBlock);
}

/** Distance of the trimmed tip from the block's middle, inches; above 0 it leaves a hole in the middle. */
export function tipRadius(wedge: WedgePlan): Inches {
  return apothem(wedge) + wedge.outerSeam - wedge.cutHeight;
}

/** Why no block can be sewn from this plan, or null when one can. */
export function wedgeProblem(wedge: WedgePlan): Phrase | null {
  if (apothem(wedge) < 0.5) {
    return phrase(
      'With a wedge cut {height} high these seams leave no block. Cut the wedge taller or sew narrower seams.',
      {
        height: { inches: wedge.cutHeight },
      },
    );
  }
  if (tipRadius(wedge) > 1e-9) {
    const least = wedge.seam - wedge.seam * Math.sin(Math.PI / wedge.perBlock);
    return phrase(
      'The template is trimmed for a {seam} seam, so a seam under {least} between the wedges leaves a hole in the middle.',
      {
        seam: { seam: wedge.seam },
        least: { seam: least },
      },
    );
  }
  return null;
}

/** Finished seam between two wedges, from the corner of the rim to the middle, inches. */
export function seamLength(wedge: WedgePlan): Inches {
  return apothem(wedge) / Math.cos(Math.PI / wedge.perBlock);
}
