// The outline round a group of pieces that meet edge to edge: edges that two of them share cancel, the rest is chained.
import type { Outline, Point } from '../../geometry/point';

/** Points closer than this are one, inches. */
const GRAIN = 1e-6;

/**
 * Outer and inner outlines of the union of outlines that run the same way round and share whole edges. The outer ones run as
 * the pieces do, holes the other way. Pieces that meet in a point alone get outlines of their own.
 */
export function unionOutlines(pieces: readonly Outline[]): Outline[] {
  const open = new Map<string, { from: Point; to: Point }>();
  const at = (point: Point) => `${Math.round(point.x / GRAIN)},${Math.round(point.y / GRAIN)}`;
  for (const piece of pieces) {
    piece.forEach((from, index) => {
      const to = piece[(index + 1) % piece.length]!;
      const back = `${at(to)} ${at(from)}`;
      if (at(from) === at(to)) return;
      if (!open.delete(back)) open.set(`${at(from)} ${at(to)}`, { from, to });
    });
  }
  const leaving = new Map<string, { from: Point; to: Point }[]>();
  for (const edge of open.values()) {
    const list = leaving.get(at(edge.from));
    if (list) list.push(edge);
    else leaving.set(at(edge.from), [edge]);
  }
  const outlines: Point[][] = [];
  for (const list of leaving.values()) {
    while (list.length > 0) outlines.push(chain(list.pop()!, leaving, at));
  }
  return outlines.map(withoutStraightPoints);
}

type Edge = { from: Point; to: Point };

/** Follows edges until the first point comes back; where several leave a point, the sharpest turn to the inside is taken. */
function chain(first: Edge, leaving: Map<string, Edge[]>, at: (point: Point) => string): Point[] {
  const points = [first.from];
  let edge = first;
  while (at(edge.to) !== at(first.from)) {
    const list = leaving.get(at(edge.to));
    if (!list || list.length === 0) break;
    let best = 0;
    list.forEach((one, index) => {
      if (turn(edge, one) > turn(edge, list[best]!)) best = index;
    });
    edge = list.splice(best, 1)[0]!;
    points.push(edge.from);
  }
  return points;
}

/** Turn from one edge to the next, −π to π; positive is clockwise on screen. */
function turn(one: Edge, next: Edge): number {
  const x = one.to.x - one.from.x;
  const y = one.to.y - one.from.y;
  const u = next.to.x - next.from.x;
  const v = next.to.y - next.from.y;
  return Math.atan2(x * v - y * u, x * u + y * v);
}

function withoutStraightPoints(points: Point[]): Outline {
  return points.filter((point, index) => {
    const before = points[(index + points.length - 1) % points.length]!;
    const after = points[(index + 1) % points.length]!;
    const cross = (point.x - before.x) * (after.y - point.y) - (point.y - before.y) * (after.x - point.x);
    return Math.abs(cross) > 1e-6;
  });
}
