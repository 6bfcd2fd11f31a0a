// Which cells the wall has and where each lies, straight and on point; which cells are plain squares, and which corner fabric
// a block has in a cell. geometry/ computes inches.
import { cellIndexOf } from './find';
import type { Block, Cell, FabricId, Project, Setting, Wall } from './project';

type Hanging = Pick<Project, 'wall' | 'setting'>;

/** The number of cells: rows × columns; on point (rows − 1) × (columns − 1) more, in between. */
export function cellCount(rows: number, columns: number, layout: Setting['layout']): number {
  return rows * columns + (layout.kind === 'onPoint' ? (rows - 1) * (columns - 1) : 0);
}

/**
 * The half-grid place of a cell: its row and column doubled; on point the cells in between have odd places. Places run from 0
 * to 2 × rows − 2 down and from 0 to 2 × columns − 2 across.
 */
export function halfPlace(
  index: number,
  wall: Pick<Wall, 'rows' | 'columns'>,
): { down: number; across: number } {
  const { rows, columns } = wall;
  const first = rows * columns;
  if (index < first) return { down: 2 * Math.floor(index / columns), across: 2 * (index % columns) };
  const between = index - first;
  return {
    down: 2 * Math.floor(between / (columns - 1)) + 1,
    across: 2 * (between % (columns - 1)) + 1,
  };
}

/** The cell at a half-grid place, −1 where there is none. */
export function cellAtHalfPlace(down: number, across: number, { wall, setting }: Hanging): number {
  const { rows, columns } = wall;
  if (down < 0 || across < 0 || down > 2 * rows - 2 || across > 2 * columns - 2) return -1;
  if (down % 2 === 0 && across % 2 === 0) return (down / 2) * columns + across / 2;
  if (setting.layout.kind !== 'onPoint' || down % 2 === 0 || across % 2 === 0) return -1;
  return rows * columns + ((down - 1) / 2) * (columns - 1) + (across - 1) / 2;
}

/** Row and column as people count them, from 1. On point the rows in between count too: 2 × rows − 1 in all. */
export function rowAndColumn(index: number, { wall, setting }: Hanging): { row: number; column: number } {
  const { down, across } = halfPlace(index, wall);
  const column = Math.floor(across / 2) + 1;
  return setting.layout.kind === 'onPoint' ? { row: down + 1, column } : { row: down / 2 + 1, column };
}

/** The number of rows as people count them, on point with the rows in between. */
export function rowCount({ wall, setting }: Hanging): number {
  return setting.layout.kind === 'onPoint' ? 2 * wall.rows - 1 : wall.rows;
}

/**
 * The cell one step away, for the keyboard; `across` and `down` are −1, 0 or 1. At the edge it is the same cell. On point a
 * step up or down is half a row.
 */
export function cellToward(index: number, across: number, down: number, hanging: Hanging): number {
  const at = halfPlace(index, hanging.wall);
  const onPoint = hanging.setting.layout.kind === 'onPoint' && hanging.wall.columns > 1;
  if (across !== 0 || !onPoint) {
    const next = cellAtHalfPlace(at.down + 2 * down, at.across + 2 * across, hanging);
    return next < 0 ? index : next;
  }
  const right = cellAtHalfPlace(at.down + down, at.across + 1, hanging);
  const left = cellAtHalfPlace(at.down + down, at.across - 1, hanging);
  const wanted = at.down % 2 === 0 ? [right, left] : [left, right];
  return wanted.find((cell) => cell >= 0) ?? index;
}

/** True in every other cell, as on a checkerboard; false in the first cell. On point: true in the cells in between. */
function isSecond(index: number, { wall, setting }: Hanging): boolean {
  const { down, across } = halfPlace(index, wall);
  return setting.layout.kind === 'onPoint' ? down % 2 === 1 : ((down + across) / 2) % 2 === 1;
}

/** Whether the cell is a plain square, where no block hangs. */
export function isPlain(index: number, hanging: Hanging): boolean {
  const { plain } = hanging.setting;
  return plain !== null && isSecond(index, hanging) === (plain.cells === 'second');
}

/** Whether the cell lies along the edge of the top; on point, whether it touches setting triangles. */
function isOnEdge(index: number, wall: Wall): boolean {
  const { down, across } = halfPlace(index, wall);
  return down === 0 || across === 0 || down === 2 * wall.rows - 2 || across === 2 * wall.columns - 2;
}

/**
 * The corner fabric of a block in a cell (−1: on the side table): its own, else by the quilt's rule, else the quilt's. When
 * corners are sewn on, `keepCorners` makes their fabric the block's own, so that the rule never changes them.
 */
export function cornerFabricOf(project: Hanging, block: Pick<Block, 'cornerFabric'>, cell: number): FabricId {
  const { setting, wall } = project;
  if (block.cornerFabric !== null) return block.cornerFabric;
  const rule = setting.cornerRule;
  if (rule === null || cell < 0) return setting.cornerFabric;
  const second = rule.kind === 'edge' ? isOnEdge(cell, wall) : isSecond(cell, project);
  return second ? rule.fabric : setting.cornerFabric;
}

/** Makes the fabric of a block's corners its own: they keep it wherever the block hangs later. Mutates the block. */
export function keepCorners(project: Project, block: Block): void {
  block.cornerFabric = cornerFabricOf(project, block, cellIndexOf(project, block.id));
}

/** Whether two cells hold the same block with the same turn, or both none. A pin makes no difference. */
export function hangsAlike(one: Cell | null | undefined, other: Cell | null | undefined): boolean {
  return one?.block === other?.block && one?.turn === other?.turn;
}
