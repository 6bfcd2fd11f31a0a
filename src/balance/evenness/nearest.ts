// Measures the distance from a wedge that holds a fabric to the nearest other one, and what it would be if the wedges with the
// fabric were dealt to the places of the wall at random.
import { direction } from '../../geometry/block';
import type { Inches } from '../../model/units';
import type { WallModel } from '../wall/wallModel';

/** Mean distances, middle of wedge to middle of wedge. */
export interface Nearest {
  readonly mean: Inches;
  readonly byChance: Inches;
}

/** The chance that none of the nearest is marked is followed down to about e^−17. */
const FOLLOWED = 17;

/** Steps from one direction in a block to the places of all cells round it, nearest first. */
interface Steps {
  readonly row: Int16Array;
  readonly column: Int16Array;
  readonly toward: Int16Array;
  readonly inches: Float64Array;
}

/**
 * The places of wedges on one wall, cell × N + direction, in which a wedge hangs, with the steps between them. Depends on
 * where wedges hang, not on which.
 */
export class NearestTable {
  private readonly steps: readonly Steps[];
  private readonly filled: Uint8Array;
  private readonly count: number;
  private readonly model: WallModel;
  /** Mean distance to the r-th nearest filled place, over all filled places. */
  private ranks: Float64Array = new Float64Array(0);

  constructor(model: WallModel) {
    this.model = model;
    this.filled = filledPlaces(model);
    this.count = this.filled.reduce((sum, one) => sum + one, 0);
    this.steps = stepsOn(model);
  }

  /** Whether it holds for another model of the same wall and setting too. */
  holdsFor(model: WallModel): boolean {
    const filled = filledPlaces(model);
    return filled.length === this.filled.length && filled.every((one, at) => one === this.filled[at]);
  }

  /** For one area of cloth per place (0: none); the mean is weighted by it. Null where fewer than three places hold any. */
  measure(areas: Float64Array): Nearest | null {
    let count = 0;
    let whole = 0;
    let sum = 0;
    for (let place = 0; place < areas.length; place++) {
      if (areas[place] === 0) continue;
      count += 1;
      whole += areas[place]!;
      sum += areas[place]! * this.toNearest(place, areas);
    }
    return count < 3 ? null : { mean: sum / whole, byChance: this.byChance(count) };
  }

  private toNearest(place: number, areas: Float64Array): Inches {
    const { perBlock, rowOf, columnOf } = this.model;
    const steps = this.steps[place % perBlock]!;
    const cell = Math.floor(place / perBlock);
    const row = rowOf[cell]!;
    const column = columnOf[cell]!;
    for (let step = 0; step < steps.inches.length; step++) {
      const other = this.reached(row, column, steps, step);
      if (other >= 0 && areas[other]! > 0) return steps.inches[step]!;
    }
    return 0;
  }

  /** The place a step away from a row and column, −1 off the wall. */
  private reached(fromRow: number, fromColumn: number, steps: Steps, step: number): number {
    const { perBlock, rows, columns, cellAt } = this.model;
    const column = fromColumn + steps.column[step]!;
    const row = fromRow + steps.row[step]!;
    if (row < 0 || column < 0 || row >= rows || column >= columns) return -1;
    const reached = cellAt[row * columns + column]!;
    return reached < 0 ? -1 : reached * perBlock + steps.toward[step]!;
  }

  /**
   * Exact: of n − 1 others m − 1 are marked, so the chance that none of the nearest r is, is Π (n − m − j)/(n − 1 − j), j < r;
   * averaged over all places as the one looked from.
   */
  private byChance(marked: number): Inches {
    const n = this.count;
    const far = Math.min(n - 1, Math.ceil((FOLLOWED * n) / marked));
    if (this.ranks.length < far) this.ranks = this.meanRanks(far);
    let sum = 0;
    let none = 1;
    for (let rank = 0; rank < far; rank++) {
      const still = (none * (n - marked - rank)) / (n - 1 - rank);
      sum += this.ranks[rank]! * (none - still);
      none = still;
    }
    return sum + none * this.ranks[far - 1]!;
  }

  /** A full wall is the same in all four quarters, so one stands for all. */
  private meanRanks(far: number): Float64Array {
    const { perBlock, rows, columns, rowOf, columnOf } = this.model;
    const full = this.count === rows * columns * perBlock;
    const sums = new Float64Array(far);
    for (let place = 0; place < this.filled.length; place++) {
      if (!this.filled[place]) continue;
      const row = rowOf[Math.floor(place / perBlock)]!;
      const column = columnOf[Math.floor(place / perBlock)]!;
      if (full && (2 * row > rows - 1 || 2 * column > columns - 1)) continue;
      const alike = full ? (2 * row === rows - 1 ? 1 : 2) * (2 * column === columns - 1 ? 1 : 2) : 1;
      const steps = this.steps[place % perBlock]!;
      let rank = 0;
      for (let step = 0; rank < far && step < steps.inches.length; step++) {
        const other = this.reached(row, column, steps, step);
        if (other < 0 || !this.filled[other]) continue;
        sums[rank]! += alike * steps.inches[step]!;
        rank += 1;
      }
    }
    return sums.map((sum) => sum / this.count);
  }
}

/** The place a wedge of a block lies in on the wall: cell × N + direction. */
export function placeOnWall(model: WallModel, block: number, place: number): number {
  const { perBlock, cellOf, orientationOf } = model;
  return cellOf[block]! * perBlock + ((place + orientationOf[block]!) % perBlock);
}

function filledPlaces(model: WallModel): Uint8Array {
  const filled = new Uint8Array(model.blockIn.length * model.perBlock);
  model.typeAt.forEach((type, at) => {
    const block = Math.floor(at / model.perBlock);
    if (type < 0 || model.cellOf[block]! < 0 || model.typeArea[type] === 0) return;
    filled[placeOnWall(model, block, at % model.perBlock)] = 1;
  });
  return filled;
}

/** The last steps: most walls that are analysed are of the size of the one before. */
let last: { readonly key: string; readonly steps: readonly Steps[] } | null = null;

/** Steps from each direction in a block. */
function stepsOn(model: WallModel): readonly Steps[] {
  const { rows, columns, perBlock, blockSize } = model;
  // The middle of a wedge lies two thirds of the way from its tip to its rim.
  const there = {
    rows,
    columns,
    perBlock,
    pitchX: pitch(model, 1),
    pitchY: pitch(model, 2),
    reach: blockSize.height / 3,
  };
  const key = JSON.stringify(there);
  if (last?.key === key) return last.steps;
  const steps = Array.from({ length: perBlock }, (_, toward) => stepsFrom(there, toward));
  last = { key, steps };
  return steps;
}

interface Lattice {
  readonly rows: number;
  readonly columns: number;
  readonly perBlock: number;
  /** Middle to middle of cells side by side and one below the other; from the middle of a block to that of a wedge. */
  readonly pitchX: Inches;
  readonly pitchY: Inches;
  readonly reach: Inches;
}

function stepsFrom({ rows, columns, perBlock, pitchX, pitchY, reach }: Lattice, from: number): Steps {
  const units = Array.from({ length: perBlock }, (_, toward) => direction(toward, perBlock));
  const size = (2 * rows - 1) * (2 * columns - 1) * perBlock;
  const inches = new Float64Array(size);
  let at = 0;
  for (let row = 1 - rows; row < rows; row++) {
    for (let column = 1 - columns; column < columns; column++) {
      for (const unit of units) {
        inches[at++] = Math.hypot(
          column * pitchX + reach * (unit.x - units[from]!.x),
          row * pitchY + reach * (unit.y - units[from]!.y),
        );
      }
    }
  }
  const order = inOrder(inches).filter((step) => inches[step]! > 1e-9);
  const cells = order.map((step) => Math.floor(step / perBlock));
  return {
    row: Int16Array.from(cells, (cell) => Math.floor(cell / (2 * columns - 1)) + 1 - rows),
    column: Int16Array.from(cells, (cell) => (cell % (2 * columns - 1)) + 1 - columns),
    toward: Int16Array.from(order, (step) => step % perBlock),
    inches: Float64Array.from(order, (step) => inches[step]!),
  };
}

/** Indices by size: numbers sort many times faster than indices compared, so each carries its index in its last digits. */
function inOrder(inches: Float64Array): Int32Array {
  const room = 2 ** Math.ceil(Math.log2(inches.length + 1));
  const keys = inches.map((one, at) => Math.round(one * 1e5) * room + at).sort();
  return Int32Array.from(keys, (key) => key % room);
}

/** Middle to middle of cells next to each other on a side, on average where gaps differ; 0 where none are. */
function pitch(model: WallModel, side: 1 | 2): Inches {
  let sum = 0;
  let count = 0;
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const row = model.rowOf[cell]! + (side === 2 ? 1 : 0);
    const column = model.columnOf[cell]! + (side === 1 ? 1 : 0);
    const next =
      row < model.rows && column < model.columns ? model.cellAt[row * model.columns + column]! : -1;
    if (next < 0) continue;
    sum += Math.hypot(model.cellX[next]! - model.cellX[cell]!, model.cellY[next]! - model.cellY[cell]!);
    count += 1;
  }
  return count === 0 ? 0 : sum / count;
}
