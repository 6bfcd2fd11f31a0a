// Rims counted by hand, without balance: the outermost band of each wedge against that of the next place.
import { wedgeBands } from '../../../src/geometry/bands';
import { findSet } from '../../../src/model/find';
import type { Block, Project } from '../../../src/model/project';

/** Seams of a block at which both rims are of one fabric. */
export function sameRims(project: Project, block: Block): number {
  const rims = block.places.map((place) => {
    const set = place && findSet(project, place.set);
    return set ? wedgeBands(set.strips, place.tip, project.wedge)[0]?.fabric : undefined;
  });
  return rims.filter((rim, place) => rim !== undefined && rim === rims[(place + 1) % rims.length]).length;
}
