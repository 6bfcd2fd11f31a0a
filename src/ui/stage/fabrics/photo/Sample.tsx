// How the fabric in hand will look: its tile repeated at true scale, as strips, and as a wedge between two others.
import { useId, useMemo } from 'react';
import { patternFor } from '../../../../drawing/prints';
import { finishedBlock, rimLength, tipRadius } from '../../../../geometry/wedge';
import type { PictureId } from '../../../../model/picture/picture';
import type { PatchRead } from '../../../../store/photo/patches';
import { photoCloth } from '../../../../store/photo/photoFabric';
import { useApp } from '../../../app';
import { useSay } from '../../../words';
import { useScreen } from '../../useScreen';

const NO_PICTURE = '0'.repeat(64) as PictureId;

/** Pixels to the inch without a true size: the tile is shown at this many inches. */
const UNKNOWN_SIZE = 2;
const TRUE_SCALE = 96;

/** Markup of a pattern of the tile, and the fill that names it; the mean colour while there is none. */
export function useTileFill(read: PatchRead) {
  const id = `photo${useId().replace(/\W/g, '')}`;
  return useMemo(() => {
    const { found, hrefs } = read;
    const { width, height } = found.tile;
    const side = UNKNOWN_SIZE / Math.max(width, height);
    const tileSize = found.tileSize ?? { width: width * side, height: height * side };
    const cloth = photoCloth({ ...found, tileSize }, NO_PICTURE);
    if (!cloth.ok) return { markup: '', fill: found.mean };
    const pattern = patternFor({ id, name: '', background: false, ...cloth.value }, () => hrefs.tile);
    return { markup: pattern?.markup ?? '', fill: pattern ? `url(#${pattern.id})` : found.mean };
  }, [id, read]);
}

export function Sample({ read }: { read: PatchRead }) {
  const say = useSay();
  const wedge = useApp((app) => app.project.wedge);
  const phone = useScreen('(max-width: 720px)');
  const { markup, fill } = useTileFill(read);
  const scale = phone ? TRUE_SCALE / 2 : TRUE_SCALE;
  const known = read.found.tileSize !== null;
  const block = finishedBlock(wedge).height;
  const [rim, tip] = [rimLength(wedge), tipRadius(wedge)];
  const half = (at: number) => (rim / 2) * (at / (block / 2));
  return (
    <figure className="photo-sample">
      <svg aria-hidden style={{ height: 4 * scale }}>
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated pattern */}
        <defs dangerouslySetInnerHTML={{ __html: markup }} />
        <g transform={`scale(${scale})`}>
          <rect width={60} height={2} fill={fill} />
          {/* A strip 1 1/2 inches wide between greys, and a wedge of the quilt's own size. */}
          <rect y={2.2} width={60} height={0.25} fill="#777" />
          <rect y={2.45} width={60} height={1} fill={fill} />
          <rect y={3.45} width={60} height={0.25} fill="#bbb" />
        </g>
      </svg>
      <svg
        aria-hidden
        className="photo-wedge"
        style={{ height: (block / 2 + 0.1) * scale, width: (rim + 0.2) * scale }}
      >
        <g transform={`scale(${scale}) translate(${rim / 2 + 0.1} 0.05)`}>
          <path
            d={`M${-rim / 2} 0H${rim / 2}L${half(tip)} ${block / 2 - tip}H${-half(tip)}Z`}
            fill={fill}
            stroke="#777"
            strokeWidth={0.015}
          />
        </g>
      </svg>
      <figcaption>
        {say(
          !known
            ? 'The true size is not known yet, so the print is shown at a guess.'
            : phone
              ? 'At half true size: the fabric, a strip, a wedge.'
              : 'At true size: the fabric, a strip, a wedge.',
        )}
      </figcaption>
    </figure>
  );
}
