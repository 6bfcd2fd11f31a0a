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
const ONE_COLOUR = 0.05;
/** A colour of a smaller share goes to its nearest. */
const LEAST_SHARE = 0.012;
/** So many pixels are grouped, at most; shares are counted over all. */
const MOST_POINTS = 6000;
/** Pixels count as even where the steps to their neighbours, in OKLab, add up to this at most; and half of all in any case. */
const EVEN_STEP = 0.05;

interface Group {
  /** OKLab. */
  readonly middle: readonly [number, number, number];
  readonly count: number;
}

/**
 * Main colours of a plane in OKLab, largest share first, and the colour that each pixel has (its place in the list). One colour
 * for plain cloth. Seeded.
 */
export function coloursIn(
  oklab: Plane,
  seed: number,
): { readonly colours: readonly MainColour[]; readonly of: Uint8Array } {
  const points = thinned(evenPoints(oklab));
  const start = grouped(points, MOST_COLOURS, seed);
  const merged = mergedNear(groupsOf(start.middles, start.counts));
  const { middles } = settled(points, flat(merged));
  const { kept, of } = withoutSmall(oklab.data, middles);
  const shares = sharesOf(oklab.data, kept);
  const order = [...shares.keys()].sort((one, other) => shares[other]! - shares[one]!);
  const rank = Uint8Array.from(shares, (_, group) => order.indexOf(group));
  return {
    colours: order.map((group) => ({
      hex: hexOf([kept[group * 3]!, kept[group * 3 + 1]!, kept[group * 3 + 2]!]),
      share: shares[group]!,
    })),
    of: of.map((group) => rank[group]!),
  };
}

/** So many pixels are taken apart into shares, at most. */
const MOST_SHARED = 30_000;

/**
 * The share of each colour: a pixel that is none of them is a blend of the two between which it lies nearest, in linear
 * light, in the proportion in which it divides them.
 */
function sharesOf(points: Points, middles: Points): number[] {
  const colours = Array.from({ length: middles.length / 3 }, (_, at) => lightAt(middles, at));
  const shares = colours.map(() => 0);
  const pixels = points.length / 3;
  const every = Math.max(1, pixels / MOST_SHARED);
  let count = 0;
  for (let at = 0; at < pixels; at += every, count += 1) {
    const blend = blendOf(lightAt(points, Math.floor(at)), colours);
    shares[blend.one]! += 1 - blend.part;
    shares[blend.other]! += blend.part;
  }
  return shares.map((share) => share / count);
}

function lightAt(oklab: Points, at: number): LinearRgb {
  return linearOfOklab([oklab[at * 3]!, oklab[at * 3 + 1]!, oklab[at * 3 + 2]!]);
}

/** The two colours nearest to whose line a light lies, and the part of the second. */
function blendOf(
  light: LinearRgb,
  colours: readonly LinearRgb[],
): { one: number; other: number; part: number } {
  let best = { one: 0, other: 0, part: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (let one = 0; one < colours.length; one += 1) {
    for (let other = Math.min(one + 1, colours.length - 1); other < colours.length; other += 1) {
      const [a, b] = [colours[one]!, colours[other]!];
      const line = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
      const off = [light[0] - a[0], light[1] - a[1], light[2] - a[2]] as const;
      const length = line[0] ** 2 + line[1] ** 2 + line[2] ** 2;
      const along = length === 0 ? 0 : (off[0] * line[0] + off[1] * line[1] + off[2] * line[2]) / length;
      const part = Math.max(0, Math.min(1, along));
      const square =
        (off[0] - part * line[0]) ** 2 + (off[1] - part * line[1]) ** 2 + (off[2] - part * line[2]) ** 2;
      if (square < least) [least, best] = [square, { one, other, part }];
    }
  }
  return best;
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
  const limit = Math.max(EVEN_STEP, steps.toSorted()[steps.length >> 1]!);
  const even: number[] = [];
  for (let inner = 0; inner < steps.length; inner += 1) if (steps[inner]! <= limit) even.push(pixelOf(inner));
  return picked(data, even);
}

/** Every n-th point, so that there are MOST_POINTS at most. */
function thinned(points: Points): Points {
  const count = points.length / 3;
  if (count <= MOST_POINTS) return points;
  const every = count / MOST_POINTS;
  return picked(
    points,
    Array.from({ length: MOST_POINTS }, (_, at) => Math.floor(at * every)),
  );
}

/** Some of the points, by their places. */
function picked(points: Points, places: readonly number[]): Points {
  const some = new Float32Array(places.length * 3);
  places.forEach((place, at) => {
    for (let part = 0; part < 3; part += 1) some[at * 3 + part] = points[place * 3 + part]!;
  });
  return some;
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
