// Reads an image file as a photograph to look at: decoded by the browser, the right way up, and no larger than a screen shows. It stays in
// the page.
import { phrase } from '../../model/phrase';
import { plainImage, typeOfBytes } from '../../model/picture/image';
import { failed, ok, type Result } from '../../model/result';
import type { WallPhoto } from '../../store/app';

const MEGABYTE = 1024 * 1024;
const MOST_BYTES = 60 * MEGABYTE;
/** More pixels than any camera in a hand takes; a file that claims more is not decoded. */
const MOST_PIXELS = 120e6;
/** Pixels of the longer side that is looked at. */
const SHOWN = 2400;

/** The photograph in a file, or why it cannot be shown. */
export async function readPhoto(file: File): Promise<Result<WallPhoto>> {
  const { name } = file;
  const refuse = (code: string, say: string, values = {}) =>
    failed(code, '', phrase(say, { name, ...values }));
  if (file.size > MOST_BYTES)
    return refuse('photo-too-large', '{name} is larger than {most} MB. Choose a smaller picture.', {
      most: MOST_BYTES / MEGABYTE,
    });
  const bytes = new Uint8Array(await file.arrayBuffer());
  const known = plainImage(bytes);
  if (!known && typeOfBytes(bytes))
    return refuse('photo-damaged', '{name} is damaged. Choose another picture.');
  if (known && known.width * known.height > MOST_PIXELS)
    return refuse(
      'photo-too-many-pixels',
      '{name} has more than {most} million pixels. Choose a smaller one.',
      {
        most: MOST_PIXELS / 1e6,
      },
    );
  try {
    return ok({ name, ...(await asShown(file)) });
  } catch {
    return refuse(
      'no-photo',
      'This browser cannot read {name} as a picture. Choose a JPEG, PNG or WebP file.',
    );
  }
}

async function asShown(file: File): Promise<Omit<WallPhoto, 'name'>> {
  const whole = await createImageBitmap(file);
  try {
    const scale = Math.min(1, SHOWN / Math.max(whole.width, whole.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(whole.width * scale));
    canvas.height = Math.max(1, Math.round(whole.height * scale));
    canvas.getContext('2d')!.drawImage(whole, 0, 0, canvas.width, canvas.height);
    const image = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/webp', 0.92));
    if (!image) throw new Error('asShown: no picture came of it');
    return { image, width: canvas.width, height: canvas.height };
  } finally {
    whole.close();
  }
}
