// Hands the person a file of text and says under which name it was saved.
import { phrase } from '../model/phrase';
import { downloadText } from '../store/storage/projectFiles';
import { useAppStore } from './app';

/** `type` is the file's media type; a project file's where it is left out. */
export function useSaveFile(): (file: string, text: string, type?: string) => void {
  const store = useAppStore();
  return (file, text, type) => {
    downloadText(file, text, type);
    store.getState().announce(phrase('Saved as {file}.', { file }));
  };
}
