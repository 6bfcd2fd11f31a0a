// A sample of a fabric that need not be in the project yet, with its print at a stated scale.
import { useId, useMemo } from 'react';
import { patternFor } from '../../../drawing/prints';
import type { Fabric } from '../../../model/project';
import { usePicturesAtHand } from '../../session';

export type NewFabric = Omit<Fabric, 'id'>;

interface Props {
  fabric: NewFabric;
  /** Screen pixels for one inch of cloth. */
  pixelsPerInch: number;
  className?: string;
}

export function ClothSample({ fabric, pixelsPerInch, className }: Props) {
  const id = `sample-${useId().replace(/\W/g, '')}`;
  const { colour, cloth } = fabric;
  const { hrefOf } = usePicturesAtHand();
  const pattern = useMemo(
    () => patternFor({ id, name: '', colour, cloth, background: false }, hrefOf),
    [id, colour, cloth, hrefOf],
  );
  return (
    <svg className={className} aria-hidden>
      {pattern ? (
        /* biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated pattern; colours are checked before */
        <defs dangerouslySetInnerHTML={{ __html: pattern.markup }} />
      ) : null}
      <g transform={`scale(${pixelsPerInch})`}>
        <rect width="80" height="40" fill={pattern ? `url(#${pattern.id})` : colour} />
      </g>
    </svg>
  );
}
