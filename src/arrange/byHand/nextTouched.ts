// From good walls with fewer blocks touched to good walls with one or two more: another block is turned or exchanged with one that was
// touched, or two others change places; then all that are touched are settled among themselves. The best few are kept.
import { type Hands, type Laid, NO_BETTER } from './touched';

/** So many walls are kept with each number of blocks touched, and so many times more are settled before they are chosen. */
const KEPT = 8;
const SETTLED = 4 * KEPT;
/** Changes measured between two pauses; they take some milliseconds. */
const PART = 200;

/** A change that is looked at: two cells change places, or the block of one turns. */
interface Next {
  readonly from: Laid;
  readonly cost: number;
  readonly cells: readonly number[];
  readonly swap: readonly [cell: number, other: number, stands: number, otherStands: number] | null;
  readonly turn: readonly [block: number, stands: number] | null;
}

/** The best few walls with one block more than in `one`, and two more than in `two`; the wall is left as it was. */
export function* nextTouched(
  hands: Hands,
  one: readonly Laid[],
  two: readonly Laid[],
): Generator<number, readonly Laid[], boolean> {
  const found = new Best();
  const tried = new Measured();
  const parents = [...one.map((from) => ({ from, more: 1 })), ...two.map((from) => ({ from, more: 2 }))];
  for (const [at, { from, more }] of parents.entries()) {
    const before = from.cells.length === 0 ? null : asItWas(hands, from);
    hands.lay(from);
    const rest = Array.from(hands.cells).filter((cell) => !from.cells.includes(cell));
    for (const cell of rest) {
      const partners = more === 1 ? from.cells : rest.filter((other) => other > cell);
      if (more === 1) tried.count(turns(hands, from, cell, found));
      tried.count(swaps(hands, from, cell, partners, found));
      if (!tried.due()) continue;
      if (yield at / parents.length) {
        if (before) hands.lay(before);
        return [];
      }
    }
    if (before) hands.lay(before);
  }
  return yield* settled(hands, found.best());
}

/** What hung in the cells of a wall before anything was touched: each block where it is at home. */
function asItWas(hands: Hands, { cells }: Laid): Laid {
  return hands.read(cells);
}

/** Adds every turn of the block of a cell; returns how many there are. */
function turns({ wall, orientations }: Hands, from: Laid, cell: number, found: Best): number {
  const block = wall.blockIn[cell]!;
  const was = wall.orientationOf[block]!;
  const base = wall.cost;
  for (const stands of orientations[block]!) {
    if (stands === was) continue;
    const cost = base + wall.turn(block, stands);
    wall.turn(block, was);
    found.add({ from, cost, cells: [cell], swap: null, turn: [block, stands] });
  }
  wall.cost = base;
  return orientations[block]!.length;
}

/** Adds the exchanges of a cell with others, each block as it stands best beside its new neighbours. */
function swaps(hands: Hands, from: Laid, cell: number, others: readonly number[], found: Best): number {
  const { wall, orientations, mayMove } = hands;
  if (!mayMove[cell]) return 0;
  const block = wall.blockIn[cell]!;
  let count = 0;
  for (const other of others) {
    if (!mayMove[other]) continue;
    const second = wall.blockIn[other]!;
    const stands = wall.bestStanding(block, other, orientations[block]!, cell);
    const otherStands = wall.bestStanding(second, cell, orientations[second]!, other);
    const cost = wall.cost + wall.swapCost(cell, other, stands, otherStands);
    found.add({ from, cost, cells: [cell, other], swap: [cell, other, stands, otherStands], turn: null });
    count += 1;
  }
  return count;
}

/** The walls that come of these changes once what they touch is settled: the best few that differ. */
function* settled(hands: Hands, nexts: readonly Next[]): Generator<number, readonly Laid[], boolean> {
  const walls = new Map<string, Laid>();
  let stop = false;
  for (const { from, cells, swap, turn } of nexts) {
    const touched = [...new Set([...from.cells, ...cells])].sort((a, b) => a - b);
    const before = hands.read(touched);
    hands.lay(from);
    if (swap) hands.swap(...swap);
    if (turn) hands.wall.turn(...turn);
    hands.settle(touched);
    const laid = hands.read(touched);
    walls.set([laid.cells, laid.blocks, laid.stands].map(String).join(' '), laid);
    hands.lay(before);
    stop ||= yield 1;
    if (stop) break;
  }
  return [...walls.values()].sort((one, other) => one.cost - other.cost).slice(0, KEPT);
}

/** The best changes so far, of many that are offered. */
class Best {
  private found: Next[] = [];
  private least = Number.POSITIVE_INFINITY;

  add(next: Next): void {
    if (next.cost >= this.least - NO_BETTER) return;
    this.found.push(next);
    if (this.found.length < 4 * SETTLED) return;
    this.found = this.best();
    this.least = this.found.at(-1)!.cost;
  }

  best(): Next[] {
    return this.found.toSorted((one, other) => one.cost - other.cost).slice(0, SETTLED);
  }
}

/** Counts what was measured, and says when a pause is due. */
class Measured {
  private since = 0;

  count(more: number): void {
    this.since += more;
  }

  due(): boolean {
    if (this.since < PART) return false;
    this.since = 0;
    return true;
  }
}
