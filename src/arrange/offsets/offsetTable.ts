// Figures of every two items at every offset, and of every item at every place of the wall, even over its mirrors; and the same
// by waves. Both ways keep lengths, so that what is nearest in the one is nearest in the other.
import { type Axis, axisOf, offsetOf, placeOf, type Waves } from './axis';

/** Entries: of pairs offset (or wave) × items below each other and themselves, of places place (or wave) × item, one for each wave. */
export interface Figures {
  readonly pairs: Float64Array;
  readonly places: Float64Array;
  readonly whole: Float64Array;
}

export class OffsetTable {
  /** Pairs of items, each with itself too. */
  readonly pairs: number;
  readonly offsets: number;
  readonly places: number;
  /** √ of how many cells of the ring have an offset, and cells of the wall a place. */
  readonly offsetRoot: Float64Array;
  readonly placeRoot: Float64Array;
  /** How many pairs of cells have an offset, each counted twice. */
  readonly cellPairs: Int32Array;
  private readonly down: Axis;
  private readonly across: Axis;

  constructor(
    rows: number,
    private readonly columns: number,
  ) {
    this.down = axisOf(rows);
    this.across = axisOf(columns);
    const size = rows * columns;
    this.pairs = (size * (size + 1)) / 2;
    this.offsetRoot = products(this.down.offsetCount, this.across.offsetCount).map(Math.sqrt);
    this.placeRoot = products(this.down.placeCount, this.across.placeCount).map(Math.sqrt);
    this.offsets = this.offsetRoot.length;
    this.places = this.placeRoot.length;
    this.cellPairs = new Int32Array(this.offsets);
    for (let cell = 0; cell < size; cell++)
      for (let other = 0; other < size; other++) this.cellPairs[this.offsetOf(cell, other)]! += 1;
  }

  get size(): number {
    return this.down.cells * this.across.cells;
  }

  /** √ of the share of all waves that are like this one. */
  waveRoot(wave: number): number {
    return this.offsetRoot[wave]! / Math.sqrt(this.down.ring * this.across.ring);
  }

  offsetOf(cell: number, other: number): number {
    const { down, across, columns } = this;
    const rows = offsetOf(down, Math.floor(cell / columns), Math.floor(other / columns));
    return rows * across.offsetCount.length + offsetOf(across, cell % columns, other % columns);
  }

  placeOf(cell: number): number {
    const { down, across, columns } = this;
    return (
      placeOf(down, Math.floor(cell / columns)) * across.placeCount.length + placeOf(across, cell % columns)
    );
  }

  /** Figures with 0 everywhere, by offset and place, or by wave. */
  none(by: 'place' | 'wave'): Figures {
    return {
      pairs: new Float64Array(this.offsets * this.pairs),
      places: new Float64Array((by === 'wave' ? this.offsets : this.places) * this.size),
      whole: new Float64Array(this.offsets),
    };
  }

  toWaves(figures: Figures): Figures {
    const { down, across } = this;
    const pairs = turned(down.offsets, across.offsets, false, figures.pairs);
    const places = turned(down.places, across.places, false, figures.places);
    return { pairs, places, whole: figures.whole };
  }

  fromWaves(figures: Figures): Figures {
    const { down, across } = this;
    const pairs = turned(down.offsets, across.offsets, true, figures.pairs);
    const places = turned(down.places, across.places, true, figures.places);
    return { pairs, places, whole: figures.whole };
  }

  /** Figures of the wall itself by waves: of each wave the sum of its cosines over all cells. */
  get wall(): Float64Array {
    const { down, across } = this;
    const waves = turned(down.places, across.places, false, this.placeRoot);
    return waves.map((one, wave) => one / this.waveRoot(wave));
  }
}

function products(one: Float64Array, other: Float64Array): Float64Array {
  return Float64Array.from({ length: one.length * other.length }, (_, at) => {
    return one[Math.floor(at / other.length)]! * other[at % other.length]!;
  });
}

/** Figures of a grid, laid out down × across × what belongs to each, turned into waves, or `back` by the same tables mirrored. */
function turned(down: Waves, across: Waves, back: boolean, figures: Float64Array): Float64Array {
  const lines = back ? down.waves : down.figures;
  return turnedOnce(down, back, turnedOnce(across, back, figures, lines), 1);
}

function turnedOnce(
  { waves, figures: count, table }: Waves,
  back: boolean,
  figures: Float64Array,
  lines: number,
): Float64Array {
  const [before, after] = back ? [waves, count] : [count, waves];
  const width = figures.length / (lines * before);
  const result = new Float64Array(lines * after * width);
  for (let line = 0; line < lines; line++) {
    for (let to = 0; to < after; to++) {
      const into = result.subarray((line * after + to) * width, (line * after + to + 1) * width);
      for (let from = 0; from < before; from++) {
        const factor = table[back ? from * count + to : to * count + from]!;
        const start = (line * before + from) * width;
        for (let at = 0; at < width; at++) into[at]! += factor * figures[start + at]!;
      }
    }
  }
  return result;
}
