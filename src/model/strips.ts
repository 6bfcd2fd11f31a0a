// When two strips of a set, or two lists of strips, are equal for sewing.
import type { Strip } from './project';

/** Whether two strips have the same fabric, width and lock. */
export function sameStrip(one: Strip, other: Strip): boolean {
  return (
    one.fabric === other.fabric &&
    one.width === other.width &&
    (one.locked ?? false) === (other.locked ?? false)
  );
}

/** Whether two lists contain the same strips, in any order. */
export function sameStrips(these: readonly Strip[], those: readonly Strip[]): boolean {
  const left = [...those];
  for (const strip of these) {
    const at = left.findIndex((other) => sameStrip(strip, other));
    if (at < 0) return false;
    left.splice(at, 1);
  }
  return left.length === 0;
}
