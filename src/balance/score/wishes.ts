// Reads the person's wishes for the balance, for the screen, report, offers, mends and shuffle alike.
import type { Preferences } from '../../model/project';
import type { AnalysisOptions } from '../analyse';
import { DEFAULT_WEIGHTS, type Terms } from './terms';

/** Options of the analysis: what reads as one cloth, and how values and colours should lie. */
export function wishesOf({ lookalikes, intent }: Preferences): AnalysisOptions {
  return { lookalikes, intent };
}

/** How much each term of the score counts; the usual weights where the person has set none. */
export function weightsOf({ weights }: Preferences): Terms {
  return weights ?? DEFAULT_WEIGHTS;
}
