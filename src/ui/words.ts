// Turns sentences into text on screen, in the project's unit. The English sentence is the key for other languages.
import { createContext, useContext } from 'react';
import { type Phrase, type PhraseValue, phrase, speak, type Translate } from '../model/phrase';
import type { LengthUnit } from '../model/units';
import { useApp } from './app';

/** The language in use: identity for English. */
export const Language = createContext<Translate>((say) => say);

/** A function that turns a sentence (or a Phrase from the core) into text. */
export function useSay(): (sentence: string | Phrase, values?: Record<string, PhraseValue>) => string {
  const unit = useUnit();
  const translate = useContext(Language);
  return (sentence, values) =>
    speak(typeof sentence === 'string' ? phrase(sentence, values) : sentence, unit, translate);
}

/** The unit lengths are shown in. */
export function useUnit(): LengthUnit {
  return useApp((app) => app.project.preferences.unit);
}
