// Takes files of photographs in: how many wait, and which were refused and why. What is made of a photograph is left to whoever takes it.
import type { StoreApi } from 'zustand/vanilla';
import { phrase } from '../../model/phrase';
import { checkSize } from '../../model/picture/photograph';
import { failed, ok, type Problem, type Result } from '../../model/result';

/** A file that was not taken, and why. */
export interface RefusedFile {
  readonly name: string;
  readonly problem: Problem;
}

export interface FilesTaken {
  /** Files that wait to be opened. */
  readonly waiting: number;
  readonly refused: readonly RefusedFile[];
}

export const STOPPED: Problem = {
  code: 'stopped',
  path: '',
  message: phrase('Stopped before it was read.'),
};

/** The bytes of a file; refused where it is empty, too large, or no longer there. */
export async function bytesOf(file: File): Promise<Result<Uint8Array<ArrayBuffer>>> {
  const sized = checkSize(file.size);
  if (!sized.ok) return sized;
  const bytes = await file.arrayBuffer().catch(() => null);
  return bytes
    ? ok(new Uint8Array(bytes))
    : failed('unreadable', '', phrase('The file cannot be read. It may have been moved or removed.'));
}

/** Takes files in for a store, one after the other: each that is no photograph is refused by name, and the rest goes on. */
export function createFileTaker<State extends FilesTaken>(
  state: StoreApi<State>,
  /** Why no more fit; null while there is room. */
  full: () => Problem | null,
  /** Opens one; gives why it cannot be opened, or null. */
  open: (name: string, bytes: Uint8Array<ArrayBuffer>) => Promise<Problem | null>,
) {
  /** How often all was stopped: files that wait then are not opened. */
  let stops = 0;
  const set = (to: Partial<FilesTaken>) => state.setState(to as Partial<State>);
  const takeOne = async (file: File, asked: number): Promise<Problem | null> => {
    if (stops !== asked) return STOPPED;
    const crowded = full();
    if (crowded) return crowded;
    const bytes = await bytesOf(file);
    return bytes.ok ? open(file.name, bytes.value) : bytes.problems[0]!;
  };
  return {
    async take(files: readonly File[]): Promise<void> {
      set({ waiting: state.getState().waiting + files.length, refused: [] });
      const asked = stops;
      for (const file of files) {
        const problem = await takeOne(file, asked);
        const { waiting, refused } = state.getState();
        if (problem) set({ refused: [...refused, { name: file.name, problem }] });
        set({ waiting: Math.max(0, waiting - 1) });
      }
    },
    /** Takes a refusal away that was read. */
    dismiss: (file: RefusedFile): void =>
      set({ refused: state.getState().refused.filter((one) => one !== file) }),
    /** Files that wait are refused. */
    stop: () => {
      stops += 1;
    },
  };
}
