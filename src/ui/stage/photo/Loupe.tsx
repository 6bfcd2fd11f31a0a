// The pixels under a corner, magnified, on the side of the photograph where no finger is.
import type { Point } from '../../../geometry/point';
import { pointsOf } from './cornerNames';

/** The share of the longer side that the loupe shows, and the fewest pixels. */
const SHARE = 0.03;
const LEAST = 24;

interface Props {
  href: string;
  size: { readonly width: number; readonly height: number };
  at: Point;
  corners: readonly Point[];
}

export function Loupe({ href, size: { width, height }, at, corners }: Props) {
  const side = Math.max(LEAST, SHARE * Math.max(width, height));
  const [left, top] = [at.x - side / 2, at.y - side / 2];
  const away = `${at.y < height / 2 ? 'foot' : 'head'} ${at.x < width / 2 ? 'right' : 'left'}`;
  return (
    <svg className={`loupe ${away}`} viewBox={`${left} ${top} ${side} ${side}`} aria-hidden>
      <image href={href} width={width} height={height} preserveAspectRatio="none" />
      <polygon points={pointsOf(corners)} className="edge-dark" />
      <polygon points={pointsOf(corners)} className="edge-light" />
      <path
        className="loupe-cross"
        d={`M${at.x - side / 8} ${at.y}h${side / 4}M${at.x} ${at.y - side / 8}v${side / 4}`}
      />
    </svg>
  );
}
