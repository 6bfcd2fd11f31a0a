// Draws SVG text as a PNG without a browser.
import { Resvg } from '@resvg/resvg-js';
import type { Pictures } from '../model/picture/picture';

const PIXELS_PER_INCH = 48;
const MOST_PIXELS_LONG = 4000;
/** The most pixels of a picture; more would take gigabytes of memory. */
const MOST_PIXELS = 120_000_000;

/** The width in pixels unless given: 48 to the inch, at most 4,000 on the longer side. */
export function usualWidth(top: { readonly width: number; readonly height: number }): number {
  const long = Math.max(top.width, top.height);
  const perInch = Math.min(PIXELS_PER_INCH, MOST_PIXELS_LONG / long);
  return Math.max(1, Math.round(top.width * perInch));
}

/** Whether a picture of this width, in pixels, is too large to draw. */
export function tooLarge(width: number, top: { readonly width: number; readonly height: number }): boolean {
  return (width * width * top.height) / top.width > MOST_PIXELS;
}

/** The pictures as resvg can draw them: WebP, which it does not know, as PNG. */
export async function drawable(pictures: Pictures): Promise<Pictures> {
  if (![...pictures.values()].some(({ type }) => type === 'image/webp')) return pictures;
  const { default: sharp } = await import('sharp');
  const drawn = Array.from(pictures, async ([id, picture]) => {
    if (picture.type !== 'image/webp') return [id, picture] as const;
    // One that cannot be decoded is left as it is, and its place shows the mean colour.
    const png = await sharp(picture.bytes)
      .png()
      .toBuffer()
      .catch(() => null);
    return [
      id,
      png ? { ...picture, type: 'image/png' as const, bytes: new Uint8Array(png) } : picture,
    ] as const;
  });
  return new Map(await Promise.all(drawn));
}

/** PNG bytes of SVG text, `width` pixels wide. Loads no fonts, because a wall without a caption has no text. */
export function pngOf(svg: string, width: number): Uint8Array {
  const drawn = new Resvg(svg, { fitTo: { mode: 'width', value: width }, font: { loadSystemFonts: false } });
  return drawn.render().asPng();
}
