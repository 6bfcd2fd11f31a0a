// What a camera sees of a block: for each wedge the mean light of each ring from the rim to the middle, and of the corner triangles.
import { direction } from '../../geometry/block';
import type { Point } from '../../geometry/point';
import type { Inches } from '../../model/units';
import type { Plane } from '../pixels/pixels';
import { sampleInto } from '../pixels/sample';
import { type Homography, projected } from '../plane/homography';
import { bent, type Lens } from '../plane/lens';
import type { BlockShape } from './shape';

/** One patch of cloth as it looks: linear light of three channels, and where it lies in the picture, about −1 to 1 both ways. */
export interface Patch {
  readonly light: readonly [number, number, number];
  readonly x: number;
  readonly y: number;
}

export interface BlockLook {
  readonly rings: number;
  /** Distance of each ring's middle from the middle of the block, inches, the rim first. */
  readonly radii: Float64Array;
  /** Inches from one ring to the next. */
  readonly pitch: Inches;
  /** For each wedge, clockwise from the top side, the linear light of its rings, three numbers to a ring. */
  readonly wedges: readonly Float32Array[];
  /** About how many independent places each ring is the mean of. */
  readonly weights: Float64Array;
  /** Where wedge and ring lie in the picture, −1 to 1: x, y of each ring. */
  readonly places: readonly Float32Array[];
  /** Clockwise from the top left. */
  readonly corners: readonly Patch[];
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** How much of a wedge's width is read: its seams have ridges. */
const WIDE = 0.76;

/**
 * Looks at a block. `plane` is linear light, in which the block should be some 100 to 500 pixels wide; `toPlane` takes inches of
 * the shape to pixels of the plane as a perfect lens would show them. Places are told from the middle of `whole`.
 */
export function lookAt(
  plane: Plane,
  toPlane: Homography,
  lens: Lens,
  shape: BlockShape,
  rings: number,
  whole: Size,
): BlockLook {
  const { perBlock, rim } = shape;
  const pitch = rim / rings;
  const radii = Float64Array.from({ length: rings }, (_, ring) => rim - (ring + 0.5) * pitch);
  const seen = (point: Point) => bent(lens, projected(toPlane, point));
  const half = Math.tan(Math.PI / perBlock) * WIDE;
  const [one, other] = [seen({ x: -1, y: 0 }), seen({ x: 1, y: 0 })];
  const pixels = Math.hypot(one.x - other.x, one.y - other.y) / 2;
  const wedges: Float32Array[] = [];
  const places: Float32Array[] = [];
  const weights = new Float64Array(rings);
  const colour = new Float32Array(3);
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    const light = new Float32Array(rings * 3);
    const place = new Float32Array(rings * 2);
    for (let ring = 0; ring < rings; ring += 1) {
      const radius = radii[ring]!;
      const across = radius * half;
      const count = Math.max(3, Math.min(41, Math.round(across * 2 * pixels)));
      for (let at = 0; at < count; at += 1) {
        const off = across * ((2 * (at + 0.5)) / count - 1);
        const point = seen({ x: out.x * radius - out.y * off, y: out.y * radius + out.x * off });
        sampleInto(plane, point.x, point.y, colour, 0);
        for (let channel = 0; channel < 3; channel += 1)
          light[ring * 3 + channel]! += colour[channel]! / count;
      }
      const middle = seen({ x: out.x * radius, y: out.y * radius });
      place[ring * 2] = (2 * middle.x) / whole.width - 1;
      place[ring * 2 + 1] = (2 * middle.y) / whole.height - 1;
      weights[ring] = Math.min(1, (across * 2 * pixels) / 12) * Math.min(1, pitch * pixels);
    }
    wedges.push(light);
    places.push(place);
  }
  return { rings, radii, pitch, wedges, weights, places, corners: cornerPatches(plane, seen, shape, whole) };
}

function cornerPatches(plane: Plane, seen: (point: Point) => Point, shape: BlockShape, whole: Size): Patch[] {
  const { perBlock, rim, halfWidth, halfHeight } = shape;
  const [w, h] = [halfWidth + shape.allowance, halfHeight + shape.allowance];
  // Legs of the triangle that surely is corner cloth.
  const leg = rim * (perBlock === 8 ? 0.5 : perBlock === 12 ? 0.22 : 0.25);
  const colour = new Float32Array(3);
  return [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([sx, sy]) => {
    const light: [number, number, number] = [0, 0, 0];
    let count = 0;
    for (let u = 0.12; u < 0.85; u += 0.06) {
      for (let v = 0.12; u + v < 0.92; v += 0.06) {
        const { x, y } = seen({ x: sx! * (w - u * leg), y: sy! * (h - v * leg) });
        sampleInto(plane, x, y, colour, 0);
        for (let channel = 0; channel < 3; channel += 1) light[channel]! += colour[channel]!;
        count += 1;
      }
    }
    const { x, y } = seen({ x: sx! * (w - 0.33 * leg), y: sy! * (h - 0.33 * leg) });
    return { light: light.map((one) => one / count) as [number, number, number], x: (2 * x) / whole.width - 1, y: (2 * y) / whole.height - 1 };
  }); // biome-ignore format: four corners
}

/** How much colours change across the seams of the corner triangles, in square roots of linear light. */
export function cornerStep(plane: Plane, toPlane: Homography, lens: Lens, shape: BlockShape): number {
  const { perBlock, rim, halfWidth, halfHeight } = shape;
  const half = Math.tan(Math.PI / perBlock) * rim * 0.75;
  const colour = new Float32Array(3);
  let sum = 0;
  for (let step = 0; step < perBlock; step += 1) {
    const out = direction(step, perBlock);
    // On the straight sides there is no triangle beyond the rim.
    if (Math.abs(out.x) * rim > halfWidth - 0.02 * rim || Math.abs(out.y) * rim > halfHeight - 0.02 * rim)
      continue;
    const means = [1, -1].map((side) => {
      const radius = rim + side * NEAR_SEAM;
      const mean = [0, 0, 0];
      for (let at = 0; at < 24; at += 1) {
        const off = half * ((2 * at) / 23 - 1);
        const point = bent(
          lens,
          projected(toPlane, { x: out.x * radius - out.y * off, y: out.y * radius + out.x * off }),
        );
        sampleInto(plane, point.x, point.y, colour, 0);
        for (let channel = 0; channel < 3; channel += 1)
          mean[channel]! += Math.sqrt(Math.max(0, colour[channel]!)) / 24;
      }
      return mean;
    });
    sum += Math.hypot(...means[0]!.map((one, channel) => one - means[1]![channel]!));
  }
  return sum;
}

/** Inches to each side of a seam at which its colours are compared. */
const NEAR_SEAM = 0.09;
