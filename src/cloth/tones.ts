// Light, medium and dark within one quilt: where the limits of the thirds of its surface lie, whatever its fabrics are. What the surface
// is, the caller says.
import { value } from '../colour/spaces';
import type { ToneLimits } from '../colour/tone';
import { type ColouredArea, weighed } from './mixture';

/**
 * The limits of the thirds of a surface. Its colours are ranked by value; each belongs to the third in which the middle of its area
 * lies, so that one colour that covers nearly all is medium and not dark. Colours of one value stay together. The limits lie halfway
 * between the values on both sides of them. Null when there is no surface; throws on an area that is negative or not a number.
 */
export function toneLimits(areas: readonly ColouredArea[]): ToneLimits | null {
  const { pieces, total } = weighed(areas);
  if (total === 0) return null;
  const areaOf = new Map<number, number>();
  for (const { hex, area } of pieces) areaOf.set(value(hex), (areaOf.get(value(hex)) ?? 0) + area);
  let before = 0;
  const ranked = [...areaOf]
    .sort(([one], [other]) => one - other)
    .map(([lightness, area]) => {
      before += area;
      return { lightness, middle: (before - area / 2) / total };
    });
  const limitAt = (portion: number) => {
    // Sums like 1/6 + 1/6 must reach 1/3.
    const above = ranked.findIndex(({ middle }) => middle >= portion - 1e-12);
    if (above <= 0) return above === 0 ? -Infinity : Infinity;
    return (ranked[above - 1]!.lightness + ranked[above]!.lightness) / 2;
  };
  return { medium: limitAt(1 / 3), light: limitAt(2 / 3) };
}
