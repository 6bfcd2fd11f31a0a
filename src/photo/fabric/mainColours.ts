// The main colours of a fabric and their shares, read from pixels: clusters in OKLab, as many as the fabric has. Pixels where two colours
// meet are of neither, so the colours come from places that are even; the shares from all of them.
import { formatHex } from '../../colour/parse';
import { encodedOf, type LinearRgb, linearOfOklab } from '../../colour/spaces';
import type { Plane } from '../pixels/pixels';
import { assigned, grouped, type Points, settled } from './clusters';

export interface MainColour {
  readonly hex: string;
  /** 0 to 1; all together 1. */
  readonly share: number;
}

/** The most main colours of a fabric. */
export const MOST_COLOURS = 8;
/** Middles nearer than this in OKLab are one colour of the cloth under its own shading and noise (by eye, no source). */
const ONE_COLOUR = 0.065;
/** A colour of a smaller share goes to its nearest. */
const LEAST_SHARE = 0.012;
/** So many pixels are grouped, at most; shares are counted over all. */
const MOST_POINTS = 6000;
/** The share of pixels that count as even, and how many there must be. */
const EVEN_SHARE = 0.5;

interface Group {
  /** OKLab. */
  readonly middle: readonly [number, number, number];
  readonly count: number;
}

/** Main colours of a plane in OKLab, largest share first. One colour for plain cloth. Seeded. */
export function mainColours(oklab: Plane, seed: number): readonly MainColour[] {
  return coloursIn(oklab, seed).colours;
}

/** The same, with the colour that each pixel has (its place in the list). */
export function coloursIn(
  oklab: Plane,
  seed: number,
): { readonly colours: readonly MainColour[]; readonly of: Uint8Array } {
  const points = thinned(evenPoints(oklab));
  const start = grouped(points, MOST_COLOURS, seed);
  const merged = mergedNear(groupsOf(start.middles, start.counts));
  const { middles } = settled(points, flat(merged));
  const { kept, of } = withoutSmall(oklab.data, middles);
  const counts = new Uint32Array(kept.length / 3);
  for (const group of of) counts[group]! += 1;
  const order = [...counts.keys()].sort((one, other) => counts[other]! - counts[one]!);
  const rank = Uint8Array.from(counts, (_, group) => order.indexOf(group));
  return {
    colours: order.map((group) => ({
      hex: hexOf([kept[group * 3]!, kept[group * 3 + 1]!, kept[group * 3 + 2]!]),
      share: counts[group]! / of.length,
    })),
    of: of.map((group) => rank[group]!),
  };
}

function hexOf(oklab: readonly [number, number, number]): string {
  return formatHex(encodedOf(linearOfOklab(oklab).map((one) => Math.max(0, one)) as unknown as LinearRgb));
}

/** Points of the pixels that differ least from their neighbours. */
function evenPoints({ width, height, data }: Plane): Points {
  if (width < 3 || height < 3) return data;
  const steps = new Float32Array((width - 2) * (height - 2));
  const step = (at: number, other: number) =>
    Math.abs(data[at]! - data[other]!) +
    Math.abs(data[at + 1]! - data[other + 1]!) +
    Math.abs(data[at + 2]! - data[other + 2]!);
  const pixelOf = (inner: number) =>
    (Math.floor(inner / (width - 2)) + 1) * width + (inner % (width - 2)) + 1;
  for (let inner = 0; inner < steps.length; inner += 1) {
    const at = pixelOf(inner) * 3;
    steps[inner] =
      Math.max(step(at, at - 3), step(at, at + 3)) +
      Math.max(step(at, at - width * 3), step(at, at + width * 3));
  }
  const limit = steps.toSorted()[Math.floor(EVEN_SHARE * (steps.length - 1))]!;
  const even: number[] = [];
  for (let inner = 0; inner < steps.length; inner += 1) if (steps[inner]! <= limit) even.push(pixelOf(inner));
  const points = new Float32Array(even.length * 3);
  even.forEach((pixel, at) => {
    points.set(data.subarray(pixel * 3, pixel * 3 + 3), at * 3);
  });
  return points;
}

/** Every n-th point, so that there are MOST_POINTS at most. */
function thinned(points: Points): Points {
  const count = points.length / 3;
  if (count <= MOST_POINTS) return points;
  const every = count / MOST_POINTS;
  const few = new Float32Array(MOST_POINTS * 3);
  for (let at = 0; at < MOST_POINTS; at += 1) {
    const from = Math.floor(at * every) * 3;
    few.set(points.subarray(from, from + 3), at * 3);
  }
  return few;
}

function groupsOf(middles: Points, counts: Uint32Array): Group[] {
  return Array.from(counts, (count, group) => ({
    middle: [middles[group * 3]!, middles[group * 3 + 1]!, middles[group * 3 + 2]!] as const,
    count,
  })).filter(({ count }) => count > 0);
}

function flat(groups: readonly Group[]): Points {
  return Float32Array.from(groups.flatMap(({ middle }) => [...middle]));
}

function distance(one: Group, other: Group): number {
  return Math.hypot(...one.middle.map((part, at) => part - other.middle[at]!));
}

/** Puts the two nearest groups together as long as they are one colour. */
function mergedNear(groups: readonly Group[]): readonly Group[] {
  let all = groups;
  for (;;) {
    const pairs = all.flatMap((one, at) =>
      all.slice(at + 1).map((other) => ({ one, other, apart: distance(one, other) })),
    );
    const near = pairs.reduce((best, pair) => (pair.apart < best.apart ? pair : best), {
      apart: ONE_COLOUR,
    } as { one?: Group; other?: Group; apart: number });
    if (!near.one || !near.other) return all;
    const [one, other] = [near.one, near.other];
    all = [...all.filter((group) => group !== one && group !== other), together(one, other)];
  }
}

function together(one: Group, other: Group): Group {
  const count = one.count + other.count;
  const mean = (at: 0 | 1 | 2) => (one.middle[at] * one.count + other.middle[at] * other.count) / count;
  return { middle: [mean(0), mean(1), mean(2)], count };
}

/** Drops the smallest colour while it is too small to count; its pixels go to their nearest. */
function withoutSmall(points: Points, middles: Points): { kept: Points; of: Uint8Array } {
  let kept = middles;
  for (;;) {
    const of = assigned(points, kept);
    const counts = new Uint32Array(kept.length / 3);
    for (const group of of) counts[group]! += 1;
    const least = counts.indexOf(Math.min(...counts));
    if (kept.length === 3 || counts[least]! >= LEAST_SHARE * of.length) return { kept, of };
    kept = kept.filter((_, part) => Math.floor(part / 3) !== least);
  }
}
