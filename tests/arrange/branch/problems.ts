// Random assignments of every kind that branch and bound takes, and the least cost of all arrangements, gone through one by one.
import fc from 'fast-check';
import type { ConvexAssignment } from '../../../src/arrange/branch/convexAssignment';
import { dice } from '../../balance/tops';

/** A random problem. Forms need not be positive: nothing in the bound asks for it. */
export function randomProblem(size: number, seed: number, grid = false): ConvexAssignment {
  const { part, below } = dice(seed);
  const any = () => 2 * part() - 1;
  const symmetric = () => {
    const table = Float64Array.from({ length: size * size }, any);
    return table.map((one, at) => (one + table[(at % size) * size + Math.floor(at / size)]!) / 2);
  };
  const list = (count: number) => Float64Array.from({ length: count }, any);
  // On a grid of two rows, near cells count more: the wall's own kind, with its symmetries.
  const near = Float64Array.from({ length: size * size }, (_, at) => {
    const one = Math.floor(at / size);
    const other = at % size;
    const columns = Math.ceil(size / 2);
    const away =
      Math.abs((one % columns) - (other % columns)) + (one >= columns === other >= columns ? 0 : 1);
    return [2, 1, 0.25][away] ?? 0;
  });
  const places = size * size;
  const beside = new Float64Array(places * places);
  for (let one = 0; one < places && !grid; one++) {
    for (let two = 0; two < one; two++) {
      const apart = Math.floor(one / size) !== Math.floor(two / size) && one % size !== two % size;
      if (apart && below(5) === 0) beside[one * places + two] = beside[two * places + one] = part();
    }
  }
  return {
    size,
    constant: any(),
    linear: grid ? new Float64Array(places) : list(places),
    forms: grid
      ? [{ cells: near, items: symmetric() }]
      : Array.from({ length: below(3) }, () => ({ cells: symmetric(), items: symmetric() })),
    moments: grid ? [] : Array.from({ length: below(3) }, () => ({ cells: list(size), items: list(size) })),
    beside,
  };
}

/** The cost as the words of the type have it, term by term. */
export function costOf(
  { size, constant, linear, forms, moments, beside }: ConvexAssignment,
  cellOf: ArrayLike<number>,
): number {
  let cost = constant;
  for (let item = 0; item < size; item++) {
    cost += linear[item * size + cellOf[item]!]!;
    for (let other = 0; other < size; other++) {
      for (const form of forms)
        cost += form.cells[cellOf[item]! * size + cellOf[other]!]! * form.items[item * size + other]!;
      if (other < item)
        cost += beside[(item * size + cellOf[item]!) * size * size + other * size + cellOf[other]!]!;
    }
  }
  for (const { cells, items } of moments) {
    let sum = 0;
    for (let item = 0; item < size; item++) sum += cells[cellOf[item]!]! * items[item]!;
    cost += sum * sum;
  }
  return cost;
}

export function everyArrangement(size: number): number[][] {
  if (size === 0) return [[]];
  return everyArrangement(size - 1).flatMap((before) =>
    Array.from({ length: size }, (_, at) => [...before.slice(0, at), size - 1, ...before.slice(at)]),
  );
}

export const leastOf = (problem: ConvexAssignment) =>
  Math.min(...everyArrangement(problem.size).map((one) => costOf(problem, one)));

export const anyProblem = (most: number) =>
  fc
    .record({
      size: fc.integer({ min: 2, max: most }),
      seed: fc.integer({ min: 0, max: 1e6 }),
      grid: fc.boolean(),
    })
    .map(({ size, seed, grid }) => randomProblem(size, seed, grid));
