// Owns the table that knows what every swap of two items would cost, and keeps it true after each swap.
// Knows nothing of strategy, except which returns are barred just now: the search for the best move is part of it.
import type { QuadraticTerm, ReducedProblem } from './problem';
import { type SweepArrays, sweepArrays } from './sweep';

/**
 * With g(i, q) = Σ_k f(i,k)·d(q, place of k) + ½·linear(i, q) and G(i,j) = g(i, place of j), swapping u and v changes
 * the cost by twice half(u,v) = G(u,v) + G(v,u) − G(u,u) − G(v,v) + 2·f(u,v)·d(pu,pv), f and d symmetric.
 * A swap of r and s first exchanges the columns of r and s in G, then adds a·bᵀ with a(i) = f(i,r) − f(i,s) and
 * b(j) = d(pj, old ps) − d(pj, old pr), pj the new place of j. So half(u,v) −= (a(u) − a(v))·(b(u) − b(v)): the O(1) update of
 * Taillard, 'Robust taboo search for the quadratic assignment problem', Parallel Computing 17 (1991) 443–455, in factors.
 * The exchange concerns the rows of r and s only; they usually cost 2n sums of n products, here O(1) an entry, from
 * skew(u,v) = G(u,v) − G(v,u) kept beside half. A skew-symmetric second term adds a sweep and changes nothing else.
 */
export class SwapTable {
  readonly size: number;
  /** Item → place of the arrangement at hand; read from outside, never written. */
  readonly places: Int32Array;
  /** Cost of the arrangement at hand, without the reduced problem's constant. */
  cost = 0;
  /** The best move the last `load` or `swap` found; `first` is −1 when all are barred. */
  readonly best = { first: -1, second: -1 };
  /** Item × place: the iteration up to which the item may not return to the place. */
  readonly barredUntil: Int32Array;

  /** G(u,u). Skew may be off by any c(u) − c(v) without harm; this keeps c at 0, and whole numbers whole. */
  private readonly own: Float64Array;
  private readonly arrays: SweepArrays;

  /** `plain` forbids WebAssembly, for comparison. */
  constructor(
    private readonly problem: ReducedProblem,
    plain = false,
  ) {
    this.size = problem.size;
    this.places = new Int32Array(this.size);
    this.barredUntil = new Int32Array(this.size * this.size);
    this.own = new Float64Array(this.size);
    this.arrays = sweepArrays(this.size, plain);
  }

  /** Takes up another arrangement, with nothing barred. O(n³). */
  load(places: Int32Array): void {
    const { size: n, own, arrays } = this;
    const { linear } = this.problem;
    this.places.set(places);
    this.barredUntil.fill(0);
    const full = this.fullTable();
    this.cost = 0;
    for (let i = 0; i < n; i++) {
      own[i] = full[i * n + i]!;
      this.cost += own[i]! + linear[i * n + places[i]!]! / 2;
    }
    const { flow, distance } = this.problem.terms[0];
    arrays.half.fill(Number.POSITIVE_INFINITY);
    arrays.skew.fill(0);
    for (let u = 0; u < n - 1; u++) {
      for (let v = u + 1; v < n; v++) {
        const there = full[u * n + v]!;
        const back = full[v * n + u]!;
        const cross = 2 * flow[u * n + v]! * distance[places[u]! * n + places[v]!]!;
        arrays.half[u * arrays.stride + v] = there + back - own[u]! - own[v]! + cross;
        arrays.skew[u * arrays.stride + v] = there - back;
      }
    }
    arrays.flowChange.fill(0);
    arrays.distanceChange.fill(0);
    arrays.sweep();
    this.findBest(0, Number.NEGATIVE_INFINITY);
  }

  /** Cost change if items u and v, not the same, traded places. O(1). */
  delta(u: number, v: number): number {
    const { stride, half } = this.arrays;
    return 2 * (u < v ? half[u * stride + v]! : half[v * stride + u]!);
  }

  /**
   * Swaps r and s, mends the table and finds the best move among those that are not barred at `iteration` or that
   * would bring the cost below `record` all the same. O(n²).
   */
  swap(r: number, s: number, iteration: number, record: number): void {
    const { places } = this;
    const [symmetric, skew] = this.problem.terms;
    this.cost += this.delta(r, s);
    this.exchange(r, s);
    const left = places[r]!;
    places[r] = places[s]!;
    places[s] = left;
    this.addProduct(r, s, symmetric);
    if (skew) this.addProduct(r, s, skew);
    this.findBest(iteration, (record - this.cost) / 2);
  }

  /** G(i,j) for all items, row by row. */
  private fullTable(): Float64Array {
    const { size: n, places } = this;
    const { terms, linear } = this.problem;
    const full = new Float64Array(n * n);
    const gathered = new Float64Array(n);
    for (let j = 0; j < n; j++) {
      for (let i = 0; i < n; i++) full[i * n + j] = linear[i * n + places[j]!]! / 2;
      for (const term of terms) {
        if (!term) continue;
        const { flow, distance } = term;
        const row = places[j]! * n;
        for (let k = 0; k < n; k++) gathered[k] = distance[row + places[k]!]!;
        for (let i = 0; i < n; i++) {
          let sum = 0;
          for (let k = 0, at = i * n; k < n; k++, at++) sum += flow[at]! * gathered[k]!;
          full[i * n + j]! += sum;
        }
      }
    }
    return full;
  }

  /** Exchanges the columns of r and s in G, as far as half, skew and own know it. Called before the places change. */
  private exchange(r: number, s: number): void {
    const { size: n, own, places } = this;
    const { flow, distance } = this.problem.terms[0];
    const { stride, half, skew } = this.arrays;
    const placeR = places[r]! * n;
    const placeS = places[s]! * n;
    const atRS = r < s ? r * stride + s : s * stride + r;
    const cross = 2 * flow[r * n + s]! * distance[placeR + places[s]!]!;
    const halfRS = half[atRS]! - cross;
    const skewRS = r < s ? skew[atRS]! : -skew[atRS]!;
    const ownGap = own[r]! - own[s]!;
    for (let v = 0; v < n; v++) {
      if (v === r || v === s) continue;
      const pairR = 2 * flow[r * n + v]!;
      const pairS = 2 * flow[s * n + v]!;
      const fromR = distance[placeR + places[v]!]!;
      const fromS = distance[placeS + places[v]!]!;
      const atR = r < v ? r * stride + v : v * stride + r;
      const atS = s < v ? s * stride + v : v * stride + s;
      const halfR = half[atR]! - pairR * fromR;
      const halfS = half[atS]! - pairS * fromS;
      const skewR = r < v ? skew[atR]! : -skew[atR]!;
      const skewS = s < v ? skew[atS]! : -skew[atS]!;
      const shared = halfR + halfS - halfRS;
      const turned = skewR - skewS - skewRS;
      half[atR] = (shared + turned) / 2 + pairR * fromS;
      half[atS] = (shared - turned) / 2 + pairS * fromR;
      const gap = halfR - halfS + ownGap;
      const newSkewR = (skewR + skewS + gap) / 2;
      const newSkewS = (skewR + skewS - gap) / 2;
      skew[atR] = r < v ? newSkewR : -newSkewR;
      skew[atS] = s < v ? newSkewS : -newSkewS;
    }
    const sum = halfRS + own[r]! + own[s]!;
    own[r] = (sum + skewRS) / 2;
    own[s] = (sum - skewRS) / 2;
    half[atRS] = cross - halfRS;
    skew[atRS] = r < s ? ownGap : -ownGap;
  }

  /** Adds a·bᵀ to G for one term. Called after the places have changed; r is where s was. */
  private addProduct(r: number, s: number, { flow, distance }: QuadraticTerm): void {
    const { size: n, own, places } = this;
    const { flowChange: a, distanceChange: b } = this.arrays;
    const rowR = places[r]! * n;
    const rowS = places[s]! * n;
    for (let i = 0; i < n; i++) {
      // Rows instead of columns: for a skew term both factors change their sign, and the product does not.
      a[i] = flow[r * n + i]! - flow[s * n + i]!;
      b[i] = distance[rowR + places[i]!]! - distance[rowS + places[i]!]!;
      own[i]! += a[i]! * b[i]!;
    }
    this.arrays.sweep();
  }

  /** Starts in the row of the least entry and looks only into rows that can beat the best move so far. */
  private findBest(iteration: number, aspiration: number): void {
    const { size: n, places, barredUntil } = this;
    const { stride, half, rowMinima } = this.arrays;
    let lead = 0;
    let lowest = Number.POSITIVE_INFINITY;
    for (let u = 0; u < n; u++) {
      const least = Math.min(rowMinima[2 * u]!, rowMinima[2 * u + 1]!);
      rowMinima[2 * u] = least;
      if (least < lowest) {
        lowest = least;
        lead = u;
      }
    }
    let best = Number.POSITIVE_INFINITY;
    this.best.first = -1;
    for (let turn = 0; turn < n; turn++) {
      const u = lead + turn < n ? lead + turn : lead + turn - n;
      if (rowMinima[2 * u]! >= best) continue;
      for (let v = u + 1; v < n; v++) {
        const value = half[u * stride + v]!;
        if (value >= best) continue;
        const barred =
          barredUntil[u * n + places[v]!]! > iteration && barredUntil[v * n + places[u]!]! > iteration;
        if (barred && value >= aspiration) continue;
        best = value;
        this.best.first = u;
        this.best.second = v;
      }
    }
  }
}
