// A square of cloth with its print at a stated scale.
import type { Fabric } from '../../model/project';
import { clothFill } from '../wall/cloth';

/** `inches`: side of the cloth that the square shows. It is decorative, because the fabric's name is beside it. */
export function Swatch({
  fabric,
  size = 28,
  inches = 2.4,
}: {
  fabric: Fabric;
  size?: number;
  inches?: number;
}) {
  return (
    <svg className="swatch" width={size} height={size} viewBox={`0 0 ${inches} ${inches}`} aria-hidden>
      <rect width={inches} height={inches} fill={clothFill(fabric)} />
    </svg>
  );
}
