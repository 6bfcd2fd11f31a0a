// Owns the symmetries of the places: renumberings that leave every distance and every linear cost as it is. A grid has
// eight or four; two arrangements that are mirror images are the same one to the search and may be laid over each other.
import type { ReducedProblem } from './problem';

/** No more are kept, and no more comparisons made, than this: symmetry is a help, not a need. */
const MOST_SYMMETRIES = 64;
const MOST_STEPS = 100_000;

/** Place → place of every symmetry found, the one that moves nothing first. */
export function placeSymmetries({
  size,
  distance,
  linear,
}: Pick<ReducedProblem, 'size' | 'distance' | 'linear'>): Int32Array[] {
  const found: Int32Array[] = [];
  const kinds = placeClasses(distance, linear, size);
  const image = new Int32Array(size);
  const taken = new Uint8Array(size);
  let steps = 0;
  const fits = (place: number, other: number) => {
    for (let k = 0; k < place; k++) {
      if (distance[place * size + k] !== distance[other * size + image[k]!]) return false;
      if (distance[k * size + place] !== distance[image[k]! * size + other]) return false;
    }
    return true;
  };
  const extend = (place: number): void => {
    if (place === size) found.push(image.slice());
    for (let other = 0; place < size && other < size; other++) {
      if (found.length >= MOST_SYMMETRIES || steps > MOST_STEPS) return;
      if (taken[other] || kinds[other] !== kinds[place]) continue;
      steps++;
      if (!fits(place, other)) continue;
      image[place] = other;
      taken[other] = 1;
      extend(place + 1);
      taken[other] = 0;
    }
  };
  extend(0);
  return found.length > 0 ? found : [Int32Array.from({ length: size }, (_, place) => place)];
}

/** What must agree before one place can stand for another: its distances, sorted, and its linear costs. */
function placeClasses(distance: Float64Array, linear: Float64Array, size: number): string[] {
  return Array.from({ length: size }, (_, place) => {
    const away = distance.slice(place * size, (place + 1) * size).sort();
    const costs = Array.from({ length: size }, (_, item) => linear[item * size + place]!);
    return `${away.join()};${costs.join()}`;
  });
}

/** How many items lie elsewhere. */
function differingPlaces(one: Int32Array, other: Int32Array): number {
  let count = 0;
  for (let item = 0; item < one.length; item++) if (one[item] !== other[item]) count++;
  return count;
}

/** Of all images of `places` under the symmetries, the one most like `model`, and in how many items it differs. */
export function laidOver(
  model: Int32Array,
  places: Int32Array,
  symmetries: readonly Int32Array[],
): { places: Int32Array; differing: number } {
  let best = places;
  let differing = Number.POSITIVE_INFINITY;
  for (const image of symmetries) {
    const turned = places.map((place) => image[place]!);
    const count = differingPlaces(model, turned);
    if (count < differing) {
      differing = count;
      best = turned;
    }
  }
  return { places: best, differing };
}
