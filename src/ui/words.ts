// Turns sentences into text on screen, in the project's unit. The English sentence is the key for other languages.
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
import { useApp } from './app';

/** The language in use: identity for English. */
export const Language = createContext<Translate>((say) => say);

type Say = (sentence: string | Phrase, values?: Record<string, PhraseValue>) => string;

/** A function that turns a sentence (or a Phrase from the core) into text on screen; names in it keep to themselves. */
export function useSay(): Say {
  return useWords(isolated);
}

/** The same for text that leaves the screen (files, names that are kept): names stand as they were written. */
export function useWrite(): Say {
  return useWords();
}

function useWords(names?: Names): Say {
  const unit = useUnit();
  const translate = useContext(Language);
  return (sentence, values) =>
    speak(typeof sentence === 'string' ? phrase(sentence, values) : sentence, unit, translate, names);
}

/** The unit lengths are shown in. */
export function useUnit(): LengthUnit {
  return useApp((app) => app.project.preferences.unit);
}
