// Whether a print has a way up: whether its edges face some ways more than the opposite ones, and do so all over the patch. Dots,
// checks and stripes look the same upside down, and tossed figures face every way.
import type { Plane } from '../pixels/pixels';

/** From here on a print is proposed as directional. */
export const DIRECTIONAL = 0.75;

/** Parts to a side that are compared with each other. */
const PARTS = 4;
/** Odd waves round the circle: they are what a turn by half a circle reverses. */
const WAVES = [1, 3, 5] as const;
/** Steps of L* from pixel to pixel that are no edge: weave and noise. */
const LEAST_EDGE = 2;
/** So small a share of the edges that faces one way more than the opposite is chance. */
const CHANCE = 0.04;

/** How sure it is that a print has a way up, 0 to 1, from a plane of L*. A patch without figures, or of less than 64 pixels to a side, has none. */
export function wayUp(value: Plane): number {
  if (Math.min(value.width, value.height) < 64) return 0;
  const parts = Array.from({ length: PARTS * PARTS }, (_, part) => facing(value, part));
  const edges = parts.reduce((sum, { weight }) => sum + weight, 0);
  if (edges === 0) return 0;
  // Each part counts by the edges it has.
  const all = WAVES.flatMap((_, wave) => [0, 1].map((side) => parts.reduce((sum, { waves }) => sum + waves[wave * 2 + side]!, 0) / edges)); // biome-ignore format: one sum
  const apart = parts.reduce(
    (sum, { waves, weight }) =>
      sum + waves.reduce((square, one, at) => square + (one - weight * all[at]!) ** 2, 0),
    0,
  );
  const agreed = all.reduce((sum, one) => sum + one * one, 0);
  // What the parts differ by, as it would blur their mean; 1 where they agree no more than by chance.
  const ratio = agreed / (apart / edges ** 2 + 1e-9);
  return (Math.max(0, ratio - 1) / (ratio + 3)) * (agreed / (agreed + CHANCE ** 2));
}

/** Which ways the edges of one part face, as sums of waves, each edge by the square of its step. */
function facing({ width, height, data }: Plane, part: number): { waves: Float64Array; weight: number } {
  const [column, row] = [part % PARTS, Math.floor(part / PARTS)];
  const from = (at: number, side: number) => Math.max(1, Math.floor((at * side) / PARTS));
  const to = (at: number, side: number) => Math.min(side - 1, Math.floor(((at + 1) * side) / PARTS));
  const waves = new Float64Array(WAVES.length * 2);
  let weight = 0;
  for (let y = from(row, height); y < to(row, height); y += 1) {
    for (let x = from(column, width); x < to(column, width); x += 1) {
      const at = y * width + x;
      const dx = (data[at + 1]! - data[at - 1]!) / 2;
      const dy = (data[at + width]! - data[at - width]!) / 2;
      const square = dx * dx + dy * dy;
      if (square < LEAST_EDGE ** 2) continue;
      const turn = Math.atan2(dy, dx);
      weight += square;
      WAVES.forEach((wave, index) => {
        waves[index * 2]! += square * Math.cos(wave * turn);
        waves[index * 2 + 1]! += square * Math.sin(wave * turn);
      });
    }
  }
  return { waves, weight };
}
