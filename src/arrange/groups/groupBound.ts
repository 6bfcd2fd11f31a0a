// Bounds an assignment whose form is a sum over groups of cells, each the squared sum of what hangs in it: chains of places are
// filled each by itself at least cost, an assignment ties them together, and prices make them agree (Lagrangian decomposition,
// Guignard and Kim 1987; the steps of Polyak 1969, with directions carried on after Camerini, Fratta and Maffioli 1975).
import { cellSymmetries } from '../branch/cellSymmetries';
import { type ConvexAssignment, pairCosts } from '../branch/convexAssignment';
import { SmallLinear } from '../branch/smallLinear';
import type { Chain } from './chain';
import { chainsOf, type Grid, type Group } from './chainsOf';

/** How much of the last direction goes on, how long a step of a length may bring nothing, and what is then left of it. */
const CARRIED = 0.8;
const PATIENCE = 12;
const SHORTER = 0.8;

export class GroupBound {
  /** No arrangement costs less. */
  bound = Number.NEGATIVE_INFINITY;
  /** Sums that a step makes, about. */
  readonly work: number;
  private readonly chains: readonly Chain[];
  private readonly symmetries: readonly Int32Array[];
  private readonly directions: readonly (readonly Float64Array[])[];
  private readonly linear: SmallLinear;
  private stretch = 0.3;
  private fruitless = 0;

  private constructor(
    private readonly problem: ConvexAssignment,
    groups: readonly Group[],
    grid: Grid,
    private readonly known: number,
  ) {
    const { size, forms } = problem;
    this.symmetries = cellSymmetries(problem, pairCosts(problem));
    this.chains = chainsOf(groups, grid, forms[0]!.items, this.symmetries);
    this.work = this.chains.reduce((sum, chain) => sum + chain.work, 0);
    this.directions = this.chains.map(({ positions }) => positions.map(() => new Float64Array(size)));
    this.linear = new SmallLinear(size);
  }

  /**
   * `known` is the cost of a known arrangement. Null where the problem is not of one form that these groups add up to. What
   * else there is beside the linear cost, 0 or above, is left out.
   */
  static of(
    problem: ConvexAssignment,
    groups: readonly Group[],
    grid: Grid,
    known: number,
  ): GroupBound | null {
    if (problem.forms.length !== 1 || !addUp(problem, groups)) return null;
    return new GroupBound(problem, groups, grid, known);
  }

  /** Makes one step of the ascent. */
  step(): void {
    const { size, linear: costs, constant } = this.problem;
    const { table } = this.linear;
    let value = constant;
    table.set(costs);
    for (const chain of this.chains) {
      value += chain.copies * chain.least();
      const part = chain.copies / this.symmetries.length;
      chain.positions.forEach(({ cells }, at) => {
        for (const image of this.symmetries) {
          for (const cell of cells) {
            for (let item = 0; item < size; item++)
              table[item * size + image[cell]!]! += part * chain.prices[at]![item]!;
          }
        }
      });
    }
    value += this.linear.solve(size);
    this.weigh(value);
    this.go((this.stretch * Math.max(0, this.known - value)) / Math.max(this.turn(), Number.MIN_VALUE));
  }

  private weigh(value: number): void {
    if (value > this.bound + 1e-6) this.fruitless = 0;
    else this.fruitless += 1;
    this.bound = Math.max(this.bound, value);
    if (this.fruitless <= PATIENCE) return;
    this.stretch *= SHORTER;
    this.fruitless = 0;
  }

  /** Turns the directions towards where chains and assignment differ; returns the square of their length. */
  private turn(): number {
    const { size } = this.problem;
    const itemIn = new Int32Array(size);
    for (let item = 0; item < size; item++) itemIn[this.linear.columnOf[item]!] = item;
    let square = 0;
    const one = 1 / this.symmetries.length;
    this.chains.forEach(({ positions, chosen, copies }, chain) => {
      positions.forEach(({ cells, subsets }, at) => {
        const direction = this.directions[chain]![at]!;
        for (let item = 0; item < size; item++) direction[item]! *= CARRIED;
        for (const image of this.symmetries)
          for (const cell of cells) direction[itemIn[image[cell]!]!]! += one;
        const from = chosen[at]! * subsets.width;
        for (let k = 0; k < subsets.width; k++) direction[subsets.items[from + k]!]! -= 1;
        for (const part of direction) square += copies * part * part;
      });
    });
    return square;
  }

  private go(step: number): void {
    this.chains.forEach(({ prices }, chain) => {
      prices.forEach((price, at) => {
        const direction = this.directions[chain]![at]!;
        for (let item = 0; item < price.length; item++) price[item]! += step * direction[item]!;
      });
    });
  }
}

/** Whether the groups make the table of cells of the form. */
function addUp({ size, forms }: ConvexAssignment, groups: readonly Group[]): boolean {
  const left = forms[0]!.cells.slice();
  for (const { cells, weight } of groups)
    for (const one of cells) for (const other of cells) left[one * size + other]! -= weight;
  return left.every((one) => Math.abs(one) < 1e-9);
}
