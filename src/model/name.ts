// Names of quilts, fabrics and colourways: their greatest length, and names made from other names.

/** The longest name, in characters. */
export const LONGEST_NAME = 120;

/** Words with a capital first, as a name begins. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A name with an ending ("Winter, copy"). Where both are too long together, the name is cut short and ends in dots. */
export function nameWith(name: string, ending: string): string {
  if (name.length + ending.length <= LONGEST_NAME) return `${name}${ending}`;
  const most = Math.max(0, LONGEST_NAME - ending.length - 1);
  // The cut must not leave half of a surrogate pair.
  const short = name.slice(0, most).replace(/[\ud800-\udbff]$/, '');
  return `${short.trimEnd()}…${ending}`.slice(0, LONGEST_NAME);
}
