// Where the pieces of each fabric lie: area, pieces, sums for their middle, and how much of it lies in each quarter of the wall.
import { bandOutline, direction } from '../../geometry/block';
import { clippedTo } from '../../geometry/clip';
import { area as areaOf, type Outline, type Point, placed, tilted } from '../../geometry/point';
import type { WallModel } from './wallModel';

/** Bands of all wedge types in one row: those of type k from start[k] to start[k + 1]. */
interface Pieces {
  readonly start: Int32Array;
  readonly fabric: Int32Array;
  readonly area: Float64Array;
  readonly outer: Float64Array;
  readonly inner: Float64Array;
  /** Distance of the piece's middle from the block's: 2/3 (R³ − r³)/(R² − r²) for a band from r to R. */
  readonly reach: Float64Array;
}

/** Kept for each table of bands: after a turn it is the same. */
const kept = new WeakMap<WallModel['typeBands'], Pieces>();

function piecesOf(model: WallModel): Pieces {
  let pieces = kept.get(model.typeBands);
  if (!pieces) {
    pieces = measuredPieces(model);
    kept.set(model.typeBands, pieces);
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
    outer: Float64Array.from(all, (band) => band.outer),
    inner: Float64Array.from(all, (band) => band.inner),
    reach: Float64Array.from(
      all,
      ({ outer, inner }) => ((2 / 3) * (outer ** 3 - inner ** 3)) / (outer ** 2 - inner ** 2),
    ),
  };
}

/** Sums over the pieces of each fabric. A piece on a middle line of the wall counts on either side with what lies there. */
export function whereItLies(model: WallModel) {
  const { fabricCount, perBlock } = model;
  const area = new Float64Array(fabricCount);
  const x = new Float64Array(fabricCount);
  const y = new Float64Array(fabricCount);
  const pieces = new Int32Array(fabricCount);
  const quarters = new Float64Array(fabricCount * 4);
  const known = piecesOf(model);
  const { start, fabric, area: sizes, reach } = known;
  const units = Array.from({ length: perBlock }, (_, toward) =>
    tilted(direction(toward, perBlock), model.tilt),
  );
  const middle = middleOfFilled(model);
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    const from: Point = { x: model.cellX[cell]! - middle.x, y: model.cellY[cell]! - middle.y };
    const crossed =
      Math.min(Math.abs(from.x), Math.abs(from.y)) < model.rim / 2 / Math.sin(Math.PI / perBlock);
    for (let place = 0; place < perBlock; place++) {
      const type = model.typeAt[block * perBlock + place]!;
      if (type < 0) continue;
      const toward = (place + model.orientationOf[block]!) % perBlock;
      const unit = units[toward]!;
      for (let piece = start[type]!; piece < start[type + 1]!; piece++) {
        const cloth = fabric[piece]!;
        const size = sizes[piece]!;
        const atX = model.cellX[cell]! + unit.x * reach[piece]!;
        const atY = model.cellY[cell]! + unit.y * reach[piece]!;
        area[cloth]! += size;
        x[cloth]! += size * atX;
        y[cloth]! += size * atY;
        pieces[cloth]! += 1;
        if (crossed) {
          const outline = bandOutline(toward, known.outer[piece]!, known.inner[piece]!, perBlock);
          quarterAreas(placed(outline, 0, from, model.tilt)).forEach((part, quarter) => {
            quarters[cloth * 4 + quarter]! += part;
          });
        } else quarters[cloth * 4 + quarterOf(from)]! += size;
      }
    }
  }
  const allQuarters = [0, 0, 0, 0].map((_, quarter) =>
    area.reduce((sum, __, cloth) => sum + quarters[cloth * 4 + quarter]!, 0),
  );
  return { area, x, y, pieces, quarters, allQuarters };
}

/** Upper left, upper right, lower left, lower right of the middle, which is 0, 0. */
function quarterOf({ x, y }: Point): number {
  return (x > 0 ? 1 : 0) + (y > 0 ? 2 : 0);
}

/** What of an outline lies in each quarter round 0, 0, square inches. */
function quarterAreas(outline: Outline): number[] {
  const far = Math.max(...outline.flatMap(({ x, y }) => [Math.abs(x), Math.abs(y)]));
  return [0, 1, 2, 3].map((quarter) => {
    const to: Point = { x: quarter % 2 === 0 ? far : 0, y: quarter < 2 ? far : 0 };
    return areaOf(clippedTo(placed(outline, 0, to), far, far));
  });
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
