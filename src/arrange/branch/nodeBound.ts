// Bounds what is still open at a node of the branch and bound: the convex quadratic bound of Anstreicher and Brixius,
// Mathematical Programming 89 (2001) 341–357, made better step by step after Frank and Wolfe (1956), each step one linear
// assignment. On the way it learns how much dearer every item is in every cell.
import type { ConvexAssignment } from './convexAssignment';
import { SmallLinear } from './smallLinear';
import type { Spectra, Spectrum } from './spectra';

/** What is open: items and cells by their numbers in the whole, costs among them as items × cells. */
export interface OpenPart {
  readonly count: number;
  readonly items: Int32Array;
  readonly cells: Int32Array;
  readonly itemSet: number;
  readonly cellSet: number;
  /** Cost of all that is settled. */
  readonly cost: number;
  /** Cost of each item in each cell, towards the settled ones too, without its own squares. */
  readonly linear: Float64Array;
}

/** Steps after which a bound that cannot reach `enough` is given up; and the most there are. */
const SURE = 3;
const MOST_STEPS = 12;
/** A slope of less is none. */
const FLAT = 1e-9;

/** A form at a node, in the eigenvectors of its cells and its items. */
interface Turned {
  cells: Spectrum;
  items: Spectrum;
  /** σ λ − s − t ≥ 0 for eigenvalues σ of the cells and λ of the items: the convex rest of the form. */
  readonly rest: Float64Array;
  readonly at: Float64Array;
  readonly corner: Float64Array;
}

export class NodeBound {
  /** Open items × open cells: an arrangement with the item there costs at least so much more than the bound. */
  readonly dearer: Float64Array;
  private readonly linear: SmallLinear;
  private readonly alone: Float64Array;
  private readonly turned: readonly Turned[];
  private readonly half: Float64Array;
  private readonly slope: Float64Array;
  private readonly spare: Float64Array;
  private readonly moments: Float64Array;
  private readonly cornerMoments: Float64Array;

  constructor(
    private readonly problem: ConvexAssignment,
    private readonly spectra: readonly { readonly cells: Spectra; readonly items: Spectra }[],
  ) {
    const room = () => new Float64Array(problem.size ** 2);
    this.dearer = room();
    this.linear = new SmallLinear(problem.size);
    this.alone = room();
    this.half = room();
    this.slope = room();
    this.spare = new Float64Array(problem.size);
    const none: Spectrum = { values: this.spare, vectors: this.spare, sums: this.spare, all: 0 };
    this.turned = spectra.map(() => ({ cells: none, items: none, rest: room(), at: room(), corner: room() }));
    this.moments = new Float64Array(problem.moments.length);
    this.cornerMoments = new Float64Array(problem.moments.length);
  }

  /** No arrangement of the open part costs less. Stops early once that is `enough`, or `enough` is out of reach. */
  of(open: OpenPart, enough: number): number {
    const { count } = open;
    const base = open.cost + this.begin(open);
    let own = sumOf(this.alone, count * count) / count;
    let squares = this.momentSquares();
    let bound = Number.NEGATIVE_INFINITY;
    for (let step = 0; ; step++) {
      this.writeSlopes(open, step === 0);
      const least = this.linear.solve(count);
      if (base + least - squares > bound) {
        bound = base + least - squares;
        this.keepDearer(count);
      }
      if (bound >= enough || step >= MOST_STEPS) return bound;
      // The cost of a point between the arrangements: no later step gets above the least of them.
      if (step >= SURE && base + own + squares < enough) return bound;
      const fall = own + 2 * squares - least;
      if (fall < FLAT) return bound;
      const corner = this.toCorner(open);
      const bend = this.bend(count);
      const share = Math.min(1, fall / Math.max(2 * bend, Number.MIN_VALUE));
      own += share * (corner - own);
      squares = this.go(count, share);
    }
  }

  /** Sets the middle of all arrangements as the point; returns what is the same at every point. */
  private begin(open: OpenPart): number {
    const { count, items, cells } = open;
    const { moments } = this.problem;
    this.alone.set(open.linear.subarray(0, count * count));
    let base = 0;
    this.turned.forEach((form, at) => {
      form.cells = this.spectra[at]!.cells.of(open.cellSet);
      form.items = this.spectra[at]!.items.of(open.itemSet);
      form.at.fill(0, 0, (count - 1) ** 2);
      base += this.takeMeans(form, count) + takeRest(form, count, this.spare);
    });
    moments.forEach((moment, at) => {
      let there = 0;
      let figure = 0;
      for (let k = 0; k < count; k++) {
        there += moment.cells[cells[k]!]!;
        figure += moment.items[items[k]!]!;
      }
      this.moments[at] = (there * figure) / count;
    });
    return base;
  }

  /** Figures are their mean and what differs from it: the part with the mean is linear, or the same everywhere. */
  private takeMeans({ cells, items }: Turned, count: number): number {
    const { alone } = this;
    for (let item = 0; item < count; item++) {
      const mean = (2 * items.sums[item]!) / count;
      for (let cell = 0; cell < count; cell++) alone[item * count + cell]! += mean * cells.sums[cell]!;
    }
    return (-cells.all * items.all) / (count * count);
  }

  private momentSquares(): number {
    let sum = 0;
    for (const one of this.moments) sum += one * one;
    return sum;
  }

  /** Writes the slope of the cost at the point into the table of the linear assignment. */
  private writeSlopes({ count, items, cells }: OpenPart, atMiddle: boolean): void {
    const { table } = this.linear;
    for (let at = 0; at < count * count; at++) table[at] = this.alone[at]!;
    if (!atMiddle) for (const form of this.turned) this.addSlopes(form, count);
    this.problem.moments.forEach((moment, at) => {
      const twice = 2 * this.moments[at]!;
      for (let item = 0; item < count; item++) {
        const factor = twice * moment.items[items[item]!]!;
        for (let cell = 0; cell < count; cell++)
          table[item * count + cell]! += factor * moment.cells[cells[cell]!]!;
      }
    });
  }

  /** 2 U (rest ∘ z)ᵀ Wᵀ, U the eigenvectors of the items, W those of the cells. */
  private addSlopes({ cells, items, rest, at }: Turned, count: number): void {
    const width = count - 1;
    const { half, slope } = this;
    const { table } = this.linear;
    for (let k = 0; k < width * width; k++) slope[k] = 2 * rest[k]! * at[k]!;
    for (let item = 0; item < count; item++) {
      for (let own = 0; own < width; own++) {
        let sum = 0;
        for (let k = 0; k < width; k++) sum += items.vectors[item * width + k]! * slope[own * width + k]!;
        half[own] = sum;
      }
      for (let cell = 0; cell < count; cell++) {
        let sum = 0;
        for (let k = 0; k < width; k++) sum += cells.vectors[cell * width + k]! * half[k]!;
        table[item * count + cell]! += sum;
      }
    }
  }

  private keepDearer(count: number): void {
    const { table, rowPrice, columnPrice } = this.linear;
    for (let item = 0; item < count; item++) {
      for (let cell = 0; cell < count; cell++) {
        this.dearer[item * count + cell] = table[item * count + cell]! - rowPrice[item]! - columnPrice[cell]!;
      }
    }
  }

  /** Writes the arrangement that the linear assignment found as the corner to go to; returns its linear cost. */
  private toCorner({ count, items, cells }: OpenPart): number {
    const { columnOf } = this.linear;
    const width = count - 1;
    let cost = 0;
    for (let item = 0; item < count; item++) cost += this.alone[item * count + columnOf[item]!]!;
    for (const { corner, cells, items } of this.turned) {
      corner.fill(0, 0, width * width);
      for (let item = 0; item < count; item++) {
        const cell = columnOf[item]! * width;
        for (let row = 0; row < width; row++) {
          const factor = cells.vectors[cell + row]!;
          for (let k = 0; k < width; k++)
            corner[row * width + k]! += factor * items.vectors[item * width + k]!;
        }
      }
    }
    this.problem.moments.forEach((moment, at) => {
      let sum = 0;
      for (let item = 0; item < count; item++)
        sum += moment.items[items[item]!]! * moment.cells[cells[columnOf[item]!]!]!;
      this.cornerMoments[at] = sum;
    });
    return cost;
  }

  /** The square part of the cost along the way from the point to the corner. */
  private bend(count: number): number {
    let sum = 0;
    for (const { rest, at, corner } of this.turned) {
      for (let k = 0; k < (count - 1) ** 2; k++) sum += rest[k]! * (corner[k]! - at[k]!) ** 2;
    }
    for (let k = 0; k < this.moments.length; k++) sum += (this.cornerMoments[k]! - this.moments[k]!) ** 2;
    return sum;
  }

  /** Goes a share of the way to the corner; returns the squares there. */
  private go(count: number, share: number): number {
    let sum = 0;
    for (const { rest, at, corner } of this.turned) {
      for (let k = 0; k < (count - 1) ** 2; k++) {
        at[k]! += share * (corner[k]! - at[k]!);
        sum += rest[k]! * at[k]! ** 2;
      }
    }
    for (let k = 0; k < this.moments.length; k++) {
      this.moments[k]! += share * (this.cornerMoments[k]! - this.moments[k]!);
    }
    return sum + this.momentSquares();
  }
}

/**
 * The projection bound Σ σ_k λ_(m−k) of a form, σ and λ ascending, and its proof: s, t with s_k + t_l ≤ σ_k λ_l everywhere,
 * equal where the bound pairs them. What is left over, `rest`, is convex.
 */
function takeRest({ cells, items, rest }: Turned, count: number, t: Float64Array): number {
  const width = count - 1;
  const sigma = cells.values;
  const lambda = items.values;
  let bound = 0;
  for (let k = 0; k < width; k++) {
    const partner = width - 1 - k;
    bound += sigma[k]! * lambda[partner]!;
    t[partner] =
      k === 0
        ? 0
        : t[partner + 1]! + 0.5 * (sigma[k - 1]! + sigma[k]!) * (lambda[partner]! - lambda[partner + 1]!);
  }
  for (let k = 0; k < width; k++) {
    const s = sigma[k]! * lambda[width - 1 - k]! - t[width - 1 - k]!;
    for (let l = 0; l < width; l++) rest[k * width + l] = Math.max(0, sigma[k]! * lambda[l]! - s - t[l]!);
  }
  return bound;
}

function sumOf(table: Float64Array, count: number): number {
  let sum = 0;
  for (let at = 0; at < count; at++) sum += table[at]!;
  return sum;
}
