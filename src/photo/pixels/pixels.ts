// A picture as pixels: sRGB bytes as decoded, or planes of floats. Points lie in continuous pixels: x to the right, y down, the first
// pixel covers 0–1 in both, and its middle is at 0.5.

/** sRGB with alpha, four bytes a pixel in rows from the top left: the layout of ImageData. Alpha is not looked at. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray;
}

/** Floats of `channels` to the pixel, interleaved, in rows from the top left. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly channels: number;
  readonly data: Float32Array;
}

/** A black, opaque picture. */
export function blankPixels(width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let at = 3; at < data.length; at += 4) data[at] = 255;
  return { width, height, data };
}

/** A plane of zeros. */
export function blankPlane(width: number, height: number, channels: number): Plane {
  return { width, height, channels, data: new Float32Array(width * height * channels) };
}

/** Throws a RangeError unless the data are as long as width and height say, and both are whole and at least 1. */
export function checkPixels(pixels: Pixels): void {
  const { width, height, data } = pixels;
  if (!(Number.isInteger(width) && Number.isInteger(height) && width > 0 && height > 0))
    throw new RangeError(`pixels: ${width} × ${height} is no size of a picture`);
  if (data.length !== width * height * 4)
    throw new RangeError(`pixels: ${data.length} bytes do not make ${width} × ${height} pixels`);
}
