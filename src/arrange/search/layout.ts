// States the question 'which block hangs in which cell' as a quadratic assignment over the figures of the blocks. The flow is
// what two blocks have in common; the distance is the kernel of the groups of cells. Turns, rims and the whole top's weight are
// left out. Where corners follow the cells by a rule, all blocks get the corners of one sort of cell: near enough to begin with.
import type { AssignmentProblem } from '../assignment/problem';
import { aloneSpread, kernelTable, likenessOf, rowIn, type Spread } from '../proof/spreadAssignment';

export interface Layout {
  /** Item i is the i-th block and place i the i-th cell; at the start block i hangs in cell i. */
  readonly problem: AssignmentProblem;
  readonly cells: Int32Array;
  readonly blocks: Int32Array;
  /** Add this to the problem's cost to get what value, colour and fabric spread weigh in the score over all cells. */
  readonly constant: number;
}

/**
 * Makes the problem of exchanging the blocks of some filled cells, with all other blocks fixed where `blockIn` has them.
 * O(cells² × figures). Under a corner rule a block looks different in another cell, which no flow can express: all exchanged
 * blocks then count with the corners of the first cell, and the cost is only near the score.
 */
export function layoutOf(spread: Spread, blockIn: Int32Array, cells: Int32Array): Layout {
  const { figures, tables } = spread;
  const { channels } = tables;
  const size = cells.length;
  const blocks = Int32Array.from(cells, (cell) => blockIn[cell]!);
  const open = new Set(cells);
  const fixed = spread.cells.filter((cell) => !open.has(cell));
  const isFixed = new Uint8Array(blockIn.length);
  for (const cell of fixed) isFixed[cell] = 1;
  const distance = kernelTable(tables, cells);
  const flow = new Float64Array(size * size);
  const linear = new Float64Array(size * size);
  for (let item = 0; item < size; item++) {
    for (let other = 0; other < item; other++) {
      flow[item * size + other] = likenessOf(spread, blocks[item]!, blocks[other]!);
      flow[other * size + item] = flow[item * size + other]!;
    }
  }
  // A block's own square is the same in every cell; it is part of the linear cost.
  for (let place = 0; place < size; place++) distance[place * size + place] = 0;
  for (let place = 0; place < size; place++) {
    const cell = cells[place]!;
    const lag = fixedLag(spread, blockIn, isFixed, cell);
    blocks.forEach((block, item) => {
      const row = rowIn(spread, block, cell) * channels;
      let cost = aloneSpread(spread, block, cell);
      for (let channel = 0; channel < channels; channel++)
        cost += 2 * figures[row + channel]! * lag[channel]!;
      linear[item * size + place] = cost;
    });
  }
  return {
    problem: { size, distance, flow, linear },
    cells,
    blocks,
    constant: fixedCost(spread, blockIn, fixed),
  };
}

/** The cost of the fixed cells, by themselves and among each other. */
function fixedCost(spread: Spread, blockIn: Int32Array, fixed: Int32Array): number {
  const { near } = spread.tables.scales.kernel;
  const isFixed = new Uint8Array(blockIn.length);
  for (const cell of fixed) isFixed[cell] = 1;
  let cost = spread.tables.valueConstant;
  for (const cell of fixed) {
    const block = blockIn[cell]!;
    cost += aloneSpread(spread, block, cell);
    for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
      const other = near.to[at]!;
      if (isFixed[other])
        cost +=
          near.weight[at]! *
          likenessOf(spread, rowIn(spread, block, cell), rowIn(spread, blockIn[other]!, other));
    }
  }
  return cost;
}

/** Σ K(cell, d) · signed figures of the block in d, over the fixed cells d. */
function fixedLag(spread: Spread, blockIn: Int32Array, isFixed: Uint8Array, cell: number): Float64Array {
  const { figures, tables } = spread;
  const { channels, sign } = tables;
  const { near } = tables.scales.kernel;
  const lag = new Float64Array(channels);
  for (let at = near.start[cell]!; at < near.start[cell + 1]!; at++) {
    const other = near.to[at]!;
    if (!isFixed[other]) continue;
    const from = rowIn(spread, blockIn[other]!, other) * channels;
    for (let channel = 0; channel < channels; channel++)
      lag[channel]! += near.weight[at]! * sign[channel]! * figures[from + channel]!;
  }
  return lag;
}
