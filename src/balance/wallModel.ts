// The top as typed arrays: which cloth lies on which side of which block for every turn, and what each block weighs in value,
// colour and fabric. Terms are evaluated from it, by the analyser in full and by the arranger step by step.
import { type Band, wedgeBands } from '../geometry/bands';
import { cornerOutlines } from '../geometry/block';
import { placeOnSide, SIDES } from '../geometry/contact';
import { area } from '../geometry/point';
import { apothem, finishedBlock, rimLength, slope } from '../geometry/wedge';
import { standing } from '../model/find';
import type { Block, BlockId, Project, WedgePlan } from '../model/project';
import type { Inches } from '../model/units';
import type { ClothTable } from './cloths';

/**
 * Conventions. Blocks, fabrics and cells are indices in document order; −1 is none. A wedge kind is a strip set and a tip:
 * kind = 2 × set + (0 up, 1 down). `standing` is the number of wedge steps place 1 stands clockwise of the top of the wall
 * (corner shift and turn together, model/find): 0 to N − 1. Sides are 0 top, 1 right, 2 bottom, 3 left, as on the wall.
 * Everything below `standingOf` follows the arrangement; everything else only the blocks and the cloth.
 */
export interface WallModel {
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

  /** Bands of each wedge kind from the rim in; [] for sets without strips. */
  readonly kindBands: readonly (readonly Band[])[];
  /** Fabric on the rim of each kind. */
  readonly kindRim: Int32Array;
  /** Finished area of each kind, sq in, and its area-weighted means: L*, OKLab a and b, warmth. */
  readonly kindArea: Float64Array;
  readonly kindLightness: Float64Array;
  readonly kindA: Float64Array;
  readonly kindB: Float64Array;
  readonly kindWarmth: Float64Array;
  /** Area of each fabric in a wedge kind: kind × fabric, sq in. */
  readonly kindFabricArea: Float64Array;

  /** Wedge kind in each place: block × N + place. */
  readonly kindAt: Int32Array;
  /** Corner fabric of each block, and 1 where it is the quilt's own or background: such corners meet by design. */
  readonly corner: Int32Array;
  readonly cornerByDesign: Uint8Array;
  /** Means of each block with its corners: L*, OKLab a and b, warmth; area of cloth, sq in (0: an empty block). */
  readonly area: Float64Array;
  readonly lightness: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly warmth: Float64Array;
  /** Area of each fabric in the wedges of each block: block × fabric, sq in. Corners are not counted. */
  readonly fabricArea: Float64Array;

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

function wedgeKinds(project: Project, cloths: ClothTable): Kinds {
  const { stripSets, wedge } = project;
  const k = slope(wedge.perBlock);
  const count = 2 * stripSets.length;
  const fabricCount = cloths.fabrics.length;
  const kindBands = stripSets.flatMap((set) => [
    wedgeBands(set.strips, 'up', wedge),
    wedgeBands(set.strips, 'down', wedge),
  ]);
  const kindFabricArea = new Float64Array(count * fabricCount);
  const kindArea = new Float64Array(count);
  const means = [0, 1, 2, 3].map(() => new Float64Array(count));
  const axes = [cloths.lightness, cloths.a, cloths.b, cloths.warmth];
  kindBands.forEach((bands, kind) => {
    for (const band of bands) {
      const fabric = cloths.index.get(band.fabric)!;
      const size = k * (band.outer ** 2 - band.inner ** 2);
      kindFabricArea[kind * fabricCount + fabric]! += size;
      kindArea[kind]! += size;
      axes.forEach((axis, at) => {
        means[at]![kind]! += size * axis[fabric]!;
      });
    }
    for (const mean of means) mean[kind] = kindArea[kind]! > 0 ? mean[kind]! / kindArea[kind]! : 0;
  });
  return {
    kindBands,
    kindRim: Int32Array.from(kindBands, (bands) => (bands[0] ? cloths.index.get(bands[0].fabric)! : -1)),
    kindArea,
    kindLightness: means[0]!,
    kindA: means[1]!,
    kindB: means[2]!,
    kindWarmth: means[3]!,
    kindFabricArea,
  };
}

type Kinds = Pick<
  WallModel,
  'kindBands' | 'kindRim' | 'kindArea' | 'kindLightness' | 'kindA' | 'kindB' | 'kindWarmth' | 'kindFabricArea'
>;

function blockFigures(project: Project, cloths: ClothTable, kinds: Kinds) {
  const { blocks, setting, wedge } = project;
  const { perBlock } = wedge;
  const count = blocks.length;
  const fabricCount = cloths.fabrics.length;
  const setIndex = new Map(project.stripSets.map((set, at) => [set.id, at]));
  const cornerArea = apothem(wedge) > 0 ? cornerOutlines(wedge).reduce((sum, one) => sum + area(one), 0) : 0;
  const kindAt = new Int32Array(count * perBlock).fill(-1);
  const corner = new Int32Array(count);
  const cornerByDesign = new Uint8Array(count);
  const cloth = new Float64Array(count);
  const means = [0, 1, 2, 3].map(() => new Float64Array(count));
  const fabricArea = new Float64Array(count * fabricCount);
  const axes = [cloths.lightness, cloths.a, cloths.b, cloths.warmth];
  const kindAxes = [kinds.kindLightness, kinds.kindA, kinds.kindB, kinds.kindWarmth];
  for (let at = 0; at < count; at++) {
    const block = blocks[at]!;
    const own = cloths.index.get(block.cornerFabric ?? setting.cornerFabric)!;
    corner[at] = own;
    cornerByDesign[at] = cloths.background[own] || own === cloths.index.get(setting.cornerFabric) ? 1 : 0;
    let wedges = 0;
    for (let index = 0; index < perBlock; index++) {
      const place = block.places[index];
      if (!place) continue;
      const kind = 2 * setIndex.get(place.set)! + (place.tip === 'up' ? 0 : 1);
      kindAt[at * perBlock + index] = kind;
      const size = kinds.kindArea[kind]!;
      wedges += size;
      for (let axis = 0; axis < 4; axis++) means[axis]![at]! += size * kindAxes[axis]![kind]!;
      for (let fabric = 0; fabric < fabricCount; fabric++) {
        fabricArea[at * fabricCount + fabric]! += kinds.kindFabricArea[kind * fabricCount + fabric]!;
      }
    }
    // A block without wedges is no more than a plan: it weighs nothing.
    if (wedges === 0) continue;
    cloth[at] = wedges + cornerArea;
    for (let axis = 0; axis < 4; axis++) {
      means[axis]![at] = (means[axis]![at]! + cornerArea * axes[axis]![own]!) / cloth[at]!;
    }
  }
  return {
    kindAt,
    corner,
    cornerByDesign,
    area: cloth,
    lightness: means[0]!,
    a: means[1]!,
    b: means[2]!,
    warmth: means[3]!,
    fabricArea,
  };
}

function cellsOf(project: Project, cloths: ClothTable) {
  const { rows, columns, cells } = project.wall;
  const { sashing, borders } = project.setting;
  const size = finishedBlock(project.wedge);
  const gap = sashing.where === 'none' ? 0 : sashing.width;
  const start =
    borders.reduce((sum, border) => sum + border.width, 0) + (sashing.where === 'around' ? gap : 0);
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
    cellX: Float64Array.from(cells, (_, at) => start + (at % columns) * (size.width + gap) + size.width / 2),
    cellY: Float64Array.from(
      cells,
      (_, at) => start + Math.floor(at / columns) * (size.height + gap) + size.height / 2,
    ),
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
