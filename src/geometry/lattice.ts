// The neighbours of each cell in any setting: what lies beyond each side of a cell, how far away, and which fabric touches
// that side. Balance and the arranger ask only here.
import type { FabricId, Project, Setting } from '../model/project';
import type { Inches } from '../model/units';
import { cellAtHalfPlace, halfPlace, isPlain } from '../model/wallCells';
import { gapAfter } from './straightSetting';

/** What a side of a block lies against, but another block: sashing, border, a plain square or a setting triangle. */
export type AdjacentPart = 'sashing' | 'border' | 'plain' | 'triangle';

export interface CellSide {
  /** The neighbouring cell; −1 at the edge of the top and where a plain square lies. */
  readonly cell: number;
  /** Finished width of the sashing between the two cells, inches; 0 where the blocks meet. */
  readonly gap: Inches;
  /** What touches this side and its fabric; null where a block, nothing, or a pieced border of many fabrics does. */
  readonly setting: { readonly part: AdjacentPart; readonly fabric: FabricId } | null;
}

/**
 * The cells on a square grid along the sides of the blocks. On point the grid is slanted, so that some of its places are no
 * cell. Rows and columns count from 0.
 */
export interface Lattice {
  readonly rows: number;
  readonly columns: number;
  /** Row and column of each cell, in the order of wall.cells. */
  readonly rowOf: readonly number[];
  readonly columnOf: readonly number[];
  /** The sides of all cells at index cell × 4 + side: top, right, bottom, left of the block before the setting tilts it. */
  readonly sides: readonly CellSide[];
  /** Whether every neighbour is a cell at the same distance: straight, no plain squares, gaps of one width. */
  readonly even: boolean;
}

/** The sides of a plain square, which has no neighbours because no block hangs there. */
const NO_SIDE: CellSide = { cell: -1, gap: 0, setting: null };

/** Half-grid steps [down, across] to the four sides. */
const STRAIGHT = [[-2, 0], [0, 2], [2, 0], [0, -2]] as const; // biome-ignore format: a table
const ON_POINT = [[-1, 1], [1, 1], [1, -1], [-1, -1]] as const; // biome-ignore format: a table

/** The lattice of a wall in its setting. */
export function latticeOf(project: Pick<Project, 'wall' | 'setting'>): Lattice {
  const { wall, setting } = project;
  const onPoint = setting.layout.kind === 'onPoint';
  const places = wall.cells.map((_, cell) => halfPlace(cell, wall));
  const steps = onPoint ? ON_POINT : STRAIGHT;
  const span = wall.rows + wall.columns - 1;
  const { columnGaps, rowGaps } = setting.sashing;
  return {
    rows: onPoint ? span : wall.rows,
    columns: onPoint ? span : wall.columns,
    rowOf: places.map(({ down, across }) => (onPoint ? (down - across) / 2 + wall.columns - 1 : down / 2)),
    columnOf: places.map(({ down, across }) => (onPoint ? (down + across) / 2 : across / 2)),
    sides: places.flatMap((place, cell) => {
      const square = isPlain(cell, project);
      return steps.map(([down, across]) => (square ? NO_SIDE : sideOf(project, place, down, across)));
    }),
    even: !onPoint && setting.plain === null && !columnGaps?.length && !rowGaps?.length,
  };
}

function sideOf(
  project: Pick<Project, 'wall' | 'setting'>,
  from: { readonly down: number; readonly across: number },
  stepDown: number,
  stepAcross: number,
): CellSide {
  const { setting, wall } = project;
  const to = { down: from.down + stepDown, across: from.across + stepAcross };
  const neighbour = cellAtHalfPlace(to.down, to.across, project);
  const inside = neighbour >= 0;
  const plain = inside && isPlain(neighbour, project) ? setting.plain : null;
  const gap = inside ? gapBetween(setting, from, to) : 0;
  const sashed = setting.sashing.where === 'around' || (setting.sashing.where === 'between' && inside);
  return {
    cell: inside && plain === null ? neighbour : -1,
    gap,
    setting: sashed
      ? { part: 'sashing', fabric: setting.sashing.fabric }
      : inside
        ? plain && { part: 'plain', fabric: plain.fabric }
        : outside(setting, wall, to),
  };
}

function gapBetween(
  setting: Setting,
  from: { readonly down: number; readonly across: number },
  to: { readonly down: number; readonly across: number },
): Inches {
  const { sashing } = setting;
  if (sashing.where === 'none') return 0;
  if (setting.layout.kind === 'onPoint') return sashing.width;
  return from.down === to.down
    ? gapAfter(sashing, 'columnGaps', Math.min(from.across, to.across) / 2 + 1)
    : gapAfter(sashing, 'rowGaps', Math.min(from.down, to.down) / 2 + 1);
}

/** What touches a side at the edge of the blocks: on point a setting triangle, else the innermost border. */
function outside(
  { layout, borders }: Setting,
  wall: Project['wall'],
  to: { readonly down: number; readonly across: number },
): CellSide['setting'] {
  if (layout.kind === 'onPoint') {
    const level = to.down < 0 || to.down > 2 * wall.rows - 2;
    const upright = to.across < 0 || to.across > 2 * wall.columns - 2;
    return { part: 'triangle', fabric: level && upright ? layout.corners : layout.sides };
  }
  const border = borders[0];
  return border && border.keys === undefined ? { part: 'border', fabric: border.fabric } : null;
}
