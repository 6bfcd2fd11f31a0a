// Defines the prints and photographs of the fabrics on show once for all drawings on the page, and the filter of the way they are
// seen. Each fabric is a part of its own, so that the page has a turn between two.
import { memo, useMemo } from 'react';
import { grainsOf, patternsFor } from '../../drawing/blockPaths';
import type { Fabric } from '../../model/project';
import { SeeingFilter } from '../seeing/SeeingFilter';
import { usePicturesAtHand } from '../session';

interface Props {
  fabrics: readonly Fabric[];
  perBlock: number;
}

export const ClothDefs = memo(function ClothDefs(props: Props) {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden>
      <Cloths {...props} />
      <SeeingFilter />
    </svg>
  );
});

/** Further fabrics, for a drawing that alone shows them. */
export const MoreCloth = memo(function MoreCloth(props: Props) {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden>
      <Cloths {...props} />
    </svg>
  );
});

function Cloths({ fabrics, perBlock }: Props) {
  return fabrics.map((fabric) => <Cloth key={fabric.id} fabric={fabric} perBlock={perBlock} />);
}

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
