// Contact measured from an exported SVG alone: polygons are read back from the file, and shared edges found by laying every
// edge against every other. Nothing of geometry/contact or balance is used.

export interface FilePiece {
  readonly fabric: string;
  /** Block number, place and band of a wedge piece; part of any other. */
  readonly block: number | null;
  readonly place: number | null;
  readonly part: string | null;
  readonly points: readonly (readonly [number, number])[];
}

export function piecesOfSvg(svg: string): FilePiece[] {
  return [...svg.matchAll(/<polygon([^>]*)points="([^"]*)"/g)].map((match) => {
    const data = (name: string) => new RegExp(`data-${name}="([^"]*)"`).exec(match[1]!)?.[1] ?? null;
    return {
      fabric: data('fabric') ?? '',
      block: data('block') === null ? null : Number(data('block')),
      place: data('place') === null ? null : Number(data('place')),
      part: data('part'),
      points: match[2]!
        .trim()
        .split(/\s+/)
        .map((pair) => {
          const [x, y] = pair.split(',').map(Number);
          return [x!, y!] as const;
        }),
    };
  });
}

/** The file's numbers are rounded; lines closer than this are one. Inches. */
const NEAR = 2e-3;

/** Length along which the outlines of two pieces lie on each other, inches. */
export function sharedLength(one: FilePiece, other: FilePiece): number {
  let sum = 0;
  one.points.forEach(([x1, y1], at) => {
    const [x2, y2] = one.points[(at + 1) % one.points.length]!;
    const long = Math.hypot(x2 - x1, y2 - y1);
    if (long < NEAR) return;
    const ux = (x2 - x1) / long;
    const uy = (y2 - y1) / long;
    other.points.forEach(([x3, y3], index) => {
      const [x4, y4] = other.points[(index + 1) % other.points.length]!;
      const off = (x: number, y: number) => Math.abs((x - x1) * uy - (y - y1) * ux);
      if (off(x3, y3) > NEAR || off(x4, y4) > NEAR) return;
      const along = (x: number, y: number) => (x - x1) * ux + (y - y1) * uy;
      const from = Math.max(0, Math.min(along(x3, y3), along(x4, y4)));
      const to = Math.min(long, Math.max(along(x3, y3), along(x4, y4)));
      if (to - from > NEAR) sum += to - from;
    });
  });
  return sum;
}

/** All pairs of pieces of one fabric that touch, with their shared length, but for pieces of the same wedge. */
export function sameClothContacts(pieces: readonly FilePiece[]): Map<string, number> {
  const found = new Map<string, number>();
  const byFabric = new Map<string, FilePiece[]>();
  for (const piece of pieces) byFabric.set(piece.fabric, [...(byFabric.get(piece.fabric) ?? []), piece]);
  for (const list of byFabric.values()) {
    list.forEach((one, at) => {
      for (const other of list.slice(at + 1)) {
        if (one.block === other.block && one.place === other.place) continue;
        const length = sharedLength(one, other);
        if (length === 0) continue;
        const key = [nameOf(one), nameOf(other)].sort().join(' | ');
        found.set(key, (found.get(key) ?? 0) + length);
      }
    });
  }
  return found;
}

function nameOf(piece: FilePiece): string {
  if (piece.part === 'corner') return `${piece.block}.corner`;
  return piece.place === null ? `${piece.part}` : `${piece.block}.${piece.place}`;
}
