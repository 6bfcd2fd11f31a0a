// A turned frame laid on a picture, and the pixels inside it as a plane of its own, upright.
import type { Point } from '../../geometry/point';
import { atOnce, type InParts } from '../../model/work/parts';
import { blankPlane, type Pixels, type Plane } from './pixels';
import { type PixelBox, shrinking } from './resize';
import { sampleInto } from './sample';

/** A rectangle in pixels of the picture: its middle, its sides, and how far it is turned, degrees clockwise. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly angle: number;
}

/** The frame that holds the whole picture. */
export function wholeFrame({ width, height }: { readonly width: number; readonly height: number }): Frame {
  return { x: width / 2, y: height / 2, width, height, angle: 0 };
}

/** From points of the frame (0–1 from its left and its top) to points of the picture. */
export function inFrame(frame: Frame): (across: number, down: number) => Point {
  const turn = (frame.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return (across, down) => {
    const x = (across - 0.5) * frame.width;
    const y = (down - 0.5) * frame.height;
    return { x: frame.x + x * cos - y * sin, y: frame.y + x * sin + y * cos };
  };
}

/** The corners as the frame is turned: top left, top right, bottom right, bottom left. */
export function frameCorners(frame: Frame): readonly Point[] {
  const at = inFrame(frame);
  return [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
}

/** Whether the frame lies inside the picture, allowing a hundredth of a pixel. */
export function isInside(frame: Frame, { width, height }: Pixels): boolean {
  return frameCorners(frame).every(
    ({ x, y }) => x >= -0.01 && y >= -0.01 && x <= width + 0.01 && y <= height + 0.01,
  );
}

/**
 * What is inside the frame in linear light, `width` × `height` pixels. Where that is smaller than in the picture, light is
 * averaged by area first. Beyond the edge of the picture its edge goes on.
 */
export function cutOut(pixels: Pixels, frame: Frame, width: number, height: number): Plane {
  return atOnce(cuttingOut(pixels, frame, width, height));
}

/** As `cutOut`, in parts. */
export function* cuttingOut(pixels: Pixels, frame: Frame, width: number, height: number): InParts<Plane> {
  const box = boxRound(frameCorners(frame), pixels);
  if (frame.angle === 0 && isInside(frame, pixels) && isWhole(frame, box))
    return yield* shrinking(pixels, box, width, height);
  const scale = Math.min(1, Math.max(width / frame.width, height / frame.height));
  const small = yield* shrinking(
    pixels,
    box,
    Math.max(1, Math.round(box.width * scale)),
    Math.max(1, Math.round(box.height * scale)),
  );
  const at = inFrame(frame);
  const plane = blankPlane(width, height, 3);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const { x, y } = at((column + 0.5) / width, (row + 0.5) / height);
      const toX = ((x - box.x) * small.width) / box.width;
      const toY = ((y - box.y) * small.height) / box.height;
      sampleInto(small, toX, toY, plane.data, (row * width + column) * 3);
    }
  }
  return plane;
}

/** Whether an upright frame ends on whole pixels, so that its box is all of it. */
function isWhole(frame: Frame, box: PixelBox): boolean {
  return frame.width === box.width && frame.height === box.height;
}

/** The whole pixels that hold all points, inside the picture; at least one. */
function boxRound(points: readonly Point[], { width, height }: Pixels): PixelBox {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const low = (least: number, side: number) => Math.max(0, Math.min(side - 1, Math.floor(least + 1e-6)));
  const high = (most: number, side: number) => Math.max(1, Math.min(side, Math.ceil(most - 1e-6)));
  const left = low(Math.min(...xs), width);
  const top = low(Math.min(...ys), height);
  const right = Math.max(left + 1, high(Math.max(...xs), width));
  const bottom = Math.max(top + 1, high(Math.max(...ys), height));
  return { x: left, y: top, width: right - left, height: bottom - top };
}
