// A wall on which every kind of contact occurs.
import type { Project } from '../../src/model/project';
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
  return top;
}
