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

const DIRECTIONS = [
  'right', 'lower right', 'bottom', 'lower left', 'left', 'upper left', 'top', 'upper right',
] as const; // biome-ignore format: a ring

/** The direction of a vector in words, eighth by eighth; x to the right, y down. */
export function directionWords(x: number, y: number): Phrase {
  const eighth = Math.round(Math.atan2(y, x) / (Math.PI / 4));
  return phrase(DIRECTIONS[((eighth % 8) + 8) % 8]!);
}
