// A strip set as cloth, to scale: its first strip at the bottom. Other things (arrows, wedges) can be drawn over it. It is a
// picture only: what it shows stands in words beside it.
import { memo, type ReactNode } from 'react';
import { setHeight, stripPlaces } from '../../../geometry/stripSet';
import type { Fabric, FabricId, StripSet } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { clothFill } from '../../wall/cloth';

interface Props {
  set: Pick<StripSet, 'strips' | 'length'>;
  seam: Inches;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  /** Length the full width stands for, so that several sets share one scale. */
  across: Inches;
  children?: ReactNode;
}

/** Height shown for a set without strips, so that its place on the page stays. */
const BARE_HEIGHT: Inches = 2;

export const SetCloth = memo(function SetCloth({ set, seam, fabrics, across, children }: Props) {
  const height = setHeight(set.strips, seam);
  const shown = Math.max(height, BARE_HEIGHT);
  return (
    <svg className="set-cloth" viewBox={`0 0 ${across} ${shown}`} aria-hidden>
      {stripPlaces(set.strips, seam).map(({ strip, top, bottom }) => {
        const fabric = fabrics.get(set.strips[strip]!.fabric);
        return (
          // The print starts at the strip's own edge, as if each strip were cut from a place of its own.
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
