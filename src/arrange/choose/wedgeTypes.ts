// Wedges as the composer sees them: one wedge type for each strip set and tip, how many there are to use, and what two of them
// share when they lie side by side.
import { LEAST_LIKENESS } from '../../balance/clashes/clashes';
import { clothTable } from '../../cloth/cloths';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { type Band, wedgeBands } from '../../geometry/bands';
import type { Block, FabricId, Place, Project, Tip } from '../../model/project';
import type { Inches } from '../../model/units';

export interface WedgeType {
  /** Set and tip in one word (wedgeTypeKey). */
  readonly key: string;
  readonly wedge: Place;
  readonly label: string;
  readonly bands: readonly Band[];
  /** Fabric on the rim; null for a set without strips. */
  readonly rim: FabricId | null;
  /** True where the rim is background cloth, which is no clash when it meets itself. */
  readonly background: boolean;
  /** How many may be used. */
  readonly count: number;
}

/** What lies along the seam between two wedges side by side. */
export interface Beside {
  /** 1 where the same fabric meets itself on the rim and is not background, else 0. */
  readonly rimClash: 0 | 1;
  /** 1 where the rims are of two fabrics that read as one, as the list of clashes has it, else 0. */
  readonly rimAlike: 0 | 1;
  /** Length along the seam where a fabric (background too) meets itself, rim included, inches. */
  readonly same: Inches;
  /** Length where two other fabrics meet, times their likeness (0 to 1), inches. */
  readonly alike: Inches;
}

/** The tip that belongs on a place (from 0): up on the first, then in turn, so that neighbouring seams nest. */
export function tipOf(place: number): Tip {
  return place % 2 === 0 ? 'up' : 'down';
}

/** All types, up then down for each set in order, with the wedges left over; those in `freed` blocks count as left. */
export function wedgeTypes(project: Project, freed: readonly Block[] = []): WedgeType[] {
  const back = new Map<string, number>();
  for (const block of freed) {
    for (const place of block.places) {
      if (place) back.set(wedgeTypeKey(place), (back.get(wedgeTypeKey(place)) ?? 0) + 1);
    }
  }
  const background = new Set(project.fabrics.filter((one) => one.background).map((one) => one.id));
  return wedgeLedger(project).flatMap(({ set, left }) =>
    (['up', 'down'] as const).map((tip): WedgeType => {
      const bands = wedgeBands(set.strips, tip, project.wedge);
      const rim = bands[0]?.fabric ?? null;
      const wedge: Place = { set: set.id, tip };
      return {
        key: wedgeTypeKey(wedge),
        wedge,
        label: set.label,
        bands,
        rim,
        background: rim !== null && background.has(rim),
        count: left[tip] + (back.get(wedgeTypeKey(wedge)) ?? 0),
      };
    }),
  );
}

export function wedgeTypeKey(place: Place): string {
  return `${place.set} ${place.tip}`;
}

export type BesideOf = (one: WedgeType, other: WedgeType) => Beside;

/** Measures pairs of types, each pair once; good as long as the strips of the sets and the wedge stay the same. */
export function besideTable(project: Project): BesideOf {
  const alike = likenessTable(project);
  const stretch = 1 / Math.cos(Math.PI / project.wedge.perBlock);
  const table = new Map<string, Map<string, Beside>>();
  return (one, other) => {
    const row = table.get(one.key) ?? new Map<string, Beside>();
    table.set(one.key, row);
    const known = row.get(other.key) ?? measured(one, other, stretch, alike);
    row.set(other.key, known);
    return known;
  };
}

/** Both wedges' bands are walked from the rim inwards together; only equal radii touch. */
function measured(one: WedgeType, other: WedgeType, stretch: number, alike: Likeness): Beside {
  let same = 0;
  let near = 0;
  let at = 0;
  let beside = 0;
  while (at < one.bands.length && beside < other.bands.length) {
    const band = one.bands[at]!;
    const next = other.bands[beside]!;
    const shared = Math.min(band.outer, next.outer) - Math.max(band.inner, next.inner);
    if (shared > 1e-9) {
      if (band.fabric === next.fabric) same += shared;
      else near += shared * alike(band.fabric, next.fabric);
    }
    if (band.inner >= next.inner) at += 1;
    else beside += 1;
  }
  const rimClash = one.rim !== null && one.rim === other.rim && !one.background ? 1 : 0;
  const rimAlike =
    one.rim !== null &&
    other.rim !== null &&
    one.rim !== other.rim &&
    alike(one.rim, other.rim) >= LEAST_LIKENESS
      ? 1
      : 0;
  return { rimClash, rimAlike, same: same * stretch, alike: near * stretch };
}

type Likeness = (one: FabricId, other: FabricId) => number;

/** How far two fabrics read as one, as the analysis has it and by the person's own threshold. */
function likenessTable({ fabrics, preferences }: Project): Likeness {
  const { index, likeness } = clothTable(fabrics, undefined, preferences.lookalikes);
  return (one, other) => likeness[index.get(one)! * fabrics.length + index.get(other)!]!;
}
