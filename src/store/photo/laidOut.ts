// What photographs of blocks and of walls share: how large they are shown, where corners lie before anybody has laid them, and why
// something was not read.
import type { Point } from '../../geometry/point';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';

/** The longer side of a photograph on screen, pixels: under the loupe single ones show. */
export const SHOWN = 2_400;

/** Corners a tenth inside the picture. */
export function insetCorners({
  width,
  height,
}: {
  readonly width: number;
  readonly height: number;
}): Point[] {
  const [left, right] = [0.1 * width, 0.9 * width];
  const [top, foot] = [0.1 * height, 0.9 * height];
  return [{ x: left, y: top }, { x: right, y: top }, { x: right, y: foot }, { x: left, y: foot }]; // biome-ignore format: corners
}

export const STOPPED: Problem = {
  code: 'stopped',
  path: '',
  message: phrase('Stopped before it was read.'),
};
export const UNREADABLE: Problem = {
  code: 'unreadable',
  path: '',
  message: phrase('The file cannot be read. It may have been moved or removed.'),
};
export const CROSSED: Problem = {
  code: 'corners-crossed',
  path: 'corners',
  message: phrase(
    'The sides cross, or a corner points inwards. Move the corners so that they go round it once.',
  ),
};
