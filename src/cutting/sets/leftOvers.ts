// The strips left over beside all sets, as they lie on the table: alike ones together, and how high those of one length reach.
import { finishedWidth } from '../../geometry/stripSet';
import { isTooNarrow } from '../../model/lengths';
import type { FabricId, Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { stripsLeftBeside } from './stripsUnused';

/** Strips of one fabric, cut width and length. */
export interface LeftOver {
  readonly fabric: FabricId;
  readonly width: Inches;
  readonly length: Inches;
  readonly count: number;
}

/** What is left of the strips on hand: fabrics in the order of the quilt, narrow strips first, then short ones. */
export function leftOvers(project: Pick<Project, 'fabrics' | 'stripsOnHand' | 'stripSets'>): LeftOver[] {
  const rows = new Map<string, LeftOver>();
  for (const { fabric, width, length, count } of stripsLeftBeside(project.stripsOnHand, project.stripSets)) {
    const key = `${fabric} ${width} ${length}`;
    rows.set(key, { fabric, width, length, count: count + (rows.get(key)?.count ?? 0) });
  }
  const order = new Map(project.fabrics.map((fabric, index) => [fabric.id, index]));
  const place = (row: LeftOver) => order.get(row.fabric) ?? order.size;
  return [...rows.values()].sort(
    (one, other) => place(one) - place(other) || one.width - other.width || one.length - other.length,
  );
}

/** The left-overs of one length, and the height that all of them sewn into one set would have. */
export interface LengthLeft {
  readonly length: Inches;
  readonly count: number;
  readonly height: Inches;
}

/** The lengths of the left-overs, the one that reaches highest first. Strips that vanish in their seams do not count. */
export function lengthsLeft(rows: readonly LeftOver[], seam: Inches): LengthLeft[] {
  const lengths = new Map<Inches, { count: number; gain: Inches }>();
  for (const { width, length, count } of rows) {
    if (isTooNarrow(width, seam)) continue;
    const before = lengths.get(length) ?? { count: 0, gain: 0 };
    lengths.set(length, {
      count: before.count + count,
      gain: before.gain + count * finishedWidth(width, seam),
    });
  }
  return Array.from(lengths, ([length, { count, gain }]) => ({
    length,
    count,
    height: gain + 2 * seam,
  })).sort((one, other) => other.height - one.height || other.length - one.length);
}
