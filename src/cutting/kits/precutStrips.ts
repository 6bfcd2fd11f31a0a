// The strips of the sets cut from precut strips (2 1/2" or 6.5 cm wide), split lengthwise: how many of each fabric, and rolls to order.
import { USUAL } from '../../model/lengths';
import type { Fabric, Project } from '../../model/project';
import { layOutCutting } from '../yardage/clothLayout';
import { setStrips } from '../yardage/setStrips';

export interface PrecutStrips {
  readonly perFabric: readonly { readonly fabric: Fabric; readonly strips: number }[];
  /** Precut strips for one quilt. */
  readonly strips: number;
}

/**
 * Rolls for so many quilts, where a roll holds so many strips of just these fabrics in the amounts it takes: the least there
 * can be. A mixed roll seldom does; then the strips are ordered by fabric. A roll has up to 40 strips 2 1/2" wide (Nebraska
 * Extension / Nebraska 4-H fair book, Quilt Quest general rules).
 */
export function leastRolls({ strips }: PrecutStrips, quilts: number, stripsPerRoll: number): number {
  return Math.ceil((strips * quilts) / stripsPerRoll);
}

/**
 * Precut strips for all sets of one quilt; null where a set has a strip wider or longer than a precut one, or there are no
 * sets. 2 1/2 splits into 1 1/2 + 1, 6.5 into 4 + 2.5: rows of a sheet as deep as the precut strip is wide.
 */
export function precutStrips(project: Project): PrecutStrips | null {
  const rows = setStrips(project, 'whole');
  if (rows.length === 0) return null;
  const { width: sheetLength, length: width } = USUAL[project.preferences.unit].precut;
  const perFabric: { fabric: Fabric; strips: number }[] = [];
  for (const fabric of project.fabrics) {
    const own = rows.filter((row) => row.fabric === fabric.id);
    const parts = own.map((row, line) => ({ line, across: row.width, along: row.height, count: row.count }));
    const layout = layOutCutting(parts, { width, sheetLength });
    if (!layout) return null;
    if (layout.newSheets > 0) perFabric.push({ fabric, strips: layout.newSheets });
  }
  return { perFabric, strips: perFabric.reduce((sum, one) => sum + one.strips, 0) };
}
