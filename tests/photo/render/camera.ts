// A camera over the table: perspective and radial distortion. Pixels ↔ inches of the table, whose origin is the middle of the cloth.
import type { Point } from '../../../src/geometry/point';
import type { Dice } from './dice';

export interface Camera {
  readonly width: number;
  readonly height: number;
  /** From a point of the table, inches, to continuous pixels. */
  readonly seen: (point: Point) => Point;
  /** The way back. */
  readonly table: (x: number, y: number) => Point;
}

/** A camera tilted by `tilt` degrees that sees cloth of `size` inches across fill about `fill` of the picture. */
export function camera(
  options: {
    width: number;
    height: number;
    tilt: number;
    roll: number;
    k1: number;
    size: number;
    fill: number;
  },
  dice: Dice,
): Camera {
  const { width, height, k1 } = options;
  const half = Math.hypot(width, height) / 2;
  const focal = dice.between(0.8, 1.4) * Math.max(width, height);
  const tilt = (options.tilt * Math.PI) / 180;
  const [azimuth, roll] = [dice.between(0, 2 * Math.PI), (options.roll * Math.PI) / 180];
  const distance = (focal * options.size) / (options.fill * Math.min(width, height));
  const slack = (1 - options.fill) * 0.35 * Math.min(width, height);
  const shift = { x: dice.between(-1, 1) * slack, y: dice.between(-1, 1) * slack };
  // Turned in the plane, then tilted about an axis in the plane.
  const r = product(about(azimuth, tilt), turned(roll));
  const ray = [r[0]!, r[1]!, 0, r[3]!, r[4]!, 0, r[6]!, r[7]!, distance];
  // By how much a radius (of the half diagonal) shrinks on the way back, in steps of a two-thousandth.
  const back = Float64Array.from({ length: 2402 }, (_, step) => {
    const r = step / 2000;
    let u = r;
    for (let round = 0; round < 12; round += 1) u -= (u * (1 + k1 * u * u) - r) / (1 + 3 * k1 * u * u);
    return r === 0 ? 1 : u / r;
  });
  return {
    width,
    height,
    seen: ({ x, y }) => {
      const depth = ray[6]! * x + ray[7]! * y + distance;
      const u = (focal * (ray[0]! * x + ray[1]! * y)) / depth + shift.x;
      const v = (focal * (ray[3]! * x + ray[4]! * y)) / depth + shift.y;
      const by = 1 + (k1 * (u * u + v * v)) / half ** 2;
      return { x: width / 2 + u * by, y: height / 2 + v * by };
    },
    table: (px, py) => {
      const x = px - width / 2;
      const y = py - height / 2;
      const step = (Math.sqrt(x * x + y * y) / half) * 2000;
      const whole = Math.min(2400, Math.floor(step));
      const by = back[whole]! + (step - whole) * (back[whole + 1]! - back[whole]!);
      const u = (x * by - shift.x) / focal;
      const v = (y * by - shift.y) / focal;
      // u (r6 x + r7 y + d) = r0 x + r1 y, and so for v.
      const a = ray[0]! - u * ray[6]!;
      const b = ray[1]! - u * ray[7]!;
      const c = ray[3]! - v * ray[6]!;
      const d = ray[4]! - v * ray[7]!;
      const det = a * d - b * c;
      return {
        x: (u * distance * d - b * v * distance) / det,
        y: (a * v * distance - c * u * distance) / det,
      };
    },
  };
}

function turned(angle: number): number[] {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [cos, -sin, 0, sin, cos, 0, 0, 0, 1];
}

/** A turn by `angle` about an axis in the plane, by Rodrigues' formula. */
function about(axis: number, angle: number): number[] {
  const [x, y] = [Math.cos(axis), Math.sin(axis)];
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const t = 1 - cos;
  return [cos + x * x * t, x * y * t, y * sin, x * y * t, cos + y * y * t, -x * sin, -y * sin, x * sin, cos];
}

function product(a: readonly number[], b: readonly number[]): number[] {
  return Array.from({ length: 9 }, (_, at) =>
    [0, 1, 2].reduce((sum, k) => sum + a[3 * Math.floor(at / 3) + k]! * b[3 * k + (at % 3)]!, 0),
  );
}
