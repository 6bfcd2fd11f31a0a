// What kinds of cloth on hand are called, how their sides are named, and the sizes they usually have.
import { fatQuarter } from '../../../../cutting/yardage/fatQuarter';
import type { ClothOnHand, Project } from '../../../../model/project';
import type { Inches } from '../../../../model/units';

export type ClothKind = ClothOnHand['kind'];

interface KindWords {
  readonly name: string;
  /** Of one piece, in a sentence. */
  readonly one: string;
  /** What strips are cut from, side by side; and what the strips are as long as. */
  readonly depth: string;
  readonly stripLength: string;
}

export const CLOTH_KINDS: Readonly<Record<ClothKind, KindWords>> = {
  yardage: { name: 'Yardage', one: 'off the bolt', depth: 'Length', stripLength: 'Usable width' },
  'fat quarter': { name: 'Fat quarter', one: 'fat quarter', depth: 'Short side', stripLength: 'Long side' },
  'precut strips': { name: 'Precut strips', one: 'precut strip', depth: 'Width', stripLength: 'Length' },
  remnant: { name: 'Remnant', one: 'remnant', depth: 'Short side', stripLength: 'Long side' },
};

/** Half a yard; a fat quarter of this cloth, not straightened yet; a precut strip of 2 1/2 (common practice, no source). */
export function usualSize(
  kind: ClothKind,
  project: Pick<Project, 'buying' | 'preferences'>,
): { depth: Inches; stripLength: Inches } {
  const { usableWidth } = project.preferences;
  switch (kind) {
    case 'yardage':
      return { depth: 18, stripLength: usableWidth };
    case 'fat quarter':
      return fatQuarterSides(project);
    case 'precut strips':
      return { depth: 2.5, stripLength: usableWidth };
    case 'remnant':
      return { depth: 9, stripLength: usableWidth / 2 };
    default:
      return kind satisfies never;
  }
}

/** As it is bought: the person measures what lies there, and the cutting list straightens it. */
function fatQuarterSides(project: Pick<Project, 'buying' | 'preferences'>) {
  const { across, bought } = fatQuarter(project);
  return { depth: Math.min(across, bought), stripLength: Math.max(across, bought) };
}
