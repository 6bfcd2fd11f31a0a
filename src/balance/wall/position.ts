// Where on the top something lies, in words: the top in thirds across and down.
import type { Point } from '../../geometry/point';
import { type Phrase, phrase } from '../../model/phrase';

const WORDS = [
  ['upper left', 'at the top', 'upper right'],
  ['on the left', 'in the middle', 'on the right'],
  ['lower left', 'at the bottom', 'lower right'],
] as const;

/** Words for a point of an area of this size; points outside count to the nearest third. */
export function positionWords(
  point: Point,
  size: { readonly width: number; readonly height: number },
): Phrase {
  const third = (at: number, whole: number) => Math.max(0, Math.min(2, Math.floor((3 * at) / whole)));
  return phrase(WORDS[third(point.y, size.height)]![third(point.x, size.width)]!);
}

/** Eighth by eighth clockwise from the right. */
const DIRECTIONS = [
  'right', 'lowerRight', 'bottom', 'lowerLeft', 'left', 'upperLeft', 'top', 'upperRight',
] as const; // biome-ignore format: a ring
export type Direction = (typeof DIRECTIONS)[number];

const DIRECTION_WORDS: Readonly<Record<Direction, Phrase>> = {
  right: phrase('right'),
  lowerRight: phrase('lower right'),
  bottom: phrase('bottom'),
  lowerLeft: phrase('lower left'),
  left: phrase('left'),
  upperLeft: phrase('upper left'),
  top: phrase('top'),
  upperRight: phrase('upper right'),
};

/** The direction of a vector, to the nearest eighth; x to the right, y down. */
export function directionOf(x: number, y: number): Direction {
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return DIRECTIONS[((eighth % 8) + 8) % 8]!;
}

/** The same in words. */
export function directionWords(x: number, y: number): Phrase {
  return DIRECTION_WORDS[directionOf(x, y)];
}
