// Pictures for tests, made by sharp (libvips) so that none of our own code writes what our own code reads.
import sharp from 'sharp';
import type { PictureId, StoredPicture } from '../../../src/model/picture/picture';
import { takePicture } from '../../../src/model/picture/takePicture';
import type { Fabric } from '../../../src/model/project';

export const KINDS = ['jpeg', 'png', 'webp'] as const;

interface Wish {
  readonly width?: number;
  readonly height?: number;
  readonly kind?: (typeof KINDS)[number];
  /** Camera data, as a telephone writes them. */
  readonly camera?: boolean;
  readonly lossless?: boolean;
  readonly progressive?: boolean;
  /** The colour of a pixel; a pattern of every colour unless given. */
  readonly at?: (x: number, y: number) => readonly [number, number, number];
}

/** The file of a picture. */
export async function imageFile(wish: Wish = {}): Promise<Uint8Array> {
  const {
    width = 24,
    height = 16,
    kind = 'png',
    camera = false,
    lossless = false,
    progressive = false,
  } = wish;
  const at = wish.at ?? ((x, y) => [(x * 37) % 256, (y * 59) % 256, (x * y) % 256] as const);
  const data = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) data.set(at(x, y), (y * width + x) * 3);
  let image = sharp(data, { raw: { width, height, channels: 3 } });
  if (camera) {
    const IFD0 = { Make: 'A telephone', Model: 'Known by its number', ImageDescription: 'at home' };
    image = image.withExif({ IFD0, IFD3: { GPSLatitude: '51/1 30/1 0/1' } }).withIccProfile('srgb');
  }
  if (kind === 'jpeg') image = image.jpeg({ quality: 90, progressive });
  else image = kind === 'png' ? image.png() : image.webp({ lossless });
  return new Uint8Array(await image.toBuffer());
}

/** A picture as it is kept, with its id. */
export async function keptPicture(wish: Wish = {}): Promise<[PictureId, StoredPicture]> {
  const taken = takePicture(await imageFile(wish));
  if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  return [taken.value.id, taken.value.picture];
}

/** A photographed fabric, its tile one inch wide and high unless given. */
export function photographed(
  picture: PictureId,
  to: Partial<Extract<Fabric['cloth'], { kind: 'photo' }>['photo']> = {},
): Fabric {
  const colours = [{ hex: '#a05030', share: 0.75 }, { hex: '#e0d0b0', share: 0.25 }]; // biome-ignore format: short
  const photo = { picture, width: 1, height: 1, angle: 0, colours, spread: 12, scale: 0.5, ...to };
  return {
    id: 'photo-1',
    name: 'Rust',
    colour: '#b87a5c',
    cloth: { kind: 'photo', photo },
    background: false,
  };
}
