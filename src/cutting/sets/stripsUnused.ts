// Strips on hand against strips sewn. On hand is what has been cut to width; a set lists what is sewn into it and takes
// nothing out of the list on hand, so that taking a set apart gives its strips back by itself.
import { HAIR } from '../../model/lengths';
import type { FabricId, Project, StripOnHand, StripSet } from '../../model/project';
import type { Inches } from '../../model/units';

/** Strips of one fabric and cut width. `left` is below 0 where sets use more than was listed: shown, not refused. */
export interface StripBalance {
  readonly fabric: FabricId;
  readonly width: Inches;
  readonly onHand: number;
  readonly used: number;
  readonly left: number;
}

/** One row for each fabric and width on hand or in a set, fabrics in document order, narrow strips first. */
export function stripsUnused(
  project: Pick<Project, 'fabrics' | 'stripsOnHand' | 'stripSets'>,
): StripBalance[] {
  const order = new Map(project.fabrics.map((fabric, index) => [fabric.id, index]));
  const place = (row: StripBalance) => order.get(row.fabric) ?? order.size;
  return balanceOf(project.stripsOnHand, project.stripSets).sort(
    (one, other) => place(one) - place(other) || one.width - other.width,
  );
}

function balanceOf(onHand: readonly StripOnHand[], sets: readonly StripSet[]): StripBalance[] {
  const rows = new Map<string, { fabric: FabricId; width: Inches; onHand: number; used: number }>();
  const row = (fabric: FabricId, width: Inches) => {
    const key = stripKey(fabric, width);
    const found = rows.get(key) ?? { fabric, width, onHand: 0, used: 0 };
    rows.set(key, found);
    return found;
  };
  for (const strip of onHand) row(strip.fabric, strip.width).onHand += strip.count;
  for (const set of sets) for (const strip of set.strips) row(strip.fabric, strip.width).used += 1;
  return Array.from(rows.values(), (found) => ({ ...found, left: found.onHand - found.used }));
}

/** Strips are alike when fabric and cut width agree to a ten-thousandth of an inch. */
export function stripKey(fabric: FabricId, width: Inches): string {
  return `${Math.round(width * 10_000)} ${fabric}`;
}

/** Whether a strip is long enough for a set of this length, inches. */
export function isLongEnough(strip: Pick<StripOnHand, 'length'>, setLength: Inches): boolean {
  return strip.length >= setLength - HAIR;
}

/**
 * The rows on hand less what these sets already use, rows used up left out. Where rows differ in length only, the shorter
 * strips are taken first for short sets: a strip shorter than the set is never counted as the one sewn into it.
 */
export function stripsLeftBeside(onHand: readonly StripOnHand[], sets: readonly StripSet[]): StripOnHand[] {
  const rows = onHand.map((row) => ({ ...row })).sort((one, other) => one.length - other.length);
  for (const set of sets) {
    for (const strip of set.strips) {
      const alike = rows.filter(
        (row) => row.count > 0 && stripKey(row.fabric, row.width) === stripKey(strip.fabric, strip.width),
      );
      const taken = alike.find((row) => isLongEnough(row, set.length)) ?? alike.at(-1);
      if (taken) taken.count -= 1;
    }
  }
  return rows.filter((row) => row.count > 0);
}
