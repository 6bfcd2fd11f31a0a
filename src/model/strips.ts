// When strips of sets are the same to who sews them.
import type { Strip } from './project';

/** Whether it makes no difference which of two strips is sewn in. */
export function sameStrip(one: Strip, other: Strip): boolean {
  return (
    one.fabric === other.fabric &&
    one.width === other.width &&
    (one.locked ?? false) === (other.locked ?? false)
  );
}

/** Whether two lists hold the same strips in whatever order. */
export function sameStrips(these: readonly Strip[], those: readonly Strip[]): boolean {
  const left = [...those];
  for (const strip of these) {
    const at = left.findIndex((other) => sameStrip(strip, other));
    if (at < 0) return false;
    left.splice(at, 1);
  }
  return left.length === 0;
}
