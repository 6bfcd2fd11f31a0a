// The fast Fourier transform of a square plane of complex numbers (Cooley and Tukey 1965), and autocorrelation by it
// (Wiener and Khinchin: the transform of the power spectrum).

/** A square of complex numbers; its side is a power of two. */
export interface ComplexSquare {
  readonly side: number;
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

export function complexSquare(side: number): ComplexSquare {
  return { side, real: new Float64Array(side * side), imaginary: new Float64Array(side * side) };
}

/** Cosines and sines of one turn, in `side` steps. */
function turns(side: number): { cos: Float64Array; sin: Float64Array } {
  const angle = (step: number) => (2 * Math.PI * step) / side;
  return {
    cos: Float64Array.from({ length: side / 2 }, (_, step) => Math.cos(angle(step))),
    sin: Float64Array.from({ length: side / 2 }, (_, step) => Math.sin(angle(step))),
  };
}

/** Transforms rows, then columns, in place; scaled by nothing. */
function transformSquare(square: ComplexSquare): void {
  const { side, real, imaginary } = square;
  const table = turns(side);
  const line = { real: new Float64Array(side), imaginary: new Float64Array(side) };
  for (const [step, apart] of [[1, side], [side, 1]] as const) {
    for (let at = 0; at < side; at += 1) {
      for (let one = 0; one < side; one += 1) {
        line.real[one] = real[at * apart + one * step]!;
        line.imaginary[one] = imaginary[at * apart + one * step]!;
      }
      transformLine(line.real, line.imaginary, table);
      for (let one = 0; one < side; one += 1) {
        real[at * apart + one * step] = line.real[one]!;
        imaginary[at * apart + one * step] = line.imaginary[one]!;
      }
    }
  } // biome-ignore format: a row
}

function transformLine(
  real: Float64Array,
  imaginary: Float64Array,
  { cos, sin }: ReturnType<typeof turns>,
): void {
  const length = real.length;
  reversedBits(real, imaginary);
  for (let half = 1; half < length; half *= 2) {
    const stride = length / (2 * half);
    for (let start = 0; start < length; start += 2 * half) {
      for (let at = 0; at < half; at += 1) {
        const c = cos[at * stride]!;
        const s = sin[at * stride]!;
        const even = start + at;
        const odd = even + half;
        const oddReal = real[odd]! * c + imaginary[odd]! * s;
        const oddImaginary = imaginary[odd]! * c - real[odd]! * s;
        real[odd] = real[even]! - oddReal;
        imaginary[odd] = imaginary[even]! - oddImaginary;
        real[even]! += oddReal;
        imaginary[even]! += oddImaginary;
      }
    }
  }
}

function reversedBits(real: Float64Array, imaginary: Float64Array): void {
  const length = real.length;
  let reverse = 0;
  for (let at = 1; at < length; at += 1) {
    let bit = length >> 1;
    for (; reverse & bit; bit >>= 1) reverse ^= bit;
    reverse ^= bit;
    if (at >= reverse) continue;
    swap(real, at, reverse);
    swap(imaginary, at, reverse);
  }
}

function swap(list: Float64Array, one: number, other: number): void {
  const kept = list[one]!;
  list[one] = list[other]!;
  list[other] = kept;
}

/** Replaces a square by its circular autocorrelation: of the real parts plus that of the imaginary ones, at real. */
export function autocorrelate(square: ComplexSquare): void {
  transformSquare(square);
  const { real, imaginary } = square;
  for (let at = 0; at < real.length; at += 1) {
    real[at] = (real[at]! ** 2 + imaginary[at]! ** 2) / real.length;
    imaginary[at] = 0;
  }
  // The power spectrum is real, so that forwards and backwards differ only in the sign of the imaginary part.
  transformSquare(square);
}
