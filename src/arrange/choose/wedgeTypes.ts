// Wedges as the composer sees them: one wedge type for each strip set and tip, how many there are to use, and what two of them
// share when they lie side by side.
import { isClash } from '../../balance/clashes/clashRule';
import { isOnRim, radialClash, type WedgeSeams, wedgeSeams } from '../../balance/clashes/wedgeSeams';
import { clothsOf } from '../../cloth/cloths';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { wedgeBands } from '../../geometry/bands';
import type { Block, FabricId, Place, Project } from '../../model/project';
import type { Inches } from '../../model/units';

export interface WedgeType {
  /** Set and tip in one word (wedgeTypeKey). */
  readonly key: string;
  readonly wedge: Place;
  readonly label: string;
  /** Its index among the wedge types of the project's seams (balance/clashes/wedgeSeams). */
  readonly type: number;
  /** Fabric on the rim; null for a set without strips. */
  readonly rim: FabricId | null;
  /** True where the rim is background cloth, which clashes with nothing. */
  readonly background: boolean;
  /** How many may be used. */
  readonly count: number;
}

/** What lies along the seam between two wedges side by side. */
export interface Beside {
  /** 1 where the same fabric is on both rims and is not background, else 0. */
  readonly rimClash: 0 | 1;
  /** 1 where the rims are of two fabrics that read as one, as the list of clashes has it, else 0. */
  readonly rimAlike: 0 | 1;
  /** Inches along the seam of one fabric on both sides, and of look-alikes, each counted by its likeness; background never. */
  readonly same: Inches;
  readonly alike: Inches;
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
  return wedgeLedger(project).flatMap(({ set, left }, at) =>
    (['up', 'down'] as const).map((tip, which): WedgeType => {
      const rim = wedgeBands(set.strips, tip, project.wedge)[0]?.fabric ?? null;
      const wedge: Place = { set: set.id, tip };
      return {
        key: wedgeTypeKey(wedge),
        wedge,
        label: set.label,
        type: 2 * at + which,
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
  const seams = wedgeSeams(project, clothsOf(project));
  const types = seams.typeRim.length;
  const table = new Map<number, Beside>();
  return (one, other) => {
    const key = one.type * types + other.type;
    let known = table.get(key);
    if (!known) {
      known = measured(seams, one.type, other.type);
      table.set(key, known);
    }
    return known;
  };
}

function measured(seams: WedgeSeams, one: number, other: number): Beside {
  const { stretches, same, alike } = radialClash(seams, one, other);
  const rim = stretches.find((stretch) => isOnRim(stretch) && isClash(stretch.likeness));
  const isSame = rim?.fabric === rim?.nextFabric;
  return { rimClash: rim && isSame ? 1 : 0, rimAlike: rim && !isSame ? 1 : 0, same, alike };
}

/** A look-alike counts half of one fabric against itself where wedges are chosen. */
const ALIKE_PART = 0.5;

/** Inches of clash along a seam or two, look-alikes at their part. */
export function clashInches({ same, alike }: Pick<Beside, 'same' | 'alike'>): Inches {
  return same + ALIKE_PART * alike;
}
