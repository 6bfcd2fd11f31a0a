// Scores in words: in points; a random top has about 100, lower is better.
import { inPoints, type Terms } from '../../../balance/score/terms';

/** Scores that differ by less, in points, count as equal. */
const SAME = 0.005;

export interface ScorePair {
  readonly before: string;
  readonly after: string;
  readonly verdict: 'better' | 'worse' | 'same';
}

/** Two scores to compare, in whole points, or with enough decimals to distinguish them. */
export function scorePair(before: number, after: number, weights: Terms): ScorePair {
  const [one, other] = [inPoints(before, weights), inPoints(after, weights)];
  if (Math.abs(other - one) < SAME) return { before: one.toFixed(0), after: one.toFixed(0), verdict: 'same' };
  const places = [0, 1, 2].find((count) => one.toFixed(count) !== other.toFixed(count)) ?? 3;
  return {
    before: one.toFixed(places),
    after: other.toFixed(places),
    verdict: other < one ? 'better' : 'worse',
  };
}
