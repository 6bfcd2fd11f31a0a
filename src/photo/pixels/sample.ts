// Reads a plane between its pixels (bilinear), and blurs it (Gaussian). Beyond the edge the edge goes on.
import { blankPlane, type Plane } from './pixels';

/** Writes the channels at a point, in continuous pixels, to `into` from place `to` on. */
export function sampleInto(plane: Plane, x: number, y: number, into: Float32Array, to: number): void {
  const { width, height, channels, data } = plane;
  const left = Math.max(0, Math.min(width - 1, x - 0.5));
  const top = Math.max(0, Math.min(height - 1, y - 0.5));
  const column = Math.min(width - 1, Math.floor(left));
  const row = Math.min(height - 1, Math.floor(top));
  const along = left - column;
  const down = top - row;
  const first = (row * width + column) * channels;
  const right = column + 1 < width ? channels : 0;
  const below = row + 1 < height ? width * channels : 0;
  for (let channel = 0; channel < channels; channel += 1) {
    const at = first + channel;
    const upper = data[at]! + along * (data[at + right]! - data[at]!);
    const lower = data[at + below]! + along * (data[at + below + right]! - data[at + below]!);
    into[to + channel] = upper + down * (lower - upper);
  }
}

/** Half of a Gauss bell from its middle out to three standard deviations; with its mirror image it sums to 1. */
function bell(sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(3 * sigma));
  const half = Float32Array.from({ length: reach + 1 }, (_, at) =>
    Math.exp(-(at * at) / (2 * sigma * sigma)),
  );
  const sum = half.reduce((total, one) => total + 2 * one, -half[0]!);
  return half.map((one) => one / sum);
}

/** A Gaussian blur of each channel, its standard deviation `sigma` in pixels; 0 or less gives the plane as it is. */
export function blurred(plane: Plane, sigma: number): Plane {
  if (!(sigma > 0)) return plane;
  const half = bell(sigma);
  const { width, height, channels } = plane;
  const across = blurredAlong(plane, half, width, height, channels, width * channels);
  return blurredAlong(across, half, height, width, width * channels, channels);
}

/** Blurs `lines` lines of `length` pixels that lie `step` numbers apart; lines begin `apart` numbers apart. */
function blurredAlong(
  plane: Plane,
  half: Float32Array,
  length: number,
  lines: number,
  step: number,
  apart: number,
): Plane {
  const into = blankPlane(plane.width, plane.height, plane.channels);
  const { data } = plane;
  for (let line = 0; line < lines; line += 1) {
    for (let channel = 0; channel < plane.channels; channel += 1) {
      const start = line * apart + channel;
      for (let at = 0; at < length; at += 1) {
        let sum = half[0]! * data[start + at * step]!;
        for (let off = 1; off < half.length; off += 1) {
          const before = Math.max(0, at - off);
          const after = Math.min(length - 1, at + off);
          sum += half[off]! * (data[start + before * step]! + data[start + after * step]!);
        }
        into.data[start + at * step] = sum;
      }
    }
  }
  return into;
}
