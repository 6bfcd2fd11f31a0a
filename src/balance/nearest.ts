// How far it is from a marked block to the nearest other one, and how far it would be if the marks were dealt at random.
import type { Inches } from '../model/units';
import type { BlockNodes } from './contactGraph';
import type { WallModel } from './wallModel';

/** Mean distances, middle to middle. */
export interface Nearest {
  readonly mean: Inches;
  readonly byChance: Inches;
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

/** Steps from a cell to the others, nearest first, for one wall. */
export class NearestTable {
  private readonly rowStep: Int32Array;
  private readonly columnStep: Int32Array;
  private readonly inches: Float64Array;
  private readonly chance = new Map<number, Inches>();
  private readonly model: WallModel;
  private readonly nodes: BlockNodes;

  constructor(model: WallModel, nodes: BlockNodes) {
    this.model = model;
    this.nodes = nodes;
    const { rows, columns } = model;
    const pitchX = pitch(model, 1);
    const pitchY = pitch(model, 2);
    const steps: { row: number; column: number; inches: Inches }[] = [];
    for (let row = 1 - rows; row < rows; row++) {
      for (let column = 1 - columns; column < columns; column++) {
        if (row !== 0 || column !== 0) {
          steps.push({ row, column, inches: Math.hypot(row * pitchY, column * pitchX) });
        }
      }
    }
    steps.sort((one, other) => one.inches - other.inches);
    this.rowStep = Int32Array.from(steps, (step) => step.row);
    this.columnStep = Int32Array.from(steps, (step) => step.column);
    this.inches = Float64Array.from(steps, (step) => step.inches);
  }

  /** For one mark per node (block); null where fewer than three are marked, which chance says little about. */
  measure(marked: ArrayLike<number>): Nearest | null {
    let count = 0;
    let sum = 0;
    for (let node = 0; node < this.nodes.blockOf.length; node++) {
      if (!marked[node]) continue;
      count += 1;
      sum += this.toNearest(node, marked);
    }
    return count < 3 ? null : { mean: sum / count, byChance: this.byChance(count) };
  }

  private toNearest(node: number, marked: ArrayLike<number>): Inches {
    for (let step = 0; step < this.inches.length; step++) {
      const other = this.reached(node, step);
      if (other >= 0 && marked[other]) return this.inches[step]!;
    }
    return 0;
  }

  /** The node a step away, −1 off the wall or where nothing hangs. */
  private reached(node: number, step: number): number {
    const { rows, columns, cellOf, rowOf, columnOf, cellAt } = this.model;
    const cell = cellOf[this.nodes.blockOf[node]!]!;
    const column = columnOf[cell]! + this.columnStep[step]!;
    const row = rowOf[cell]! + this.rowStep[step]!;
    if (row < 0 || column < 0 || row >= rows || column >= columns) return -1;
    const reached = cellAt[row * columns + column]!;
    return reached < 0 ? -1 : this.nodes.nodeIn[reached]!;
  }

  /**
   * Exact: of n − 1 others m − 1 are marked, so the chance that none of the nearest r is, is Π (n − m − j)/(n − 1 − j), j < r;
   * averaged over all nodes as the one looked from. A full wall is the same in all four quarters, so one stands for all.
   */
  private byChance(count: number): Inches {
    const known = this.chance.get(count);
    if (known !== undefined) return known;
    const n = this.nodes.blockOf.length;
    const { rows, columns, cellOf, rowOf, columnOf } = this.model;
    const full = n === rows * columns;
    let sum = 0;
    let all = 0;
    for (let node = 0; node < n; node++) {
      let alike = 1;
      if (full) {
        const cell = cellOf[this.nodes.blockOf[node]!]!;
        const row = rowOf[cell]!;
        const column = columnOf[cell]!;
        if (2 * row > rows - 1 || 2 * column > columns - 1) continue;
        alike = (2 * row === rows - 1 ? 1 : 2) * (2 * column === columns - 1 ? 1 : 2);
      }
      sum += alike * this.expected(node, n, count);
      all += alike;
    }
    this.chance.set(count, sum / all);
    return sum / all;
  }

  private expected(node: number, n: number, count: number): Inches {
    let sum = 0;
    let none = 1;
    let passed = 0;
    for (let step = 0; step < this.inches.length && none > 1e-7; step++) {
      if (this.reached(node, step) < 0) continue;
      const still = (none * (n - count - passed)) / (n - 1 - passed);
      sum += this.inches[step]! * (none - still);
      none = still;
      passed += 1;
    }
    return sum;
  }
}
