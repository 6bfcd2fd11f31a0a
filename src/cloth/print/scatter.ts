// The seeded generator of a print, and figures scattered evenly over a tile that repeats.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Point } from '../../geometry/point';

export interface Generator {
  /** Evenly between two numbers. */
  between(least: number, most: number): number;
  /** A whole number from 0 to count − 1. */
  whole(count: number): number;
}

/** The same seed gives the same print on every machine. */
export function generatorOf(seed: number): Generator {
  const random = xoroshiro128plus(seed);
  return {
    between: (least, most) => least + (most - least) * uniformFloat64(random),
    whole: (count) => Math.floor(uniformFloat64(random) * count),
  };
}

/** Places tried for each new figure; the one farthest from the others is taken (Mitchell's best candidate). */
const TRIES = 24;

/** `count` places on the unit tile, spread evenly without lying in rows; distances run across the tile's edges. */
export function scattered(count: number, generator: Generator): Point[] {
  const places: Point[] = [];
  while (places.length < count) {
    let best: Point = { x: 0, y: 0 };
    let farthest = -1;
    for (let attempt = 0; attempt < TRIES; attempt += 1) {
      const place = { x: generator.between(0, 1), y: generator.between(0, 1) };
      let nearest = 1;
      for (const other of places) {
        nearest = Math.min(nearest, distance(place, other));
        if (nearest <= farthest) break;
      }
      if (nearest > farthest) {
        farthest = nearest;
        best = place;
      }
    }
    places.push(best);
  }
  return places;
}

function distance(one: Point, other: Point): number {
  const across = Math.abs(one.x - other.x);
  const down = Math.abs(one.y - other.y);
  return Math.hypot(Math.min(across, 1 - across), Math.min(down, 1 - down));
}
