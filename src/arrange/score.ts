// The score that people see: its terms and their total.
import type { Terms } from '../balance/score/weights';
import type { Scopes } from './decisions';

/** The six terms and their weighted sum. Lower is better; a random layout scores about 1 on each term. */
export interface Score {
  readonly terms: Terms;
  readonly total: number;
}

/** Allows every change that pins and progress leave open. */
export const ALL_SCOPES: Scopes = { swap: true, turn: true, shiftCorners: true, trade: true, strips: true };
