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
  /** What of the pieces of a wedge that a middle line may cross lies in each quarter, by how the wedge lies; see quartersOf. */
  readonly crossed: Map<string, Float64Array>;
}

/** Ways to lie that are remembered: those of the largest wall with a hundred sets, a few megabytes. */
const MOST_REMEMBERED = 40_000;

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
    crossed: new Map(),
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
  const half = halfBlock(model);
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = model.blockIn[cell]!;
    if (block < 0) continue;
    const from: Point = { x: model.cellX[cell]! - middle.x, y: model.cellY[cell]! - middle.y };
    const crossed = Math.abs(from.x) < half.x || Math.abs(from.y) < half.y;
    for (let place = 0; place < perBlock; place++) {
      const type = model.typeAt[block * perBlock + place]!;
      if (type < 0) continue;
      const toward = (place + model.orientationOf[block]!) % perBlock;
      const unit = units[toward]!;
      const parts = crossed ? quartersOf(known, model, { type, toward, from }) : null;
      for (let piece = start[type]!; piece < start[type + 1]!; piece++) {
        const cloth = fabric[piece]!;
        const size = sizes[piece]!;
        const atX = model.cellX[cell]! + unit.x * reach[piece]!;
        const atY = model.cellY[cell]! + unit.y * reach[piece]!;
        area[cloth]! += size;
        x[cloth]! += size * atX;
        y[cloth]! += size * atY;
        pieces[cloth]! += 1;
        if (parts) {
          const at = (piece - start[type]!) * 4;
          for (let quarter = 0; quarter < 4; quarter++)
            quarters[cloth * 4 + quarter]! += parts[at + quarter]!;
        } else quarters[cloth * 4 + quarterOf(from)]! += size;
      }
    }
  }
  const allQuarters = [0, 0, 0, 0].map((_, quarter) =>
    area.reduce((sum, __, cloth) => sum + quarters[cloth * 4 + quarter]!, 0),
  );
  return { area, x, y, pieces, quarters, allQuarters };
}

/** How far the wedges of a block reach from its middle across and down: only those nearer to a middle line of the wall cross it. */
function halfBlock({ perBlock, blockSize, tilt }: WallModel): Point {
  const far = { x: 0, y: 0 };
  for (let toward = 0; toward < perBlock; toward++) {
    for (const corner of bandOutline(toward, blockSize.height / 2, 0, perBlock)) {
      const at = tilted(corner, tilt);
      // Less than a rounding error over the line does not count.
      far.x = Math.max(far.x, Math.abs(at.x) - 1e-9);
      far.y = Math.max(far.y, Math.abs(at.y) - 1e-9);
    }
  }
  return far;
}

interface Lie {
  readonly type: number;
  readonly toward: number;
  /** The middle of the block from that of the wall. */
  readonly from: Point;
}

/** What of each piece of a wedge lies in each quarter, square inches, four for a piece. Remembered: a turn changes it for one block. */
function quartersOf(known: Pieces, model: WallModel, { type, toward, from }: Lie): Float64Array {
  const key = `${type} ${toward} ${from.x} ${from.y} ${model.tilt}`;
  let parts = known.crossed.get(key);
  if (parts) return parts;
  const [first, end] = [known.start[type]!, known.start[type + 1]!];
  parts = new Float64Array((end - first) * 4);
  for (let piece = first; piece < end; piece++) {
    const outline = bandOutline(toward, known.outer[piece]!, known.inner[piece]!, model.perBlock);
    parts.set(quarterAreas(placed(outline, 0, from, model.tilt)), (piece - first) * 4);
  }
  if (known.crossed.size >= MOST_REMEMBERED) known.crossed.clear();
  known.crossed.set(key, parts);
  return parts;
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
