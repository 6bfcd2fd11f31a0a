// An independent reading of an exported wall: polygons with their data-attributes straight from the text of the file.
export interface ReadPolygon {
  readonly data: Readonly<Record<string, string>>;
  readonly points: readonly (readonly [number, number])[];
  readonly fill: string;
}

export interface ReadSvg {
  readonly width: string;
  readonly height: string;
  readonly viewBox: readonly number[];
  readonly polygons: readonly ReadPolygon[];
}

export function readSvg(text: string): ReadSvg {
  const root = attributes(/<svg\s([^>]*)>/.exec(text)![1]!);
  const polygons = [...text.matchAll(/<polygon\s([^>]*)\/>/g)].map((found) => {
    const all = attributes(found[1]!);
    const points = all.points!.split(' ').map((pair) => pair.split(',').map(Number) as [number, number]);
    const data = Object.fromEntries(Object.entries(all).filter(([name]) => name.startsWith('data-')));
    return { data, points, fill: all.fill! };
  });
  return {
    width: root.width!,
    height: root.height!,
    viewBox: root.viewBox!.split(' ').map(Number),
    polygons,
  };
}

function attributes(text: string): Record<string, string> {
  return Object.fromEntries([...text.matchAll(/([\w-]+)="([^"]*)"/g)].map((found) => [found[1]!, found[2]!]));
}

/** Area by triangles from the first point (outlines here are convex or nearly so; the sign keeps it right). */
export function readArea(points: ReadPolygon['points']): number {
  const [[x0, y0]] = points as [[number, number]];
  let sum = 0;
  for (let at = 1; at + 1 < points.length; at += 1) {
    const [ax, ay] = [points[at]![0] - x0, points[at]![1] - y0];
    const [bx, by] = [points[at + 1]![0] - x0, points[at + 1]![1] - y0];
    sum += (ax * by - ay * bx) / 2;
  }
  return Math.abs(sum);
}

/** Length along which two polygons share an edge, found from coordinates alone. */
export function sharedEdge(one: ReadPolygon, other: ReadPolygon): number {
  let sum = 0;
  for (const [a, b] of edges(one)) for (const [c, d] of edges(other)) sum += overlapOf(a, b, c, d);
  return sum;
}

type Pair = readonly [number, number];

function edges({ points }: ReadPolygon): [Pair, Pair][] {
  return points.map((point, at) => [point, points[(at + 1) % points.length]!]);
}

function overlapOf(a: Pair, b: Pair, c: Pair, d: Pair): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const long = Math.hypot(dx, dy);
  const off = ([x, y]: Pair) => Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / long;
  if (off(c) > 1e-4 || off(d) > 1e-4) return 0;
  const along = ([x, y]: Pair) => ((x - a[0]) * dx + (y - a[1]) * dy) / long;
  const [from, to] = [along(c), along(d)].toSorted((one, other) => one - other);
  return Math.max(0, Math.min(long, to!) - Math.max(0, from!));
}
