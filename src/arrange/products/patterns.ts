// Sorts patterns over the cells by how the symmetries of a wall turn them: even or odd under each of its commuting reflections. A
// table that the symmetries leave as it is falls apart into one table for each sort, which is what makes it small.

/** Patterns of one sort: one for each orbit that has any. */
export interface Sort {
  /** The number of a cell's pattern, −1 where cells of its orbit have none of this sort. */
  readonly patternOf: Int32Array;
  /** 1 or −1, the value of its pattern in a cell. */
  readonly sign: Int8Array;
  /** Orbit of each pattern. */
  readonly orbits: readonly number[];
  /** Whether it is the sort that all symmetries leave as it is. */
  readonly even: boolean;
}

export interface Patterns {
  /** Of each orbit its first cell and how many cells are in it. */
  readonly first: Int32Array;
  readonly count: Int32Array;
  readonly orbitOf: Int32Array;
  readonly sorts: readonly Sort[];
}

/** `symmetries` are images cell → cell that make a group; those of them that commute and undo themselves are used. */
export function patternsOf(symmetries: readonly Int32Array[], size: number): Patterns {
  const group = commuting(symmetries, size);
  const orbitOf = new Int32Array(size).fill(-1);
  const first: number[] = [];
  for (let cell = 0; cell < size; cell++) {
    if (orbitOf[cell]! >= 0) continue;
    for (const image of group) orbitOf[image[cell]!] = first.length;
    first.push(cell);
  }
  const count = new Int32Array(first.length);
  for (const orbit of orbitOf) count[orbit]! += 1;
  const sorts = group
    .map((_, character) => sortOf(group, first, orbitOf, character))
    .filter(({ orbits }) => orbits.length > 0);
  return { first: Int32Array.from(first), count, orbitOf, sorts };
}

/** A group of images of which every two commute and each undoes itself: number a ^ b is a after b. */
function commuting(symmetries: readonly Int32Array[], size: number): Int32Array[] {
  const after = (one: Int32Array, other: Int32Array) => other.map((cell) => one[cell]!);
  let group: Int32Array[] = [Int32Array.from({ length: size }, (_, cell) => cell)];
  for (const image of symmetries) {
    const key = image.join();
    const undoes = after(image, image).every((there, cell) => there === cell);
    const commutes = group.every((one) => after(one, image).join() === after(image, one).join());
    if (!undoes || !commutes || group.some((one) => one.join() === key)) continue;
    group = [...group, ...group.map((one) => after(one, image))];
  }
  return group;
}

/** The patterns that change their sign under a member of the group as `character` says: by the parity of what both share. */
function sortOf(
  group: readonly Int32Array[],
  first: readonly number[],
  orbitOf: Int32Array,
  character: number,
): Sort {
  const turned = (member: number) => (parity(member & character) ? -1 : 1);
  const has = first.map((cell) => group.every((image, member) => image[cell] !== cell || turned(member) > 0));
  const orbits = first.map((_, orbit) => orbit).filter((orbit) => has[orbit]);
  const sign = new Int8Array(orbitOf.length);
  const patternOf = orbitOf.map((orbit) => orbits.indexOf(orbit));
  for (const orbit of orbits) {
    group.forEach((image, member) => {
      sign[image[first[orbit]!]!] = turned(member);
    });
  }
  return { patternOf, sign, orbits, even: character === 0 };
}

function parity(bits: number): boolean {
  let odd = false;
  for (let left = bits; left > 0; left &= left - 1) odd = !odd;
  return odd;
}
