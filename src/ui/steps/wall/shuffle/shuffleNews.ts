// What a shuffle says of itself: how far the search is, that its layout is there, and by what the verdict on it is counted.
import type { ShuffleProgress } from '../../../../arrange/shuffle';
import type { ArrangeResult } from '../../../../arrange/verdict';
import { inPoints, type Terms, weighted } from '../../../../balance/score/weights';
import { type Phrase, phrase } from '../../../../model/phrase';
import { scorePair } from '../scoreWords';

/** How far the search is, 0–1; null once only the bound is worked out, as it is not known how long that takes. */
export function searchedShare(progress: ShuffleProgress | null): number | null {
  if (!progress) return 0;
  return progress.closing ? null : progress.share;
}

/**
 * The same in words. Whoever waits for the bound need not: a stop brings the layout at once. The search counts against a random layout
 * of the blocks as they are; where it makes other blocks (`others`) the wall on show has another score.
 */
export function shuffleNews(progress: ShuffleProgress | null, weights: Terms, others: boolean): Phrase {
  if (!progress) return phrase('Starting …');
  const { before, after } = scorePair(progress.start, progress.best, weights);
  const score = phrase(
    others
      ? 'score {after}, from {before}, against a random layout of the blocks as they are now'
      : 'score {after}, from {before}',
    { before, after },
  );
  return progress.closing
    ? phrase(
        'Layout found: {score}. Working out how close it is to the best possible … Stop to use it now.',
        { score },
      )
    : phrase('{steps} moves tried; {score}.', { steps: progress.steps, score });
}

/**
 * By what the verdict is counted, where the score on show is counted by something else: traded wedges, corners and strips in another order
 * make other blocks, of which a random layout is another one. Null where both scores are the same in whole points.
 */
export function countedWords({ after, told }: ArrangeResult, weights: Terms): Phrase | null {
  const shown = weighted(told, weights);
  if (Math.round(inPoints(after.total, weights)) === Math.round(inPoints(shown, weights))) return null;
  const { before: counted, after: its } = scorePair(after.total, shown, weights);
  return phrase(
    'The search counted against a random layout of the blocks as they are now, by which the new layout scores {counted}. Its own score, {its}, is against a random layout of the blocks as they would be.',
    { counted, its },
  );
}
