// The score that people see: its terms and their total.
import type { Intent } from '../balance/score/intent';
import { termScales } from '../balance/score/termScales';
import { evaluateTerms } from '../balance/score/terms';
import { type Terms, weighted } from '../balance/score/weights';
import { type ModelledProject, wallModel } from '../balance/wall/wallModel';
import { type Move, moved } from '../model/moves';
import type { Scopes } from './decisions';

/** The six terms and their weighted sum. Lower is better; a random layout scores about 1 on each term. */
export interface Score {
  readonly terms: Terms;
  readonly total: number;
}

/** Allows every change that pins and progress leave open. */
export const ALL_SCOPES: Scopes = { swap: true, turn: true, shiftCorners: true, trade: true, strips: true };

/**
 * What the wall is told after the moves. Wedges that change blocks, strips in another order and other corners make other blocks,
 * and a random layout of those is another one: a search holds to the one there was.
 */
export function scoreThen(
  now: ModelledProject,
  moves: readonly Move[],
  intent: Intent,
  weights: Terms,
): Score {
  const then = wallModel(moved(now.project, moves), now.model.cloths, now);
  const terms = evaluateTerms(termScales(then, intent), then);
  return { terms, total: weighted(terms, weights) };
}
