// The fabric a new border starts with: one that is told apart from all it lies against, as far as the list of fabrics allows.
import { asPieced } from '../geometry/asPieced';
import { placeOnSide, SIDES } from '../geometry/contact';
import type { Outline } from '../geometry/point';
import { layOut, type SettingLayout } from '../geometry/setting';
import { findBlock, findSet, orientation } from '../model/find';
import type { FabricId, Place, Project } from '../model/project';
import type { Inches } from '../model/units';
import { cornerFabricOf, isPlain } from '../model/wallCells';
import { clothDistance, likeness } from './likeness';
import { printMix } from './print/printMix';

/**
 * The fabric for another border outside those there are: unlike everything along the edge of the top where the list has one such,
 * else unlike all of it but rims of wedges; of several the one that stands out most. `fabrics` has at least one.
 */
export function borderFabric(project: Project): FabricId {
  const { setting, rims } = alongTheEdge(project);
  const mixes = new Map(project.fabrics.map((fabric) => [fabric.id, printMix(fabric)]));
  const mixOf = (id: FabricId) => mixes.get(id)!;
  const meets = (fabric: FabricId, others: ReadonlySet<FabricId>) =>
    [...others].some(
      (other) =>
        other === fabric || likeness(mixOf(fabric), mixOf(other), project.preferences.lookalikes) > 0,
    );
  const ranked = project.fabrics.map(({ id }) => {
    const distances = [...setting].map((other) => clothDistance(mixOf(id), mixOf(other)));
    const worse = setting.has(id) ? 3 : meets(id, setting) ? 2 : meets(id, rims) ? 1 : 0;
    return { id, worse, apart: Math.min(...distances) };
  });
  return ranked.reduce((best, one) =>
    one.worse < best.worse || (one.worse === best.worse && one.apart > best.apart + 1e-9) ? one : best,
  ).id;
}

/** Fabrics along the outermost edge of the top: of the setting and the blocks' corners, and of the rims of wedges. */
function alongTheEdge(given: Project): { setting: Set<FabricId>; rims: Set<FabricId> } {
  const project = asPieced(given);
  const layout = layOut(project);
  const setting = new Set(
    layout.pieces.filter(({ outline }) => isAtEdge(outline, layout)).map((piece) => piece.fabric),
  );
  const rims = new Set<FabricId>();
  project.wall.cells.forEach((hung, cell) => {
    const sides = isPlain(cell, project) ? [] : sidesAtEdge(layout, cell);
    const block = hung && findBlock(project, hung.block);
    if (sides.length === 0) return;
    setting.add(block ? cornerFabricOf(project, block, cell) : project.setting.cornerFabric);
    if (!block || !hung) return;
    for (const side of sides) {
      const { perBlock } = project.wedge;
      const at = placeOnSide(SIDES[side]!, orientation(block, hung.turn, project.wedge), perBlock);
      const rim = at === null ? null : rimOf(project, block.places[at] ?? null);
      if (rim !== null) rims.add(rim);
    }
  });
  return { setting, rims };
}

function rimOf(project: Project, place: Place | null): FabricId | null {
  const strips = place && findSet(project, place.set)?.strips;
  return (place?.tip === 'up' ? strips?.[0] : strips?.at(-1))?.fabric ?? null;
}

const near = (one: Inches, other: Inches) => Math.abs(one - other) < 1e-6;

/** Whether an edge of the outline lies along the outermost edge of the top. */
function isAtEdge(outline: Outline, { width, height }: SettingLayout): boolean {
  return outline.some((from, at) => {
    const to = outline[(at + 1) % outline.length]!;
    const along = (ends: readonly [Inches, Inches], edges: readonly Inches[]) =>
      edges.some((edge) => near(ends[0], edge) && near(ends[1], edge));
    return along([from.x, to.x], [0, width]) || along([from.y, to.y], [0, height]);
  });
}

/** The sides (indices into SIDES) on which the block of a cell lies along the outermost edge; on point none does. */
function sidesAtEdge({ width, height, tilt, centres, block }: SettingLayout, cell: number): number[] {
  const { x, y } = centres[cell]!;
  if (tilt !== 0) return [];
  const gaps = [y - block.height / 2, width - x - block.width / 2, height - y - block.height / 2, x - block.width / 2]; // biome-ignore format: top, right, bottom, left
  return gaps.flatMap((gap, side) => (near(gap, 0) ? [side] : []));
}
