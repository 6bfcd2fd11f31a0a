// Finds the best turns for blocks that keep their cells, exactly: the second half of the proof of a small wall (exactOptimum.ts).
import { aloneCost, type Contacts, touchingCost } from './contactTables';

/** How many combinations of orientations bestTurns keeps at a time. */
export function turnStates({ decisions, tables }: Contacts): number {
  const most = Math.max(1, ...decisions.orientations.map((one) => one.length));
  // Cells on point lie on a grid turned by an eighth, with gaps at its corners.
  return most ** Math.min(tables.model.rows, tables.model.columns);
}

/**
 * Finds the best orientations for blocks in their cells, exactly, by dynamic programming: it goes through the grid place by
 * place and keeps, for every combination of orientations along the frontier, the least cost that leads to it.
 */
export function bestTurns(
  contacts: Contacts,
  blockIn: Int32Array,
): { cost: number; orientationOf: Int32Array } {
  const { model } = contacts.tables;
  const upright = model.columns > model.rows;
  const [length, width] = upright ? [model.columns, model.rows] : [model.rows, model.columns];
  const radix = Math.max(1, ...contacts.decisions.orientations.map((one) => one.length));
  let table = new Float64Array(radix ** width).fill(Number.POSITIVE_INFINITY);
  table[0] = 0;
  const steps: Step[] = [];
  for (let line = 0; line < length; line++) {
    for (let at = 0; at < width; at++) {
      const cell = model.cellAt[upright ? at * model.columns + line : line * model.columns + at]!;
      // Towards the place before in the line, and towards the one in the line before.
      const sides = upright ? ([0, 3] as const) : ([3, 0] as const);
      const done = oneMore(contacts, blockIn, cell, sides, { table, radix, place: radix ** at });
      steps.push({ cell, place: radix ** at, from: done.from });
      table = done.table;
    }
  }
  return traced(contacts, blockIn, table, steps, radix);
}

interface Step {
  readonly cell: number;
  /** The factor of this place's orientation in the number of a state. */
  readonly place: number;
  /** State before, by state after. */
  readonly from: Int32Array;
}

interface Edge {
  readonly table: Float64Array;
  readonly radix: number;
  readonly place: number;
}

function oneMore(
  contacts: Contacts,
  blockIn: Int32Array,
  cell: number,
  [before, above]: readonly [number, number],
  { table, radix, place }: Edge,
): { table: Float64Array<ArrayBuffer>; from: Int32Array } {
  const block = cell < 0 ? -1 : blockIn[cell]!;
  const next = new Float64Array(table.length).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(table.length).fill(-1);
  const count = block < 0 ? 1 : contacts.decisions.orientations[block]!.length;
  const costs = Array.from({ length: count }, (_, own) =>
    block < 0 ? 0 : aloneCost(contacts, block, own, cell),
  );
  const onSide = (side: number) => costsOnSide(contacts, blockIn, cell, side, count, radix);
  const withBefore = onSide(before);
  const withAbove = onSide(above);
  for (let state = 0; state < table.length; state++) {
    const cost = table[state]!;
    if (cost === Number.POSITIVE_INFINITY) continue;
    const was = Math.floor(state / place) % radix;
    const beside = Math.floor((state * radix) / place) % radix;
    for (let own = 0; own < count; own++) {
      const sum =
        cost +
        costs[own]! +
        (withAbove?.[own * radix + was] ?? 0) +
        (withBefore?.[own * radix + beside] ?? 0);
      const to = state + (own - was) * place;
      if (sum < next[to]!) {
        next[to] = sum;
        from[to] = state;
      }
    }
  }
  return { table: next, from };
}

/** Cost of a block and its neighbour on a side: own orientation × radix + the neighbour's. Null without a neighbour. */
function costsOnSide(
  contacts: Contacts,
  blockIn: Int32Array,
  cell: number,
  side: number,
  count: number,
  radix: number,
): Float64Array | null {
  const { model } = contacts.tables;
  const block = cell < 0 ? -1 : blockIn[cell]!;
  const beyond = block < 0 ? -1 : model.neighbourCell[cell * 4 + side]!;
  const other = beyond < 0 ? -1 : blockIn[beyond]!;
  if (other < 0) return null;
  const costs = new Float64Array(count * radix);
  const across = model.sashingFactorAt[cell * 4 + side]!;
  for (let own = 0; own < count; own++) {
    for (let its = 0; its < contacts.decisions.orientations[other]!.length; its++) {
      costs[own * radix + its] = across * touchingCost(contacts, block, own, other, its, side);
    }
  }
  return costs;
}

function traced(
  contacts: Contacts,
  blockIn: Int32Array,
  table: Float64Array,
  steps: readonly Step[],
  radix: number,
): { cost: number; orientationOf: Int32Array } {
  const orientationOf = contacts.tables.model.orientationOf.slice();
  let state = table.indexOf(Math.min(...table));
  const cost = table[state]!;
  for (const { cell, from, place } of steps.toReversed()) {
    const block = cell < 0 ? -1 : blockIn[cell]!;
    if (block >= 0)
      orientationOf[block] = contacts.decisions.orientations[block]![Math.floor(state / place) % radix]!;
    state = from[state]!;
  }
  return { cost, orientationOf };
}
