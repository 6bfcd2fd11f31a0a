// Colourways: which fabric stands for which, and the project with those fabrics exchanged. Blocks, wall and progress do not
// change; only the cloth does.

import { putOthers, type QuiltUse, quiltUses } from './fabricUses';
import type { Colourway, Fabric, FabricId, Project } from './project';
import { keepCorners } from './wallCells';

/** The fabrics of the quilt that a colourway can exchange, in the order of the project's list: all but those only in pictures. */
export function fabricsInUse(project: Project): Fabric[] {
  const used = new Set(dyedUses(project).map((use) => use.fabric));
  return project.fabrics.filter((fabric) => used.has(fabric.id));
}

/** The quilt's fabrics, then the made-up cloth of its colourways. All ids differ. */
export function everyCloth(project: Pick<Project, 'fabrics' | 'colourways'>): Fabric[] {
  return [...project.fabrics, ...project.colourways.flatMap((colourway) => colourway.cloth ?? [])];
}

/** The made-up cloth of a colourway that replaces some fabric, in the colourway's order. */
export function clothWorn({ cloth, swaps }: Colourway): Fabric[] {
  const standing = new Set(swaps.map((swap) => swap.by));
  return (cloth ?? []).filter((fabric) => standing.has(fabric.id));
}

/** The cloth that is on show: the quilt's fabrics, and what the colourway with the id `open` puts in their place. */
export function clothShown(
  { fabrics, colourways }: Pick<Project, 'fabrics' | 'colourways'>,
  open: string | null,
): Fabric[] {
  const opened = colourways.find(({ id }) => id === open);
  return opened ? [...fabrics, ...clothWorn(opened)] : [...fabrics];
}

/** The colourway without the made-up cloth in `gone`; its swaps do not change. */
export function withoutCloth(colourway: Colourway, gone: readonly Fabric[]): Colourway {
  const { cloth = [], ...rest } = colourway;
  const ids = new Set(gone.map((fabric) => fabric.id));
  const left = cloth.filter((fabric) => !ids.has(fabric.id));
  return left.length > 0 ? { ...rest, cloth: left } : rest;
}

/** The fabric that replaces `fabric` in a colourway; `fabric` itself where it is not exchanged. */
export function standsFor(colourway: Colourway, fabric: FabricId): FabricId {
  return colourway.swaps.find((swap) => swap.fabric === fabric)?.by ?? fabric;
}

/** What a colourway exchanges: not what is in a picture, which stays as it is. */
function dyedUses(project: Project): readonly QuiltUse[] {
  return quiltUses(project).filter(
    (use) =>
      use.purpose !== 'picturedBands' && !(use.purpose === 'blockCorners' && use.of.kind === 'pictured'),
  );
}

/** How many blocks are pictures: they stay as they are in every colourway. */
export function picturesInQuilt({ blocks }: Pick<Project, 'blocks'>): number {
  return blocks.filter((block) => block.kind === 'pictured').length;
}

/**
 * Exchanges the quilt's fabrics for those of a colourway, but in pictures. Mutates `project`, a draft or copy, except for its
 * lists of cloth.
 */
export function exchangeForColourway(project: Project, { swaps }: Colourway): void {
  const by = new Map(swaps.map((swap) => [swap.fabric, swap.by]));
  // The corners in a picture are sewn: they no longer follow the quilt's corners.
  for (const block of project.blocks) if (block.kind === 'pictured') keepCorners(project, block);
  putOthers(dyedUses(project), (fabric) => by.get(fabric) ?? fabric);
}

/**
 * A new project that looks as the quilt does in a colourway; `project` is not changed. It is a plan for another quilt of the
 * same pattern: sets keep their letters, widths and progress; cloth and strips on hand do not change. Made-up cloth that the
 * colourway uses moves from the colourway to the fabrics.
 */
export function inColourway(project: Project, colourway: Colourway): Project {
  const copy = structuredClone(project);
  exchangeForColourway(copy, colourway);
  const worn = clothWorn(colourway);
  return {
    ...copy,
    name: colourway.name,
    fabrics: worn.length > 0 ? [...project.fabrics, ...worn] : project.fabrics,
    colourways: project.colourways.map((one) => (one.id === colourway.id ? withoutCloth(one, worn) : one)),
  };
}
