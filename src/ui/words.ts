// Turns sentences into text on screen, in the person's unit. The English sentence is the key for translations.
import { createContext, useContext } from 'react';
import {
  isolated,
  type Names,
  type Phrase,
  type PhraseValue,
  phrase,
  speak,
  type Translate,
} from '../model/phrase';
import type { LengthUnit } from '../model/units';
import { numberStyleOf } from '../model/words/numberStyle';
import { useApp } from './app';

/** The language in use: identity for English. */
export const Language = createContext<Translate>((say) => say);

/** How the person's machine writes figures. */
const NUMBERS = numberStyleOf(navigator.language);

type Say = (sentence: string | Phrase, values?: Record<string, PhraseValue>) => string;

/** A function that turns a sentence (or a Phrase from the core) into text on screen; names in it are isolated (model/phrase). */
export function useSay(): Say {
  return useWords(isolated);
}

/** A function that turns a sentence into text for files and kept names; names in it do not change. */
export function useWrite(): Say {
  return useWords();
}

function useWords(names?: Names): Say {
  const unit = useUnit();
  const translate = useContext(Language);
  return (sentence, values) =>
    speak(
      typeof sentence === 'string' ? phrase(sentence, values) : sentence,
      unit,
      translate,
      names,
      NUMBERS,
    );
}

/** The unit lengths are shown in: the person's. */
export function useUnit(): LengthUnit {
  return useApp((app) => app.unit);
}
