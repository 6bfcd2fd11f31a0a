// Seeks several good layouts that differ.
import type { Alternative } from '../arrange/alternatives';
import { shuffleWish } from '../arrange/asked';
import { phrase } from '../model/phrase';
import type { AppStore } from './app';
import { startAlternatives } from './arranging/alternativesClient';
import { createOffering, type Offering } from './offering';

interface Layouts {
  readonly alternatives: readonly Alternative[];
  readonly capped: boolean;
}

export type Seeking = Offering<Layouts, []>;

const WANTED = 4;

/** The store of an app's search. */
export function createSeeking(app: AppStore) {
  return createOffering(app, {
    begin: (project, _: [], hear) => startAlternatives(project, shuffleWish(project), WANTED, hear),
    offer: ({ alternatives, capped }): Layouts => ({ alternatives, capped }),
    stale: phrase('The quilt was changed, so the other layouts no longer fit it.'),
  });
}
