// The score as it is told: terms and total.
import type { Terms } from '../balance/score/terms';
import type { Scopes } from './decisions';

/** A score: the six terms and their weighted sum; lower is better, about 1 a term by chance. */
export interface Score {
  readonly terms: Terms;
  readonly total: number;
}

/** Everything that pins and progress leave open. */
export const ALL_SCOPES: Scopes = { swap: true, turn: true, shiftCorners: true, trade: true, strips: true };
