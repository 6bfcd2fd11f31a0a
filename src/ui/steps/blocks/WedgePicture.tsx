// One finished wedge as cloth: its bands, with the rim at the top.

import { useMemo } from 'react';
import { outlinePoints } from '../../../drawing/number';
import { wedgeBands } from '../../../geometry/bands';
import { bandOutline } from '../../../geometry/block';
import { apothem, rimLength } from '../../../geometry/wedge';
import { findSet } from '../../../model/find';
import type { Place } from '../../../model/project';
import { useApp } from '../../app';
import { clothFill } from '../../wall/cloth';
import { useFabrics } from './useFabrics';

/** `height` is in pixels. It is decorative, because words beside it say the same. */
export function WedgePicture({ wedge, height }: { wedge: Place; height: number }) {
  const project = useApp((app) => app.project);
  const fabrics = useFabrics();
  const set = findSet(project, wedge.set);
  const plan = project.wedge;
  const bands = useMemo(() => (set ? wedgeBands(set.strips, wedge.tip, plan) : []), [set, wedge.tip, plan]);
  const rim = apothem(plan);
  const wide = rimLength(plan) + 0.3;
  return (
    <svg
      className="wedge-picture"
      width={(height * wide) / (rim + 0.3)}
      height={height}
      viewBox={`${-wide / 2} ${-rim - 0.15} ${wide} ${rim + 0.3}`}
      aria-hidden
    >
      {bands.map((band) => {
        const cloth = fabrics.get(band.fabric);
        const outline = bandOutline(0, band.outer, band.inner, plan.perBlock);
        return (
          <polygon
            key={band.strip}
            points={outlinePoints(outline)}
            fill={cloth ? clothFill(cloth) : 'none'}
            className="piece"
          />
        );
      })}
    </svg>
  );
}
