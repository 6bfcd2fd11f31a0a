// Measures what lies along the radial seam between two wedge types, once for each pair. contacts.ts measures the edges of
// blocks.
import type { ClothTable } from '../../cloth/cloths';
import type { Band } from '../../geometry/bands';
import { type SeamStretch, seamStretches } from '../../geometry/contact';
import type { Place, Project } from '../../model/project';
import { wedgeTypes } from '../wall/wallFigures';
import { addCounted, type ClashSums, countsAs, type Judged } from './clashRule';

/** What it takes to say what lies between two wedges side by side; wedge types as in wallModel. */
export interface WedgeSeams extends Judged {
  /** Bands of each wedge type from the rim in, and the fabric on its rim (−1: a set without strips). */
  readonly typeBands: readonly (readonly Band[])[];
  readonly typeRim: Int32Array;
  readonly perBlock: number;
  /** Seams measured so far, by type × types + next; filled as asked. */
  readonly radialMemo: Map<number, RadialClash>;
}

/** A stretch of a radial seam that counts. */
export interface RadialStretch extends SeamStretch {
  readonly fabric: number;
  readonly nextFabric: number;
  readonly likeness: number;
}

/** All stretches of one seam between two types that count, with the sums of length × likeness. */
export interface RadialClash extends Readonly<ClashSums> {
  readonly stretches: readonly RadialStretch[];
}

/** The seams of a project's own sets, where there is no model of the wall. */
export function wedgeSeams(project: Pick<Project, 'stripSets' | 'wedge'>, cloths: ClothTable): WedgeSeams {
  const { typeBands, typeRim } = wedgeTypes(project, cloths);
  return {
    cloths,
    fabricCount: cloths.fabrics.length,
    typeBands,
    typeRim,
    perBlock: project.wedge.perBlock,
    radialMemo: new Map(),
  };
}

/** The type of a wedge: 2 × set + (0 up, 1 down). */
export function wedgeTypeOf({ stripSets }: Pick<Project, 'stripSets'>, wedge: Place): number {
  return 2 * stripSets.findIndex((set) => set.id === wedge.set) + (wedge.tip === 'up' ? 0 : 1);
}

/** What counts along the radial seam between two wedge types (`next` clockwise of `type`). Symmetric in its sums. */
export function radialClash(seams: WedgeSeams, type: number, next: number): RadialClash {
  const key = type * seams.typeRim.length + next;
  let found = seams.radialMemo.get(key);
  if (!found) {
    found = measured(seams, seams.typeBands[type]!, seams.typeBands[next]!);
    seams.radialMemo.set(key, found);
  }
  return found;
}

function measured(seams: WedgeSeams, bands: readonly Band[], nextBands: readonly Band[]): RadialClash {
  const { index } = seams.cloths;
  const sums: ClashSums = { same: 0, alike: 0 };
  const stretches: RadialStretch[] = [];
  for (const stretch of seamStretches(bands, nextBands, seams.perBlock)) {
    const fabric = index.get(bands[stretch.band]!.fabric)!;
    const nextFabric = index.get(nextBands[stretch.nextBand]!.fabric)!;
    const likeness = countsAs(seams, fabric, nextFabric);
    if (likeness === 0) continue;
    addCounted(sums, fabric, nextFabric, stretch.length * likeness);
    const { band, nextBand, outer, inner, length } = stretch;
    stretches.push({ band, nextBand, outer, inner, length, fabric, nextFabric, likeness });
  }
  return { stretches, same: sums.same, alike: sums.alike };
}

/** Whether both bands of a stretch are on the rim. */
export function isOnRim(stretch: SeamStretch): boolean {
  return stretch.band === 0 && stretch.nextBand === 0;
}
