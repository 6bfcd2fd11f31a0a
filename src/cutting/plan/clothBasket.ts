// Collects what the largest top is planned from: the cloth and strips of a project that may go into new sets, as far as they can
// be cut.
import type { Project } from '../../model/project';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { availableWedges } from '../wedges/yield';
import { straightened } from './clothPieces';
import type { ClothBasket } from './largestTop';
import type { WidthPart } from './setTotals';

/**
 * The basket for sets of these widths. Background fabric is set aside for corners and sashing. Cloth on hand loses what straightening
 * takes (buying.straighten); a piece that is gone by it is left out. Strips in sewn sets count as part of the sets.
 */
export function clothBasket(project: Project, widths: readonly WidthPart[]): ClothBasket {
  const fabrics = project.fabrics.filter((fabric) => !fabric.background);
  const free = new Set(fabrics.map((fabric) => fabric.id));
  const wedges = project.stripSets.map((set) => availableWedges(set, project.wedge));
  const there = wedges.reduce((sum, one) => ({ up: sum.up + one.up, down: sum.down + one.down }), {
    up: 0,
    down: 0,
  });
  return {
    fabrics,
    clothOnHand: project.clothOnHand
      .filter((row) => free.has(row.fabric))
      .map((row) => ({ ...row, depth: straightened(row, project.buying.straighten) }))
      .filter((row) => row.depth > 0),
    stripsOnHand: stripsLeftBeside(project.stripsOnHand, project.stripSets).filter((row) =>
      free.has(row.fabric),
    ),
    wedge: project.wedge,
    widths,
    ...(project.stripSets.length > 0 ? { there } : {}),
  };
}
