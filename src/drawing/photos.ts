// Photographed fabric as an SVG pattern in inches: one tile of it at true size over its mean colour, which is all that is seen where the
// picture is missing. Where a picture is to be had is the caller's: an address on the page, its bytes in a file.
import { dataUrlOf } from '../model/picture/inFile';
import type { PictureId, Pictures } from '../model/picture/picture';
import type { Photo } from '../model/project';
import { short } from './number';

/** The address of a picture (data: or blob:, without signs that markup would need escaped); null where it is not to be had. */
export type HrefOf = (picture: PictureId) => string | null;

export const NO_HREFS: HrefOf = () => null;

/** The pictures themselves as addresses, for files that are to hold all they show. */
export function dataHrefs(pictures: Pictures): HrefOf {
  const made = new Map<PictureId, string>();
  return (id) => {
    const known = made.get(id);
    if (known !== undefined) return known;
    const picture = pictures.get(id);
    if (!picture) return null;
    const href = dataUrlOf(picture);
    made.set(id, href);
    return href;
  };
}

export interface TileSize {
  readonly width: number;
  readonly height: number;
}

/** The ground under a tile. It runs past the tile on all sides: a rounded edge would show as a hairline grid. */
export function groundOf({ width, height }: TileSize, colour: string): string {
  return `<path fill="${colour}" d="M${short(-width)} ${short(-height)}h${short(3 * width)}v${short(3 * height)}h${short(-3 * width)}z"/>`;
}

/** Overlap of tiles as a part of their size, so that no ground shows between them. */
export const PHOTO_SPARE = 0.004;

/** What a tile shows: the mean colour `ground`, and the picture where there is one. */
export function photoFigures({ picture, width, height }: Photo, ground: string, hrefOf: HrefOf): string {
  const under = groundOf({ width, height }, ground);
  const href = hrefOf(picture);
  if (href === null) return under;
  const at = `x="${short(-width * PHOTO_SPARE)}" y="${short(-height * PHOTO_SPARE)}"`;
  const size = `width="${short(width * (1 + 2 * PHOTO_SPARE))}" height="${short(height * (1 + 2 * PHOTO_SPARE))}"`;
  return `${under}<image ${at} ${size} preserveAspectRatio="none" href="${href}"/>`;
}
