// Takes bytes from outside as a picture to keep: of a kind that is read here, whole, not too large, and without all that does not draw
// it. Nothing is decoded for it, so that no picture can fill the memory.
import { phrase } from '../phrase';
import { failed, ok, type Result } from '../result';
import { plainImage, typeOfBytes } from './image';
import { MOST_PICTURE_BYTES, MOST_PIXELS, MOST_SIDE, type PictureId, type StoredPicture } from './picture';
import { sha256 } from './sha256';

const MEGABYTE = 1024 * 1024;

export interface TakenPicture {
  readonly id: PictureId;
  readonly picture: StoredPicture;
}

/** The picture and its id, or why it is not taken. */
export function takePicture(bytes: Uint8Array): Result<TakenPicture> {
  if (bytes.length > MOST_PICTURE_BYTES) {
    const say = 'it takes {size} MB; a picture is at most {most} MB';
    const most = MOST_PICTURE_BYTES / MEGABYTE;
    return failed('picture-too-large', '', phrase(say, { size: Math.ceil(bytes.length / MEGABYTE), most }));
  }
  if (!typeOfBytes(bytes)) return failed('no-picture', '', phrase('it is no JPEG, PNG or WebP picture'));
  const picture = plainImage(bytes);
  if (!picture) return failed('picture-damaged', '', phrase('it breaks off or is damaged'));
  const { width, height } = picture;
  if (Math.max(width, height) > MOST_SIDE || width * height > MOST_PIXELS) {
    const say =
      'it has {width} × {height} pixels; a picture has at most {side} on a side and {most} million in all';
    const most = MOST_PIXELS / 1e6;
    return failed('picture-too-many-pixels', '', phrase(say, { width, height, side: MOST_SIDE, most }));
  }
  return ok({ id: sha256(picture.bytes), picture });
}
