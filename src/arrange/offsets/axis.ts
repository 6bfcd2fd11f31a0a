// One direction of a wall, rows or columns, laid into a ring: offsets between two of its cells, how far a cell lies from the
// middle, and both as sums of cosines. A wall looks the same from both ends, so offsets and places have no sign here.

/** Cells of a ring beyond the wall. So far do two cells count as near, and none are to be near round the ring. */
const BEYOND = 2;

export interface Axis {
  readonly cells: number;
  readonly ring: number;
  /** How many cells of the ring have offset 0, 1, … to half the ring; how many cells of the wall have each place, middle first. */
  readonly offsetCount: Float64Array;
  readonly placeCount: Float64Array;
  readonly offsets: Waves;
  readonly places: Waves;
}

/** Figures, times √ of how many cells have them, as sums of waves: wave × figure, each column of length 1 and beside the others. */
export interface Waves {
  readonly waves: number;
  readonly figures: number;
  readonly table: Float64Array;
}

export function axisOf(cells: number): Axis {
  const ring = cells + BEYOND;
  const offsetCount = Float64Array.from({ length: Math.floor(ring / 2) + 1 }, (_, at) =>
    at === 0 || 2 * at === ring ? 1 : 2,
  );
  const even = cells % 2 === 0;
  const placeCount = Float64Array.from({ length: Math.ceil(cells / 2) }, (_, at) =>
    at === 0 && !even ? 1 : 2,
  );
  const wavesOf = (count: Float64Array, first: number): Waves => {
    const waves = offsetCount.length;
    const figures = count.length;
    const table = Float64Array.from({ length: waves * figures }, (_, at) => {
      const wave = Math.floor(at / figures);
      const to = at % figures;
      const root = Math.sqrt((offsetCount[wave]! * count[to]!) / ring);
      return root * Math.cos((2 * Math.PI * wave * (to + first)) / ring);
    });
    return { waves, figures, table };
  };
  // From the middle of an even wall the first cell is half a cell away.
  const offsets = wavesOf(offsetCount, 0);
  const places = wavesOf(placeCount, even ? 0.5 : 0);
  return { cells, ring, offsetCount, placeCount, offsets, places };
}

/** The offset of two cells of an axis. */
export function offsetOf({ ring }: Axis, one: number, other: number): number {
  const apart = Math.abs(one - other);
  return Math.min(apart, ring - apart);
}

/** The place of a cell of an axis. */
export function placeOf({ cells }: Axis, cell: number): number {
  return Math.floor(Math.abs(cell - (cells - 1) / 2));
}
