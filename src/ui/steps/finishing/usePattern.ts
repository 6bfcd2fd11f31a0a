// Makes the pattern: loads its code at the first request, gives its progress in words and as a share, downloads the file, and stops.
import { useRef, useState } from 'react';
import type { PatternOptions } from '../../../drawing/pattern/options';
import { stillOpen } from '../../../drawing/pattern/stillOpen';
import { type Phrase, phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import type { PatternPdf, RunningPdf } from '../../../store/picture/patternPdf';
import { fileName } from '../../../store/storage/projectFiles';
import { usePicturesAtHand } from '../../session';
import { useSaveFile } from '../../useSaveFile';
import { NUMBERS, useUnit } from '../../words';

interface Doing {
  readonly words: Phrase;
  /** Share of the work that is done, 0 to 1. */
  readonly share: number;
}

export interface MakingPattern {
  readonly doing: Doing | null;
  /** The file that was saved, and what could not be set in it. */
  readonly saved: Phrase | null;
  readonly remarks: readonly Phrase[];
  readonly problems: readonly Problem[];
  /** Makes and downloads the file; `ending` of its name distinguishes the templates from the whole pattern. */
  readonly make: (project: Project, options: PatternOptions, ending: string) => Promise<void>;
  /** Ends the making; nothing is saved. */
  readonly stop: () => void;
}

/** What makes the pattern of a project, with its progress and problems. */
export function usePattern(): MakingPattern {
  const unit = useUnit();
  const { pictures } = usePicturesAtHand();
  const { saveBlob, saved, forget } = useSaveFile();
  const [doing, setDoing] = useState<Doing | null>(null);
  const [remarks, setRemarks] = useState<readonly Phrase[]>([]);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const running = useRef<RunningPdf | null>(null);

  const make: MakingPattern['make'] = async (project, options, ending) => {
    forget();
    setRemarks([]);
    setProblems([]);
    setDoing({ words: phrase('Loading …'), share: 0 });
    try {
      const { makePatternPdf } = await import('../../../store/picture/patternPdf');
      const writing = { unit, numbers: NUMBERS };
      running.current = makePatternPdf(project, pictures, options, writing, ({ doing: words, share }) =>
        setDoing({ words, share }),
      );
      const made = await running.current.answer;
      if (made === null) {
        setRemarks([phrase('Stopped. Nothing was saved.')]);
        return;
      }
      if (!made.ok) {
        setProblems(made.problems);
        return;
      }
      const file = fileName(project.name, ending);
      const { pages } = made.value;
      saveBlob(file, made.value.file, phrase('Saved as {file}, {pages} pages.', { file, pages }));
      setRemarks([...stillOpen(project), ...notSet(made.value)]);
    } catch {
      const say1 =
        'The pattern could not be made: a part of the tool did not load. Check the connection, or reload the page.';
      setProblems([{ code: 'not-loaded', path: 'pattern', message: phrase(say1) }]);
    } finally {
      running.current = null;
      setDoing(null);
    }
  };

  return { doing, saved, remarks, problems, make, stop: () => running.current?.cancel() };
}

function notSet({ missing, pictured }: PatternPdf): Phrase[] {
  const found: Phrase[] = [];
  const some = (letters: readonly string[]) => ({ letters: letters.slice(0, 12).join(' ') });
  if (pictured.length > 0) {
    const say1 =
      'The pattern’s typeface lacks {letters}: names with them are pictures of your device’s letters, which cannot be searched.';
    found.push(phrase(say1, some(pictured)));
  }
  if (missing.length > 0) {
    const say1 =
      'Neither the pattern’s typeface nor your device has {letters}; a question mark stands there. Rename what has them if it matters.';
    found.push(phrase(say1, some(missing)));
  }
  return found;
}
