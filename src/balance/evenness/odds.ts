// A chance in words, as at the cutting table: "1 in 200", and what it means: whether a random layout does as much.
import { type Phrase, phrase } from '../../model/phrase';

/** A chance from 0 to 1: "34 in 100" for what is common, "1 in 200" for what is rare, two digits at most. */
export function oddsWords(p: number): Phrase {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`oddsWords: ${p} is not a chance`);
  if (p >= 0.095) return phrase('{count} in 100', { count: Math.round(100 * p) });
  if (p < 1e-4) return phrase('less than 1 in {count}', { count: 10_000 });
  return phrase('1 in {count}', { count: Number((1 / p).toPrecision(2)) });
}

/** Odds from which a thing is called unlikely, and from which it may be accident. */
const UNLIKELY = 0.05;
const DOUBTFUL = 0.2;

/** What a chance means, with the odds behind it: how many random layouts show as much. */
export function accidentWords(p: number): Phrase {
  const say =
    p <= UNLIKELY
      ? 'unlikely by accident ({odds} random layouts)'
      : p <= DOUBTFUL
        ? 'perhaps by accident ({odds} random layouts)'
        : 'could well be accident ({odds} random layouts)';
  return phrase(say, { odds: oddsWords(p) });
}
