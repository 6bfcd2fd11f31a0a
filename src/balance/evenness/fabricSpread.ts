// Measures how each fabric lies on the top: area, pieces, centre, quarters, distance to the next wedge with it and joins of rims
// against chance, and how much it stands out. Background is measured too; the findings decide whether it matters.
import type { Point } from '../../geometry/point';
import type { FabricId } from '../../model/project';
import { type BlockNodes, type ContactGraph, evenWeights, type WedgeNodes } from '../wall/contactGraph';
import { whereItLies } from '../wall/fabricPlaces';
import type { WallModel } from '../wall/wallModel';
import { type Autocorrelation, type JoinCounts, joinsOfLabels, moran } from './autocorrelation';
import type { Layers } from './layers';
import { type Nearest, type NearestTable, placeOnWall } from './nearest';

export interface FabricSpread {
  readonly fabric: FabricId;
  /** In the wedges that hang: square inches and the share of all their cloth; pieces, wedges and blocks that hold some. */
  readonly area: number;
  readonly share: number;
  readonly pieces: number;
  readonly wedges: number;
  readonly blocks: number;
  /** Middle of its area on the top, quilt inches. */
  readonly centre: Point;
  /** Shares of its area in the quarters of the filled wall: upper left, upper right, lower left, lower right. */
  readonly quarters: readonly [number, number, number, number];
  /** 1 when its quarters hold as much as the quarters of all wedges do, 0 when it lies where nothing else is. */
  readonly evenness: number;
  /** Distance from a wedge with it to the nearest other one, by area; null where fewer than 3 wedges hold it. */
  readonly nearest: Nearest | null;
  /** Wedges that have it on the rim, and how often two of them are neighbours, in the block or across an edge. */
  readonly rims: number;
  readonly joins: JoinCounts;
  /** Moran's I of its area in the blocks: does it hang together? */
  readonly clustering: Autocorrelation;
  /** OKLab distance to the mean of the other cloth in the blocks it is in. */
  readonly contrast: number;
  /** Contrast × area as a share of the sum over all fabrics, 0–1. */
  readonly dominance: number;
}

/**
 * The spread of every fabric used in hung wedges, in document order. `sameHanging` may give an earlier answer for the same
 * blocks in the same cells: then only what a turn changes is measured again.
 */
export function fabricSpreads(
  model: WallModel,
  layers: Pick<Layers, 'wedges' | 'wedgeNodes' | 'blocks' | 'blockNodes'>,
  distances: NearestTable,
  sameHanging: readonly FabricSpread[] | null,
): FabricSpread[] {
  const places = whereItLies(model);
  const contrast = sameHanging ? null : contrasts(model, layers.blockNodes);
  const kept = new Map(sameHanging?.map((one) => [one.fabric, one]));
  const used = model.cloths.fabrics.map((_, fabric) => fabric).filter((fabric) => places.area[fabric]! > 0);
  const power = used.reduce((sum, fabric) => sum + (contrast?.[fabric] ?? 0) * places.area[fabric]!, 0);
  const whole = places.allQuarters.reduce((sum, one) => sum + one, 0);
  const contacts = rimJoins(model, layers);
  const hung = hungWedges(model, layers.wedgeNodes);
  const areas = new Float64Array(model.blockIn.length * model.perBlock);
  return used.map((fabric) => {
    const area = places.area[fabric]!;
    const quarters = [0, 1, 2, 3].map((quarter) => places.quarters[fabric * 4 + quarter]! / area);
    const off = quarters.reduce((sum, one, at) => sum + Math.abs(one - places.allQuarters[at]! / whole), 0);
    const earlier = kept.get(model.cloths.fabrics[fabric]!.id);
    const own = earlier?.contrast ?? contrast![fabric]!;
    const inBlocks = earlier ?? spreadOverBlocks(model, layers.blockNodes, layers.blocks.graph, fabric);
    const wedges = areasOnWall(model, hung, fabric, areas);
    return {
      fabric: model.cloths.fabrics[fabric]!.id,
      area,
      share: area / whole,
      pieces: places.pieces[fabric]!,
      wedges,
      blocks: inBlocks.blocks,
      centre: { x: places.x[fabric]! / area, y: places.y[fabric]! / area },
      quarters: [quarters[0]!, quarters[1]!, quarters[2]!, quarters[3]!],
      evenness: 1 - off / 2,
      nearest: distances.measure(areas),
      rims: contacts.rims[fabric]!,
      joins: contacts.joins[fabric]!,
      clustering: inBlocks.clustering,
      contrast: own,
      dominance: earlier?.dominance ?? (power > 0 ? (own * area) / power : 0),
    };
  });
}

function spreadOverBlocks(
  model: WallModel,
  nodes: BlockNodes,
  graph: ContactGraph,
  fabric: number,
): Pick<FabricSpread, 'blocks' | 'clustering'> {
  const areas = Float64Array.from(
    nodes.blockOf,
    (block) => model.fabricArea[block * model.fabricCount + fabric]!,
  );
  return {
    blocks: areas.reduce((sum, area) => sum + (area > 0 ? 1 : 0), 0),
    clustering: moran(graph, areas),
  };
}

/** Where on the wall every hung wedge lies, and its kind. */
function hungWedges(model: WallModel, { wedgeOf }: WedgeNodes) {
  return {
    types: wedgeOf.map((wedge) => model.typeAt[wedge]!),
    places: wedgeOf.map((wedge) =>
      placeOnWall(model, Math.floor(wedge / model.perBlock), wedge % model.perBlock),
    ),
  };
}

/** Area of a fabric in each place of the wall, into `areas`; how many wedges hold some. */
function areasOnWall(
  { fabricCount, typeFabricArea }: WallModel,
  { types, places }: ReturnType<typeof hungWedges>,
  fabric: number,
  areas: Float64Array,
): number {
  let count = 0;
  for (let wedge = 0; wedge < types.length; wedge++) {
    const area = typeFabricArea[types[wedge]! * fabricCount + fabric]!;
    areas[places[wedge]!] = area;
    if (area > 0) count += 1;
  }
  return count;
}

/** Rims of each fabric, and the contacts between wedges that both have it there; each contact counts once, however long. */
function rimJoins(model: WallModel, { wedges, wedgeNodes }: Pick<Layers, 'wedges' | 'wedgeNodes'>) {
  const labels = wedgeNodes.wedgeOf.map((wedge) => model.typeRim[model.typeAt[wedge]!]!);
  const rims = new Int32Array(model.fabricCount);
  for (const label of labels) rims[label]! += 1;
  return { rims, joins: joinsOfLabels(evenWeights(wedges.graph), labels, model.fabricCount) };
}

/** OKLab distance of each fabric to the area-weighted mean of the other wedge cloth in the blocks that hold it. */
function contrasts(model: WallModel, nodes: BlockNodes): Float64Array {
  const { fabricCount, cloths, fabricArea } = model;
  const axes = [cloths.oklabL, cloths.a, cloths.b];
  const around = axes.map(() => new Float64Array(fabricCount));
  const weight = new Float64Array(fabricCount);
  for (const block of nodes.blockOf) {
    const row = fabricArea.subarray(block * fabricCount, (block + 1) * fabricCount);
    let total = 0;
    for (const size of row) total += size;
    const sums = axes.map((axis) => row.reduce((sum, size, f) => sum + size * axis[f]!, 0));
    for (let f = 0; f < fabricCount; f++) {
      const own = row[f]!;
      if (own === 0) continue;
      weight[f]! += total - own;
      axes.forEach((axis, at) => {
        around[at]![f]! += sums[at]! - own * axis[f]!;
      });
    }
  }
  return Float64Array.from(weight, (whole, f) =>
    whole <= 0 ? 0 : Math.hypot(...axes.map((axis, at) => axis[f]! - around[at]![f]! / whole)),
  );
}
