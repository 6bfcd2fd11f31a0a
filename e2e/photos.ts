// Photographs for the specs, rendered here: fabric with a white card and a ruler in warm light, stored lying on its side as telephones do.
import sharp from 'sharp';
import type { Fabric } from '../src/model/project';
import { pixelsOf } from '../src/photo/pixels/linear';
import type { Pixels, Plane } from '../src/photo/pixels/pixels';
import { clothPlane, evenPlane, lay } from '../tests/photo/render/clothScene';

/** A file as a person gives it to a field. */
export interface GivenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** Pixels to the inch of the scene. */
export const PER_INCH = 40;
/** Upright: a piece of fabric, a white card, and a ruler of 8 inches from one end to the other. */
export const SCENE = {
  width: 600,
  height: 450,
  cloth: { x: 30, y: 30, width: 360, height: 330 },
  card: { x: 430, y: 50, width: 130, height: 130 },
  ruler: { x: 60, y: 400, width: 320, height: 20 },
} as const;
/** Linear light of a lamp as a camera set to daylight sees it, dimmed. */
const WARM = [0.86, 0.66, 0.42] as const;

/** Teal and cream, four checks to the inch. */
export const CHECKS: Fabric = {
  id: 'checks',
  name: 'Checks',
  colour: '#2f6f73',
  cloth: { kind: 'print', print: { motif: 'gingham', inks: ['#e8dcc0'], repeat: 1, angle: 0, seed: 3 } },
  background: false,
};

function scene(fabric: Fabric, light: readonly [number, number, number]): Plane {
  const { width, height, cloth, card, ruler } = SCENE;
  const plane = evenPlane(width, height, [0.1, 0.1, 0.1]);
  lay(plane, clothPlane(fabric, cloth.width, cloth.height, PER_INCH), cloth.x, cloth.y);
  // L* 95 sends back 87.6 % of the light (CIE 1976).
  lay(plane, evenPlane(card.width, card.height, [0.876, 0.876, 0.876]), card.x, card.y);
  lay(plane, evenPlane(ruler.width, ruler.height, [0.7, 0.55, 0.2]), ruler.x, ruler.y);
  for (let at = 0; at < plane.data.length; at += 1) plane.data[at]! *= light[at % 3]!;
  return plane;
}

let checks: Promise<Buffer> | null = null;

/** The file: a JPEG turned a quarter, with the note that says so (EXIF orientation 6). Made once. */
export function photograph(): Promise<Buffer> {
  checks ??= photographOf(CHECKS, WARM);
  return checks;
}

async function photographOf(fabric: Fabric, light: readonly [number, number, number]): Promise<Buffer> {
  const { width, height, data } = pixelsOf(scene(fabric, light));
  const raw = { width, height, channels: 4 as const };
  const turned = await sharp(Buffer.from(data.buffer), { raw }).rotate(270).removeAlpha().png().toBuffer();
  return sharp(turned).jpeg({ quality: 92 }).withMetadata({ orientation: 6 }).toBuffer();
}

/** A small photograph of plain fabric, for what does not depend on what is seen: quick to read. */
export function plainPhotograph(): Promise<Buffer> {
  const create = { width: 120, height: 90, channels: 3 as const, background: '#2f6f73' };
  return sharp({ create }).jpeg().toBuffer();
}

/** A rendered picture as a file of a camera. */
export function jpegOf({ width, height, data }: Pixels): Promise<Buffer> {
  return sharp(Buffer.from(data), { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .jpeg({ quality: 90 })
    .toBuffer();
}

/** The beginning of a HEIC photograph, which no engine here reads. */
export function heicOf(): Buffer {
  return Buffer.concat([
    Buffer.from([0, 0, 0, 20]), Buffer.from('ftypheic'), Buffer.from([0, 0, 0, 0]), Buffer.from('heic'),
    Buffer.from([0, 0, 0, 20]), Buffer.from('ispe'), Buffer.from([0, 0, 0, 0, 0, 0, 4, 0, 0, 0, 4, 0]),
  ]); // biome-ignore format: boxes
}
