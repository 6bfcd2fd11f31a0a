// Copies words to the clipboard and says whether that worked.
import { useState } from 'react';
import { type Phrase, phrase } from '../../../model/phrase';

/** Whether this browser can copy words. */
export function canCopyWords(): boolean {
  // It is missing where the page came over plain http, whatever its type says.
  return typeof navigator.clipboard?.writeText === 'function';
}

/** A function that copies a text, and what came of the last time. */
export function useCopyWords(): [copy: (text: string) => void, told: Phrase | null] {
  const [told, setTold] = useState<Phrase | null>(null);
  const copy = (text: string) =>
    void navigator.clipboard.writeText(text).then(
      () => setTold(phrase('Copied.')),
      () => setTold(phrase('The browser did not let it be copied. Select the text and copy it.')),
    );
  return [copy, told];
}
