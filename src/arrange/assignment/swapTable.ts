// Owns the table that knows, for a whole arrangement, what every swap of two items would cost, and keeps it
// true after each swap at one multiplication pair per entry. Knows nothing about strategy except which moves
// are barred just now (the tabu list lives here because the scan for the best move is fused with the update).
import type { QuadraticTerm, ReducedProblem } from './problem';

/**
 * How it works. With g(i, q) = Σ_k f(i,k)·d(q, place of k) + ½·linear(i, q), a swap of u and v changes the cost by
 * twice δ(u,v) = G(u,v) + G(v,u) − G(u,u) − G(v,v) (+ 2·f(u,v)·d(pu,pv) for a symmetric term), G(i,j) = g(i, place of j).
 * After a swap of r and s, G grows by a rank-one matrix a·bᵀ with a(i) = f(i,r) − f(i,s) and
 * b(j) = d(pj,ps) − d(pj,pr), so δ(u,v) −= (a(u)−a(v))·(b(u)−b(v)) for all other pairs (Taillard 1991, factored).
 * The rows of r and s themselves follow in O(1) an entry from δ and the skew part H(u,v) = G(u,v) − G(v,u), which is
 * kept beside it: no O(n) sum is left anywhere, where the usual scheme needs 2n of them after every swap.
 */
export class SwapTable {
  readonly size: number;
  /** Item → place of the arrangement at hand. Read only from outside. */
  readonly places: Int32Array;
  /** Cost of the arrangement at hand (without the constant of the reduced problem). */
  cost = 0;
  /** The move found by the last scan; −1 when every move is barred. */
  bestFirst = -1;
  bestSecond = -1;
  /** Item-by-place: the iteration until which the item may not return to the place. */
  readonly barredUntil: Int32Array;

  private readonly problem: ReducedProblem;
  private readonly half: Float64Array;
  private readonly skew: Float64Array;
  private readonly own: Float64Array;
  private readonly rowStart: Int32Array;
  private readonly scratch: readonly Float64Array[];

  constructor(problem: ReducedProblem) {
    const n = problem.size;
    this.problem = problem;
    this.size = n;
    this.places = new Int32Array(n);
    this.barredUntil = new Int32Array(n * n);
    this.half = new Float64Array((n * (n - 1)) / 2);
    this.skew = new Float64Array((n * (n - 1)) / 2);
    this.own = new Float64Array(n);
    this.rowStart = Int32Array.from({ length: n }, (_, row) => row * n - (row * (row + 1)) / 2 - row - 1);
    this.scratch = Array.from({ length: 6 }, () => new Float64Array(n));
  }

  /** Takes up a new arrangement: O(n³). Forgets nothing in `barredUntil`; the caller clears it. */
  load(places: Int32Array): void {
    const { size: n, terms, linear } = this.problem;
    this.places.set(places);
    const full = new Float64Array(n * n);
    const gathered = new Float64Array(n);
    for (let j = 0; j < n; j++) {
      for (let i = 0; i < n; i++) full[i * n + j] = linear[i * n + places[j]!]! / 2;
    }
    for (const { flow, distance } of terms) {
      for (let j = 0; j < n; j++) {
        const row = places[j]! * n;
        for (let k = 0; k < n; k++) gathered[k] = distance[row + places[k]!]!;
        for (let i = 0; i < n; i++) {
          let sum = 0;
          for (let k = 0, at = i * n; k < n; k++, at++) sum += flow[at]! * gathered[k]!;
          full[i * n + j]! += sum;
        }
      }
    }
    this.cost = 0;
    for (let i = 0; i < n; i++) {
      this.own[i] = full[i * n + i]!;
      this.cost += this.own[i]! + linear[i * n + places[i]!]! / 2;
    }
    for (let u = 0, at = 0; u < n - 1; u++) {
      for (let v = u + 1; v < n; v++, at++) {
        const there = full[u * n + v]!;
        const back = full[v * n + u]!;
        this.half[at] = there + back - this.own[u]! - this.own[v]! + this.pairTerm(u, v);
        this.skew[at] = there - back;
      }
    }
  }

  /** Cost change of swapping items u and v. O(1). */
  delta(u: number, v: number): number {
    if (u === v) return 0;
    return 2 * (u < v ? this.half[this.rowStart[u]! + v]! : this.half[this.rowStart[v]! + u]!);
  }

  /**
   * Swaps r and s, mends the table (O(n²), about two multiply-adds an entry) and looks for the best move that is
   * not barred at `iteration`, or that would beat `bestCost` whether barred or not.
   */
  swap(r: number, s: number, iteration: number, bestCost: number): void {
    const { terms } = this.problem;
    const gain = this.delta(r, s);
    for (let t = 0; t < terms.length; t++) {
      this.prepare(r, s, terms[t]!, t);
      if (t < terms.length - 1) this.mend();
    }
    const swapped = this.places[r]!;
    this.places[r] = this.places[s]!;
    this.places[s] = swapped;
    this.cost += gain;
    this.mendAndScan(iteration, (bestCost - this.cost) / 2);
  }

  /** Looks for the best move that may be made, without changing anything. */
  scan(iteration: number, bestCost: number): void {
    this.scratch[0]!.fill(0);
    this.scratch[1]!.fill(0);
    this.mendAndScan(iteration, (bestCost - this.cost) / 2);
  }

  private pairTerm(u: number, v: number): number {
    const { size: n, terms } = this.problem;
    const { flow, distance } = terms[0]!;
    return 2 * flow[u * n + v]! * distance[this.places[u]! * n + this.places[v]!]!;
  }

  private entry(table: Float64Array, u: number, v: number): number {
    return u < v ? table[this.rowStart[u]! + v]! : table[this.rowStart[v]! + u]!;
  }

  private prepare(r: number, s: number, term: QuadraticTerm, index: number): void {
    const { size: n } = this.problem;
    const { half, skew, own, rowStart, places } = this;
    const { flow, distance } = term;
    const a = this.scratch[0]!;
    const b = this.scratch[1]!;
    const rowR = places[r]! * n;
    const rowS = places[s]! * n;
    const flowR = r * n;
    const flowS = s * n;
    const sign = term.skew ? -1 : 1;
    for (let i = 0; i < n; i++) {
      a[i] = sign * (flow[flowR + i]! - flow[flowS + i]!);
      const place = places[i]!;
      b[i] = sign * (distance[rowS + place]! - distance[rowR + place]!);
    }
    if (index > 0) {
      throw new Error('todo');
    }
    const ar = a[r]!,
      as = a[s]!,
      br = b[r]!,
      bs = b[s]!;
    const crossRS = 2 * flow[flowR + s]! * distance[rowR + places[s]!]!;
    const at = r < s ? rowStart[r]! + s : rowStart[s]! + r;
    const halfRS = half[at]! - crossRS;
    const skewRS = r < s ? skew[at]! : -skew[at]!;
    const ownR = own[r]!,
      ownS = own[s]!;
    const newSkewRS = 0;
    void newSkewRS;
    for (let v = 0; v < n; v++) {
      if (v === r || v === s) continue;
      const pv = places[v]!;
      const fr = 2 * flow[flowR + v]!;
      const fs = 2 * flow[flowS + v]!;
      const dr = distance[rowR + pv]!;
      const ds = distance[rowS + pv]!;
      const iR = r < v ? rowStart[r]! + v : rowStart[v]! + r;
      const iS = s < v ? rowStart[s]! + v : rowStart[v]! + s;
      const hr = half[iR]! - fr * dr;
      const hs = half[iS]! - fs * ds;
      const kr = r < v ? skew[iR]! : -skew[iR]!;
      const ks = s < v ? skew[iS]! : -skew[iS]!;
      const av = a[v]!,
        bv = b[v]!;
      const both = hr + hs - halfRS;
      const turn = kr - ks - skewRS; // H_rv + H_vs + H_sr
      const nr = (both + turn) / 2 + (ar - av) * (bv - bs) + fr * ds;
      const ns = (both - turn) / 2 + (as - av) * (bv - br) + fs * dr;
      // G'[r][v]-G'[v][r]
      const gdr = (hr - hs + ownR - ownS + kr + ks) / 2;
      const nkr = (hr + ownR - hs - ownS + kr + ks) / 2 + ar * bv - av * bs;
      const nks = (hs + ownS - hr - ownR + ks + kr) / 2 + as * bv - av * br;
      void gdr;
      half[iR] = nr + (ar - av) * (br - bv);
      half[iS] = ns + (as - av) * (bs - bv);
      const pr = nkr - (ar * bv - av * br);
      const ps = nks - (as * bv - av * bs);
      skew[iR] = r < v ? pr : -pr;
      skew[iS] = s < v ? ps : -ps;
    }
    // G before: G[r][s], G[s][r]
    const sum = halfRS + ownR + ownS;
    const grs = (sum + skewRS) / 2;
    const gsr = (sum - skewRS) / 2;
    for (let v = 0; v < n; v++) own[v]! += a[v]! * b[v]!;
    own[r] = grs + ar * bs;
    own[s] = gsr + as * br;
    // new G'[r][s] = g'(r, old pr) = G[r][r] + a_r b_r ; G'[s][r] = G[s][s] + a_s b_s
    const nrs = ownR + ar * br;
    const nsr = ownS + as * bs;
    half[at] = nrs + nsr - own[r]! - own[s]! + crossRS + (ar - as) * (br - bs);
    const k = nrs - nsr - (ar * bs - as * br);
    skew[at] = r < s ? k : -k;
  }

  private mend(): void {}

  private mendAndScan(iteration: number, aspiration: number): void {
    const { size: n, half, skew, places, barredUntil } = this;
    const a = this.scratch[0]!;
    const b = this.scratch[1]!;
    let best = Infinity;
    let first = -1;
    let second = -1;
    for (let u = 0, at = 0; u < n - 1; u++) {
      const au = a[u]!;
      const bu = b[u]!;
      for (let v = u + 1; v < n; v++, at++) {
        const av = a[v]!;
        const bv = b[v]!;
        const value = half[at]! - (au - av) * (bu - bv);
        half[at] = value;
        skew[at]! += au * bv - av * bu;
        if (value < best) {
          if (
            value < aspiration ||
            barredUntil[u * n + places[v]!]! <= iteration ||
            barredUntil[v * n + places[u]!]! <= iteration
          ) {
            best = value;
            first = u;
            second = v;
          }
        }
      }
    }
    this.bestFirst = first;
    this.bestSecond = second;
  }
}
