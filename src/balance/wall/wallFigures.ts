// Computes the figures of wedges and blocks that do not depend on their place: fabric on the rims, means of value and colour,
// areas of fabric.

import type { ClothTable } from '../../cloth/cloths';
import { type Band, wedgeBands } from '../../geometry/bands';
import { cornerOutlines } from '../../geometry/block';
import { area } from '../../geometry/point';
import { apothem, slope } from '../../geometry/wedge';
import type { Project } from '../../model/project';
import { cornerFabricOf } from '../../model/wallCells';

/** Wedges by type: type = 2 × set + (0 up, 1 down). */
export interface WedgeTypes {
  /** Bands of each wedge type from the rim in; [] for sets without strips. */
  readonly typeBands: readonly (readonly Band[])[];
  /** Fabric on the rim of each type. */
  readonly typeRim: Int32Array;
  /** Finished area of each type, sq in, and its area-weighted means: L*, OKLab a and b, warmth. */
  readonly typeArea: Float64Array;
  readonly typeLightness: Float64Array;
  readonly typeA: Float64Array;
  readonly typeB: Float64Array;
  readonly typeWarmth: Float64Array;
  /** Area of each fabric in a wedge type: type × fabric, sq in. */
  readonly typeFabricArea: Float64Array;
}

/** Blocks in document order; places are block × N + place. */
export interface BlockFigures {
  /** Wedge type in each place: block × N + place. */
  readonly typeAt: Int32Array;
  /**
   * Corner fabric of each block in the cell it hangs in, and 1 where it is the quilt's own, by its rule, or background: such
   * corners meet by design.
   */
  readonly corner: Int32Array;
  readonly cornerByDesign: Uint8Array;
  /** 1 for blocks whose corners follow the quilt's rule: in another cell they have that cell's corner. */
  readonly ruled: Uint8Array;
  /** The corner fabric the rule gives each cell; empty without a rule. */
  readonly ruledCorner: Int32Array;
  /** Finished corner triangles of one block, sq in. */
  readonly cornerArea: number;
  /** Means of each block with its corners: L*, OKLab a and b, warmth; area of cloth, sq in (0: an empty block). */
  readonly area: Float64Array;
  readonly lightness: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
  readonly warmth: Float64Array;
  /** Area of each fabric in the wedges of each block: block × fabric, sq in. Corners are not counted. */
  readonly fabricArea: Float64Array;
}

/** The wedges every set gives, tip up and tip down. */
export function wedgeTypes(
  { stripSets, wedge }: Pick<Project, 'stripSets' | 'wedge'>,
  cloths: ClothTable,
): WedgeTypes {
  const k = slope(wedge.perBlock);
  const count = 2 * stripSets.length;
  const fabricCount = cloths.fabrics.length;
  const typeBands = stripSets.flatMap((set) => [
    wedgeBands(set.strips, 'up', wedge),
    wedgeBands(set.strips, 'down', wedge),
  ]);
  const typeFabricArea = new Float64Array(count * fabricCount);
  const typeArea = new Float64Array(count);
  const means = [0, 1, 2, 3].map(() => new Float64Array(count));
  const axes = [cloths.lightness, cloths.a, cloths.b, cloths.warmth];
  typeBands.forEach((bands, type) => {
    for (const band of bands) {
      const fabric = cloths.index.get(band.fabric)!;
      const size = k * (band.outer ** 2 - band.inner ** 2);
      typeFabricArea[type * fabricCount + fabric]! += size;
      typeArea[type]! += size;
      axes.forEach((axis, at) => {
        means[at]![type]! += size * axis[fabric]!;
      });
    }
    for (const mean of means) mean[type] = typeArea[type]! > 0 ? mean[type]! / typeArea[type]! : 0;
  });
  return {
    typeBands,
    typeRim: Int32Array.from(typeBands, (bands) => (bands[0] ? cloths.index.get(bands[0].fabric)! : -1)),
    typeArea,
    typeLightness: means[0]!,
    typeA: means[1]!,
    typeB: means[2]!,
    typeWarmth: means[3]!,
    typeFabricArea,
  };
}

/** What each block holds and what it comes to. */
export function blockFigures(project: Project, cloths: ClothTable, types: WedgeTypes): BlockFigures {
  const { blocks, setting, wedge } = project;
  const { perBlock } = wedge;
  const count = blocks.length;
  const fabricCount = cloths.fabrics.length;
  const setIndex = new Map(project.stripSets.map((set, at) => [set.id, at]));
  const cornerArea = apothem(wedge) > 0 ? cornerOutlines(wedge).reduce((sum, one) => sum + area(one), 0) : 0;
  const typeAt = new Int32Array(count * perBlock).fill(-1);
  const corner = new Int32Array(count);
  const cornerByDesign = new Uint8Array(count);
  const ruled = Uint8Array.from(blocks, (block) => (setting.cornerRule && !block.cornerFabric ? 1 : 0));
  const ruledCorner = Int32Array.from(
    setting.cornerRule ? project.wall.cells.keys() : [],
    (cell) => cloths.index.get(cornerFabricOf(project, { cornerFabric: null }, cell))!,
  );
  const cloth = new Float64Array(count);
  const means = [0, 1, 2, 3].map(() => new Float64Array(count));
  const fabricArea = new Float64Array(count * fabricCount);
  const axes = [cloths.lightness, cloths.a, cloths.b, cloths.warmth];
  const typeAxes = [types.typeLightness, types.typeA, types.typeB, types.typeWarmth];
  const rule = setting.cornerRule;
  const byDesign = new Set(
    [setting.cornerFabric, ...(rule ? [rule.fabric] : [])].map((id) => cloths.index.get(id)),
  );
  const cells = new Map(rule ? project.wall.cells.map((cell, at) => [cell?.block, at]) : []);
  for (let at = 0; at < count; at++) {
    const block = blocks[at]!;
    const own = cloths.index.get(cornerFabricOf(project, block, cells.get(block.id) ?? -1))!;
    corner[at] = own;
    cornerByDesign[at] = cloths.background[own] || byDesign.has(own) ? 1 : 0;
    let wedges = 0;
    for (let index = 0; index < perBlock; index++) {
      const place = block.places[index];
      if (!place) continue;
      const type = 2 * setIndex.get(place.set)! + (place.tip === 'up' ? 0 : 1);
      typeAt[at * perBlock + index] = type;
      const size = types.typeArea[type]!;
      wedges += size;
      for (let axis = 0; axis < 4; axis++) means[axis]![at]! += size * typeAxes[axis]![type]!;
      for (let fabric = 0; fabric < fabricCount; fabric++) {
        fabricArea[at * fabricCount + fabric]! += types.typeFabricArea[type * fabricCount + fabric]!;
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
    typeAt,
    corner,
    cornerByDesign,
    ruled,
    ruledCorner,
    cornerArea,
    area: cloth,
    lightness: means[0]!,
    a: means[1]!,
    b: means[2]!,
    warmth: means[3]!,
    fabricArea,
  };
}
