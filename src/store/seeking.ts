// Seeks several good layouts that differ.
import { shuffleWish } from '../arrange/asked';
import { phrase } from '../model/phrase';
import type { AppStore } from './app';
import { type FoundAlternatives, startAlternatives } from './arranging/alternativesClient';
import { createOffering, type Offering } from './offering';

export type Seeking = Offering<FoundAlternatives, []>;

const WANTED = 4;

/** The store of an app's search. */
export function createSeeking(app: AppStore) {
  return createOffering(app, {
    begin: (project, _: [], hear) => startAlternatives(project, shuffleWish(project), WANTED, hear),
    offer: (found: FoundAlternatives) => found,
    stale: phrase('The quilt was changed, so the other layouts no longer fit it.'),
  });
}
