// Turns sentences into text on screen, in the person's unit. The English sentence is the key for translations.
import { createContext, useCallback, useContext } from 'react';
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
import type { Figure } from '../model/words/figure';
import { numberStyleOf } from '../model/words/numberStyle';
import { useApp } from './app';

/** The language in use: identity for English. */
export const Language = createContext<Translate>((say) => say);

/** How the person's machine writes figures. */
export const NUMBERS = numberStyleOf(navigator.language);

type Say = (sentence: string | Phrase | Figure, values?: Record<string, PhraseValue>) => string;

/** A function that turns a sentence (or a Phrase or figure from the core) into text on screen; names in it are isolated (model/phrase). */
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
  return useCallback(
    (sentence, values) => speak(asPhrase(sentence, values), unit, translate, names, NUMBERS),
    [unit, translate, names],
  );
}

function asPhrase(sentence: string | Phrase | Figure, values?: Record<string, PhraseValue>): Phrase {
  if (typeof sentence === 'string') return phrase(sentence, values);
  return 'say' in sentence ? sentence : phrase('{figure}', { figure: sentence });
}

/** The unit lengths are shown in: the person's. */
export function useUnit(): LengthUnit {
  return useApp((app) => app.unit);
}
