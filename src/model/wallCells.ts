// Which cells the wall has and where each lies, straight and on point; which of them are plain squares, and what corner
// fabric a block gets there. Inches are geometry's.
import type { Block, FabricId, Project, Setting, Wall } from './project';

type Hanging = Pick<Project, 'wall' | 'setting'>;

/** How many cells the wall needs: rows × columns, on point (rows − 1) × (columns − 1) more in between. */
export function cellCount(rows: number, columns: number, layout: Setting['layout']): number {
  return rows * columns + (layout.kind === 'onPoint' ? (rows - 1) * (columns - 1) : 0);
}

/**
 * The half-grid place of a cell: straight, its row and column doubled; on point the cells in between lie at odd places. So
 * places run from 0 to 2 × rows − 2 and 2 × columns − 2.
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

/** Rows as people count them. */
export function rowCount({ wall, setting }: Hanging): number {
  return setting.layout.kind === 'onPoint' ? 2 * wall.rows - 1 : wall.rows;
}

/** The cell one step in a direction, for the keyboard; the same cell at the edge. On point up and down go by half rows. */
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

/** True in every other cell, the first of the wall false: a checkerboard. On point: true in between. */
function isSecond(index: number, { wall, setting }: Hanging): boolean {
  const { down, across } = halfPlace(index, wall);
  return setting.layout.kind === 'onPoint' ? down % 2 === 1 : ((down + across) / 2) % 2 === 1;
}

/** Whether a plain square lies in the cell; no block hangs there. */
export function isPlain(index: number, hanging: Hanging): boolean {
  const { plain } = hanging.setting;
  return plain !== null && isSecond(index, hanging) === (plain.cells === 'second');
}

/** Whether the cell lies along the edge of the top; on point: whether setting triangles touch it. */
function isOnEdge(index: number, wall: Wall): boolean {
  const { down, across } = halfPlace(index, wall);
  return down === 0 || across === 0 || down === 2 * wall.rows - 2 || across === 2 * wall.columns - 2;
}

/**
 * Corner fabric of a block in a cell (−1: on the side table): its own, else by the quilt's rule, else the quilt's. Corners
 * that are sewn on were given to the block for its own (editing/commands/blocks), so the rule never changes those.
 */
export function cornerFabricOf(project: Hanging, block: Pick<Block, 'cornerFabric'>, cell: number): FabricId {
  const { setting, wall } = project;
  if (block.cornerFabric !== null) return block.cornerFabric;
  const rule = setting.cornerRule;
  if (rule === null || cell < 0) return setting.cornerFabric;
  const second = rule.kind === 'edge' ? isOnEdge(cell, wall) : isSecond(cell, project);
  return second ? rule.fabric : setting.cornerFabric;
}
