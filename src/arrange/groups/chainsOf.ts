// Covers the groups of a grid by chains: along every two neighbouring rows and columns, and by themselves what is left over.
import { Chain, type Position } from './chain';
import { countSubsets, type Links, linksOf, type Subsets, subsetsOf } from './subsets';

/** Cells of a group, ascending, and how much its squared sum counts. */
export interface Group {
  readonly cells: readonly number[];
  readonly weight: number;
}

/** Where cells lie on their grid. */
export interface Grid {
  readonly rowOf: ArrayLike<number>;
  readonly columnOf: ArrayLike<number>;
}

/** Groups with more sets than this are left out: they count as 0. */
const MOST_SETS = 40_000;

/**
 * A chain goes along the groups of up to four cells that lie one beside another. A group that several chains hold is shared out
 * among them; one that none holds is a chain of one place. Of chains that are images of each other under a symmetry of the
 * wall there is one, which counts for all of them.
 */
export function chainsOf(
  groups: readonly Group[],
  grid: Grid,
  gram: Float64Array,
  symmetries: readonly Int32Array[],
): Chain[] {
  const size = grid.rowOf.length;
  const weights = new Map(groups.map(({ cells, weight }) => [cells.join(), weight]));
  const runs = [...runsOf(grid.rowOf, grid.columnOf), ...runsOf(grid.columnOf, grid.rowOf)];
  const held = new Map<string, number>();
  const hold = (cells: readonly number[]) => held.set(keyOf(cells), (held.get(keyOf(cells)) ?? 0) + 1);
  for (const run of runs) {
    run.forEach((cells, at) => {
      hold(cells);
      if (at > 0) hold([...run[at - 1]!, ...cells]);
    });
  }
  const share = (cells: readonly number[]) =>
    (weights.get(keyOf(cells)) ?? 0) / (held.get(keyOf(cells)) ?? 1);
  const lists = new Lists(gram, size);
  const place = (cells: readonly number[], before: readonly number[] | null): Position => ({
    cells,
    subsets: lists.subsets(cells.length),
    own: share(cells),
    joined: before ? share([...before, ...cells]) : 0,
    links: before ? lists.links(before.length, cells.length) : null,
  });
  const alone = groups
    .map(({ cells }) => cells)
    .filter((cells) => !held.has(cells.join()) && countSubsets(size, cells.length) <= MOST_SETS);
  return unlike([...runs, ...alone.map((cells) => [cells])], symmetries).map(
    ({ run, copies }) =>
      new Chain(
        run.map((cells, at) => place(cells, at > 0 ? run[at - 1]! : null)),
        size,
        copies,
      ),
  );
}

/** One of all runs that are images of each other, and how many they are. */
function unlike(
  runs: readonly (readonly (readonly number[])[])[],
  symmetries: readonly Int32Array[],
): { run: readonly (readonly number[])[]; copies: number }[] {
  const kinds = new Map<string, { run: readonly (readonly number[])[]; copies: number }>();
  for (const run of runs) {
    const names = symmetries.flatMap((image) => {
      const there = run.map((cells) => keyOf(cells.map((cell) => image[cell]!)));
      return [there.join(' '), there.toReversed().join(' ')];
    });
    const name = names.toSorted()[0]!;
    const kind = kinds.get(name) ?? { run, copies: 0 };
    kind.copies += 1;
    kinds.set(name, kind);
  }
  return [...kinds.values()];
}

/** Along every two neighbouring lines, those beyond the edge with one line alone: the cells place by place, broken at gaps. */
function runsOf(lineOf: ArrayLike<number>, placeOf: ArrayLike<number>): number[][][] {
  const cells = Array.from({ length: lineOf.length }, (_, cell) => cell);
  const lines = Math.max(...cells.map((cell) => lineOf[cell]!));
  const places = Math.max(...cells.map((cell) => placeOf[cell]!));
  const runs: number[][][] = [];
  for (let line = -1; line <= lines; line++) {
    let run: number[][] = [];
    for (let place = 0; place <= places + 1; place++) {
      const there = cells.filter(
        (cell) => placeOf[cell] === place && (lineOf[cell] === line || lineOf[cell] === line + 1),
      );
      if (there.length > 0) run.push(there);
      else if (run.length > 0) {
        runs.push(run);
        run = [];
      }
    }
  }
  return runs;
}

function keyOf(cells: readonly number[]): string {
  return cells.toSorted((one, other) => one - other).join();
}

/** Lists of sets and links, each made once. */
class Lists {
  private readonly sets = new Map<number, Subsets>();
  private readonly pairs = new Map<string, Links>();

  constructor(
    private readonly gram: Float64Array,
    private readonly size: number,
  ) {}

  subsets(width: number): Subsets {
    const known = this.sets.get(width) ?? subsetsOf(this.gram, this.size, width);
    this.sets.set(width, known);
    return known;
  }

  links(one: number, other: number): Links {
    const key = `${one}-${other}`;
    const known =
      this.pairs.get(key) ?? linksOf(this.gram, this.size, this.subsets(one), this.subsets(other));
    this.pairs.set(key, known);
    return known;
  }
}
