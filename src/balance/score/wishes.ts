// Reads the person's wishes for the balance, for the screen, report, offers, mends and shuffle alike.
import type { Preferences } from '../../model/project';
import type { AnalysisOptions } from '../analyse';
import { DEFAULT_WEIGHTS, type Terms } from './weights';

/** Options of the analysis: what reads as one cloth, and how values and colours should lie. */
export function wishesOf({ lookalikes, intent }: Preferences): AnalysisOptions {
  return { lookalikes, intent };
}

/**
 * How much lights and darks count where they should lie in an order. By their usual weight clashes would outweigh the wish, and the
 * order could not be seen in grey (measured: a shuffle of 12 blocks then did no better than one random layout in four).
 */
const ORDERED: Terms = { ...DEFAULT_WEIGHTS, valueSpread: 4 };

/** How much each term of the score counts; the usual weights where the person has set none. */
export function weightsOf({ weights, intent }: Pick<Preferences, 'weights' | 'intent'>): Terms {
  return weights ?? (intent.value === 'scattered' ? DEFAULT_WEIGHTS : ORDERED);
}
