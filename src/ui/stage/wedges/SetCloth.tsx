// A strip set as cloth, to scale and whole, with its first strip at the bottom. Its children (wedges) are drawn over it. It is
// decorative, because words beside it say the same.
import { memo, type ReactNode } from 'react';
import { setHeight, stripPlaces } from '../../../geometry/stripSet';
import type { Fabric, FabricId, StripSet } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { clothFill } from '../../wall/cloth';
import '../../steps/sets/sets.css';

interface Props {
  set: Pick<StripSet, 'strips' | 'length'>;
  seam: Inches;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  /** Length that the full width of the picture stands for, so that several sets share one scale. */
  fullLength: Inches;
  children?: ReactNode;
}

/** Height of the picture of a set without strips. */
const BARE_HEIGHT: Inches = 2;

export const SetCloth = memo(function SetCloth({ set, seam, fabrics, fullLength, children }: Props) {
  const height = setHeight(set.strips, seam);
  const shown = Math.max(height, BARE_HEIGHT);
  return (
    <svg className="set-cloth" viewBox={`0 0 ${fullLength} ${shown}`} aria-hidden>
      {stripPlaces(set.strips, seam).map(({ strip, top, bottom }) => {
        const fabric = fabrics.get(set.strips[strip]!.fabric);
        return (
          // The print starts at the strip's own edge.
          <g key={strip} transform={`translate(0 ${top})`}>
            <rect width={set.length} height={bottom - top} fill={fabric ? clothFill(fabric) : 'none'} />
            {strip > 0 ? <path className="set-seam" d={`M0 ${bottom - top}h${set.length}`} /> : null}
          </g>
        );
      })}
      <rect className="set-edge" width={set.length} height={shown} />
      {children}
    </svg>
  );
});
