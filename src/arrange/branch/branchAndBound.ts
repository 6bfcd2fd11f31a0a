// Owns the search for the least cost of all arrangements, and its proof: branch and bound. Parts of the whole are split from
// the least bound on, so that the bound of the whole rises; from a few settled items on, a part is searched to its end.
import { cellSymmetries } from './cellSymmetries';
import { type ConvexAssignment, MOST_ITEMS } from './convexAssignment';
import { Levels } from './levels';
import { NodeBound } from './nodeBound';
import { Spectra } from './spectra';

/** A part of all arrangements that is not searched yet. Plain data, from which a search is taken up again. */
export interface Part {
  /** Items settled in cells, as item × size + cell. */
  readonly settled: readonly number[];
  readonly bound: number;
  /** How much of all the work it counts, 0–1. */
  readonly share: number;
}

/** Costs that differ by less count as equal. */
const LEAST_GAIN = 1e-9;
/** So many items are settled, one by one, before a part is searched to its end. */
const SPLIT = 4;
/** How much an item's own squares count where bounds do not say which item to branch on. */
const TIE = 1e-6;

/** A node on the way down: which places to try next. */
interface Frame {
  readonly places: Int32Array;
  count: number;
  next: number;
}

export class BranchAndBound {
  /** Nodes looked at. */
  nodes = 0;
  /** Share of the work done, 0–1. */
  done = 0;
  /** The least cost known. */
  best: number;
  /** Parts not searched yet, the least bound last. */
  private readonly parts: Part[];
  private current: Part | null = null;
  private depth = -1;
  private readonly levels: Levels;
  private readonly nodeBound: NodeBound;
  private readonly symmetries: readonly Int32Array[];
  private readonly frames: readonly Frame[];
  private readonly dear: Float64Array;

  /**
   * `known` is the cost of an arrangement that is known. `judge` gets every arrangement (the cell of each item) that may be
   * better, and returns its true cost, not below that of the problem. `parts` are what an earlier search has left.
   */
  constructor(
    private readonly problem: ConvexAssignment,
    known: number,
    private readonly judge: (cellOf: Int32Array) => number,
    parts: readonly Part[] = [{ settled: [], bound: Number.NEGATIVE_INFINITY, share: 1 }],
  ) {
    const { size, forms } = problem;
    if (size < 1 || size > MOST_ITEMS)
      throw new RangeError(`BranchAndBound: 1 to ${MOST_ITEMS} items, not ${size}`);
    this.best = known;
    this.parts = parts.toSorted((one, other) => other.bound - one.bound);
    this.done = 1 - parts.reduce((sum, part) => sum + part.share, 0);
    this.levels = new Levels(problem);
    this.symmetries = cellSymmetries(problem, this.levels.pairs);
    this.nodeBound = new NodeBound(
      problem,
      forms.map(({ cells, items }) => ({ cells: new Spectra(cells, size), items: new Spectra(items, size) })),
    );
    this.frames = Array.from({ length: size }, () => ({ places: new Int32Array(size), count: 0, next: 0 }));
    this.dear = new Float64Array(size);
  }

  /** No arrangement costs less; equal to `best` once that is proved. */
  get bound(): number {
    const least = Math.min(
      this.parts.at(-1)?.bound ?? Number.POSITIVE_INFINITY,
      this.current?.bound ?? Number.POSITIVE_INFINITY,
    );
    return least >= this.enough ? this.best : least;
  }

  /** True once nothing is left that may be better. */
  get ended(): boolean {
    return this.current === null && (this.parts.at(-1)?.bound ?? Number.POSITIVE_INFINITY) >= this.enough;
  }

  /** What is left to search, to be taken up again. The part that is being searched begins anew. */
  get left(): Part[] {
    const all = this.current ? [...this.parts, this.current] : this.parts;
    return all.filter(({ bound }) => bound < this.enough);
  }

  /** Looks at some nodes, fewer where it ends. */
  advance(nodes: number): void {
    for (let more = nodes; more > 0 && !this.ended; more--) {
      if (this.depth < 0) this.takePart();
      else this.goOn();
    }
    if (this.ended) this.done = 1;
  }

  private get enough(): number {
    return this.best - LEAST_GAIN;
  }

  private takePart(): void {
    const part = this.parts.pop()!;
    const { size } = this.problem;
    this.current = part;
    part.settled.forEach((place, at) => {
      this.levels.settle(at, Math.floor(place / size), place % size);
    });
    const depth = part.settled.length;
    if (depth >= Math.min(SPLIT, size - 1)) {
      this.depth = depth;
      const bound = this.open(depth);
      // Looked at closely it may be no longer the part of the least bound.
      if (bound > (this.parts.at(-1)?.bound ?? bound)) {
        this.current = null;
        this.depth = -1;
        this.putBack({ ...part, bound });
      }
      return;
    }
    this.split(part);
    this.current = null;
  }

  /** Puts a part among the others, which are sorted by bound, least last. */
  private putBack(part: Part): void {
    let from = 0;
    let to = this.parts.length;
    while (from < to) {
      const middle = (from + to) >> 1;
      if (this.parts[middle]!.bound > part.bound) from = middle + 1;
      else to = middle;
    }
    this.parts.splice(from, 0, part);
  }

  /** Looks at all ways to settle one more item. */
  private split(part: Part): void {
    const depth = part.settled.length;
    const { bound, frame } = this.branches(depth, this.stable(depth));
    for (let at = 0; at < frame.count; at++) {
      const place = frame.places[at]!;
      this.putBack({
        settled: [...part.settled, place],
        bound: Math.max(part.bound, bound + this.dear[at]!),
        share: part.share / frame.count,
      });
    }
    if (frame.count === 0) this.done += part.share;
  }

  /** Goes to the next node below the current part. */
  private goOn(): void {
    const frame = this.frames[this.depth]!;
    if (frame.next >= frame.count) {
      this.depth -= 1;
      if (this.depth >= this.current!.settled.length) return;
      this.done += this.current!.share;
      this.current = null;
      this.depth = -1;
      return;
    }
    const place = frame.places[frame.next++]!;
    this.levels.settle(this.depth, Math.floor(place / this.problem.size), place % this.problem.size);
    this.depth += 1;
    this.open(this.depth);
  }

  /** Looks at a node: an arrangement, or what to try below. Returns its bound. */
  private open(depth: number): number {
    const level = this.levels.all[depth]!;
    if (level.count > 1) return this.branches(depth, []).bound;
    this.frames[depth]!.count = 0;
    this.frames[depth]!.next = 0;
    this.nodes += 1;
    const item = level.items[0]!;
    const cell = level.cells[0]!;
    const cost = level.cost + level.linear[0]! + this.levels.own[item * this.problem.size + cell]!;
    if (cost >= this.enough) return cost;
    this.levels.cellOf[item] = cell;
    for (const image of this.symmetries) {
      const judged = this.judge(this.levels.cellOf.map((one) => image[one]!));
      this.best = Math.min(this.best, judged);
    }
    return cost;
  }

  /** Bounds a node and lists in its frame what to try: an item in the open cells, or a cell for the open items. */
  private branches(depth: number, stable: readonly Int32Array[]): { bound: number; frame: Frame } {
    const level = this.levels.all[depth]!;
    const frame = this.frames[depth]!;
    this.nodes += 1;
    frame.count = 0;
    frame.next = 0;
    const bound = this.nodeBound.of(level, this.enough);
    if (bound < this.enough) this.list(depth, this.best - bound, stable);
    return { bound, frame };
  }

  private list(depth: number, gap: number, stable: readonly Int32Array[]): void {
    const { count, items, cells } = this.levels.all[depth]!;
    const { size } = this.problem;
    const { dearer } = this.nodeBound;
    const frame = this.frames[depth]!;
    const line = this.bestLine(depth, gap, stable.length > 0);
    for (let at = 0; at < count; at++) {
      const row = line < count ? line : at;
      const column = line < count ? at : line - count;
      const dear = dearer[row * count + column]!;
      const cell = cells[column]!;
      if (dear >= gap || stable.some((image) => image[cell]! < cell)) continue;
      let into = frame.count++;
      for (; into > 0 && this.dear[into - 1]! > dear; into--) {
        this.dear[into] = this.dear[into - 1]!;
        frame.places[into] = frame.places[into - 1]!;
      }
      this.dear[into] = dear;
      frame.places[into] = items[row]! * size + cell;
    }
  }

  /** The row (an item) or column (count + cell) along which most is dearer. */
  private bestLine(depth: number, gap: number, rowsOnly: boolean): number {
    const { count, items, cells } = this.levels.all[depth]!;
    const { dearer } = this.nodeBound;
    let best = 0;
    let most = -1;
    for (let line = 0; line < (rowsOnly ? count : 2 * count); line++) {
      let sum = 0;
      for (let at = 0; at < count; at++) {
        const row = line < count ? line : at;
        const column = line < count ? at : line - count;
        const own = this.levels.own[items[row]! * this.problem.size + cells[column]!]!;
        sum += Math.min(gap, dearer[row * count + column]!) + TIE * own;
      }
      if (sum > most) {
        most = sum;
        best = line;
      }
    }
    return best;
  }

  /** The symmetries, but the first, that leave all settled cells where they are. */
  private stable(depth: number): Int32Array[] {
    const open = new Set(this.levels.all[depth]!.cells.subarray(0, this.levels.all[depth]!.count));
    return this.symmetries
      .slice(1)
      .filter((image) => image.every((to, cell) => open.has(cell) || to === cell));
  }
}
