// Finds the symmetries of an assignment: renumberings of the cells after which every arrangement costs the same. Of
// arrangements that are images of each other a proof looks at one.
import { placeSymmetries } from '../assignment/placeSymmetry';
import type { ConvexAssignment } from './convexAssignment';

/** Costs that differ by less are the same. */
const NOTHING = 1e-9;

/** Cell → cell of every symmetry, the one that moves nothing first. `pairs` are the costs of every two items in two cells. */
export function cellSymmetries(problem: ConvexAssignment, pairs: Float64Array): Int32Array[] {
  const { size, forms, linear } = problem;
  const distance = forms[0]?.cells ?? new Float64Array(size * size);
  const found = placeSymmetries({ size, distance, linear: new Float64Array(size * size) });
  const places = size * size;
  const holds = (image: Int32Array) => {
    const place = (at: number) => at - (at % size) + image[at % size]!;
    for (let one = 0; one < places; one++) {
      const there = place(one);
      if (Math.abs(linear[one]! - linear[there]!) > NOTHING) return false;
      for (let two = 0; two < one; two++) {
        if (Math.abs(pairs[one * places + two]! - pairs[there * places + place(two)]!) > NOTHING)
          return false;
      }
    }
    return true;
  };
  return found.filter((image, at) => at === 0 || holds(image));
}
