// An assignment whose costs depend on how two cells lie to each other, written as figures by offset and place.
import { type ConvexAssignment, type Form, ownSquares } from '../branch/convexAssignment';
import { axisOf } from './axis';
import { type Figures, forPairs } from './figures';
import { OffsetTable } from './offsetTable';

/** An item whose own square is far below the mean counts as one with so much of the mean. */
const LEAST_SHARE = 0.1;

/** An assignment by forms alone, and the grid that its cells fill row by row. */
export interface GridAssignment extends Pick<ConvexAssignment, 'size' | 'constant' | 'linear' | 'forms'> {
  readonly rows: number;
  readonly columns: number;
}

export class OffsetProblem {
  readonly size: number;
  /** Weight of each item: figures of two items are written times both. It makes costs of alike size, so that fewer steps are needed. */
  readonly scale: Float64Array;
  /** What an item costs by itself in a cell: item × size + cell. */
  readonly own: Float64Array;

  private constructor(
    private readonly problem: GridAssignment,
    readonly table: OffsetTable,
    /** Of each form the factor of the cells at an offset. */
    private readonly near: readonly Float64Array[],
  ) {
    this.size = problem.size;
    this.scale = scaleOf(problem);
    const squares = ownSquares({ ...problem, moments: [] });
    this.own = problem.linear.map((one, at) => one + squares[at]!);
  }

  /** Null where the factors of a form do not go by the offset of the cells. */
  static of(problem: GridAssignment): OffsetProblem | null {
    const table = new OffsetTable(problem.rows, problem.columns);
    const all = problem.forms.map((form) => nearOf(form, table));
    const near = all.filter((one) => one !== null);
    return problem.size < 2 || near.length < all.length ? null : new OffsetProblem(problem, table, near);
  }

  get constant(): number {
    return this.problem.constant;
  }

  /** Pairs of two items at offsets that two cells have; all others are known. */
  forFree(visit: (at: number, offset: number, item: number, other: number) => void): void {
    const { table, size } = this;
    for (let offset = 1; offset < table.offsets; offset++) {
      if (table.cellPairs[offset] === 0) continue;
      forPairs(size, (at, item, other) => {
        if (item !== other) visit(offset * table.pairs + at, offset, item, other);
      });
    }
  }

  /** What items hung by chance have. */
  even(): Figures {
    const { table, scale, size } = this;
    const figures = table.none('place');
    this.forFree((at, offset, item, other) => {
      const chance = table.cellPairs[offset]! / (size * (size - 1));
      figures.pairs[at] = (chance * scale[item]! * scale[other]!) / table.offsetRoot[offset]!;
    });
    forPairs(size, (at, item, other) => {
      if (item === other) figures.pairs[at] = scale[item]! ** 2;
    });
    const places = figures.places.map(
      (_, at) => (table.placeRoot[Math.floor(at / size)]! * scale[at % size]!) / size,
    );
    return { ...figures, places, whole: figures.whole.map((_, wave) => table.waveRoot(wave)) };
  }

  /** Costs in the weights of the figures. */
  costs(): Figures {
    const { table, scale, size } = this;
    const costs = table.none('place');
    this.forFree((at, offset, item, other) => {
      costs.pairs[at] =
        (table.offsetRoot[offset]! * this.cost(offset, item, other)) / (scale[item]! * scale[other]!);
    });
    // Every item in a cell is written twice in a matrix; pairs are counted twice as well. What is the same in all cells decides nothing.
    for (let item = 0; item < size; item++) {
      const own = this.own.subarray(item * size, (item + 1) * size);
      const mean = own.reduce((sum, one) => sum + one, 0) / size;
      own.forEach((one, cell) => {
        const place = table.placeOf(cell);
        costs.places[place * size + item]! += (one - mean) / (2 * table.placeRoot[place]! * scale[item]!);
      });
    }
    return costs;
  }

  /** What two items at an offset cost; counted from both. */
  private cost(offset: number, item: number, other: number): number {
    const { forms, size } = this.problem;
    return forms.reduce(
      (sum, form, at) => sum + this.near[at]![offset]! * form.items[item * size + other]!,
      0,
    );
  }
}

/** About what a step takes: the cubes of the sizes of its matrices. */
export function workOnGrid(rows: number, columns: number): number {
  return axisOf(rows).offsets.waves * axisOf(columns).offsets.waves * (rows * columns) ** 3;
}

/** The root of an item's length, 1 on average of squares. */
function scaleOf({ size, forms }: GridAssignment): Float64Array {
  const lengths = Float64Array.from({ length: size }, (_, item) =>
    Math.sqrt(forms.reduce((sum, { items }) => sum + Math.abs(items[item * size + item]!), 0)),
  );
  const mean = lengths.reduce((sum, one) => sum + one, 0) / size;
  return lengths.map((one) => (mean > 0 ? Math.sqrt(Math.max(one / mean, LEAST_SHARE)) : 1));
}

/** The factor of two cells by their offset; null where it is not one. */
function nearOf({ cells }: Form, table: OffsetTable): Float64Array | null {
  const { size } = table;
  const near = new Float64Array(table.offsets).fill(Number.NaN);
  for (let cell = 0; cell < size; cell++) {
    for (let other = 0; other < cell; other++) {
      const offset = table.offsetOf(cell, other);
      const factor = cells[cell * size + other]!;
      if (Number.isNaN(near[offset]!)) near[offset] = factor;
      if (Math.abs(near[offset]! - factor) > 1e-9) return null;
    }
  }
  return near.map((one) => (Number.isNaN(one) ? 0 : one));
}
