// Makes the PNG and passes it to a file, the clipboard or the share sheet, with its progress in words.
import { useState } from 'react';
import { type Phrase, phrase } from '../../../model/phrase';
import { ok, type Problem, type Result } from '../../../model/result';
import { drawPng, type PictureStage, pixelSize } from '../../../store/picture/picture';
import { fileName } from '../../../store/storage/projectFiles';
import { useSaveFile } from '../../useSaveFile';

type Stage = PictureStage | 'sharing';

const STAGES: Readonly<Record<Stage, Phrase>> = {
  drawing: phrase('Drawing the picture …'),
  packing: phrase('Packing it …'),
  sharing: phrase('Choose where it goes …'),
};

/** Whether this browser can copy a picture to the clipboard. */
export function canCopy(): boolean {
  return typeof ClipboardItem !== 'undefined' && typeof navigator.clipboard?.write === 'function';
}

/** Whether this browser can share a file. */
export function canShare(): boolean {
  if (typeof navigator.canShare !== 'function') return false;
  return navigator.canShare({ files: [new File([], 'quilt.png', { type: 'image/png' })] });
}

/** A picture to make: its SVG, the width of its PNG in pixels, and the name of its file. */
interface Asked {
  readonly svg: string;
  readonly width: number;
  readonly name: string;
}

export type MakingPng = ReturnType<typeof usePng>;

/** The commands on the PNG of a picture, with their progress and problems. */
export function usePng() {
  const { saveText, saveBlob, saved, forget } = useSaveFile();
  const [stage, setStage] = useState<Stage | null>(null);
  const [done, setDone] = useState<Phrase | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  // A browser shares only at a press, and drawing takes longer than it takes a press for: what is drawn waits for the next one.
  const [drawn, setDrawn] = useState<{ readonly asked: Asked; readonly file: File } | null>(null);

  const make = async ({ svg, width }: Asked): Promise<Result<Blob>> => {
    const size = pixelSize(svg, width);
    return size.ok ? drawPng(svg, size.value, setStage) : size;
  };
  const hand = async (work: () => Promise<Result<Phrase | null>>, first: Stage = 'drawing') => {
    setDone(null);
    forget();
    setProblems([]);
    setStage(first);
    const outcome = await work();
    setStage(null);
    if (outcome.ok) setDone(outcome.value);
    else setProblems(outcome.problems);
  };

  return {
    stage,
    told: stage ? STAGES[stage] : done,
    saved,
    problems,
    saveSvg: ({ svg, name }: Asked) => {
      setDone(null);
      saveText(fileName(name, '.svg'), svg, 'image/svg+xml');
    },
    save: (asked: Asked) =>
      hand(async () => {
        const made = await make(asked);
        if (!made.ok) return made;
        saveBlob(fileName(asked.name, '.png'), made.value);
        return ok(null);
      }),
    copy: (asked: Asked) =>
      hand(async () => {
        let refused: Result<Blob> | null = null;
        // The clipboard accepts only during a press, so it gets a promise of the picture at once.
        const picture = make(asked).then((made) => {
          if (made.ok) return made.value;
          refused = made;
          throw new Error('copy: no picture');
        });
        try {
          await navigator.clipboard.write([new ClipboardItem({ 'image/png': picture })]);
          return ok(phrase('Copied. Paste it where you want it.'));
        } catch {
          // If the clipboard refuses at once, the picture is still being drawn: wait, so that its stages end before the answer.
          await picture.catch(() => undefined);
          return refused ?? failedTo('not-copied', 'The browser did not allow copying. Save it instead.');
        }
      }),
    /** The file of this very picture, once it is drawn to be shared; else null. */
    drawnFor: ({ svg, width, name }: Asked): File | null => {
      const same = drawn?.asked.svg === svg && drawn.asked.width === width && drawn.asked.name === name;
      return same ? drawn.file : null;
    },
    drawToShare: (asked: Asked) =>
      hand(async () => {
        const made = await make(asked);
        if (!made.ok) return made;
        const file = new File([made.value], fileName(asked.name, '.png'), { type: 'image/png' });
        setDrawn({ asked, file });
        return ok(phrase('The picture is drawn. Press Share now.'));
      }),
    share: (file: File, title: string) =>
      hand(async () => {
        try {
          await navigator.share({ files: [file], title });
          return ok(phrase('Shared.'));
        } catch (error) {
          if (error instanceof DOMException && error.name === 'AbortError') return ok(null);
          return failedTo('not-shared', 'The browser did not share it. Save it and send the file.');
        }
      }, 'sharing'),
  };
}

function failedTo(code: string, say: string): Result<Phrase | null> {
  return { ok: false, problems: [{ code, path: 'picture', message: phrase(say) }] };
}
