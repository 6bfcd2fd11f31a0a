// Defines the prints and photographs of all fabrics once for all drawings on the page, and the filter of the way they are seen.
import { memo, useMemo } from 'react';
import { grainsOf, patternsFor } from '../../drawing/blockPaths';
import type { Fabric } from '../../model/project';
import { SeeingFilter } from '../seeing/SeeingFilter';
import { usePicturesAtHand } from '../session';

export const ClothDefs = memo(function ClothDefs(props: { fabrics: readonly Fabric[]; perBlock: number }) {
  const { fabrics, perBlock } = props;
  const { hrefOf } = usePicturesAtHand();
  const markup = useMemo(
    () =>
      patternsFor(fabrics, grainsOf(perBlock), hrefOf)
        .map((pattern) => pattern.markup)
        .join(''),
    [fabrics, perBlock, hrefOf],
  );
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated patterns; colours are checked by the schema */}
      <defs dangerouslySetInnerHTML={{ __html: markup }} />
      <SeeingFilter />
    </svg>
  );
});
