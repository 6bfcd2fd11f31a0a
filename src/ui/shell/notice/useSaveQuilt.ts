// Saves the open quilt with its pictures to a file, and notes that it is safe there.
import { writeProject } from '../../../model/reading/read';
import { documentOf } from '../../../store/app';
import { projectFileName } from '../../../store/storage/projectFiles';
import { useAppStore } from '../../app';
import { useSession } from '../../session';
import { useSaveFile } from '../../useSaveFile';

/** A function that saves the open quilt to a file, and the sentence on it for <Saved>. */
export function useSaveQuilt() {
  const session = useSession();
  const store = useAppStore();
  const { saveText, saved } = useSaveFile();
  const saveQuilt = () => {
    const project = documentOf(store.getState());
    const { pictures } = session.pictures.state.getState();
    saveText(projectFileName(project.name), writeProject(project, pictures));
    session.filed();
  };
  return { saveQuilt, saved };
}
