// The assembly seam that explains a measured block, or why none does.
import { seamFromMeasure, unfinishedBlock, wedgeProblem } from '../../../geometry/wedge';
import { phrase } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import { failed, ok, type Result } from '../../../model/result';
import type { Inches } from '../../../model/units';

export interface Explained {
  readonly seam: Inches;
  /** How far the seam may be off when the block was measured to the nearest sixteenth, inches. */
  readonly within: Inches;
}

/** A seam further than this from the template's is not sewn by someone who aims at it (common practice, no source). */
const FARTHEST: Inches = 3 / 16;
/** Rulers are read to a sixteenth: half of it either way. */
const READING: Inches = 1 / 32;

/** `across`: the unfinished block measured flat, from raw edge to raw edge across the middle, inches. */
export function explainMeasure(wedge: WedgePlan, across: Inches): Result<Explained> {
  const seam = seamFromMeasure(wedge, across);
  const rise = Math.sin(Math.PI / wedge.perBlock);
  if (Math.abs(seam - wedge.seam) <= FARTHEST && wedgeProblem({ ...wedge, assemblySeam: seam }) === null) {
    return ok({ seam, within: (READING / 2) * rise });
  }
  const planned = { ...wedge, assemblySeam: wedge.seam };
  const size = unfinishedBlock(planned).height;
  const values = { across: { inches: across }, planned: { inches: size } };
  const corners = across * Math.cos(Math.PI / wedge.perBlock);
  if (Math.abs(seamFromMeasure(wedge, corners) - wedge.seam) <= 1 / 16) {
    const say =
      '{across} is what this block measures from corner to corner. Measure from flat side to flat side.';
    return failed('across-corners', 'wedge.assemblySeam', phrase(say, values));
  }
  const say =
    across > size
      ? 'No seam makes it {across}: this wedge gives {planned} at the planned seam. Was the wedge cut taller?'
      : 'No seam near the planned one makes it {across} instead of {planned}. Was the wedge cut shorter, or an edge trimmed?';
  return failed('no-such-seam', 'wedge.assemblySeam', phrase(say, values));
}
