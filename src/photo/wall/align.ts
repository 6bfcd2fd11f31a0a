// Lays a lattice on the seams of the corner triangles: where each is seen beside where it should be, and the lattice of least
// squares through all of them. Seams that are hidden or doubtful count little.
import { direction } from '../../geometry/block';
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import type { Plane } from '../pixels/pixels';
import { sampleInto } from '../pixels/sample';
import { projected } from '../plane/homography';
import { bent, lensOf } from '../plane/lens';
import { solved } from '../plane/solve';
import type { CellShape } from './cellShape';
import { type Lattice, latticeTo } from './lattice';

/** A place on a seam: its cell, where in it, in blocks from its top left corner, and the same a little further out. */
interface Place {
  readonly row: number;
  readonly column: number;
  readonly on: Point;
  readonly out: Point;
}

/** A place and by how many pixels, along a unit vector, its seam lies off. */
interface Seen extends Place {
  readonly x: number;
  readonly y: number;
  readonly off: number;
  readonly weight: number;
}

/** Aligns the lattice, measured again from nearer each time; `cells` are the numbers by rows of those that hold blocks. */
export function* aligned(
  plane: Plane,
  start: Lattice,
  cell: CellShape,
  cells: readonly number[],
): InParts<Lattice> {
  let lattice = start;
  for (const reach of [0.1, 0.06, 0.04, 0.03]) {
    const now = lattice;
    const seen: Seen[] = [];
    for (const at of cells) {
      yield null;
      const places = seamPlaces(now, cell, at);
      seen.push(...places.flatMap((place) => offsetOf(plane, now, cell, place, reach)));
    }
    if (seen.length < 24) return lattice;
    lattice = fitted(plane, lattice, cell, seen);
  }
  return lattice;
}

/** Shares of half a seam at which it is measured. */
const ALONG = [-0.6, -0.2, 0.2, 0.6];

function seamPlaces(lattice: Lattice, { shape }: CellShape, at: number): Place[] {
  const { perBlock, rim, halfWidth, halfHeight } = shape;
  const [row, column] = [Math.floor(at / lattice.columns), at % lattice.columns];
  const half = Math.tan(Math.PI / perBlock) * rim;
  const places: Place[] = [];
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    if (Math.abs(out.x) * rim > halfWidth - 0.02 * rim || Math.abs(out.y) * rim > halfHeight - 0.02 * rim)
      continue;
    for (const share of ALONG) {
      const point = (radius: number) => ({
        x: (out.x * radius - out.y * share * half + halfWidth) / (2 * halfWidth),
        y: (out.y * radius + out.x * share * half + halfHeight) / (2 * halfWidth),
      });
      places.push({ row, column, on: point(rim), out: point(rim * 1.02) });
    }
  }
  return places;
}

/** From a point of a cell to the picture. */
function mapOf(plane: Plane, lattice: Lattice, tall: number): (place: Place, point: Point) => Point {
  const to = latticeTo(lattice, tall);
  const lens = lensOf(plane, lattice.bend);
  return ({ row, column }, { x, y }) =>
    bent(lens, projected(to, { x: column * (1 + lattice.gap) + x, y: row * (tall + lattice.gap) + y }));
}

/** Differences of colour that are a seam, OKLab. */
const SEEN = 0.06;

/** Where the colours change most across a seam; nothing where they hardly change. */
function offsetOf(
  plane: Plane,
  lattice: Lattice,
  { tall, shape }: CellShape,
  place: Place,
  reach: number,
): Seen[] {
  const map = mapOf(plane, lattice, tall);
  const [on, out] = [map(place, place.on), map(place, place.out)];
  const long = Math.hypot(out.x - on.x, out.y - on.y);
  const [x, y] = [(out.x - on.x) / long, (out.y - on.y) / long];
  // Two hundredths of the rim lie between the two.
  const most = (reach * long * 2 * shape.halfWidth) / (0.02 * shape.rim);
  const pitch = 0.5;
  const wide = 2;
  const half = Math.ceil(most / pitch);
  const colours = new Float32Array((2 * (half + wide) + 1) * 3);
  for (let step = -half - wide; step <= half + wide; step += 1)
    sampleInto(plane, on.x + x * step * pitch, on.y + y * step * pitch, colours, (step + half + wide) * 3);
  const steps = Array.from({ length: 2 * half + 1 }, (_, at) => {
    let square = 0;
    for (let channel = 0; channel < 3; channel += 1)
      square += (colours[(at + 2 * wide) * 3 + channel]! - colours[at * 3 + channel]!) ** 2;
    return square / (1 + (1.2 * (at - half)) ** 2 / half ** 2);
  });
  const best = steps.indexOf(Math.max(...steps));
  const square = steps[best]!;
  const [before, after] = [steps[best - 1], steps[best + 1]];
  // At the end of what was looked at the seam may lie further off.
  if (square < SEEN * SEEN * 0.3 || before === undefined || after === undefined) return [];
  const bow = before - 2 * square + after;
  const off = (best - half + (bow < 0 ? (0.5 * (before - after)) / bow : 0)) * pitch;
  return [{ ...place, x, y, off, weight: square / (square + SEEN * SEEN) }];
}

/** The lattice as numbers, and the way back. */
function numbersOf({ corners, gap, bend }: Lattice): number[] {
  return [...corners.flatMap(({ x, y }) => [x, y]), gap, bend];
}

function latticeFrom(lattice: Lattice, numbers: readonly number[]): Lattice {
  const corners = [0, 1, 2, 3].map((at) => ({ x: numbers[at * 2]!, y: numbers[at * 2 + 1]! }));
  return { ...lattice, corners, gap: numbers[8]!, bend: numbers[9]! };
}

/** One number's small change, for slopes: pixels, a share of a block, a share of the bend. */
const NUDGE = [...Array.from({ length: 8 }, () => 0.5), 1e-3, 1e-3];
/** How firmly each number stays where it is without evidence, in the measure of one pixel. */
const FIRM = [...Array.from({ length: 8 }, () => 1e-4), 4, 4];

/** The lattice of least squares, far seams counting less, in a few rounds. */
function fitted(plane: Plane, start: Lattice, { tall }: CellShape, seen: readonly Seen[]): Lattice {
  const base = numbersOf(start);
  const single = start.rows === 1 && start.columns === 1;
  const count = base.length;
  const here = mapOf(plane, start, tall);
  const at = seen.map((place) => here(place, place.on));
  const slopes = base.map((_, number) => {
    const map = mapOf(
      plane,
      latticeFrom(
        start,
        base.map((one, index) => (index === number ? one + NUDGE[number]! : one)),
      ),
      tall,
    );
    return seen.map((place, index) => {
      const { x, y } = place;
      const there = map(place, place.on);
      return ((there.x - at[index]!.x) * x + (there.y - at[index]!.y) * y) / NUDGE[number]!;
    });
  });
  let move = new Float64Array(count);
  for (let round = 0; round < 6; round += 1) {
    const normal = new Float64Array(count * count);
    const right = new Float64Array(count);
    for (let i = 0; i < count; i += 1) normal[i * count + i] = single && i === 8 ? 1e9 : FIRM[i]!;
    seen.forEach(({ off, weight }, index) => {
      const left = off - slopes.reduce((sum, slope, i) => sum + slope[index]! * move[i]!, 0);
      const trust = weight / (1 + (left / 1.2) ** 2);
      for (let i = 0; i < count; i += 1) {
        right[i]! += trust * slopes[i]![index]! * off;
        for (let j = 0; j < count; j += 1)
          normal[i * count + j]! += trust * slopes[i]![index]! * slopes[j]![index]!;
      }
    });
    move = Float64Array.from(solved(normal, right));
  }
  return latticeFrom(
    start,
    base.map((one, index) => one + move[index]!),
  );
}
