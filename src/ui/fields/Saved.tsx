// Says at its place under which name a file was saved. Screen readers hear it from the status line (useSaveFile announces it).
import { Check } from 'lucide-react';
import type { Phrase } from '../../model/phrase';
import { useSay } from '../words';

export function Saved({ words }: { words: Phrase | null }) {
  const say = useSay();
  return words ? (
    <p className="saved">
      <Check size={16} aria-hidden /> <span>{say(words)}</span>
    </p>
  ) : null;
}
