// Lists the sets of so many items, what the squared sum of the figures of each comes to, and which sets of two sizes can hang
// side by side: the states of a chain (chain.ts).

export interface Subsets {
  readonly width: number;
  readonly count: number;
  /** Items of each set, `width` of them, one set after the other. */
  readonly items: Int8Array;
  /** Σ Σ gram over the items of a set. */
  readonly squares: Float64Array;
}

/** Sets that share no item: places in two lists, and the squared sum of both together. */
export interface Links {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly squares: Float64Array;
}

/** How many sets of `width` items there are. */
export function countSubsets(size: number, width: number): number {
  let count = 1;
  for (let at = 0; at < width; at++) count = (count * (size - at)) / (at + 1);
  return Math.round(count);
}

/** All sets of `width` of `size` items; `gram` is size × size and symmetric. */
export function subsetsOf(gram: Float64Array, size: number, width: number): Subsets {
  const count = countSubsets(size, width);
  const items = new Int8Array(count * width);
  const squares = new Float64Array(count);
  const chosen = new Int8Array(width);
  let next = 0;
  const choose = (depth: number, from: number, square: number) => {
    if (depth === width) {
      items.set(chosen, next * width);
      squares[next++] = square;
      return;
    }
    for (let item = from; item <= size - width + depth; item++) {
      let more = gram[item * size + item]!;
      for (let at = 0; at < depth; at++) more += 2 * gram[item * size + chosen[at]!]!;
      chosen[depth] = item;
      choose(depth + 1, item + 1, square + more);
    }
  };
  choose(0, 0, 0);
  return { width, count, items, squares };
}

/** Every two sets of the two lists that share no item. */
export function linksOf(gram: Float64Array, size: number, one: Subsets, other: Subsets): Links {
  const from: number[] = [];
  const to: number[] = [];
  const squares: number[] = [];
  for (let a = 0; a < one.count; a++) {
    for (let b = 0; b < other.count; b++) {
      const between = crossOf(gram, size, one, a, other, b);
      if (between === null) continue;
      from.push(a);
      to.push(b);
      squares.push(one.squares[a]! + other.squares[b]! + 2 * between);
    }
  }
  return {
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    squares: Float64Array.from(squares),
  };
}

/** Σ gram between two sets; null where they share an item. */
function crossOf(gram: Float64Array, size: number, one: Subsets, a: number, other: Subsets, b: number) {
  let sum = 0;
  for (let k = a * one.width; k < (a + 1) * one.width; k++) {
    for (let l = b * other.width; l < (b + 1) * other.width; l++) {
      const item = one.items[k]!;
      if (item === other.items[l]) return null;
      sum += gram[item * size + other.items[l]!]!;
    }
  }
  return sum;
}
