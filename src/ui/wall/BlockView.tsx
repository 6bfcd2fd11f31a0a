// One block as cloth: merged paths, seams when near, and its picture where it has one. Coordinates are from its own middle.
import { memo, useMemo } from 'react';
import { mergedPaths, pictureOver, seamPath } from '../../drawing/blockPaths';
import type { Piece } from '../../drawing/drawing';
import type { Box } from '../../geometry/point';
import type { PictureId } from '../../model/picture/picture';
import type { Fabric, FabricId } from '../../model/project';
import { usePicturesAtHand } from '../session';

interface Props {
  pieces: readonly Piece[];
  fabrics: readonly Fabric[];
  /** The fabric that is lit; pieces of other fabrics are dimmed. */
  lit: FabricId | null;
  /** Whether the view is near enough to see seams and directions of prints. */
  near: boolean;
}

export const BlockView = memo(function BlockView({ pieces, fabrics, lit, near }: Props) {
  // From afar all strips of a fabric share one path, because a large wall would have tens of thousands.
  const shown = useMemo(
    () => (near ? pieces : pieces.map((piece) => ({ ...piece, grain: 0 }))),
    [pieces, near],
  );
  const paths = useMemo(() => mergedPaths(shown, fabrics), [shown, fabrics]);
  const over = useMemo(() => pictureOver(pieces), [pieces]);
  const seams = useMemo(() => (near ? seamPath(pieces) : ''), [pieces, near]);
  return (
    <>
      {paths.map(({ fabric, fill, d }) =>
        fill === '' ? (
          <path key="bare" d={d} className="bare" />
        ) : (
          <path
            key={`${fabric} ${fill}`}
            d={d}
            fill={fill}
            opacity={lit !== null && lit !== fabric ? 0.13 : 1}
          />
        ),
      )}
      {near ? <path d={seams} className="seams" /> : null}
      {over ? <BlockPicture {...over} dimmed={lit !== null} /> : null}
    </>
  );
});

/** The picture over a block; while one fabric is lit, what was read of the block shows through it. */
function BlockPicture({ picture, box, dimmed }: { picture: PictureId; box: Box; dimmed: boolean }) {
  const href = usePicturesAtHand().hrefOf(picture);
  if (href === null) return null;
  return (
    <image {...box} href={href} preserveAspectRatio="none" opacity={dimmed ? 0.13 : 1} pointerEvents="none" />
  );
}
