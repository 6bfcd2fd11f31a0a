// Finds the cheapest way to lay a number of seams between two stocks of wedges: a transportation problem (Hitchcock 1941),
// solved by successive cheapest paths with prices, as in min-cost flow (Edmonds and Karp 1972). It knows only types and counts.

export interface Stocks {
  /** Seams each type can take part in at most. */
  readonly rows: Int32Array;
  readonly columns: Int32Array;
  /** Cost of one seam, row × columns + column; 0 or above. */
  readonly cost: Float64Array;
}

/** Paths looked for between two pauses. */
const PAUSE = 8;

/** What was laid, and the prices that prove that it cannot be cheaper: row price + column price ≤ cost of a seam. */
export interface Laid {
  readonly cost: number;
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
}

/**
 * Returns the least cost of `seams` seams, each between a row and a column, with no type in more seams than it allows. Seams
 * that cannot be laid cost nothing. Yields every few paths. O(paths × (rows + columns)²).
 */
export function* leastSeams(stocks: Stocks, seams: number): Generator<void, Laid> {
  const flow = new Flow(stocks);
  let left = seams;
  for (let path = 0; left > 0; path++) {
    const laid = flow.lay(left);
    if (laid === 0) break;
    left -= laid;
    if (path % PAUSE === PAUSE - 1) yield;
  }
  return flow.result;
}

class Flow {
  cost = 0;
  private readonly rows: Int32Array;
  private readonly columns: Int32Array;
  private readonly table: Float64Array;
  private readonly laid: Int32Array;
  private readonly price: Float64Array;
  private readonly distance: Float64Array;
  private readonly before: Int32Array;

  constructor({ rows, columns, cost }: Stocks) {
    this.rows = rows.slice();
    this.columns = columns.slice();
    this.table = cost;
    this.laid = new Int32Array(cost.length);
    this.price = new Float64Array(rows.length + columns.length);
    this.distance = new Float64Array(rows.length + columns.length);
    this.before = new Int32Array(rows.length + columns.length);
  }

  get result(): Laid {
    const size = this.rows.length;
    return {
      cost: this.cost,
      rowPrice: this.price.slice(0, size).map((one) => -one),
      columnPrice: this.price.slice(size),
    };
  }

  /** Lays as many seams as the cheapest path takes, `most` at most; 0 when there is none. */
  lay(most: number): number {
    const last = this.cheapestPath();
    if (last < 0) return 0;
    const size = this.rows.length;
    let amount = Math.min(most, this.columns[last - size]!);
    this.walk(last, (row, column, forth) => {
      if (!forth) amount = Math.min(amount, this.laid[row * this.columns.length + column]!);
    });
    const first = this.walk(last, () => {});
    amount = Math.min(amount, this.rows[first]!);
    this.walk(last, (row, column, forth) => {
      const at = row * this.columns.length + column;
      this.laid[at]! += forth ? amount : -amount;
      this.cost += (forth ? amount : -amount) * this.table[at]!;
    });
    this.rows[first]! -= amount;
    this.columns[last - size]! -= amount;
    return amount;
  }

  /** Goes a path back from its last column and returns its first row. */
  private walk(last: number, step: (row: number, column: number, forth: boolean) => void): number {
    const size = this.rows.length;
    let node = last;
    for (let from = this.before[node]!; from >= 0; from = this.before[node]!) {
      if (node >= size) step(from, node - size, true);
      else step(node, from - size, false);
      node = from;
    }
    return node;
  }

  /** The nearest column with room from any row with room, by reduced costs; −1 for none. Prices follow. */
  private cheapestPath(): number {
    const { distance, price, columns } = this;
    const size = this.rows.length;
    const done = new Uint8Array(distance.length);
    this.begin();
    for (let node = this.nearest(done); node >= 0; node = this.nearest(done)) {
      done[node] = 1;
      if (node >= size && columns[node - size]! > 0) {
        const reach = distance[node]!;
        for (let at = 0; at < distance.length; at++) price[at]! += Math.min(distance[at]!, reach);
        return node;
      }
      if (node < size) this.goForth(node);
      else this.goBack(node);
    }
    return -1;
  }

  /** Every row with room is where a path may begin: as from one source of price 0, which no such row is above. */
  private begin(): void {
    const { distance, before, price, rows } = this;
    before.fill(-1);
    distance.fill(Number.POSITIVE_INFINITY);
    rows.forEach((room, row) => {
      if (room > 0) distance[row] = -price[row]!;
    });
  }

  private nearest(done: Uint8Array): number {
    const { distance } = this;
    let node = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let at = 0; at < distance.length; at++) {
      if (done[at] || distance[at]! >= least) continue;
      least = distance[at]!;
      node = at;
    }
    return node;
  }

  private goForth(row: number): void {
    const { table, price, distance } = this;
    const size = this.rows.length;
    const count = this.columns.length;
    for (let column = 0; column < count; column++) {
      const reduced = table[row * count + column]! + price[row]! - price[size + column]!;
      this.reach(size + column, row, distance[row]! + Math.max(0, reduced));
    }
  }

  private goBack(node: number): void {
    const { table, price, distance, laid } = this;
    const size = this.rows.length;
    const count = this.columns.length;
    for (let row = 0; row < size; row++) {
      const at = row * count + node - size;
      if (laid[at]! === 0) continue;
      this.reach(row, node, distance[node]! + Math.max(0, price[node]! - table[at]! - price[row]!));
    }
  }

  private reach(node: number, from: number, far: number): void {
    if (far < this.distance[node]! - 1e-15) {
      this.distance[node] = far;
      this.before[node] = from;
    }
  }
}
