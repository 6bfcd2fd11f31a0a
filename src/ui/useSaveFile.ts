// Downloads a file of text and announces the name under which it was saved.
import { phrase } from '../model/phrase';
import { downloadText } from '../store/storage/projectFiles';
import { useAppStore } from './app';

/** A function that downloads `text` as `file`; `type` is the media type, by default that of a project file. */
export function useSaveFile(): (file: string, text: string, type?: string) => void {
  const store = useAppStore();
  return (file, text, type) => {
    downloadText(file, text, type);
    store.getState().announce(phrase('Saved as {file}.', { file }));
  };
}
