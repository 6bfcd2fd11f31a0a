// The words of the trade that the pattern says, each with what it means, two columns to a page. Signs explain tips and places already.

import type { Phrase, PhraseValue } from '../../../model/phrase';
import { type Term, termsIn } from '../../../model/words/glossary';
import type { Composer } from '../composer';
import { inRow, textFigure } from '../lettering';
import { STYLES } from '../look';
import { type Figure, sideBySide } from '../page';
import type { Say, Writing } from '../writing';

const EXPLAINED = ['tip up', 'tip down', 'place'];

/** A `say` that listens: `terms` gives the terms of all that was said since. Names that people gave do not count. */
export function listeningTo(say: Say): { readonly say: Say; readonly terms: () => Term[] } {
  const heard = new Set<string>();
  const hear = (sentence: string | Phrase, values: Readonly<Record<string, PhraseValue>> = {}): void => {
    heard.add(typeof sentence === 'string' ? sentence : sentence.say);
    const own = typeof sentence === 'string' ? {} : sentence.with;
    for (const value of Object.values({ ...own, ...values })) {
      if (typeof value === 'object' && 'say' in value) hear(value);
    }
  };
  return {
    say: (sentence, values) => {
      hear(sentence, values);
      return say(sentence, values);
    },
    terms: () => termsIn([...heard].join('\n')).filter(({ term }) => !EXPLAINED.includes(term)),
  };
}

/** The list under its heading; nothing without terms. */
export function wordList(composer: Composer, { say, type, terms }: Writing): void {
  if (terms.length === 0) return;
  const step = composer.width / 2;
  const entry = ({ term, means }: Term): Figure =>
    inRow([
      { x: 0, figure: textFigure(say(term), STYLES.smallStrong, 1.05, type) },
      { x: 1.1, figure: textFigure(say(means), STYLES.small, step - 1.3, type) },
    ]);
  const rows = Math.ceil(terms.length / 2);
  composer.heading(say('Words'), 1.2);
  for (let row = 0; row < rows; row += 1) {
    const pair = [terms[row], terms[row + rows]].filter((one) => one !== undefined);
    composer.add(sideBySide(pair.map(entry), step), 0.045);
  }
}
