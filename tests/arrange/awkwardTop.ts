// A wall on which every kind of contact occurs.
import type { Project } from '../../src/model/project';
import { cellCount } from '../../src/model/wallCells';
import { scrappyTop } from '../balance/tops';

/** A top with sashing, coloured corners, an empty cell, an empty place and few fabrics, so that every contact occurs. */
export function awkwardTop(seed: number, perBlock: 6 | 8 | 10 | 12): Project {
  const top = scrappyTop({ rows: 4, columns: 5, seed, perBlock, fabrics: 7, sets: 6 });
  top.wall.cells[seed % 20] = null;
  top.blocks[(seed + 3) % 20]!.places[2] = null;
  top.setting.sashing.where = (['none', 'between', 'around'] as const)[seed % 3]!;
  top.setting.sashing.fabric = 'c2';
  top.setting.borders = [{ fabric: 'c1', width: 3 }];
  top.setting.cornerFabric = seed % 2 === 0 ? 'c0' : 'f1';
  top.blocks[0]!.cornerFabric = 'c3';
  top.blocks[1]!.cornerFabric = 'c3';
  top.blocks[(seed + 5) % 20]!.places.fill(null);
  if (seed % 4 === 1 && perBlock % 4 === 0) hangOnPoint(top);
  return top;
}

/** An awkward top whose corners follow a rule, some of them of blocks that have corners of their own. */
export function ruledTop(seed: number, perBlock: 6 | 8 | 10 | 12): Project {
  const top = awkwardTop(seed, perBlock);
  top.setting.cornerRule = { kind: seed % 3 === 0 ? 'checkerboard' : 'edge', fabric: 'c4' };
  return top;
}

/** The same 20 blocks on point, 3 × 4 and 2 × 3 in between, which leaves two on the side table. */
function hangOnPoint(top: Project): void {
  top.setting.layout = { kind: 'onPoint', sides: 'c4', corners: 'c5' };
  if (top.setting.sashing.where === 'between') top.setting.sashing.where = 'around';
  top.wall = { rows: 3, columns: 4, cells: top.wall.cells.slice(0, cellCount(3, 4, top.setting.layout)) };
}
