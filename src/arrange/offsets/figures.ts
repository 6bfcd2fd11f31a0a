// The figures that a bound by offsets goes by: of every two items, of every item in its place, and of the wall itself.

/** Entries: of pairs offset (or wave) × items below each other and themselves, of places place (or wave) × item, one for each wave. */
export interface Figures {
  readonly pairs: Float64Array;
  readonly places: Float64Array;
  readonly whole: Float64Array;
}

/** Writes every entry anew. */
export function each(figures: Figures, write: (key: keyof Figures, at: number) => number): void {
  for (const key of ['pairs', 'places', 'whole'] as const) {
    const into = figures[key];
    for (let at = 0; at < into.length; at++) into[at] = write(key, at);
  }
}

/** Visits all pairs of items, each with itself too, in the order of their entries. */
export function forPairs(size: number, visit: (at: number, item: number, other: number) => void): void {
  for (let item = 0, at = 0; item < size; item++)
    for (let other = 0; other <= item; other++, at++) visit(at, item, other);
}

/** The entry of two items. */
export function pairAt(item: number, other: number): number {
  return item < other ? (other * (other + 1)) / 2 + item : (item * (item + 1)) / 2 + other;
}
