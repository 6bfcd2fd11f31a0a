// Saves the map of the wall as a PDF to print: which block hangs where, and which way up.
import { FileDown } from 'lucide-react';
import { useState } from 'react';
import { phrase } from '../../../model/phrase';
import { downloadBlob, fileName } from '../../../store/storage/projectFiles';
import { useApp, useAppStore } from '../../app';
import { usePicturesAtHand } from '../../session';
import { usePatternOptions } from '../../steps/finishing/usePatternOptions';
import { NUMBERS, useSay, useUnit } from '../../words';

export function WallMapButton() {
  const say = useSay();
  const unit = useUnit();
  const { pictures } = usePicturesAtHand();
  const store = useAppStore();
  const empty = useApp((app) => app.project.wall.cells.every((cell) => cell === null));
  const [making, setMaking] = useState(false);
  const { paper } = usePatternOptions();
  const make = async () => {
    const { project, announce } = store.getState();
    setMaking(true);
    try {
      const { makePatternPdf } = await import('../../../store/picture/patternPdf');
      const options = { paper, parts: ['wall map'] as const };
      const made = await makePatternPdf(project, pictures, options, { unit, numbers: NUMBERS }).answer;
      if (!made) return;
      if (!made.ok) {
        announce(made.problems[0]!.message);
        return;
      }
      const file = fileName(project.name, '-wall-map.pdf');
      downloadBlob(file, made.value.file);
      announce(phrase('Saved as {file}: print it from there.', { file }));
    } catch {
      announce(
        phrase(
          'The map could not be made: a part of the tool did not load. Check the connection, or reload the page.',
        ),
      );
    } finally {
      setMaking(false);
    }
  };
  return (
    <button
      type="button"
      className="button bare wall-map"
      title={say('Save a page to print: each block’s number and turn by its place on the wall')}
      aria-disabled={making}
      disabled={empty}
      onClick={() => (making ? undefined : void make())}
    >
      <FileDown size={15} aria-hidden /> {say('Wall map')}
    </button>
  );
}
