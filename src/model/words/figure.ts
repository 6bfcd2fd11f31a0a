// A figure already in words (1.6 m, £12.50, 0.52), which a sentence takes as it is but for the marks of the person's numbers.

export interface Figure {
  /** Written with a point and without marks between thousands. */
  readonly figure: string;
}

/** A number with so many decimals; a minus is a minus sign, not a hyphen. */
export function figureOf(amount: number, places: number): Figure {
  return { figure: amount.toFixed(places).replace('-', '−') };
}

/** The fewest decimals, up to three, with which two numbers are written differently. */
export function placesApart(one: number, other: number): number {
  return [0, 1, 2].find((places) => one.toFixed(places) !== other.toFixed(places)) ?? 3;
}
