// Names of quilts, fabrics and colourways: how long they may be, and names made from others.

/** The longest name, in characters. */
export const LONGEST_NAME = 120;

/** A name with something behind it ("Winter, copy"). Where both would be too long the name gives way, seen by its dots. */
export function nameWith(name: string, ending: string): string {
  if (name.length + ending.length <= LONGEST_NAME) return `${name}${ending}`;
  const room = Math.max(0, LONGEST_NAME - ending.length - 1);
  // A character of two halves is kept whole or left out.
  const short = name.slice(0, room).replace(/[\ud800-\udbff]$/, '');
  return `${short.trimEnd()}…${ending}`.slice(0, LONGEST_NAME);
}
