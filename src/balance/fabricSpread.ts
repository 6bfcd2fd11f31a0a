// Where each fabric lies: area, pieces, centre, quarters, distance to the next block with it against chance, and how much it
// stands out. Background cloth is measured like the rest; whether it matters is for the findings.
import { direction } from '../geometry/block';
import type { Point } from '../geometry/point';
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
    const inBlocks = new Float64Array(nodes.blockOf.length);
    const holds = new Uint8Array(nodes.blockOf.length);
    let blocks = 0;
    for (let node = 0; node < holds.length; node++) {
      inBlocks[node] = model.fabricArea[nodes.blockOf[node]! * model.fabricCount + fabric]!;
      if (inBlocks[node]! > 0) {
        holds[node] = 1;
        blocks += 1;
      }
    }
    const own = earlier?.contrast ?? contrast![fabric]!;
    const gathered = earlier ?? {
      gathering: moran(graph, inBlocks),
      joins: joinCounts(graph, holds),
      nearest: distances!.measure(holds),
    };
    return {
      fabric: model.cloths.fabrics[fabric]!.id,
      area,
      pieces: places.pieces[fabric]!,
      blocks,
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

/** Sums over the pieces of each fabric. The middle of a band from r to R lies at 2/3 (R³ − r³)/(R² − r²) on its middle line. */
function whereItLies(model: WallModel) {
  const { fabricCount, perBlock } = model;
  const area = new Float64Array(fabricCount);
  const x = new Float64Array(fabricCount);
  const y = new Float64Array(fabricCount);
  const pieces = new Int32Array(fabricCount);
  const quarters = new Float64Array(fabricCount * 4);
  const allQuarters = [0, 0, 0, 0];
  const slope = Math.tan(Math.PI / perBlock);
  const kinds = model.kindBands.map((bands) =>
    bands.map((band) => ({
      fabric: model.cloths.index.get(band.fabric)!,
      area: slope * (band.outer ** 2 - band.inner ** 2),
      reach: (2 / 3) * ((band.outer ** 3 - band.inner ** 3) / (band.outer ** 2 - band.inner ** 2)),
    })),
  );
  const units = Array.from({ length: perBlock }, (_, toward) => direction(toward, perBlock));
  const middle = middleOfFilled(model);
  model.blockIn.forEach((block, cell) => {
    if (block < 0) return;
    for (let place = 0; place < perBlock; place++) {
      const kind = model.kindAt[block * perBlock + place]!;
      if (kind < 0) continue;
      const unit = units[(place + model.standingOf[block]!) % perBlock]!;
      for (const piece of kinds[kind]!) {
        const atX = model.cellX[cell]! + unit.x * piece.reach;
        const atY = model.cellY[cell]! + unit.y * piece.reach;
        area[piece.fabric]! += piece.area;
        x[piece.fabric]! += piece.area * atX;
        y[piece.fabric]! += piece.area * atY;
        pieces[piece.fabric]! += 1;
        // A piece on a middle line counts half on either side.
        const right = partBeyond(atX, middle.x);
        const lower = partBeyond(atY, middle.y);
        for (let quarter = 0; quarter < 4; quarter++) {
          const part = (quarter % 2 ? right : 1 - right) * (quarter > 1 ? lower : 1 - lower) * piece.area;
          quarters[piece.fabric * 4 + quarter]! += part;
          allQuarters[quarter]! += part;
        }
      }
    }
  });
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
