// A picture file as pixels, upright as its orientation says. What is no picture, too large or broken gets a sentence.
import { readFile, stat } from 'node:fs/promises';
import sharp from 'sharp';
import { phrase } from '../model/phrase';
import { failed, ok, type Result } from '../model/result';
import type { Pixels } from '../photo/pixels/pixels';

/** The most bytes and pixels of a picture; more would take gigabytes of memory. */
const MOST_BYTES = 100_000_000;
const MOST_PIXELS = 100_000_000;
const FORMATS: readonly (string | undefined)[] = ['jpeg', 'png', 'webp'];

/** Decodes a JPEG, PNG or WebP file; transparent parts lie on white. */
export async function decodePicture(path: string): Promise<Result<Pixels>> {
  try {
    const { size } = await stat(path);
    if (size > MOST_BYTES)
      return failed(
        'picture-large',
        '',
        phrase('The file is larger than {most} MB. Save the picture smaller.', { most: MOST_BYTES / 1e6 }),
      );
    const picture = sharp(await readFile(path), { limitInputPixels: MOST_PIXELS, failOn: 'error' });
    const { format, width, height } = await picture.metadata();
    if (!FORMATS.includes(format))
      return failed(
        'picture-format',
        '',
        phrase('This is no JPEG, PNG or WebP picture. Save it as one of these.'),
      );
    if (width * height > MOST_PIXELS)
      return failed(
        'picture-pixels',
        '',
        phrase('The picture has more than {most} million pixels. Save it smaller.', {
          most: MOST_PIXELS / 1e6,
        }),
      );
    const upright = picture.rotate().flatten({ background: '#ffffff' }).toColourspace('srgb').ensureAlpha();
    const { data, info } = await upright.raw().toBuffer({ resolveWithObject: true });
    return ok({
      width: info.width,
      height: info.height,
      data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.length),
    });
  } catch (error) {
    return failed(
      'picture-unreadable',
      '',
      phrase('The picture cannot be read: {reason}.', { reason: reasonOf(error) }),
    );
  }
}

function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'there is no such file';
  if (code === 'EISDIR') return 'it is a folder';
  if (error instanceof Error && /pixel limit/.test(error.message)) return 'it has too many pixels';
  return 'it is no picture, or it is damaged';
}
