// The names of the terms of the score, how much each counts, and the score in points. terms.ts computes the terms.

export const TERM_NAMES = [
  'clashLength',
  'lookAlikes',
  'valueSpread',
  'colourSpread',
  'fabricSpread',
  'wholeTopWeight',
] as const;
export type TermName = (typeof TERM_NAMES)[number];
export type Terms = Readonly<Record<TermName, number>>;

/**
 * Weights to begin with. A fabric meeting itself is what everybody sees first; a look-alike is the same fault at a
 * distance; the rest are one question (is it even?) asked in four ways (our choice).
 */
export const DEFAULT_WEIGHTS: Terms = {
  clashLength: 4,
  lookAlikes: 1,
  valueSpread: 1,
  colourSpread: 0.5,
  fabricSpread: 1,
  wholeTopWeight: 0.5,
};

/** The weighted sum of the terms. */
export function weighted(terms: Terms, weights: Terms): number {
  return TERM_NAMES.reduce((sum, name) => sum + weights[name] * terms[name], 0);
}

/** A weighted sum in points: 100 is about a top by chance, whatever the weights; 0 where nothing counts. */
export function inPoints(total: number, weights: Terms): number {
  const chance = TERM_NAMES.reduce((sum, name) => sum + weights[name], 0);
  return chance > 0 ? (100 * total) / chance : 0;
}
