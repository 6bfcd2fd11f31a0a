// The whole list of cloth: every fabric of the quilt, the backing and the batting.
import { layOut } from '../../geometry/setting';
import { wedgeProblem } from '../../geometry/wedge';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { isPlain } from '../../model/wallCells';
import { type BackingLayout, backingLayouts, bestBacking } from './backing';
import { type BattingSize, battingFor } from './batting';
import { type ClothToBuy, INCHES_IN, sellingUnit, toBuy } from './clothLength';
import { type FabricYardage, fabricYardage } from './fabricYardage';
import { neededPieces } from './neededPieces';
import type { CuttingScope } from './setStrips';

export interface BackingYardage {
  readonly layout: BackingLayout;
  /** All layouts in question, least cloth first. */
  readonly others: readonly BackingLayout[];
  readonly buy: ClothToBuy;
  readonly cost: number | null;
}

export interface Yardage {
  /** Fabrics with something to cut, in document order. */
  readonly fabrics: readonly FabricYardage[];
  /** Null where no block can be made from the wedge. */
  readonly backing: BackingYardage | null;
  /** Packaged sizes that cover the backing's size, smallest first. */
  readonly batting: readonly BattingSize[];
  /** What the figures leave out. */
  readonly remarks: readonly Phrase[];
}

/** Cloth for the whole quilt, or for what is still to cut. */
export function yardage(project: Project, scope: CuttingScope): Yardage {
  const pieces = neededPieces(project, scope);
  const fabrics = project.fabrics
    .map((fabric) => ({ fabric, rows: pieces.filter((piece) => piece.fabric === fabric.id) }))
    .filter(({ rows }) => rows.length > 0)
    .map(({ fabric, rows }) => fabricYardage(project, fabric, rows, scope));
  const backing = backingYardage(project);
  const size = backing?.layout.size;
  return {
    fabrics,
    backing,
    batting: size ? battingFor(size.width, size.height) : [],
    remarks: remarks(project),
  };
}

/** The backing of the top as the setting makes it; null where there is no top. */
function backingYardage(project: Project): BackingYardage | null {
  if (wedgeProblem(project.wedge)) return null;
  const { backing } = project.buying;
  const top = layOut(project);
  const seams = 2 * project.wedge.outerSeam;
  const need = {
    width: top.width + seams,
    height: top.height + seams,
    overhang: backing.overhang,
    clothWidth: backing.width ?? project.preferences.usableWidth,
    seam: backing.seam,
    oneWay: false,
  };
  const layout = bestBacking(need, backing.pieced);
  if (!layout) return null;
  const unit = sellingUnit(project);
  const buy = toBuy(layout.cloth, project.buying, unit);
  const price = backing.price ?? project.buying.price;
  const cost = price === null ? null : (buy.inches / INCHES_IN[unit]) * price;
  return { layout, others: backingLayouts(need), buy, cost };
}

/** Price of everything listed, the backing too; null while a price is missing. */
export function totalCost(list: Pick<Yardage, 'fabrics' | 'backing'>): number | null {
  const costs = [...list.fabrics.map((one) => one.cost), ...(list.backing ? [list.backing.cost] : [])];
  return costs.reduce((sum, cost) => (sum === null || cost === null ? null : sum + cost), 0 as number | null);
}

function remarks(project: Project): Phrase[] {
  const problem = wedgeProblem(project.wedge);
  if (problem) return [problem];
  const found: Phrase[] = [];
  const empty = project.wall.cells.filter((cell, index) => cell === null && !isPlain(index, project)).length;
  if (empty > 0) {
    found.push(
      counted(
        empty,
        'One place of the wall is empty; the corners of a block there are not reckoned.',
        '{count} places of the wall are empty; the corners of blocks there are not reckoned.',
      ),
    );
  }
  if (project.setting.binding === null) {
    found.push(phrase('No binding is chosen yet, so none is reckoned.'));
  }
  return found;
}
