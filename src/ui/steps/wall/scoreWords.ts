// A score as it stands in a sentence: in points, of which a top by chance has about 100; lower is better.
import { inPoints, type Terms } from '../../../balance/score/terms';

/** Less than this apart, in points, is the same score. */
const SAME = 0.005;

export interface ScorePair {
  readonly before: string;
  readonly after: string;
  readonly verdict: 'better' | 'worse' | 'same';
}

/** Two scores beside each other, in whole points, or with as many decimals as it takes to tell them apart. */
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
