// Downloads files, and says under which name: read out to screen readers, and for the place where the file was asked for.
import { useCallback, useState } from 'react';
import { type Phrase, phrase } from '../model/phrase';
import { downloadBlob } from '../store/storage/projectFiles';
import { useAppStore } from './app';

export interface SaveFile {
  /** Downloads text; `type` is the media type, by default that of a project file. */
  readonly saveText: (file: string, text: string, type?: string) => void;
  readonly saveBlob: (file: string, blob: Blob, words?: Phrase) => void;
  /** The sentence on the last file saved, for <Saved>; null before. */
  readonly saved: Phrase | null;
  /** Takes the sentence away again. */
  readonly forget: () => void;
}

/** What saves files from one place. Put <Saved words={saved} /> beside its buttons. */
export function useSaveFile(): SaveFile {
  const store = useAppStore();
  const [saved, setSaved] = useState<Phrase | null>(null);
  const saveBlob = useCallback(
    (file: string, blob: Blob, words = phrase('Saved as {file}.', { file })) => {
      downloadBlob(file, blob);
      setSaved(words);
      store.getState().announce(words);
    },
    [store],
  );
  const saveText = useCallback(
    (file: string, text: string, type = 'application/json') => saveBlob(file, new Blob([text], { type })),
    [saveBlob],
  );
  return { saveText, saveBlob, saved, forget: useCallback(() => setSaved(null), []) };
}
