// The true size: two points on a ruler in the photograph with the distance between them, or the width of the frame typed.
import { useState } from 'react';
import type { Problem } from '../../../../model/result';
import { perInchOfWidth } from '../../../../photo/fabric/trueSize';
import type { Patch, PhotoAtWork } from '../../../../store/photo/patches';
import { Complaint } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';
import { useSitting, useSittingState } from './sitting';
import { rulerOf, rulerProblems, withRuler } from './trueSize';

export function SizePart({ photo, patch }: { photo: PhotoAtWork; patch: Patch }) {
  const say = useSay();
  const sitting = useSitting();
  const others = useSittingState(({ photos }) => photos.length > 1);
  const [shared, setShared] = useState(false);
  const of = photo.file.key;
  const ruler = rulerOf(photo);
  const width = (): readonly Problem[] => rulerProblems(ruler);
  return (
    <div className="stack">
      <p className="quiet">
        {say(
          'Drag the two points to marks on a ruler in the photograph and type how far apart they are. Without a ruler, type how wide the frame is.',
        )}
      </p>
      <div className="photo-numbers">
        <LengthField
          label="Between the points"
          value={ruler.apart}
          onCommit={(apart) => {
            const next = { ...ruler, apart };
            const problems = rulerProblems(next);
            if (problems.length === 0) sitting.edit(of, () => withRuler(next));
            return problems;
          }}
        />
        <LengthField
          label="Width of the frame"
          value={photo.perInch === null ? null : patch.frame.width / photo.perInch}
          onCommit={(inches) => {
            const perInch = perInchOfWidth(patch.frame.width, inches);
            if (!perInch.ok) return perInch.problems;
            sitting.edit(of, () => ({ perInch: perInch.value, ruler: null }));
            return [];
          }}
        />
      </div>
      <Complaint problems={width()} />
      {photo.perInch === null ? null : (
        <p role="status">
          <Fractions
            text={say('The frame is {width} × {height}.', {
              width: { inches: patch.frame.width / photo.perInch },
              height: { inches: patch.frame.height / photo.perInch },
            })}
          />
        </p>
      )}
      {others && photo.perInch !== null ? (
        <div className="row">
          <button
            type="button"
            className="button"
            onClick={() => {
              for (const { file } of sitting.state.getState().photos)
                sitting.edit(file.key, () => ({ perInch: photo.perInch }));
              setShared(true);
            }}
          >
            {say('Same size for all photographs')}
          </button>
          <span role="status" className="quiet">
            {shared ? say('All photographs have this size.') : null}
          </span>
        </div>
      ) : null}
    </div>
  );
}
