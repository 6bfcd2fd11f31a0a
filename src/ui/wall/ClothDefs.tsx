// Defines the prints and photographs of all fabrics once for all drawings on the page, and the filter of the way they are
// seen. Each fabric is a part of its own, so that the page has a turn between two.
import { memo, useMemo } from 'react';
import { grainsOf, patternsFor } from '../../drawing/blockPaths';
import type { Fabric } from '../../model/project';
import { SeeingFilter } from '../seeing/SeeingFilter';
import { usePicturesAtHand } from '../session';

export const ClothDefs = memo(function ClothDefs(props: { fabrics: readonly Fabric[]; perBlock: number }) {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden>
      {props.fabrics.map((fabric) => (
        <Cloth key={fabric.id} fabric={fabric} perBlock={props.perBlock} />
      ))}
      <SeeingFilter />
    </svg>
  );
});

const Cloth = memo(function Cloth({ fabric, perBlock }: { fabric: Fabric; perBlock: number }) {
  const { hrefOf } = usePicturesAtHand();
  const markup = useMemo(
    () =>
      patternsFor([fabric], grainsOf(perBlock), hrefOf)
        .map((pattern) => pattern.markup)
        .join(''),
    [fabric, perBlock, hrefOf],
  );
  // biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated patterns; colours are checked by the schema
  return markup === '' ? null : <defs dangerouslySetInnerHTML={{ __html: markup }} />;
});
