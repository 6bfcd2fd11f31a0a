// Photographs decoded to pixels, and pixels encoded to pictures, by the browser's own means: in a worker, or in the page where a worker
// has no canvas. An encoded picture holds pixels alone: nothing of camera, place or time.
import { phrase } from '../../model/phrase';
import { checkPhotograph, MOST_PHOTOGRAPH_PIXELS, type Photograph } from '../../model/picture/photograph';
import type { StoredPicture } from '../../model/picture/picture';
import { failed, ok, type Result } from '../../model/result';
import type { Pixels } from '../../photo/pixels/pixels';

/** Photographs are worked on with so many pixels at most: 64 MB of memory. */
const WORKED_ON = 16_000_000;
/** Quality of encoded pictures: cloth looks the same, and a tile takes about 60 to 150 KB. */
const QUALITY = 0.92;

type Canvas = OffscreenCanvas | HTMLCanvasElement;

/** Whether this worker or page can decode and encode; asked on the page before a worker is started. */
export function hasCanvas(): boolean {
  return typeof OffscreenCanvas !== 'undefined' && new OffscreenCanvas(1, 1).getContext('2d') !== null;
}

/** The pixels of a photograph, upright as it was taken, smaller where it has very many. Nothing is decoded before it is checked. */
export async function decodePhoto(bytes: Uint8Array<ArrayBuffer>): Promise<Result<Pixels>> {
  const checked = checkPhotograph(bytes);
  if (!checked.ok) return checked;
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes], { type: checked.value.type }), { imageOrientation: 'from-image' }); // biome-ignore format: one call
  } catch {
    return undecoded(checked.value);
  }
  try {
    // A header that lied.
    if (bitmap.width * bitmap.height > MOST_PHOTOGRAPH_PIXELS) return undecoded(checked.value);
    return ok(pixelsFrom(bitmap));
  } finally {
    bitmap.close();
  }
}

function undecoded({ type }: Photograph) {
  if (type === 'image/heic')
    return failed('photo-heic', '', phrase('This is a HEIC photograph, which this browser cannot read. Save or share it as a JPEG (phones offer “most compatible” in the settings of the camera), then choose that.')); // biome-ignore format: one sentence
  return failed('photo-damaged', '', phrase('This photograph cannot be opened: it is damaged. Choose another, or save it again as a JPEG.')); // biome-ignore format: one sentence
}

function pixelsFrom(bitmap: ImageBitmap): Pixels {
  const scale = Math.min(1, Math.sqrt(WORKED_ON / (bitmap.width * bitmap.height)));
  const width = Math.max(1, Math.floor(bitmap.width * scale));
  const height = Math.max(1, Math.floor(bitmap.height * scale));
  const { context } = canvasOf(width, height);
  // What is transparent lies on white.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, width, height);
  return { width, height, data: context.getImageData(0, 0, width, height).data };
}

/** A JPEG of these pixels, which every browser and program reads. Throws where the browser encodes none. */
export async function encodedPicture({ width, height, data }: Pixels): Promise<StoredPicture> {
  const { canvas, context } = canvasOf(width, height);
  context.putImageData(new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0);
  const blob = await blobOf(canvas);
  return { type: 'image/jpeg', width, height, bytes: new Uint8Array(await blob.arrayBuffer()) };
}

function canvasOf(width: number, height: number) {
  const canvas: Canvas = hasCanvas()
    ? new OffscreenCanvas(width, height)
    : Object.assign(document.createElement('canvas'), { width, height });
  const context = canvas.getContext('2d', { alpha: false, willReadFrequently: true }) as
    | OffscreenCanvasRenderingContext2D
    | CanvasRenderingContext2D
    | null;
  if (!context) throw new Error('no canvas');
  return { canvas, context };
}

function blobOf(canvas: Canvas): Promise<Blob> {
  const options = { type: 'image/jpeg', quality: QUALITY };
  if ('convertToBlob' in canvas) return canvas.convertToBlob(options);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('no JPEG'))),
      options.type,
      options.quality,
    );
  });
}
