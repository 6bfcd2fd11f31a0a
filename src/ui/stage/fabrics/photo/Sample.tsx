// How the fabric in hand will look: its tile repeated at true scale, as strips, and as a wedge between two others.
import { useId, useMemo } from 'react';
import { patternFor } from '../../../../drawing/prints';
import { finishedBlock, rimLength } from '../../../../geometry/wedge';
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
  const phone = useScreen('(max-width: 720px)');
  const { markup, fill } = useTileFill(read);
  const scale = phone ? TRUE_SCALE / 2 : TRUE_SCALE;
  return (
    <figure className="photo-sample">
      <svg aria-hidden style={{ height: 3.7 * scale }}>
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own generated pattern */}
        <defs dangerouslySetInnerHTML={{ __html: markup }} />
        <g transform={`scale(${scale})`}>
          <rect width={60} height={2} fill={fill} />
          {/* A strip an inch wide between greys. */}
          <rect y={2.2} width={60} height={0.25} fill="#777" />
          <rect y={2.45} width={60} height={1} fill={fill} />
          <rect y={3.45} width={60} height={0.25} fill="#bbb" />
        </g>
      </svg>
      <Wedges fill={fill} />
      <figcaption>
        {say(
          read.found.tileSize === null
            ? 'The true size is not known yet, so the print is shown at a guess.'
            : phone
              ? 'At half true size: the fabric and a strip. Beside it, in wedges, smaller.'
              : 'At true size: the fabric and a strip. Beside it, in wedges, smaller.',
        )}
      </figcaption>
    </figure>
  );
}

/** Part of a block of the quilt's own wedges: the fabric in every second one. */
function Wedges({ fill }: { fill: string }) {
  const wedge = useApp((app) => app.project.wedge);
  const reach = finishedBlock(wedge).height / 2;
  const [rim, turn] = [rimLength(wedge) / 2, 360 / wedge.perBlock];
  const across = 2.4 * rim + 2 * rim;
  return (
    <svg aria-hidden className="photo-wedge" viewBox={`${-across / 2} ${-reach} ${across} ${reach}`}>
      {[-2, -1, 0, 1, 2].map((at) => (
        <path
          key={at}
          d={`M0 0L${-rim} ${-reach}H${rim}Z`}
          transform={`rotate(${at * turn})`}
          fill={at % 2 === 0 ? fill : GREYS[at === 1 ? 0 : 1]}
          stroke="#555"
          strokeWidth={reach / 200}
        />
      ))}
    </svg>
  );
}

const GREYS = ['#777', '#bbb'] as const;
