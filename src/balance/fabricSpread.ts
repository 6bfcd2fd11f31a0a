// Where each fabric lies: area, pieces, centre, quarters, distance to the next block with it against chance, and how much it
// stands out. Background cloth is measured like the rest; whether it matters is for the findings.
import { direction } from '../geometry/block';
import { type Point, tilted } from '../geometry/point';
import type { FabricId } from '../model/project';
import type { Inches } from '../model/units';
import { type Autocorrelation, type JoinCounts, joinCounts, moran } from './autocorrelation';
import type { BlockNodes, ContactGraph } from './contactGraph';
import { type Nearest, NearestTable } from './nearest';
import type { WallModel } from './wallModel';

export interface FabricSpread {
  readonly fabric: FabricId;
  /** In the wedges that hang: square inches, pieces, blocks that hold some. */
  readonly area: number;
  readonly pieces: number;
  readonly blocks: number;
  /** Middle of its area on the top, quilt inches. */
  readonly centre: Point;
  /** Shares of its area in the quarters of the filled wall: upper left, upper right, lower left, lower right. */
  readonly quarters: readonly [number, number, number, number];
  /** 1 when its quarters hold as much as the quarters of all wedges do, 0 when it lies where nothing else is. */
  readonly evenness: number;
  /** Distance from a block with it to the nearest other one, middle to middle; null where fewer than 3 blocks hold it. */
  readonly nearest: Nearest | null;
  /** Moran's I of its area in the blocks, and joins of blocks that hold it: does it gather? */
  readonly gathering: Autocorrelation;
  readonly joins: JoinCounts;
  /** OKLab distance to the mean of the other cloth in the blocks it is in. */
  readonly contrast: number;
  /** Contrast × area as a share of the sum over all fabrics, 0–1. */
  readonly dominance: number;
}

/**
 * The spread of every fabric used in hung wedges, in document order. `sameHanging` may give an earlier answer for the same
 * blocks in the same cells: then only where the pieces lie is measured again, as after a turn.
 */
export function fabricSpreads(
  model: WallModel,
  nodes: BlockNodes,
  graph: ContactGraph,
  sameHanging: readonly FabricSpread[] | null,
): FabricSpread[] {
  const places = whereItLies(model);
  const contrast = sameHanging ? null : contrasts(model, nodes);
  const kept = new Map(sameHanging?.map((one) => [one.fabric, one]));
  const distances = sameHanging ? null : new NearestTable(model, nodes);
  const used = model.cloths.fabrics.map((_, fabric) => fabric).filter((fabric) => places.area[fabric]! > 0);
  const power = used.reduce((sum, fabric) => sum + (contrast?.[fabric] ?? 0) * places.area[fabric]!, 0);
  const all = places.allQuarters;
  const whole = all.reduce((sum, one) => sum + one, 0);
  return used.map((fabric) => {
    const area = places.area[fabric]!;
    const quarters = [0, 1, 2, 3].map((quarter) => places.quarters[fabric * 4 + quarter]! / area);
    const earlier = kept.get(model.cloths.fabrics[fabric]!.id);
    const own = earlier?.contrast ?? contrast![fabric]!;
    const gathered = earlier ?? gatheredBlocks(model, nodes, graph, fabric, distances!);
    return {
      fabric: model.cloths.fabrics[fabric]!.id,
      area,
      pieces: places.pieces[fabric]!,
      blocks: gathered.blocks,
      centre: { x: places.x[fabric]! / area, y: places.y[fabric]! / area },
      quarters: [quarters[0]!, quarters[1]!, quarters[2]!, quarters[3]!],
      evenness: 1 - quarters.reduce((sum, one, at) => sum + Math.abs(one - all[at]! / whole), 0) / 2,
      nearest: gathered.nearest,
      gathering: gathered.gathering,
      joins: gathered.joins,
      contrast: own,
      dominance: earlier?.dominance ?? (power > 0 ? (own * area) / power : 0),
    };
  });
}

function gatheredBlocks(
  model: WallModel,
  nodes: BlockNodes,
  graph: ContactGraph,
  fabric: number,
  distances: NearestTable,
): Pick<FabricSpread, 'blocks' | 'nearest' | 'gathering' | 'joins'> {
  const areas = new Float64Array(nodes.blockOf.length);
  const holds = new Uint8Array(nodes.blockOf.length);
  let blocks = 0;
  for (let node = 0; node < holds.length; node++) {
    areas[node] = model.fabricArea[nodes.blockOf[node]! * model.fabricCount + fabric]!;
    if (areas[node] === 0) continue;
    holds[node] = 1;
    blocks += 1;
  }
  return {
    blocks,
    nearest: distances.measure(holds),
    gathering: moran(graph, areas),
    joins: joinCounts(graph, holds),
  };
}

/** Bands of all wedge kinds in one row: those of kind k from start[k] to start[k + 1]. */
interface Pieces {
  readonly start: Int32Array;
  readonly fabric: Int32Array;
  readonly area: Float64Array;
  /** Distance of the piece's middle from the block's: 2/3 (R³ − r³)/(R² − r²) for a band from r to R. */
  readonly reach: Float64Array;
}

/** Kept for each table of bands: after a turn it is the same. */
const known = new WeakMap<WallModel['kindBands'], Pieces>();

function piecesOf(model: WallModel): Pieces {
  let pieces = known.get(model.kindBands);
  if (!pieces) {
    pieces = measuredPieces(model);
    known.set(model.kindBands, pieces);
  }
  return pieces;
}

function measuredPieces(model: WallModel): Pieces {
  const slope = Math.tan(Math.PI / model.perBlock);
  const start = new Int32Array(model.kindBands.length + 1);
  const all = model.kindBands.flat();
  model.kindBands.forEach((bands, kind) => {
    start[kind + 1] = start[kind]! + bands.length;
  });
  return {
    start,
    fabric: Int32Array.from(all, (band) => model.cloths.index.get(band.fabric)!),
    area: Float64Array.from(all, (band) => slope * (band.outer ** 2 - band.inner ** 2)),
    reach: Float64Array.from(
      all,
      ({ outer, inner }) => ((2 / 3) * (outer ** 3 - inner ** 3)) / (outer ** 2 - inner ** 2),
    ),
  };
}

/** Sums over the pieces of each fabric. A piece on a middle line of the wall counts half on either side. */
function whereItLies(model: WallModel) {
  const { fabricCount, perBlock } = model;
  const area = new Float64Array(fabricCount);
  const x = new Float64Array(fabricCount);
  const y = new Float64Array(fabricCount);
  const pieces = new Int32Array(fabricCount);
  const quarters = new Float64Array(fabricCount * 4);
  const { start, fabric, area: sizes, reach } = piecesOf(model);
  const units = Array.from({ length: perBlock }, (_, toward) =>
    tilted(direction(toward, perBlock), model.tilt),
  );
  const middle = middleOfFilled(model);
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    for (let place = 0; place < perBlock; place++) {
      const kind = model.kindAt[block * perBlock + place]!;
      if (kind < 0) continue;
      const unit = units[(place + model.standingOf[block]!) % perBlock]!;
      for (let piece = start[kind]!; piece < start[kind + 1]!; piece++) {
        const cloth = fabric[piece]!;
        const size = sizes[piece]!;
        const atX = model.cellX[cell]! + unit.x * reach[piece]!;
        const atY = model.cellY[cell]! + unit.y * reach[piece]!;
        area[cloth]! += size;
        x[cloth]! += size * atX;
        y[cloth]! += size * atY;
        pieces[cloth]! += 1;
        const right = size * partBeyond(atX, middle.x);
        const lower = partBeyond(atY, middle.y);
        quarters[cloth * 4]! += (size - right) * (1 - lower);
        quarters[cloth * 4 + 1]! += right * (1 - lower);
        quarters[cloth * 4 + 2]! += (size - right) * lower;
        quarters[cloth * 4 + 3]! += right * lower;
      }
    }
  }
  const allQuarters = [0, 0, 0, 0].map((_, quarter) =>
    area.reduce((sum, __, cloth) => sum + quarters[cloth * 4 + quarter]!, 0),
  );
  return { area, x, y, pieces, quarters, allQuarters };
}

function partBeyond(at: Inches, middle: Inches): number {
  if (Math.abs(at - middle) < 1e-6) return 0.5;
  return at > middle ? 1 : 0;
}

/** Middle of the box round the cells in which something hangs. */
export function middleOfFilled(model: WallModel): Point {
  const ends = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  model.blockIn.forEach((block, cell) => {
    if (block < 0) return;
    ends.left = Math.min(ends.left, model.cellX[cell]!);
    ends.right = Math.max(ends.right, model.cellX[cell]!);
    ends.top = Math.min(ends.top, model.cellY[cell]!);
    ends.bottom = Math.max(ends.bottom, model.cellY[cell]!);
  });
  return { x: (ends.left + ends.right) / 2, y: (ends.top + ends.bottom) / 2 };
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
