// Names of quilts, fabrics and colourways: their greatest length, and names made from other names.

/** The longest name, in characters. */
export const LONGEST_NAME = 120;

/** Words with a capital first, as a name begins. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The name itself where none of these is the same, else with the next number. */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  let free = nameWith(name, '');
  for (let number = 2; taken.has(free); number += 1) free = nameWith(name, ` ${number}`);
  return free;
}

/** A name with an ending ("Winter, copy"). Where both are too long together, the name is cut short and ends in dots. */
export function nameWith(name: string, ending: string): string {
  if (name.length + ending.length <= LONGEST_NAME) return `${name}${ending}`;
  const most = Math.max(0, LONGEST_NAME - ending.length - 1);
  // The cut must not leave half of a surrogate pair.
  const short = name.slice(0, most).replace(/[\ud800-\udbff]$/, '');
  return `${short.trimEnd()}…${ending}`.slice(0, LONGEST_NAME);
}
