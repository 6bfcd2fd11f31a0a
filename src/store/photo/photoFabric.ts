// From what was read of a photograph to a fabric of the quilt. What was read is decided in photo/fabric.
import { phrase } from '../../model/phrase';
import type { PictureId } from '../../model/picture/picture';
import { type Fabric, LEAST_SCALE, MOST_SPREAD, PHOTO_TILE, type Photo } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import type { FabricRead } from './photoJobs';

/** The colour and cloth of a fabric as read; a problem where its true size is not known, or is not one that cloth has. */
export function photoCloth(
  { mean, colours, spread, scale, tileSize }: FabricRead,
  picture: PictureId,
): Result<Pick<Fabric, 'colour' | 'cloth'>> {
  if (!tileSize)
    return failed('no-size', 'size', phrase('Give the true size first: measure on a ruler in the photograph, or type the width of the frame.')); // biome-ignore format: one sentence
  const { width, height } = tileSize;
  const { least, most } = PHOTO_TILE;
  if (Math.min(width, height) < least || Math.max(width, height) > most)
    return failed('size-odd', 'size', phrase('At this size the print would repeat every {width} × {height}; it must be from {least} to {most}. Check the true size.', { width: { inches: width }, height: { inches: height }, least: { inches: least }, most: { inches: most } })); // biome-ignore format: one sentence
  const photo: Photo = {
    picture,
    width,
    height,
    angle: 0,
    colours: colours.map(({ hex, share }) => ({ hex, share })),
    spread: Math.min(MOST_SPREAD, spread),
    scale: scale !== null && scale >= LEAST_SCALE && scale <= most ? scale : null,
  };
  return ok({ colour: mean, cloth: { kind: 'photo', photo } });
}
