// The fabrics of a project as numbers: mean value and colour of each, and how far every pair reads as one cloth.
// likeness.ts grades likeness; balance decides which contacts matter.

import { labD65Of, oklabOf } from '../colour/spaces';
import type { Fabric, FabricId, Project } from '../model/project';
import {
  type ColourMix,
  LOOKALIKE_THRESHOLD,
  likeness as likenessOf,
  meanColour,
  meanLight,
} from './likeness';
import { warmth } from './mixture';
import { printMix } from './print/printMix';

/** The colours of a fabric with their shares. cloth/print knows them for plain and printed cloth. */
export type ClothOf = (fabric: Fabric) => ColourMix;

/** Fabrics by index, in document order. `likeness` is a square table, fabric × fabric, row by row. */
export interface ClothTable {
  readonly fabrics: readonly Fabric[];
  readonly index: ReadonlyMap<FabricId, number>;
  /** 1 for background cloth, which never clashes. */
  readonly background: Uint8Array;
  /** Value L*, 0–100, of the cloth seen from across the room. */
  readonly lightness: Float64Array;
  /** OKLab L (0–1), a and b of the same. */
  readonly oklabL: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  /** Warm above 0, cool below, as in mixture.ts. */
  readonly warmth: Float64Array;
  /** 0 (told apart, or either is background) to 1 (a fabric and itself). Symmetric. */
  readonly likeness: Float64Array;
  readonly clothOf: ClothOf;
  readonly threshold: number;
}

const tables = new WeakMap<readonly Fabric[], ClothTable>();

/**
 * The table of a project's fabrics; O(F²), the last one kept for each list. `threshold` is the ΔE00 from which two cloths
 * no longer read as one.
 */
export function clothTable(
  fabrics: readonly Fabric[],
  clothOf: ClothOf = printMix,
  threshold: number = LOOKALIKE_THRESHOLD,
): ClothTable {
  const known = tables.get(fabrics);
  if (known && known.clothOf === clothOf && known.threshold === threshold) return known;
  const table = measuredTable(fabrics, clothOf, threshold);
  tables.set(fabrics, table);
  return table;
}

/** Where each fabric stands in a list. */
export function fabricIndex(fabrics: readonly Fabric[]): ReadonlyMap<FabricId, number> {
  return new Map(fabrics.map((fabric, at) => [fabric.id, at]));
}

/** The table of a project's fabrics by the person's own threshold: for whoever is given no other. */
export function clothsOf({ fabrics, preferences }: Pick<Project, 'fabrics' | 'preferences'>): ClothTable {
  return clothTable(fabrics, printMix, preferences.lookalikes);
}

function measuredTable(fabrics: readonly Fabric[], clothOf: ClothOf, threshold: number): ClothTable {
  const mixes = fabrics.map(clothOf);
  const lights = mixes.map(meanLight);
  const labs = lights.map(labD65Of);
  const oklabs = lights.map(oklabOf);
  const background = Uint8Array.from(fabrics, (fabric) => (fabric.background ? 1 : 0));
  const size = fabrics.length;
  const likeness = new Float64Array(size * size);
  for (let f = 0; f < size; f++) {
    if (background[f]) continue;
    likeness[f * size + f] = 1;
    for (let g = f + 1; g < size; g++) {
      if (background[g]) continue;
      const alike = likenessOf(mixes[f]!, mixes[g]!, threshold);
      likeness[f * size + g] = alike;
      likeness[g * size + f] = alike;
    }
  }
  return {
    fabrics,
    index: fabricIndex(fabrics),
    background,
    lightness: Float64Array.from(labs, (lab) => lab[0]),
    oklabL: Float64Array.from(oklabs, (lab) => lab[0]),
    a: Float64Array.from(oklabs, (lab) => lab[1]),
    b: Float64Array.from(oklabs, (lab) => lab[2]),
    warmth: Float64Array.from(mixes, (mix) => warmth(meanColour(mix))),
    likeness,
    clothOf,
    threshold,
  };
}
