// Takes bytes from outside as a picture to keep: of a kind that is read here, whole, not too large, and without all that does not draw
// it. Nothing is decoded for it, so that no picture can fill the memory.
import { type Phrase, phrase } from '../phrase';
import { failed, ok, type Problem, type Result } from '../result';
import { plainImage, typeOfBytes } from './image';
import {
  MOST_BYTES_OF_ALL,
  MOST_PICTURE_BYTES,
  MOST_PICTURES,
  MOST_PIXELS,
  MOST_SIDE,
  type PictureId,
  type Pictures,
  type StoredPicture,
} from './picture';
import { sha256 } from './sha256';

export const MEGABYTE = 1024 * 1024;

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

/** Why a quilt with these pictures has no room for another; null where it has. */
export function roomFor(picture: StoredPicture, pictures: Pictures): Problem | null {
  const refuse = (message: Phrase): Problem => ({ code: 'pictures-full', path: '', message });
  if (pictures.size >= MOST_PICTURES)
    return refuse(phrase('a quilt has at most {most} pictures', { most: MOST_PICTURES }));
  const bytes = Array.from(pictures.values()).reduce(
    (sum, one) => sum + one.bytes.length,
    picture.bytes.length,
  );
  if (bytes <= MOST_BYTES_OF_ALL) return null;
  return refuse(
    phrase('the pictures of a quilt take at most {most} MB', { most: MOST_BYTES_OF_ALL / MEGABYTE }),
  );
}
