// Every way of touching so many blocks of a wall, one after the other: which ones, in what order they go up again, and how each is
// turned. For few blocks and small walls; nextTouched.ts looks for good ones where there are too many.
import { type Hands, type Laid, NO_BETTER } from './touched';

/** The most ways that are gone through: some seconds. */
const MOST_WAYS = 2_000_000;
/** Ways between two pauses; they take some milliseconds. */
const PART = 200;

/** Whether the ways of touching so many blocks are few enough to go through all of them. */
export function canTryAll({ cells, orientations, wall }: Hands, touched: number): boolean {
  const turns = Math.max(0, ...Array.from(cells, (cell) => orientations[wall.blockIn[cell]!]!.length));
  let ways = turns ** touched;
  // Choices of the cells, times the orders of their blocks.
  for (let at = 0; at < touched; at++) ways *= cells.length - at;
  return ways <= MOST_WAYS;
}

/** The best wall with at most so many blocks touched; null where none is better than the wall as it is, or it was stopped. */
export function* bestOfAll(hands: Hands, touched: number): Generator<number, Laid | null, boolean> {
  const search = new EveryWay(hands);
  const all = chosen(hands.cells.length, touched);
  let since = 0;
  let done = 0;
  const sets = choices(hands.cells.length, touched);
  for (const at of all) {
    since += search.of(at.map((one) => hands.cells[one]!));
    done += 1;
    if (since < PART) continue;
    since = 0;
    if (yield done / sets) return null;
  }
  return search.best;
}

class EveryWay {
  best: Laid | null = null;
  private ways = 0;

  constructor(private readonly hands: Hands) {}

  /** Goes through all ways of the blocks in these cells, and leaves the wall as it was; returns how many there were. */
  of(cells: readonly number[]): number {
    const before = this.hands.read(cells);
    this.ways = 0;
    this.order(cells, 0);
    this.hands.lay(before);
    return this.ways;
  }

  private order(cells: readonly number[], from: number): void {
    if (from === cells.length) {
      this.turn(cells, 0);
      return;
    }
    const { hands } = this;
    this.order(cells, from + 1);
    for (let other = from + 1; other < cells.length; other++) {
      if (!hands.mayMove[cells[from]!] || !hands.mayMove[cells[other]!]) continue;
      hands.exchange(cells[from]!, cells[other]!);
      this.order(cells, from + 1);
      hands.exchange(cells[from]!, cells[other]!);
    }
  }

  private turn(cells: readonly number[], from: number): void {
    const { wall, orientations } = this.hands;
    if (from === cells.length) {
      this.ways += 1;
      if (wall.cost < (this.best?.cost ?? Number.POSITIVE_INFINITY) - NO_BETTER)
        this.best = this.hands.read(cells);
      return;
    }
    const block = wall.blockIn[cells[from]!]!;
    const was = wall.orientationOf[block]!;
    for (const stands of orientations[block]!) {
      if (wall.orientationOf[block] !== stands) wall.turn(block, stands);
      this.turn(cells, from + 1);
    }
    if (wall.orientationOf[block] !== was) wall.turn(block, was);
  }
}

/** Every choice of so many of the numbers from 0, ascending. */
function* chosen(of: number, many: number, from = 0): Generator<readonly number[]> {
  if (many === 0) {
    yield [];
    return;
  }
  for (let first = from; first <= of - many; first++)
    for (const rest of chosen(of, many - 1, first + 1)) yield [first, ...rest];
}

function choices(of: number, many: number): number {
  let count = 1;
  for (let at = 0; at < many; at++) count = (count * (of - at)) / (at + 1);
  return count;
}
