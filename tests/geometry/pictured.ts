// Blocks turned into pictures of themselves, for tests: what a faultless reading of a photograph would say of a sewn block, worked
// out from the geometry of its wedges and not from the code that writes pictures out.
import { wedgeBands } from '../../src/geometry/bands';
import { findSet } from '../../src/model/find';
import type { Block, PicturedBlock, PicturedWedge, Place, Project } from '../../src/model/project';

/** The id of a picture that is nowhere: 64 digits that differ from number to number. */
export function pictureNumber(number: number): string {
  return number.toString(16).padStart(64, '0');
}

/** What shows of a wedge from the rim in; beyond `known` bands nothing is known. */
function shownWedge(project: Project, place: Place | null, known = Infinity): PicturedWedge {
  const set = place && findSet(project, place.set);
  if (!set) return { bands: [] };
  const bands = wedgeBands(set.strips, place.tip, project.wedge);
  return {
    bands: bands.map(({ fabric, outer, inner }, at) => ({
      fabric: at < known ? fabric : null,
      width: outer - inner,
      sure: at < known ? 0.9 : 0.2,
    })),
  };
}

/** A sewn block as a picture of itself; `known(place)` bands of each wedge are read. */
export function picturedOf(
  project: Project,
  block: Block,
  known: (place: number) => number = () => Infinity,
): PicturedBlock {
  const { id, number, cornerFabric, cornerShift } = block;
  return {
    id,
    kind: 'pictured',
    number,
    picture: pictureNumber(number),
    wedges: block.places.map((place, at) => shownWedge(project, place, known(at))),
    cornerFabric,
    cornerShift,
    progress: block.progress === 'joined' ? 'joined' : 'squared',
    places: [],
  };
}

/** Whether a block is one of those that `mask` picks, by its bits. */
export function inMask(mask: number, at: number): boolean {
  return ((mask >> (at % 30)) & 1) === 1;
}

/** The same quilt with the blocks of the mask as pictures of themselves. */
export function withPictures(
  project: Project,
  mask: number,
  known?: (block: number, place: number) => number,
): Project {
  const blocks = project.blocks.map((block, at) =>
    inMask(mask, at) ? picturedOf(project, block, (place) => known?.(at, place) ?? Infinity) : block,
  );
  return { ...project, blocks };
}

/** The quilt with the blocks of the mask sewn, corners and all. */
export function withSewn(project: Project, mask: number): Project {
  const blocks = project.blocks.map((block, at) =>
    inMask(mask, at) ? { ...block, progress: 'squared' as const } : block,
  );
  return { ...project, blocks };
}
