// The corners as numbers, for who measures them or cannot drag.
import type { Point } from '../../../geometry/point';
import { CountField } from '../../fields/CountField';
import { useSay } from '../../words';
import { CORNER_NAMES } from './cornerNames';

interface Props {
  size: { readonly width: number; readonly height: number };
  corners: readonly Point[];
  onLay: (corners: readonly Point[]) => void;
}

export function CornerFields({ size, corners, onLay }: Props) {
  const say = useSay();
  const put = (corner: number, to: Partial<Point>) => {
    onLay(corners.with(corner, { ...corners[corner]!, ...to }));
    return [];
  };
  return (
    <details className="corner-fields">
      <summary>{say('Corners in pixels')}</summary>
      {CORNER_NAMES.map((name, corner) => (
        <fieldset key={name}>
          <legend>{say(name)}</legend>
          <CountField
            label="Across"
            of={say(name)}
            value={Math.round(corners[corner]!.x)}
            least={0}
            most={size.width}
            onCommit={(x) => put(corner, { x })}
          />
          <CountField
            label="Down"
            of={say(name)}
            value={Math.round(corners[corner]!.y)}
            least={0}
            most={size.height}
            onCommit={(y) => put(corner, { y })}
          />
        </fieldset>
      ))}
    </details>
  );
}
