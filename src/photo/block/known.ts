// Finds which block of the project a photographed block is, and how it is turned: every block in every turn is laid over what is seen.
import { wedgeBands } from '../../geometry/bands';
import { orientation, turnsOf } from '../../model/find';
import type { Place, Project } from '../../model/project';
import type { CutWedge } from './bands';
import type { BlockLook } from './look';
import type { NeutralWedge } from './neutral';
import { apart, type Swatch } from './swatches';

/** A block of the project as it may be seen: which fabric each ring shows, by wedge clockwise from the top side. */
export interface KnownLook {
  readonly number: number;
  readonly quarters: number;
  /** Indices in the list of fabrics; −1 where it is bare. */
  readonly wedges: readonly Int16Array[];
}

const kept = new WeakMap<Project, Map<number, KnownLook[]>>();

/** All blocks that have every wedge, in all their turns, ring by ring as `look` has them. Kept for each project. */
export function knownLooks(
  project: Project,
  look: Pick<BlockLook, 'rings' | 'radii'>,
  swatches: readonly Swatch[],
): readonly KnownLook[] {
  const byRings = kept.get(project) ?? new Map<number, KnownLook[]>();
  kept.set(project, byRings);
  const looks = byRings.get(look.rings) ?? allLooks(project, look, swatches);
  byRings.set(look.rings, looks);
  return looks;
}

function allLooks(
  project: Project,
  look: Pick<BlockLook, 'rings' | 'radii'>,
  swatches: readonly Swatch[],
): KnownLook[] {
  const { wedge } = project;
  const turns = turnsOf(wedge.perBlock);
  const rings = new Map<string, Int16Array>();
  const ringsOf = (place: Place): Int16Array => {
    const key = `${place.set} ${place.tip}`;
    let found = rings.get(key);
    if (!found) {
      found = ringFabrics(project, place, look, swatches);
      rings.set(key, found);
    }
    return found;
  };
  return project.blocks.flatMap((block) => {
    if (block.kind !== 'pieced' || block.places.some((place) => place === null)) return [];
    const places = block.places.map((place) => ringsOf(place!));
    return Array.from({ length: turns }, (_, turn): KnownLook => {
      const shift = orientation(block, turn, wedge);
      const wedges = places.map((_place, step) => places[(step - shift + wedge.perBlock) % wedge.perBlock]!);
      return { number: block.number, quarters: (turn * 4) / turns, wedges };
    });
  });
}

function ringFabrics(
  project: Project,
  place: Place,
  { rings, radii }: Pick<BlockLook, 'rings' | 'radii'>,
  swatches: readonly Swatch[],
): Int16Array {
  const strips = project.stripSets.find((set) => set.id === place.set)?.strips ?? [];
  const bands = wedgeBands(strips, place.tip, project.wedge);
  return Int16Array.from({ length: rings }, (_, ring) => {
    const band = bands.find(({ outer, inner }) => radii[ring]! <= outer && radii[ring]! > inner);
    return band ? swatches.findIndex(({ fabric }) => fabric === band.fabric) : -1;
  });
}

/** Every wedge that can be cut from the sets of a project, as runs of rings; each only once. */
export function cutWedges(
  project: Project,
  { rings, pitch }: Pick<BlockLook, 'rings' | 'pitch'>,
  swatches: readonly Swatch[],
): CutWedge[] {
  const rim = rings * pitch;
  const ring = (radius: number) => Math.max(0, Math.min(rings, Math.round((rim - radius) / pitch)));
  const found = new Map<string, CutWedge>();
  for (const set of project.stripSets) {
    for (const tip of ['up', 'down'] as const) {
      const bands = wedgeBands(set.strips, tip, project.wedge);
      const runs = bands.map(({ fabric, outer, inner }) => ({
        from: ring(outer),
        to: ring(inner),
        swatch: swatches.findIndex((one) => one.fabric === fabric),
      }));
      const whole =
        runs.at(-1)?.to === rings && runs.every(({ from, to, swatch }) => to > from && swatch >= 0);
      if (whole) found.set(runs.map(({ to, swatch }) => `${to} ${swatch}`).join(), { runs });
    }
  }
  return [...found.values()];
}

/** The block that fits best, how well, and how much better than any other block or turn. */
export interface Match {
  readonly number: number;
  readonly quarters: number;
  /** Mean capped squared distance of the rings, in deviations; about 1 for the true block. */
  readonly misfit: number;
  /** Misfit of the next best block or turn that looks different. */
  readonly next: number;
  readonly look: KnownLook;
}

const RING = 0.035;
const MOST = 9;

/** The best match; null where the project has no block to compare. */
export function bestMatch(
  looks: readonly KnownLook[],
  wedges: readonly NeutralWedge[],
  look: BlockLook,
  swatches: readonly Swatch[],
): Match | null {
  const kinds = swatches.length;
  const distance = wedges.map((wedge) => {
    const table = new Float32Array(look.rings * kinds);
    for (let ring = 0; ring < look.rings; ring += 1) {
      const seen = wedge.told.subarray(ring * 3, ring * 3 + 3);
      for (let kind = 0; kind < kinds; kind += 1)
        table[ring * kinds + kind] = Math.min(MOST, apart(seen, swatches[kind]!.told) / RING ** 2);
    }
    return table;
  });
  const total = look.weights.reduce((sum, one) => sum + one, 0) * wedges.length;
  const fits = looks.map((known) => {
    let sum = 0;
    known.wedges.forEach((fabrics, at) => {
      const table = distance[at]!;
      for (let ring = 0; ring < look.rings; ring += 1) {
        const kind = fabrics[ring]!;
        sum += look.weights[ring]! * (kind < 0 ? MOST / 3 : table[ring * kinds + kind]!);
      }
    });
    return { known, misfit: sum / total };
  });
  const sorted = fits.sort((one, other) => one.misfit - other.misfit);
  const best = sorted[0];
  if (!best) return null;
  const next = sorted.find(({ known }) => !sameLook(known, best.known));
  return {
    number: best.known.number,
    quarters: best.known.quarters,
    misfit: best.misfit,
    next: next?.misfit ?? MOST,
    look: best.known,
  };
}

function sameLook(one: KnownLook, other: KnownLook): boolean {
  return one.wedges.every((rings, at) => {
    const there = other.wedges[at]!;
    return rings === there || rings.every((fabric, ring) => fabric === there[ring]);
  });
}
