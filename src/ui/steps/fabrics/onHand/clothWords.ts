// Names of the kinds of cloth on hand and of their sides, and their usual sizes.
import { fatQuarter } from '../../../../cutting/yardage/fatQuarter';
import { USUAL } from '../../../../model/lengths';
import type { ClothOnHand, Project } from '../../../../model/project';
import type { Inches } from '../../../../model/units';

export type ClothKind = ClothOnHand['kind'];

interface KindWords {
  readonly name: string;
  /** One piece, in a sentence. */
  readonly one: string;
  /** Names of the two sides: the one along which strips are cut one after another, and the one that is their length. */
  readonly depth: string;
  readonly stripLength: string;
}

export const CLOTH_KINDS: Readonly<Record<ClothKind, KindWords>> = {
  yardage: { name: 'Yardage', one: 'off the bolt', depth: 'Length', stripLength: 'Usable width' },
  'fat quarter': { name: 'Fat quarter', one: 'fat quarter', depth: 'Short side', stripLength: 'Long side' },
  'precut strips': { name: 'Precut strips', one: 'precut strip', depth: 'Width', stripLength: 'Length' },
  remnant: { name: 'Remnant', one: 'remnant', depth: 'Short side', stripLength: 'Long side' },
};

/** The usual size of a kind: a fat quarter as it is bought, before straightening, the others by the unit. */
export function usualSize(
  kind: ClothKind,
  project: Pick<Project, 'buying' | 'preferences'>,
): { depth: Inches; stripLength: Inches } {
  const { unit, usableWidth } = project.preferences;
  const usual = USUAL[unit];
  switch (kind) {
    case 'yardage':
      return { depth: usual.yardage, stripLength: usableWidth };
    case 'fat quarter':
      return fatQuarterSides(project);
    case 'precut strips':
      return { depth: usual.precut.width, stripLength: usableWidth };
    case 'remnant':
      return { depth: usual.remnant, stripLength: usableWidth / 2 };
    default:
      return kind satisfies never;
  }
}

/** The size of a fat quarter as it is bought; the cutting list takes off what straightening costs. */
function fatQuarterSides(project: Pick<Project, 'buying' | 'preferences'>) {
  const { across, bought } = fatQuarter(project);
  return { depth: Math.min(across, bought), stripLength: Math.max(across, bought) };
}
