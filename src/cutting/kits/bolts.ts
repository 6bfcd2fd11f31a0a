// How many bolts so many equal kits take, and what is left on the last one.
import { piecesIn } from '../../model/lengths';
import type { Inches } from '../../model/units';
import { layOutCutting } from '../yardage/clothLayout';

export interface Bolts {
  readonly bolts: number;
  /** Whole kits from one bolt; 0 where a kit takes more than a bolt. */
  readonly kitsPerBolt: number;
  /** Cloth of all kits and what straightens each bolt, inches. */
  readonly taken: Inches;
  /** Cloth left on the last bolt, inches. */
  readonly left: Inches;
}

/** One kit's cloth off the bolt, and the depths of its strips, which are never cut in two. */
export interface KitCloth {
  readonly inches: Inches;
  readonly strips: readonly Inches[];
}

/**
 * Bolts for `kits` kits. A kit comes from one bolt, so that its cloth is of one dye lot (common practice, no source), unless
 * it takes more than a bolt: then strips go where they fit. Null where one strip is longer than a bolt. `straighten` is cut
 * off once at the start of each bolt.
 */
export function boltsFor(kits: number, cloth: KitCloth, bolt: Inches, straighten: Inches): Bolts | null {
  const usable = bolt - straighten;
  if (kits <= 0 || cloth.inches <= 0) return { bolts: 0, kitsPerBolt: 0, taken: 0, left: 0 };
  const takenFrom = (bolts: number) => kits * cloth.inches + bolts * straighten;
  const kitsPerBolt = piecesIn(usable, cloth.inches);
  if (kitsPerBolt > 0) {
    const bolts = Math.ceil(kits / kitsPerBolt);
    const onLast = kits - (bolts - 1) * kitsPerBolt;
    return { bolts, kitsPerBolt, taken: takenFrom(bolts), left: usable - onLast * cloth.inches };
  }
  const parts = cloth.strips.map((along, line) => ({ line, across: 1, along, count: kits }));
  const layout = layOutCutting(parts, { width: 1, sheetLength: usable });
  if (!layout) return null;
  const last = layout.newSheets - 1;
  const used = layout.placed.reduce(
    (end, cut) => (cut.sheet === last ? Math.max(end, cut.y + cut.along) : end),
    0,
  );
  const bolts = layout.newSheets;
  return { bolts, kitsPerBolt: 0, taken: takenFrom(bolts), left: usable - used };
}
