// From what was read of a photograph to a fabric of the quilt. What was read is decided in photo/fabric.
import { phrase } from '../../model/phrase';
import type { PictureId } from '../../model/picture/picture';
import type { Fabric, Photo } from '../../model/project';
import { failed, ok, type Result } from '../../model/result';
import type { FabricFound } from './photoJobs';

/** Sides of a tile that the document holds, inches, and the farthest figures can repeat. */
const LEAST_SIDE = 0.125;
const MOST_SIDE = 60;

/** The colour and cloth of a fabric as read; a problem where its true size is not known, or is not one that cloth has. */
export function photoCloth(
  { mean, colours, spread, scale, tileSize }: FabricFound,
  picture: PictureId,
): Result<Pick<Fabric, 'colour' | 'cloth'>> {
  if (!tileSize)
    return failed('no-size', 'size', phrase('Give the true size first: measure on a ruler in the photograph, or type the width of the frame.')); // biome-ignore format: one sentence
  const { width, height } = tileSize;
  if (Math.min(width, height) < LEAST_SIDE || Math.max(width, height) > MOST_SIDE)
    return failed('size-odd', 'size', phrase('At this size the print would repeat every {width} × {height}; it must be from {least} to {most}. Check the true size.', { width: { inches: width }, height: { inches: height }, least: { inches: LEAST_SIDE }, most: { inches: MOST_SIDE } })); // biome-ignore format: one sentence
  const photo: Photo = {
    picture,
    width,
    height,
    angle: 0,
    colours: colours.map(({ hex, share }) => ({ hex, share })),
    spread: Math.min(50, spread),
    scale: scale !== null && scale >= 0.01 && scale <= MOST_SIDE ? scale : null,
  };
  return ok({ colour: mean, cloth: { kind: 'photo', photo } });
}
