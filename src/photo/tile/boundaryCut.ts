// Minimum-error boundary cut (Efros and Freeman, 'Image Quilting for Texture Synthesis and Transfer', SIGGRAPH 2001): where two pieces of
// a picture overlap, they meet along the path on which they differ least.

/** How much two pieces differ at each place of a band, `across` places wide and `along` long; rows run along. */
export interface Band {
  readonly across: number;
  readonly along: number;
  readonly errors: Float64Array;
}

export interface Cut {
  /** For each row the first place that belongs to the second piece, 0 to across − 1. */
  readonly path: Int32Array;
  /** The sum of errors along the path. */
  readonly error: number;
}

/** The cut of least error from the first row to the last; from row to row it moves by one place at most. */
export function leastCut(band: Band): Cut {
  return tracedFrom(band, null);
}

/** The same for a band whose last row meets its first again: the ends of the cut meet too. */
export function leastClosedCut(band: Band): Cut {
  let best: Cut | null = null;
  for (let start = 0; start < band.across; start += 1) {
    const cut = tracedFrom(band, start);
    if (!best || cut.error < best.error) best = cut;
  }
  return best!;
}

/** Dynamic programming over rows. With a `start` the path begins there and ends at most one place beside it. */
function tracedFrom({ across, along, errors }: Band, start: number | null): Cut {
  const sums = new Float64Array(across * along).fill(Number.POSITIVE_INFINITY);
  for (let place = 0; place < across; place += 1)
    if (start === null || place === start) sums[place] = errors[place]!;
  for (let row = 1; row < along; row += 1) {
    const before = (row - 1) * across;
    for (let place = 0; place < across; place += 1)
      sums[row * across + place] =
        errors[row * across + place]! + sums[before + leastNear(sums, before, place, across)]!;
  }
  return traced(sums, across, along, start);
}

/** Of a place and its two neighbours in a row, the one with the least sum. */
function leastNear(sums: Float64Array, row: number, place: number, across: number): number {
  let best = place;
  if (place > 0 && sums[row + place - 1]! < sums[row + best]!) best = place - 1;
  if (place < across - 1 && sums[row + place + 1]! < sums[row + best]!) best = place + 1;
  return best;
}

function traced(sums: Float64Array, across: number, along: number, start: number | null): Cut {
  const last = (along - 1) * across;
  let place = start === null ? 0 : leastNear(sums, last, start, across);
  if (start === null)
    for (let one = 1; one < across; one += 1) if (sums[last + one]! < sums[last + place]!) place = one;
  const path = new Int32Array(along);
  const error = sums[last + place]!;
  for (let row = along - 1; row >= 0; row -= 1) {
    path[row] = place;
    if (row > 0) place = leastNear(sums, (row - 1) * across, place, across);
  }
  return { path, error };
}
