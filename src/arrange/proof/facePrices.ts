// Prices the faces of blocks so that no seam between two of them costs less than both their prices: seams that must lie between
// rims of one fabric, as there are too few others, then show in the cost of every block by itself.
import { stepsPerTurn } from '../../model/find';
import type { Contacts } from './contactTables';
import { leastSeams } from './seamTransport';

/** More than any number of seams costs: a side without a neighbour does not take another such side. */
const NEVER = 1e6;

/**
 * A price of each fabric on a face, by the numbers of the table of seams, and whether that table may be read with them:
 * `across` is the least share of a seam that sashing between cells lets through.
 */
export interface FacePrices {
  readonly of: Float64Array;
  /** Sides (cell × 4 + side) at which two blocks that may change cells meet; a block pays its prices there. */
  readonly inner: Uint8Array;
}

/**
 * Every face of a movable block meets another one or a side that is no seam of theirs (the edge, a fixed block). Laid at least
 * cost that is a transportation problem, with each face in it twice, as one end of a seam and as the other (a matching is
 * half of that); its prices (Hitchcock 1941), evened out over the two ends, are those of the faces. Any prices with
 * price + price ≤ cost of the seam, for all faces that may come to lie at one, give a true bound; these give the best by counting.
 * Where corners may be turned, other faces of a block lie there: the faces of all its shifts are counted, and all else as often.
 */
export function* facePrices(contacts: Contacts): Generator<void, FacePrices> {
  const { tables, decisions } = contacts;
  const { stride, touching } = tables;
  const { inner, across, edges } = innerSides(contacts);
  const of = new Float64Array(stride);
  const shifts = contacts.decisions.orientations.map((_, block) => shiftsOf(contacts, block));
  const most = Math.max(...shifts);
  const counts = faceCounts(contacts, shifts, most);
  const kinds = Array.from(counts.keys()).filter((kind) => counts[kind]! > 0);
  if (across === 0 || kinds.length === 0) return { of, inner };
  const size = kinds.length + 1;
  const cost = new Float64Array(size * size);
  kinds.forEach((kind, row) => {
    kinds.forEach((other, column) => {
      cost[row * size + column] = across * touching[kind * stride + other]!;
    });
  });
  cost[size * size - 1] = NEVER;
  const stock = Int32Array.from([...kinds.map((kind) => counts[kind]!), most * edges]);
  const { rowPrice, columnPrice } = yield* leastSeams(
    { rows: stock, columns: stock, cost },
    most * (4 * decisions.cells.length + edges),
  );
  kinds.forEach((kind, at) => {
    of[kind] = (rowPrice[at]! + columnPrice[at]!) / 2;
  });
  return { of, inner };
}

/** The sides at which movable blocks meet, the least share that sashing lets through there, and how many other sides there are. */
function innerSides({ tables, decisions }: Contacts) {
  const { model } = tables;
  const open = new Set(decisions.cells);
  const inner = new Uint8Array(model.blockIn.length * 4);
  let across = Number.POSITIVE_INFINITY;
  let edges = 0;
  for (const cell of decisions.cells) {
    for (let side = cell * 4; side < cell * 4 + 4; side++) {
      if (!open.has(model.neighbourCell[side]!)) {
        edges += 1;
        continue;
      }
      inner[side] = 1;
      across = Math.min(across, model.sashingFactorAt[side]!);
    }
  }
  return { inner, across: Number.isFinite(across) ? across : 0, edges };
}

/** In how many ways the corners of a block may lie: those of its first turn tell. */
function shiftsOf({ tables, decisions }: Contacts, block: number): number {
  const steps = stepsPerTurn(tables.model.perBlock);
  const turns = Array.from(decisions.orientations[block]!, (stands) => Math.floor(stands / steps));
  return turns.filter((turn) => turn === turns[0]).length;
}

/** How many faces of movable blocks are of each fabric, in all shifts of a block's corners, each block as often as one of `most` shifts. */
function faceCounts(
  { tables, decisions, rims }: Contacts,
  shifts: readonly number[],
  most: number,
): Int32Array {
  const counts = new Int32Array(tables.stride);
  for (const cell of decisions.cells) {
    const block = tables.model.blockIn[cell]!;
    const ways = shifts[block]!;
    for (const rim of rims[block]!.subarray(0, 4 * ways)) counts[rim]! += most / ways;
  }
  return counts;
}
