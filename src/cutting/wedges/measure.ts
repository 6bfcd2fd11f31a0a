// The first sewn block tells the truth: from what it measures to the assembly seam that explains it. Everything else
// follows once that seam stands in the wedge plan. Where no seam explains the measure, the reason is said.
import { seamFromMeasure, unfinishedBlock } from '../../geometry/wedge';
import { type Phrase, phrase } from '../../model/phrase';
import type { WedgePlan } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit } from '../../model/units';

/** What a block measured across, rim to opposite rim, before it is sewn into anything. */
export interface MeasuredSeam {
  /** The seam that explains the measure exactly. */
  readonly seam: Inches;
  /** How far the seam may be off by the reading of the ruler: half a division across, ± inches of seam. */
  readonly tolerance: Inches;
  /** Measured less planned, inches; below 0 for a block smaller than planned. */
  readonly off: Inches;
  /** True where the block is within a division of the ruler of the plan: the planned seam stands as well as any. */
  readonly asPlanned: boolean;
  /** The plan with this seam. Outer seam, height and trimmed tip stay. */
  readonly wedge: WedgePlan;
  readonly words: Phrase;
}

/** A ruler is read to the nearest sixteenth of an inch, or to the nearest millimetre (common practice, no source). */
const READING: Readonly<Record<LengthUnit, { division: Inches; asPlanned: string }>> = {
  in: { division: 1 / 16, asPlanned: 'A block of {across} is as planned, to the nearest sixteenth.' },
  cm: {
    division: 0.1 / CENTIMETRES_PER_INCH,
    asPlanned: 'A block of {across} is as planned, to the nearest millimetre.',
  },
};
/**
 * Seams a person might really have sewn: nobody sews patchwork at less than an eighth (the seam frays open) or at more than
 * a half by mistake (common practice, no source). Outside this the reason lies elsewhere: wedge height, outer edge, ruler.
 */
const LEAST_SEAM: Inches = 1 / 8;
const MOST_SEAM: Inches = 1 / 2;

/**
 * The assembly seam behind a measured block: sa = (h + t − so − (across − 2so)/2) · sin a. Every sixteenth of an inch across
 * is only sin a / 32 of seam, because the block has N seams: small errors in the seam show large in the block. `ruler`: the unit it was measured in.
 */
export function explainMeasure(
  wedge: WedgePlan,
  across: Inches,
  ruler: LengthUnit = 'in',
): Result<MeasuredSeam> {
  if (!Number.isFinite(across) || across <= 0) {
    return failed(
      'not-a-measure',
      'wedge.assemblySeam',
      phrase('A block measures more than nothing across.'),
    );
  }
  const planned = unfinishedBlock(wedge).height;
  const seam = seamFromMeasure(wedge, across);
  const { least, most } = seamRange(wedge);
  const values = {
    across: { inches: across },
    planned: { inches: planned },
    smallest: { inches: unfinishedBlock({ ...wedge, assemblySeam: most }).height },
    largest: { inches: unfinishedBlock({ ...wedge, assemblySeam: least }).height },
    least: { seam: least },
    most: { seam: most },
  };
  if (seam < least - 1e-9) {
    const say =
      'No seam explains a block of {across}: even joined at {least} these wedges make {largest} at most. Measure from raw edge to raw edge, and see whether the wedges were cut taller.';
    return failed('too-large', 'wedge.assemblySeam', phrase(say, values));
  }
  if (seam > most + 1e-9) {
    const say =
      'No usual seam explains a block of {across}: joined at {most} these wedges still make {smallest}. See whether the wedges were cut shorter, or the block is already trimmed.';
    return failed('too-small', 'wedge.assemblySeam', phrase(say, values));
  }
  const { division, asPlanned: asPlannedWords } = READING[ruler];
  const off = across - planned;
  const asPlanned = Math.abs(off) <= division + 1e-9;
  const tolerance = (division / 4) * Math.sin(Math.PI / wedge.perBlock);
  const words = asPlanned
    ? phrase(asPlannedWords, values)
    : phrase(
        'A block of {across} where {planned} was planned comes from a seam of about {seam} between the wedges.',
        {
          ...values,
          seam: { seam },
        },
      );
  return ok({ seam, tolerance, off, asPlanned, wedge: { ...wedge, assemblySeam: seam }, words });
}

/** Seams that may explain a block: from an eighth (or what leaves no hole in the middle) to a half inch. */
export function seamRange(wedge: WedgePlan): { least: Inches; most: Inches } {
  const withoutHole = wedge.seam * (1 - Math.sin(Math.PI / wedge.perBlock));
  return { least: Math.max(LEAST_SEAM, withoutHole), most: MOST_SEAM };
}
