// sharp in place of the browser's canvas, for tests of what reads photographs.
import sharp from 'sharp';
import { checkPhotograph } from '../../../src/model/picture/photograph';
import { ok } from '../../../src/model/result';
import type { Pixels } from '../../../src/photo/pixels/pixels';
import type { Codec } from '../../../src/store/photo/photoMeans';

export const SHARP: Codec = {
  decode: async (bytes) => {
    const checked = checkPhotograph(bytes);
    if (!checked.ok) return checked;
    const { data, info } = await sharp(bytes).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    return ok({ width: info.width, height: info.height, data: new Uint8ClampedArray(data) });
  },
  encode: async ({ width, height, data }: Pixels) => {
    const raw = { width, height, channels: 4 as const };
    const bytes = await sharp(new Uint8Array(data), { raw }).png().toBuffer();
    return { type: 'image/png', width, height, bytes: new Uint8Array(bytes) };
  },
};
