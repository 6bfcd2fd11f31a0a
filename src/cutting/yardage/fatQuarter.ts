// The fat quarter: how large it is bought and what of it can be cut, by the width of the person's cloth and what they cut off
// to straighten it.

import { type SellingUnit, sellingUnit } from '../../model/buying';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { CENTIMETRES_PER_INCH, type Inches } from '../../model/units';

/** Half a yard, or 50 cm where cloth is sold by the metre, cut across at its middle (common practice, no source). */
const LENGTH: Readonly<Record<SellingUnit, Inches>> = { yard: 18, metre: 50 / CENTIMETRES_PER_INCH };

export interface FatQuarter {
  /** Half the usable width of the cloth, inches. */
  readonly across: Inches;
  /** Along the cloth, as it is bought. */
  readonly bought: Inches;
  /** Along the cloth, washed and with its edge straightened; 0 where nothing is left. */
  readonly along: Inches;
}

/** A fat quarter of this project's cloth. The usable width is measured after washing; what washing takes is of the length. */
export function fatQuarter(project: Pick<Project, 'buying' | 'preferences'>): FatQuarter {
  const { straighten, shrinkage } = project.buying;
  const bought = LENGTH[sellingUnit(project)];
  return {
    across: project.preferences.usableWidth / 2,
    bought,
    along: Math.max(0, bought * (1 - shrinkage / 100) - straighten),
  };
}

/** What can be cut from one, and why. */
export function fatQuarterWords(project: Pick<Project, 'buying' | 'preferences'>): Phrase {
  const { straighten, shrinkage } = project.buying;
  const { across, bought, along } = fatQuarter(project);
  const values = {
    across: { inches: across },
    along: { inches: along },
    width: { inches: project.preferences.usableWidth },
    bought: { inches: bought },
    straighten: { inches: straighten },
    shrinkage,
  };
  return phrase(
    shrinkage > 0
      ? 'A fat quarter gives {across} × {along} to cut: half of {width}, and {bought} less {shrinkage}% in the wash and {straighten} to straighten it.'
      : 'A fat quarter gives {across} × {along} to cut: half of {width}, and {bought} less {straighten} to straighten it.',
    values,
  );
}
