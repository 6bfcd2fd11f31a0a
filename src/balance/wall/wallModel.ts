// The top as typed arrays: which cloth lies on which side of which block for every turn, and what each block weighs in value,
// colour and fabric. Terms are evaluated from it, by the analyser in full and by the arranger step by step.

import type { ClothTable } from '../../cloth/cloths';
import { asPieced } from '../../geometry/asPieced';
import { placeOnSide, SIDES } from '../../geometry/contact';
import { type AdjacentPart, latticeOf } from '../../geometry/lattice';
import { layOut } from '../../geometry/setting';
import { finishedBlock, rimLength } from '../../geometry/wedge';
import { orientation } from '../../model/find';
import type { Block, BlockId, Project, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import type { WedgeSeams } from '../clashes/wedgeSeams';
import { type BlockFigures, blockFigures, type WedgeTypes, wedgeTypes } from './wallFigures';

/**
 * Conventions. Blocks, fabrics and cells are indices in document order; −1 is none. A wedge type is a strip set and a tip:
 * type = 2 × set + (0 up, 1 down). `orientation` is the number of wedge steps place 1 stands clockwise of the top of the wall
 * (corner shift and turn together, model/find): 0 to N − 1. Sides are 0 top, 1 right, 2 bottom, 3 left, as on the wall.
 * Everything below `orientationOf` follows the arrangement; everything else only the blocks and the cloth.
 */
export interface WallModel extends WedgeTypes, BlockFigures, WedgeSeams {
  readonly wedge: WedgePlan;
  /** The grid the cells lie on, along the sides of the blocks (geometry/lattice): on point it is slanted and has gaps. */
  readonly rows: number;
  readonly columns: number;
  readonly blocks: readonly BlockId[];

  /** Finished block, inches. */
  readonly blockSize: { readonly width: Inches; readonly height: Inches };
  /** Finished rim, inches, and the stretch of setting pieces along an upright (right, left) or level (top, bottom) side. */
  readonly rim: Inches;
  readonly cornerStretch: { readonly upright: Inches; readonly level: Inches };
  /** Whether rims lie on the right and left sides too (N divisible by 4); on top and bottom they always do. */
  readonly rimsUpright: boolean;
  /** What a contact across the sashing counts, 0–1; 1 without sashing. Where gaps differ, across the widest. */
  readonly sashingFactor: number;
  /** Degrees clockwise the setting turns every block by. */
  readonly tilt: 0 | 45;
  /** Straight, no plain squares, gaps of one width: `sashingFactor` holds for every side, and every place of the grid is a cell. */
  readonly even: boolean;

  /** Cell beyond each side of a cell (cell × 4 + side), −1 at the edge of the top. */
  readonly neighbourCell: Int32Array;
  /** Fabric of what touches each side of a cell but no block (sashing, border, …), −1 where there is none; and what it is. */
  readonly settingFabric: Int32Array;
  readonly settingPart: readonly (AdjacentPart | null)[];
  /** What a contact across each side of a cell counts, 0–1. */
  readonly sashingFactorAt: Float64Array;
  /** Row and column of each cell on the grid, and the cell of each place of it (row × columns + column), −1 for none. */
  readonly rowOf: Int32Array;
  readonly columnOf: Int32Array;
  readonly cellAt: Int32Array;
  /** Middle of each cell in quilt inches. */
  readonly cellX: Float64Array;
  readonly cellY: Float64Array;

  /** Orientation of each block, its cell, and the block in each cell, as the project has them. */
  readonly orientationOf: Int32Array;
  readonly cellOf: Int32Array;
  readonly blockIn: Int32Array;
}

/**
 * What a contact across sashing counts: ½ for every quarter of a rim that lies between, so 2^(−4·width/rim). Grouping by
 * nearness falls exponentially with relative distance (Kubovy, Holcombe and Wagemans, 'On the lawfulness of grouping by
 * proximity', 1998; cited from memory); the half-value is our choice: about 1½" on a 14" block. 1 for no sashing.
 */
export function sashingFactor(width: Inches, rim: Inches): number {
  return 2 ** ((-4 * width) / rim);
}

/** The side rim's fabric of a block as it stands, −1 for a side without a rim or an empty place. */
export function sideRim(model: WallModel, block: number, stands: number, side: number): number {
  const place = placeOnSide(SIDES[side]!, stands, model.perBlock);
  const type = place === null ? -1 : model.typeAt[block * model.perBlock + place]!;
  return type < 0 ? -1 : model.typeRim[type]!;
}

/** Whether the block in a cell counts where weight and evenness are measured: one without wedges does not. */
export function filled(model: WallModel, cell: number): boolean {
  const block = model.blockIn[cell]!;
  return block >= 0 && model.area[block]! > 0;
}

/** The corner fabric of a block hung in a cell: its own, or that of the cell by the quilt's rule. −1 is the side table. */
export function cornerIn(model: WallModel, block: number, cell: number): number {
  return cell >= 0 && model.ruled[block] ? model.ruledCorner[cell]! : model.corner[block]!;
}

/** A model and the project it was made from, its pictured blocks written out, so that the next one can take over what has not changed. */
export interface ModelledProject {
  readonly project: Project;
  readonly model: WallModel;
}

/**
 * Builds the model of a sound project with a wedge plan that leaves a block. Linear in blocks and in sets. From an earlier
 * one it takes the wedge types where sets, wedge and cloths are the very same, and the figures of blocks that are alike.
 */
export function wallModel(given: Project, cloths: ClothTable, earlier?: ModelledProject): WallModel {
  const project = asPieced(given);
  const { wedge } = project;
  const rim = rimLength(wedge);
  const size = finishedBlock(wedge);
  const rimsUpright = wedge.perBlock % 4 === 0;
  const known =
    earlier &&
    earlier.model.cloths === cloths &&
    earlier.project.stripSets === project.stripSets &&
    earlier.project.wedge === project.wedge
      ? earlier
      : null;
  const types = known?.model ?? wedgeTypes(project, cloths);
  const figures =
    known && sameFigures(known.project, project) ? known.model : blockFigures(project, cloths, types);
  return {
    // An earlier model stands for its types and figures: what is new comes after them.
    ...types,
    ...figures,
    ...(known && sameCells(known.project, project) ? cellsIn(known.model) : cellsOf(project, cloths, rim)),
    cloths,
    wedge,
    perBlock: wedge.perBlock,
    fabricCount: cloths.fabrics.length,
    blocks: project.blocks.map((block) => block.id),
    blockSize: size,
    rim,
    cornerStretch: { level: size.width - rim, upright: rimsUpright ? size.height - rim : size.height },
    rimsUpright,
    ...hanging(project),
    radialMemo: known?.model.radialMemo ?? new Map(),
  };
}

/** Whether the cells lie as before, whatever hangs in them. */
function sameCells(before: Project, after: Project): boolean {
  return (
    before.setting === after.setting &&
    before.wall.rows === after.wall.rows &&
    before.wall.columns === after.wall.columns
  );
}

/** Whether the same blocks, in the same order, hold the same wedges and corners; copies count as the same. */
function sameFigures(before: Project, after: Project): boolean {
  return (
    before.setting.cornerFabric === after.setting.cornerFabric &&
    // By rule the corners follow the cells.
    before.setting.cornerRule === null &&
    after.setting.cornerRule === null &&
    before.blocks.length === after.blocks.length &&
    after.blocks.every((block, at) => sameBlock(before.blocks[at]!, block))
  );
}

/** Whether two blocks are one and the same: number, wedges, corners. How far they are sewn does not count. */
export function sameBlock(one: Block, other: Block): boolean {
  if (one === other) return true;
  return (
    one.id === other.id &&
    one.number === other.number &&
    one.cornerFabric === other.cornerFabric &&
    one.cornerShift === other.cornerShift &&
    one.places.length === other.places.length &&
    one.places.every((place, at) => {
      const there = other.places[at]!;
      return place === there || (place?.set === there?.set && place?.tip === there?.tip);
    })
  );
}

type Cells = Pick<
  WallModel,
  | 'rows'
  | 'columns'
  | 'sashingFactor'
  | 'tilt'
  | 'even'
  | 'neighbourCell'
  | 'settingFabric'
  | 'settingPart'
  | 'sashingFactorAt'
  | 'rowOf'
  | 'columnOf'
  | 'cellAt'
  | 'cellX'
  | 'cellY'
>;

function cellsIn(model: WallModel): Cells {
  const { rows, columns, sashingFactor, tilt, even, neighbourCell, settingFabric, settingPart } = model;
  const { sashingFactorAt, rowOf, columnOf, cellAt, cellX, cellY } = model;
  return {
    rows,
    columns,
    sashingFactor,
    tilt,
    even,
    neighbourCell,
    settingFabric,
    settingPart,
    sashingFactorAt,
    rowOf,
    columnOf,
    cellAt,
    cellX,
    cellY,
  };
}

function cellsOf(project: Project, cloths: ClothTable, rim: Inches): Cells {
  const lattice = latticeOf(project);
  const layout = layOut(project);
  const { rows, columns, sides } = lattice;
  const sashingFactorAt = Float64Array.from(sides, (side) =>
    side.gap === 0 ? 1 : sashingFactor(side.gap, rim),
  );
  const widest = sides.reduce((most, side) => (side.cell < 0 ? most : Math.max(most, side.gap)), 0);
  const { sashing } = project.setting;
  const usual = sashing.where === 'none' ? 0 : sashing.width;
  const cellAt = new Int32Array(rows * columns).fill(-1);
  lattice.rowOf.forEach((row, cell) => {
    cellAt[row * columns + lattice.columnOf[cell]!] = cell;
  });
  return {
    rows,
    columns,
    sashingFactor: sashingFactor(lattice.even ? usual : widest, rim),
    tilt: layout.tilt,
    even: lattice.even,
    neighbourCell: Int32Array.from(sides, (side) => side.cell),
    settingFabric: Int32Array.from(sides, (side) =>
      side.setting ? cloths.index.get(side.setting.fabric)! : -1,
    ),
    settingPart: sides.map((side) => side.setting?.part ?? null),
    sashingFactorAt,
    rowOf: Int32Array.from(lattice.rowOf),
    columnOf: Int32Array.from(lattice.columnOf),
    cellAt,
    cellX: Float64Array.from(layout.centres, (middle) => middle.x),
    cellY: Float64Array.from(layout.centres, (middle) => middle.y),
  };
}

function hanging(project: Project) {
  const { blocks, wall, wedge } = project;
  const index = new Map(blocks.map((block, at) => [block.id, at]));
  const orientationOf = Int32Array.from(blocks, (block) => orientation(block, 0, wedge));
  const cellOf = new Int32Array(blocks.length).fill(-1);
  const blockIn = new Int32Array(wall.cells.length).fill(-1);
  wall.cells.forEach((cell, at) => {
    const block = cell ? index.get(cell.block) : undefined;
    if (!cell || block === undefined) return;
    blockIn[at] = block;
    cellOf[block] = at;
    orientationOf[block] = orientation(blocks[block]!, cell.turn, wedge);
  });
  return { orientationOf, cellOf, blockIn };
}
