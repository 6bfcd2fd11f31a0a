// Scores in words: in points; a random top has about 100, lower is better.
import { inPoints, type Terms } from '../../../balance/score/weights';
import { type Figure, figureOf, placesApart } from '../../../model/words/figure';

/** Scores that differ by less, in points, count as equal. */
const SAME = 0.005;

export interface ScorePair {
  readonly before: Figure;
  readonly after: Figure;
  readonly verdict: 'better' | 'worse' | 'same';
}

/** Two scores to compare, in whole points, or with enough decimals to distinguish them. */
export function scorePair(before: number, after: number, weights: Terms): ScorePair {
  const [one, other] = [inPoints(before, weights), inPoints(after, weights)];
  if (Math.abs(other - one) < SAME)
    return { before: figureOf(one, 0), after: figureOf(one, 0), verdict: 'same' };
  const places = placesApart(one, other);
  return {
    before: figureOf(one, places),
    after: figureOf(other, places),
    verdict: other < one ? 'better' : 'worse',
  };
}
