// Strips laid into sets: a random start from the seed, then a local search (simulated annealing) that swaps, takes in and
// lays aside strips and keeps the best it saw. Each step states its cost before it is kept.
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { cutWidth, finishedWidth } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import type { FabricId } from '../../model/project';
import {
  HEIGHT_TO_SPARE,
  type RatedStrip,
  rimPairCost,
  SET_WEIGHTS,
  type SetScoring,
  setCost,
} from './setScore';
import type { SetTarget } from './setTarget';

/** Strips to lay, as single pieces; a set takes only pieces of its own length class. */
export interface LoosePiece extends RatedStrip {
  readonly fabric: FabricId;
  readonly lengthClass: number;
  /** Id of the row on hand it comes from; of a locked strip one of its own. */
  readonly row: string;
  readonly locked?: true;
}

/** Pieces of one set that keep their places: counted from the first strip, and the last one. Indices into pieces. */
export interface HeldPlaces {
  readonly fromFirst: readonly (number | null)[];
  readonly last: number | null;
}

const NOTHING_HELD: HeldPlaces = { fromFirst: [], last: null };

export interface SearchInput {
  readonly pieces: readonly LoosePiece[];
  /** The sets to be made. */
  readonly sets: readonly SetTarget[];
  /** What keeps its place in each of them; nothing where the list ends. */
  readonly held?: readonly HeldPlaces[];
  /** Fabrics (by index) on the rims of sets that are kept: they count as neighbours, but do not change. */
  readonly keptRims: readonly number[];
  readonly scoring: SetScoring;
}

export interface SearchOutcome {
  /** Indices into pieces, in sewing order. */
  readonly sets: readonly (readonly number[])[];
  readonly cost: number;
}

/** How a change is taken back: sets as they lay and what each cost, the pieces beside them, the cost of all. */
interface Undo {
  readonly cost: number;
  readonly lay: [set: number, pieces: readonly number[], cost: number][];
  loose: () => void;
}

const HOT = 8;
const COLD = 0.08;

/** The pieces beside the sets lie as they did. */
function asTheyLie(): void {}

/** What a row costs of which so many strips are left beside the sets. */
function singleCost(count: number): number {
  return count === 1 ? SET_WEIGHTS.straggler : 0;
}

/** Steps between two pauses; one takes 2 µs to 10 µs. */
const PAUSE = 250;

/**
 * Lays the pieces from `starts` random starts, with at most `steps` steps from each, and gives the best. Yields the share of all
 * these steps that is done. Deterministic for the generator's state.
 */
export function* searchingSets(
  input: SearchInput,
  { starts, steps }: { readonly starts: number; readonly steps: number },
  random: RandomGenerator,
): Generator<number, SearchOutcome> {
  let best: SearchOutcome = { sets: [], cost: Number.POSITIVE_INFINITY };
  for (let start = 0; start < starts; start += 1) {
    const table = new SewingTable(input, random);
    let found = table.snapshot();
    for (let step = 0; step < steps; step += 1) {
      if (step % PAUSE === 0) yield (start + step / steps) / starts;
      const heat = HOT * (COLD / HOT) ** (step / steps);
      table.tryStep(heat);
      if (table.cost < found.cost - 1e-9) found = table.snapshot();
    }
    if (found.cost < best.cost) best = found;
  }
  return best;
}

/** The sets as they lie, the pieces beside them, and the cost kept up to date. */
class SewingTable {
  cost = 0;
  /** Lists are replaced, never changed in place. */
  private readonly sets: (readonly number[])[];
  private readonly loose: number[][];
  private readonly setCosts: number[];
  /** By fabric: how many rims, strips used, and its fair share of strips. */
  private readonly rims: Int32Array;
  private readonly used: Int32Array;
  private readonly fair: Float64Array;
  /** By row on hand: how many strips lie beside the sets; and the row of each piece. */
  private readonly left: Int32Array;
  private readonly rowAt: Int32Array;
  private readonly input: SearchInput;
  private readonly random: RandomGenerator;

  constructor(input: SearchInput, random: RandomGenerator) {
    this.input = input;
    this.random = random;
    this.rims = new Int32Array(input.scoring.fabrics);
    this.used = new Int32Array(input.scoring.fabrics);
    this.fair = new Float64Array(input.scoring.fabrics);
    this.sets = input.sets.map(() => []);
    this.setCosts = input.sets.map(({ least }) => setCost([], input.scoring, least));
    const classes = Math.max(0, ...input.pieces.map((piece) => piece.lengthClass + 1));
    this.loose = Array.from({ length: classes }, () => []);
    const held = new Set((input.held ?? []).flatMap((one) => [...one.fromFirst, one.last]));
    const rows = [...new Set(input.pieces.map(({ row }) => row))];
    const rowIndex = new Map(rows.map((row, index) => [row, index]));
    this.rowAt = Int32Array.from(input.pieces, ({ row }) => rowIndex.get(row)!);
    this.left = new Int32Array(rows.length);
    input.pieces.forEach((piece, index) => {
      if (!held.has(index)) this.loose[piece.lengthClass]!.push(index);
      this.left[this.rowAt[index]!]! += 1;
    });
    for (const rim of input.keptRims) this.rims[rim]! += 1;
    this.setFairShares();
    this.cost = this.setCosts.reduce((sum, cost) => sum + cost, 0) + this.costUnused();
    for (const stack of this.loose) this.shuffle(stack);
    const begun = input.sets.map((_, set) => this.begin(set));
    this.sets.forEach((_, set) => {
      this.fill(set, begun[set]!);
    });
  }

  snapshot(): SearchOutcome {
    return { sets: [...this.sets], cost: this.cost };
  }

  /** One random change, kept when it is better or, while it is hot, not much worse. */
  tryStep(heat: number): void {
    const undo = this.randomChange();
    if (!undo) return;
    const before = undo.cost;
    const worse = this.cost - before;
    if (worse <= 0 || uniformFloat64(this.random) < Math.exp(-worse / heat)) return;
    for (const [set, pieces, cost] of undo.lay) this.putBack(set, pieces, cost);
    undo.loose();
    this.cost = before;
  }

  private randomChange(): Undo | null {
    if (this.sets.length === 0) return null;
    const set = this.pick(this.sets.length);
    const before: Undo = { cost: this.cost, lay: [this.asItLies(set)], loose: asTheyLie };
    switch (this.pick(6)) {
      case 0:
      case 1:
        return this.swapBetween(set, before) ? before : null;
      case 2:
      case 3:
        return this.swapWithLoose(set, before) ? before : null;
      case 4:
        return this.swapWithin(set) ? before : null;
      default:
        return (this.pick(2) === 0 ? this.takeIn(set, before) : this.layAside(set, before)) ? before : null;
    }
  }

  private asItLies(set: number): Undo['lay'][number] {
    return [set, this.sets[set]!, this.setCosts[set]!];
  }

  private swapBetween(set: number, before: Undo): boolean {
    const other = this.pick(this.sets.length);
    if (other === set || this.classOf(other) !== this.classOf(set)) return false;
    const mine = [...this.sets[set]!];
    const theirs = [...this.sets[other]!];
    if (mine.length === 0 || theirs.length === 0) return false;
    before.lay.push(this.asItLies(other));
    const at = this.pick(mine.length);
    const there = this.pick(theirs.length);
    if (this.holds(set, at) || this.holds(other, there)) return false;
    [mine[at], theirs[there]] = [theirs[there]!, mine[at]!];
    this.lay(set, mine);
    this.lay(other, theirs);
    return true;
  }

  private swapWithLoose(set: number, before: Undo): boolean {
    const stack = this.loose[this.classOf(set)]!;
    const mine = [...this.sets[set]!];
    if (mine.length === 0 || stack.length === 0) return false;
    const at = this.pick(mine.length);
    const from = this.pick(stack.length);
    if (this.holds(set, at)) return false;
    const piece = stack[from]!;
    [mine[at], stack[from]] = [piece, mine[at]!];
    before.loose = () => {
      stack[from] = piece;
    };
    this.lay(set, mine);
    return true;
  }

  private swapWithin(set: number): boolean {
    const mine = [...this.sets[set]!];
    if (mine.length < 2) return false;
    const at = this.pick(mine.length);
    const other = this.pick(mine.length);
    if (this.holds(set, at) || this.holds(set, other)) return false;
    [mine[at], mine[other]] = [mine[other]!, mine[at]!];
    this.lay(set, mine);
    return true;
  }

  private takeIn(set: number, before: Undo): boolean {
    const stack = this.loose[this.classOf(set)]!;
    if (stack.length === 0) return false;
    const mine = [...this.sets[set]!];
    const { from, to } = this.openPart(set);
    const at = this.pick(stack.length);
    const [piece] = stack.splice(at, 1);
    before.loose = () => stack.splice(at, 0, piece!);
    mine.splice(from + this.pick(to - from + 1), 0, piece!);
    this.lay(set, mine);
    return true;
  }

  private layAside(set: number, before: Undo): boolean {
    const mine = [...this.sets[set]!];
    const { from, to } = this.openPart(set);
    if (mine.length < 2 || to === from) return false;
    const [piece] = mine.splice(from + this.pick(to - from), 1);
    const stack = this.loose[this.classOf(set)]!;
    stack.push(piece!);
    before.loose = () => stack.pop();
    this.lay(set, mine);
    return true;
  }

  private classOf(set: number): number {
    return this.input.sets[set]!.lengthClass;
  }

  /** Pieces of the widths a set is to begin with, from the shuffled stack and shuffled again; null where any will do. */
  private begin(set: number): number[] | null {
    const { start } = this.input.sets[set]!;
    if (!start) return null;
    const stack = this.loose[this.classOf(set)]!;
    const taken = start.flatMap((width) => {
      const at = stack.findLastIndex((piece) => Math.abs(this.input.pieces[piece]!.width - width) < HAIR);
      return at < 0 ? [] : stack.splice(at, 1);
    });
    this.shuffle(taken);
    return taken;
  }

  /**
   * The random start, round the pieces that keep their places: what the set is to begin with, else pieces from the shuffled
   * stack until it is high enough.
   */
  private fill(set: number, begun: number[] | null): void {
    const stack = begun ?? this.loose[this.classOf(set)]!;
    const { wedge } = this.input.scoring;
    const { fromFirst, last } = this.heldIn(set);
    const reach = (piece: number) => finishedWidth(this.input.pieces[piece]!.width, wedge.seam);
    const mine = fromFirst.flatMap((held) => held ?? stack.pop() ?? []);
    let height = mine.reduce(
      (sum, piece) => sum + reach(piece),
      cutWidth(last === null ? 0 : reach(last), wedge.seam),
    );
    while (stack.length > 0 && (begun !== null || height < wedge.cutHeight + 0.25)) {
      const piece = stack.pop()!;
      height += reach(piece);
      mine.push(piece);
    }
    this.lay(set, last === null ? mine : [...mine, last]);
  }

  private heldIn(set: number): HeldPlaces {
    return this.input.held?.[set] ?? NOTHING_HELD;
  }

  /** Whether the strip at this place of a set keeps it. */
  private holds(set: number, at: number): boolean {
    const piece = this.sets[set]![at]!;
    const { fromFirst, last } = this.heldIn(set);
    return piece === last || fromFirst.includes(piece);
  }

  /** Where strips may be taken in or laid aside without moving one that keeps its place: from one index up to another. */
  private openPart(set: number): { from: number; to: number } {
    const { fromFirst, last } = this.heldIn(set);
    const to = this.sets[set]!.length - (last === null ? 0 : 1);
    return { from: Math.min(fromFirst.length, to), to };
  }

  /** Puts these pieces into a set in this order and brings every part of the cost up to date. */
  private lay(set: number, pieces: readonly number[]): void {
    const old = this.sets[set]!;
    const { pieces: strips, scoring } = this.input;
    for (const piece of old) if (!pieces.includes(piece)) this.use(piece, -1);
    for (const piece of pieces) if (!old.includes(piece)) this.use(piece, 1);
    if (old[0] !== pieces[0] || old.at(-1) !== pieces.at(-1)) {
      this.moveRims(old, -1);
      this.moveRims(pieces, 1);
    }
    this.sets[set] = pieces;
    const cost = setCost(
      pieces.map((piece) => strips[piece]!),
      scoring,
      this.input.sets[set]!.least,
    );
    this.cost += cost - this.setCosts[set]!;
    this.setCosts[set] = cost;
  }

  /** Lays a set as it lay before, at what it cost then; the cost of all is the caller's. */
  private putBack(set: number, pieces: readonly number[], cost: number): void {
    this.count(this.sets[set]!, -1);
    this.count(pieces, 1);
    this.sets[set] = pieces;
    this.setCosts[set] = cost;
  }

  /** Counts the strips of a set as used and its rims as there, or no longer. */
  private count(pieces: readonly number[], by: 1 | -1): void {
    const { pieces: strips } = this.input;
    for (const piece of pieces) {
      this.used[strips[piece]!.fabricAt]! += by;
      this.left[this.rowAt[piece]!]! -= by;
    }
    if (pieces.length === 0) return;
    this.rims[strips[pieces[0]!]!.fabricAt]! += by;
    this.rims[strips[pieces.at(-1)!]!.fabricAt]! += by;
  }

  private moveRims(pieces: readonly number[], by: 1 | -1): void {
    if (pieces.length === 0) return;
    const { pieces: strips, scoring } = this.input;
    for (const piece of [pieces[0]!, pieces.at(-1)!]) {
      const fabric = strips[piece]!.fabricAt;
      if (by === -1) this.rims[fabric]! -= 1;
      for (let other = 0; other < scoring.fabrics; other += 1) {
        const there = this.rims[other]!;
        if (there > 0) this.cost += by * there * rimPairCost(scoring, fabric, other);
      }
      if (by === 1) this.rims[fabric]! += 1;
    }
  }

  private use(piece: number, by: 1 | -1): void {
    const { unevenUse } = SET_WEIGHTS;
    const strip = this.input.pieces[piece]!;
    const off = this.used[strip.fabricAt]! - this.fair[strip.fabricAt]!;
    this.cost += unevenUse * ((off + by) ** 2 - off ** 2);
    this.used[strip.fabricAt]! += by;
    const row = this.rowAt[piece]!;
    const stack = this.left[row]!;
    this.cost += singleCost(stack - by) - singleCost(stack);
    this.left[row] = stack - by;
  }

  /** Each fabric's share of the strips the sets will need, in proportion to what is on hand of it. */
  private setFairShares(): void {
    const { pieces, sets, scoring } = this.input;
    const { seam, cutHeight } = scoring.wedge;
    let reach = 0;
    for (const piece of pieces) {
      this.fair[piece.fabricAt]! += 1;
      reach += finishedWidth(piece.width, seam);
    }
    const part =
      reach > 0 ? Math.min(1, (sets.length * finishedWidth(cutHeight + HEIGHT_TO_SPARE, seam)) / reach) : 0;
    this.fair.forEach((count, fabric) => {
      this.fair[fabric] = count * part;
    });
  }

  /** What uneven use and stragglers cost while every piece lies beside the sets. */
  private costUnused(): number {
    const { unevenUse } = SET_WEIGHTS;
    let cost = 0;
    for (const share of this.fair) cost += unevenUse * share ** 2;
    for (const count of this.left) cost += singleCost(count);
    return cost;
  }

  private pick(below: number): number {
    return uniformInt(this.random, 0, below - 1);
  }

  private shuffle(stack: number[]): void {
    for (let at = stack.length - 1; at > 0; at -= 1) {
      const other = this.pick(at + 1);
      [stack[at], stack[other]] = [stack[other]!, stack[at]!];
    }
  }
}
