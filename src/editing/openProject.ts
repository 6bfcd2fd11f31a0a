// Opens a project from text: chosen files, examples and the command line all come through here. openDocument.ts checks what was read.
import { type Opened, readProject } from '../model/reading/readText';
import { checked } from './openDocument';

/** Opens the text of a project file, with the pictures in it. */
export function openProject(text: string): Opened {
  return checked(readProject(text));
}
