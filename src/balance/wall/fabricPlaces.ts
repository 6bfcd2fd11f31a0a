// Where the pieces of each fabric lie: area, pieces, sums for their middle, and how much of it lies in each quarter of the wall.
import { direction } from '../../geometry/block';
import { type Point, tilted } from '../../geometry/point';
import type { Inches } from '../../model/units';
import type { WallModel } from './wallModel';

/** Bands of all wedge types in one row: those of type k from start[k] to start[k + 1]. */
interface Pieces {
  readonly start: Int32Array;
  readonly fabric: Int32Array;
  readonly area: Float64Array;
  /** Distance of the piece's middle from the block's: 2/3 (R³ − r³)/(R² − r²) for a band from r to R. */
  readonly reach: Float64Array;
}

/** Kept for each table of bands: after a turn it is the same. */
const known = new WeakMap<WallModel['typeBands'], Pieces>();

function piecesOf(model: WallModel): Pieces {
  let pieces = known.get(model.typeBands);
  if (!pieces) {
    pieces = measuredPieces(model);
    known.set(model.typeBands, pieces);
  }
  return pieces;
}

function measuredPieces(model: WallModel): Pieces {
  const slope = Math.tan(Math.PI / model.perBlock);
  const start = new Int32Array(model.typeBands.length + 1);
  const all = model.typeBands.flat();
  model.typeBands.forEach((bands, type) => {
    start[type + 1] = start[type]! + bands.length;
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
export function whereItLies(model: WallModel) {
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
      const type = model.typeAt[block * perBlock + place]!;
      if (type < 0) continue;
      const unit = units[(place + model.orientationOf[block]!) % perBlock]!;
      for (let piece = start[type]!; piece < start[type + 1]!; piece++) {
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
