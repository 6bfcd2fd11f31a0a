// Says in words how one order differs from the first of several: which terms of the score are better and which are worse.
import type { TermScales } from '../balance/score/termScales';
import { TERM_NAMES, type TermName, type Terms } from '../balance/score/weights';
import { type Phrase, phrase } from '../model/phrase';

/** The eye does not see a smaller difference than this; a random layout scores about 1 on each term. */
const SEEN = 0.05;

const WORDS: Readonly<Record<Exclude<TermName, 'clashLength'>, readonly [better: string, worse: string]>> = {
  lookAlikes: ['fewer look-alikes meet', 'more look-alikes meet'],
  valueSpread: ['lights and darks more even', 'lights and darks less even'],
  colourSpread: ['colours more even', 'colours less even'],
  fabricSpread: ['each fabric more even', 'each fabric less even'],
  wholeTopWeight: ['the whole better balanced', 'the whole less balanced'],
};

const TOGETHER: readonly [string, string] = [
  'colour families closer together',
  'colour families less together',
];

/** Lists what one order does better and worse than another, the greatest difference first; empty where the eye sees none. */
export function differences(scales: TermScales, one: Terms, other: Terms, weights: Terms): Phrase[] {
  return TERM_NAMES.filter((name) => weights[name] > 0 && Math.abs(one[name] - other[name]) >= SEEN)
    .toSorted((a, b) => weights[b] * Math.abs(one[b] - other[b]) - weights[a] * Math.abs(one[a] - other[a]))
    .map((name) => inWords(scales, name, one[name] - other[name]));
}

function inWords({ clashScale, intent }: TermScales, name: TermName, more: number): Phrase {
  if (name === 'clashLength') {
    const inches = { inches: Math.round(4 * Math.abs(more) * clashScale) / 4 };
    return more < 0
      ? phrase('{inches} less of a fabric meeting itself', { inches })
      : phrase('{inches} more of a fabric meeting itself', { inches });
  }
  const words = name === 'colourSpread' && intent.colour !== 'scattered' ? TOGETHER : WORDS[name];
  return phrase(words[more < 0 ? 0 : 1]);
}
