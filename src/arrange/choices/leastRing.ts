// Lays wedges of both tips round a block in turn so that their seams meet least; rims are left to whoever hangs the block.

/** The most wedges laid for one block; eight wedges have 556 beginnings and ways to go on. */
const MOST_LAID = 1000;

/** Whether all wedges of a block, in these places, are free to be laid, and tips up and down take turns: only then are they laid as here. */
export function isFreeRing(
  typeAt: ArrayLike<number>,
  places: readonly number[],
  free: ReadonlySet<number>,
): boolean {
  return places.every(
    (place, at) => free.has(place) && (typeAt[place]! + typeAt[places[(at + 1) % places.length]!]!) % 2 === 1,
  );
}

/**
 * The least cost of the seams round a block of as many tip-up as tip-down wedges; `most` where it is not below that, and 0 where they
 * can be laid in too many ways.
 */
export function leastRing(
  ups: ArrayLike<number>,
  downs: ArrayLike<number>,
  seam: (type: number, following: number) => number,
  most = Number.POSITIVE_INFINITY,
): number {
  const places = 2 * ups.length;
  const used = new Uint8Array(places);
  let least = most;
  let laid = 0;
  const lay = (at: number, last: number, cost: number) => {
    if (at === places) {
      least = Math.min(least, cost + seam(last, ups[0]!));
      return;
    }
    const wedges = at % 2 === 0 ? ups : downs;
    for (let one = 0; one < wedges.length && laid < MOST_LAID; one++) {
      const slot = 2 * one + (at % 2);
      const sum = cost + seam(last, wedges[one]!);
      if (used[slot] || sum >= least) continue;
      laid += 1;
      used[slot] = 1;
      lay(at + 1, wedges[one]!, sum);
      used[slot] = 0;
    }
  };
  used[0] = 1;
  lay(1, ups[0]!, 0);
  return laid < MOST_LAID ? least : 0;
}
