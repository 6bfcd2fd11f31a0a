// A photographed wall as it would be hung: which cells are blocks of the quilt, and which blocks are new.

import type { PhotographedCell, PhotographedWall } from '../../editing/pictured/hangPhotographed';
import { turnsOf } from '../../model/find';
import type { PictureId } from '../../model/picture/picture';
import type { Block, Project } from '../../model/project';
import { withCorrected } from './corrected';
import type { WallCell, WallPhoto } from './wallPhoto';

/** The block of the quilt that a cell shows, with its turn there. */
export interface KnownCell {
  readonly block: Block;
  readonly turn: number;
}

/**
 * By cell: the block of the quilt it shows, or null. Where two cells look like the same block, it is the surer one; a cell that a
 * person took for a new block is none.
 */
export function knownCells(project: Project, cells: readonly WallCell[]): (KnownCell | null)[] {
  const best = new Map<number, number>();
  cells.forEach((cell, at) => {
    const known = knownOf(cell);
    if (!known) return;
    const other = best.get(known.number);
    if (other === undefined || known.sure > knownOf(cells[other]!)!.sure) best.set(known.number, at);
  });
  return cells.map((cell, at) => {
    const known = knownOf(cell);
    if (!known || best.get(known.number) !== at) return null;
    const block = project.blocks.find(({ number }) => number === known.number);
    const turns = turnsOf(project.wedge.perBlock);
    return block ? { block, turn: Math.round((known.quarters * turns) / 4) % turns } : null;
  });
}

function knownOf({ empty, anew, read }: WallCell) {
  return empty || anew ? null : (read?.block.known ?? null);
}

/** The wall to hang; `pictureOf` says under which id the picture of a cell is kept. Cells that were not read are empty. */
export function wallToHang(
  project: Project,
  { grid, cells }: WallPhoto,
  pictureOf: (cell: number) => PictureId,
): PhotographedWall {
  const known = knownCells(project, cells);
  return {
    rows: grid.rows,
    columns: grid.columns,
    cells: cells.map((cell, at): PhotographedCell => {
      const one = known[at];
      if (one) return { kind: 'known', block: one.block.id, turn: one.turn };
      if (cell.empty || !cell.read) return null;
      const wedges = withCorrected(cell.read.block.shown, cell.corrected);
      return {
        kind: 'new',
        read: { picture: pictureOf(at), wedges, cornerShift: 0, cornerFabric: null },
      };
    }),
  };
}
