// The top as typed arrays: which cloth lies on which side of which block for every turn, and what each block weighs in value,
// colour and fabric. Terms are evaluated from it, by the analyser in full and by the arranger step by step.
import type { Band } from '../geometry/bands';
import { placeOnSide, SIDES } from '../geometry/contact';
import { layOut } from '../geometry/setting';
import { finishedBlock, rimLength, slope } from '../geometry/wedge';
import { standing } from '../model/find';
import type { Block, BlockId, Project, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import type { ClothTable } from './cloths';
import { type BlockFigures, blockFigures, type WedgeKinds, wedgeKinds } from './wallFigures';

/**
 * Conventions. Blocks, fabrics and cells are indices in document order; −1 is none. A wedge kind is a strip set and a tip:
 * kind = 2 × set + (0 up, 1 down). `standing` is the number of wedge steps place 1 stands clockwise of the top of the wall
 * (corner shift and turn together, model/find): 0 to N − 1. Sides are 0 top, 1 right, 2 bottom, 3 left, as on the wall.
 * Everything below `standingOf` follows the arrangement; everything else only the blocks and the cloth.
 */
export interface WallModel extends WedgeKinds, BlockFigures {
  readonly cloths: ClothTable;
  readonly wedge: WedgePlan;
  readonly perBlock: number;
  readonly rows: number;
  readonly columns: number;
  readonly fabricCount: number;
  readonly blocks: readonly BlockId[];

  /** Finished block, inches. */
  readonly blockSize: { readonly width: Inches; readonly height: Inches };
  /** Finished rim, inches, and the stretch of setting pieces along an upright (right, left) or level (top, bottom) side. */
  readonly rim: Inches;
  readonly cornerStretch: { readonly upright: Inches; readonly level: Inches };
  /** Whether rims lie on the right and left sides too (N divisible by 4); on top and bottom they always do. */
  readonly rimsUpright: boolean;
  /** What a contact across the sashing counts, 0–1; 1 without sashing. */
  readonly across: number;

  /** Cell beyond each side of a cell (cell × 4 + side), −1 at the edge of the top. */
  readonly beyond: Int32Array;
  /** Fabric of the sashing or border that touches each side of a cell, −1 where there is none. */
  readonly beside: Int32Array;
  /** Middle of each cell in quilt inches. */
  readonly cellX: Float64Array;
  readonly cellY: Float64Array;

  /** Standing of each block, its cell, and the block in each cell, as the project has them. */
  readonly standingOf: Int32Array;
  readonly cellOf: Int32Array;
  readonly blockIn: Int32Array;

  /** Clash between neighbouring wedge kinds along their radial seam, filled as asked; see radialClash. */
  readonly radialMemo: Map<number, RadialClash>;
}

/** One stretch of a radial seam where the two cloths are the same or alike. */
export interface RadialStretch {
  /** Index of the band in each wedge, from the rim. */
  readonly band: number;
  readonly nextBand: number;
  readonly fabric: number;
  readonly nextFabric: number;
  readonly likeness: number;
  /** Radii along the middle line, and length along the seam, inches. */
  readonly outer: Inches;
  readonly inner: Inches;
  readonly length: Inches;
}

/** All clashing stretches of one seam between two kinds, with the sums of length × likeness. */
export interface RadialClash {
  readonly stretches: readonly RadialStretch[];
  /** Inches of the same fabric on both sides. */
  readonly same: Inches;
  /** Inches of look-alikes, each counted by its likeness. */
  readonly alike: Inches;
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
  const kind = place === null ? -1 : model.kindAt[block * model.perBlock + place]!;
  return kind < 0 ? -1 : model.kindRim[kind]!;
}

/** What meets along the radial seam between two wedge kinds (`next` clockwise of `kind`). Symmetric in its sums. */
export function radialClash(model: WallModel, kind: number, next: number): RadialClash {
  const key = kind * model.kindRim.length + next;
  let found = model.radialMemo.get(key);
  if (!found) {
    found = measureRadial(model, model.kindBands[kind]!, model.kindBands[next]!);
    model.radialMemo.set(key, found);
  }
  return found;
}

function measureRadial(model: WallModel, bands: readonly Band[], nextBands: readonly Band[]): RadialClash {
  const { index, likeness } = model.cloths;
  const stretch = Math.sqrt(1 + slope(model.perBlock) ** 2);
  const stretches: RadialStretch[] = [];
  let same = 0;
  let alike = 0;
  bands.forEach((one, band) => {
    const fabric = index.get(one.fabric)!;
    nextBands.forEach((other, nextBand) => {
      const nextFabric = index.get(other.fabric)!;
      const alikeness = likeness[fabric * model.fabricCount + nextFabric]!;
      const outer = Math.min(one.outer, other.outer);
      const inner = Math.max(one.inner, other.inner);
      if (alikeness === 0 || outer - inner <= 1e-9) return;
      const length = (outer - inner) * stretch;
      if (fabric === nextFabric) same += length;
      else alike += length * alikeness;
      stretches.push({ band, nextBand, fabric, nextFabric, likeness: alikeness, outer, inner, length });
    });
  });
  return { stretches, same, alike };
}

/** A model and the project it was made from, so that the next one can take over what has not changed. */
export interface ModelledProject {
  readonly project: Project;
  readonly model: WallModel;
}

/**
 * Builds the model of a sound project with a wedge plan that leaves a block. Linear in blocks and in sets. From an earlier
 * one it takes the wedge kinds where sets, wedge and cloths are the very same, and the figures of blocks that are alike.
 */
export function wallModel(project: Project, cloths: ClothTable, earlier?: ModelledProject): WallModel {
  const { wedge, wall } = project;
  const rim = rimLength(wedge);
  const size = finishedBlock(wedge);
  const rimsUpright = wedge.perBlock % 4 === 0;
  const { sashing } = project.setting;
  const known =
    earlier &&
    earlier.model.cloths === cloths &&
    earlier.project.stripSets === project.stripSets &&
    earlier.project.wedge === project.wedge
      ? earlier
      : null;
  const kinds = known?.model ?? wedgeKinds(project, cloths);
  const figures =
    known && sameFigures(known.project, project) ? known.model : blockFigures(project, cloths, kinds);
  return {
    ...kinds,
    ...figures,
    cloths,
    wedge,
    perBlock: wedge.perBlock,
    rows: wall.rows,
    columns: wall.columns,
    fabricCount: cloths.fabrics.length,
    blocks: project.blocks.map((block) => block.id),
    blockSize: size,
    rim,
    cornerStretch: { level: size.width - rim, upright: rimsUpright ? size.height - rim : size.height },
    rimsUpright,
    across: sashing.where === 'none' ? 1 : sashingFactor(sashing.width, rim),
    ...cellsOf(project, cloths),
    ...hanging(project),
    radialMemo: known?.model.radialMemo ?? new Map(),
  };
}

/** Whether the same blocks, in the same order, hold the same wedges and corners; copies count as the same. */
function sameFigures(before: Project, after: Project): boolean {
  return (
    before.setting.cornerFabric === after.setting.cornerFabric &&
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

function cellsOf(project: Project, cloths: ClothTable) {
  const { rows, columns, cells } = project.wall;
  const { sashing, borders } = project.setting;
  const { centres } = layOut(project);
  const between = sashing.where === 'none' ? -1 : cloths.index.get(sashing.fabric)!;
  const border = borders[0] ? cloths.index.get(borders[0].fabric)! : -1;
  const outside = sashing.where === 'around' ? between : border;
  const beyond = new Int32Array(cells.length * 4).fill(-1);
  const beside = new Int32Array(cells.length * 4);
  cells.forEach((_, cell) => {
    const row = Math.floor(cell / columns);
    const column = cell % columns;
    const inside = [row > 0, column < columns - 1, row < rows - 1, column > 0];
    const step = [-columns, 1, columns, -1];
    inside.forEach((yes, side) => {
      beyond[cell * 4 + side] = yes ? cell + step[side]! : -1;
      beside[cell * 4 + side] = yes ? between : outside;
    });
  });
  return {
    beyond,
    beside,
    cellX: Float64Array.from(centres, (centre) => centre.x),
    cellY: Float64Array.from(centres, (centre) => centre.y),
  };
}

function hanging(project: Project) {
  const { blocks, wall, wedge } = project;
  const index = new Map(blocks.map((block, at) => [block.id, at]));
  const standingOf = Int32Array.from(blocks, (block) => standing(block, 0, wedge));
  const cellOf = new Int32Array(blocks.length).fill(-1);
  const blockIn = new Int32Array(wall.cells.length).fill(-1);
  wall.cells.forEach((cell, at) => {
    const block = cell ? index.get(cell.block) : undefined;
    if (!cell || block === undefined) return;
    blockIn[at] = block;
    cellOf[block] = at;
    standingOf[block] = standing(blocks[block]!, cell.turn, wedge);
  });
  return { standingOf, cellOf, blockIn };
}
