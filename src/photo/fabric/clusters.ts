// Groups of like points in three dimensions: k-means with seeded k-means++ beginnings. What the points are is left to the caller.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Points one after another, three numbers each. */
export type Points = Float32Array;

export interface Grouping {
  /** Middles of the groups, three numbers each. */
  readonly middles: Points;
  /** For each point its group. */
  readonly groups: Uint8Array;
  /** Points in each group. */
  readonly counts: Uint32Array;
  /** Mean square of the distance from a point to the middle of its group. */
  readonly spread: number;
}

/** Begun anew so often, of which the best counts; each goes on for so many rounds at most. */
const BEGINNINGS = 3;
const ROUNDS = 25;

/**
 * `count` groups of points (Lloyd's k-means from k-means++ beginnings: Arthur and Vassilvitskii, 'k-means++: The Advantages of
 * Careful Seeding', 2007). Fewer where there are fewer different points. The same seed gives the same groups.
 */
export function grouped(points: Points, count: number, seed: number): Grouping {
  const random = xoroshiro128plus(seed);
  let best: Grouping | null = null;
  for (let beginning = 0; beginning < BEGINNINGS; beginning += 1) {
    const made = settled(
      points,
      begun(points, count, () => uniformFloat64(random)),
    );
    if (!best || made.spread < best.spread) best = made;
  }
  return best!;
}

/** The square of the distance from a point to the middle of a group. */
function squareTo(points: Points, point: number, middles: Points, group: number): number {
  const first = points[point * 3]! - middles[group * 3]!;
  const second = points[point * 3 + 1]! - middles[group * 3 + 1]!;
  const third = points[point * 3 + 2]! - middles[group * 3 + 2]!;
  return first * first + second * second + third * third;
}

/** The group whose middle is nearest to a point. */
function nearest(points: Points, point: number, middles: Points): number {
  let group = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let one = 0; one * 3 < middles.length; one += 1) {
    const square = squareTo(points, point, middles, one);
    if (square >= least) continue;
    group = one;
    least = square;
  }
  return group;
}

/** First middles: points drawn with chances in proportion to the square of the distance from those drawn before. */
function begun(points: Points, count: number, random: () => number): Points {
  const first = 3 * Math.floor(random() * (points.length / 3));
  const middles = [...points.subarray(first, first + 3)];
  // The square of the distance to the nearest of those drawn: only the last can be nearer than it was.
  const squares = new Float64Array(points.length / 3).fill(Number.POSITIVE_INFINITY);
  while (middles.length < count * 3) {
    const last = Float32Array.from(middles.slice(-3));
    let sum = 0;
    for (let point = 0; point < squares.length; point += 1) {
      squares[point] = Math.min(squares[point]!, squareTo(points, point, last, 0));
      sum += squares[point]!;
    }
    if (sum <= 1e-12) break;
    let left = random() * sum;
    let point = 0;
    while (point < squares.length - 1 && left >= squares[point]!) {
      left -= squares[point]!;
      point += 1;
    }
    middles.push(...points.subarray(point * 3, point * 3 + 3));
  }
  return Float32Array.from(middles);
}

/** Points go to the nearest middle, middles to the mean of their points, until no point changes. */
export function settled(points: Points, start: Points): Grouping {
  let middles = start;
  const groups = new Uint8Array(points.length / 3).fill(255);
  for (let round = 0; ; round += 1) {
    let [changed, squares] = [0, 0];
    const sums = new Float64Array(middles.length);
    const counts = new Uint32Array(middles.length / 3);
    for (let point = 0; point < groups.length; point += 1) {
      const group = nearest(points, point, middles);
      if (groups[point] !== group) changed += 1;
      groups[point] = group;
      counts[group]! += 1;
      squares += squareTo(points, point, middles, group);
      for (let part = 0; part < 3; part += 1) sums[group * 3 + part]! += points[point * 3 + part]!;
    }
    if (changed === 0 || round === ROUNDS)
      return { middles, groups, counts, spread: squares / groups.length };
    middles = middles.map((old, part) => {
      const count = counts[Math.floor(part / 3)]!;
      return count === 0 ? old : sums[part]! / count;
    });
  }
}

/** Each point's nearest middle. */
export function assigned(points: Points, middles: Points): Uint8Array {
  return Uint8Array.from({ length: points.length / 3 }, (_, point) => nearest(points, point, middles));
}
