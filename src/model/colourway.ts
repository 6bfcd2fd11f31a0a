// The same quilt in other cloth: which fabric stands for which, and the project as it looks then. The blocks, the wall and
// the sewing stay; only the cloth changes.

import { exchangeFabrics, quiltUses } from './fabricUses';
import type { Colourway, Fabric, FabricId, Project } from './project';

/** Fabrics the quilt is made of: in its strip sets, corners, setting and backing; in the order of the project's list. */
export function fabricsInUse(project: Project): Fabric[] {
  const used = new Set(quiltUses(project).map((use) => use.fabric));
  return project.fabrics.filter((fabric) => used.has(fabric.id));
}

/** All cloth there is: the quilt's fabrics, then the made-up cloth of its colourways. Their ids differ. */
export function everyCloth(project: Pick<Project, 'fabrics' | 'colourways'>): Fabric[] {
  return [...project.fabrics, ...project.colourways.flatMap((colourway) => colourway.cloth ?? [])];
}

/** The made-up cloth of a colourway that stands for something, in its order. */
export function clothWorn({ cloth, swaps }: Colourway): Fabric[] {
  const standing = new Set(swaps.map((swap) => swap.by));
  return (cloth ?? []).filter((fabric) => standing.has(fabric.id));
}

/** The colourway without some of its made-up cloth; its swaps stay. */
export function withoutCloth(colourway: Colourway, gone: readonly Fabric[]): Colourway {
  const { cloth = [], ...rest } = colourway;
  const ids = new Set(gone.map((fabric) => fabric.id));
  const left = cloth.filter((fabric) => !ids.has(fabric.id));
  return left.length > 0 ? { ...rest, cloth: left } : rest;
}

/** The fabric that stands for another in a colourway; the other itself where nothing was chosen for it. */
export function standsFor(colourway: Colourway, fabric: FabricId): FabricId {
  return colourway.swaps.find((swap) => swap.fabric === fabric)?.by ?? fabric;
}

/** Puts the cloth of a colourway into the quilt in place, in a draft or copy; the lists of cloth stay as they are. */
export function exchangeForColourway(project: Project, { swaps }: Colourway): void {
  const by = new Map(swaps.map((swap) => [swap.fabric, swap.by]));
  exchangeFabrics(project, (fabric) => by.get(fabric) ?? fabric);
}

/**
 * The project in a colourway: a new project, the one passed in unchanged. Sets keep their letters, widths and progress,
 * since it is a plan for another quilt of the same pattern; cloth and strips on hand are left as they are. Its made-up
 * cloth, as far as it is worn, is then among the fabrics and no longer the colourway's.
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
