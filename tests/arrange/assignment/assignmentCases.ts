// Owns made-up assignment problems of every kind, and the slow, plain ways to weigh and solve them that the engine is held to.
import fc from 'fast-check';
import type { AssignmentProblem } from '../../../src/arrange/assignment/problem';

/** The definition, word for word. */
export function costByDefinition(problem: AssignmentProblem, places: ArrayLike<number>): number {
  const { size, flow, distance, linear } = problem;
  let cost = 0;
  for (let i = 0; i < size; i++) {
    cost += linear?.[i * size + places[i]!] ?? 0;
    for (let j = 0; j < size; j++) cost += flow[i * size + j]! * distance[places[i]! * size + places[j]!]!;
  }
  return cost;
}

/** Every arrangement that respects the fixed items. */
function* allArrangements({ size, fixed }: AssignmentProblem): Generator<number[]> {
  const places: number[] = [];
  function* fill(): Generator<number[]> {
    if (places.length === size) yield places;
    else {
      const held = fixed?.[places.length] ?? -1;
      for (let place = 0; place < size; place++) {
        if (places.includes(place) || (held >= 0 && held !== place)) continue;
        if (held < 0 && fixed?.includes(place)) continue;
        places.push(place);
        yield* fill();
        places.pop();
      }
    }
  }
  yield* fill();
}

export function leastByTrying(problem: AssignmentProblem): number {
  let least = Number.POSITIVE_INFINITY;
  for (const places of allArrangements(problem)) least = Math.min(least, costByDefinition(problem, places));
  return least;
}

/** A small generator of its own (Park and Miller 1988), so that cases do not lean on the library the engine leans on. */
export function draws(seed: number): (below: number) => number {
  let state = (seed % 2147483646) + 1;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return Math.floor((state / 2147483647) * below);
  };
}

export interface Kind {
  readonly symmetricFlow: boolean;
  readonly symmetricDistance: boolean;
  readonly diagonals: boolean;
  readonly linear: boolean;
  readonly fractions: boolean;
  /** How many items are fixed. */
  readonly fixed: number;
}

export const anyKind: fc.Arbitrary<Kind> = fc.record({
  symmetricFlow: fc.boolean(),
  symmetricDistance: fc.boolean(),
  diagonals: fc.boolean(),
  linear: fc.boolean(),
  fractions: fc.boolean(),
  fixed: fc.constantFrom(0, 0, 1, 2),
});

export function madeProblem(size: number, kind: Kind, seed: number): AssignmentProblem {
  const draw = draws(seed);
  const number = () => (kind.fractions ? draw(2000) / 100 - 4 : draw(12) - 2);
  const table = (symmetric: boolean) => {
    const entries = Float64Array.from({ length: size * size }, number);
    for (let row = 0; row < size; row++) {
      if (!kind.diagonals) entries[row * size + row] = 0;
      for (let column = 0; symmetric && column < row; column++) {
        entries[row * size + column] = entries[column * size + row]!;
      }
    }
    return entries;
  };
  const problem = { size, flow: table(kind.symmetricFlow), distance: table(kind.symmetricDistance) };
  const linear = kind.linear ? Float64Array.from({ length: size * size }, () => 5 * number()) : undefined;
  const fixed = new Int32Array(size).fill(-1);
  for (let item = 0; item < Math.min(size, kind.fixed); item++) fixed[size - 1 - item] = (item * 2) % size;
  return { ...problem, linear, fixed: kind.fixed > 0 ? fixed : undefined };
}
