// What a running shuffle says of itself: how far the search is, and once it is over, that its layout is there.
import type { ShuffleProgress } from '../../../../arrange/shuffle';
import type { Terms } from '../../../../balance/score/weights';
import { type Phrase, phrase } from '../../../../model/phrase';
import { scorePair } from '../scoreWords';

/** How far the search is, 0–1; null once only the bound is worked out, as it is not known how long that takes. */
export function searchedShare(progress: ShuffleProgress | null): number | null {
  if (!progress) return 0;
  return progress.closing ? null : progress.share;
}

/** The same in words. Whoever waits for the bound need not: a stop brings the layout at once. */
export function shuffleNews(progress: ShuffleProgress | null, weights: Terms): Phrase {
  if (!progress) return phrase('Starting …');
  const { before, after } = scorePair(progress.start, progress.best, weights);
  return progress.closing
    ? phrase(
        'Layout found: score {after}, from {before}. Working out how close it is to the best possible … Stop to use it now.',
        { before, after },
      )
    : phrase('{steps} moves tried; score {after}, from {before}.', { steps: progress.steps, before, after });
}
