// Finds the corners of a block that lies anywhere in a picture: quadrilaterals made of straight edges are tried, those that look most
// like a block of wedges are moved until they look it best, and the winner's sides are laid on the edges of the cloth.
import type { Point } from '../../geometry/point';
import type { InParts } from '../../model/work/parts';
import { oklabPlane } from '../pixels/linear';
import type { Pixels, Plane } from '../pixels/pixels';
import { shrinkingTo } from '../pixels/resize';
import { blurred } from '../pixels/sample';
import { betweenSurfaces, edgesOf, linesOf } from '../plane/edges';
import { composed, type Homography, projected, squareTo } from '../plane/homography';
import { lensOf } from '../plane/lens';
import { isConvex, ordered, quadsOf } from '../plane/quads';
import { laidOnEdges, type Sides } from '../plane/sides';
import { type BlockShape, shapeCorners } from './shape';
import { likenessOf, type Samples, samplesOf } from './structure';

/** Corners in pixels of the picture, top left, top right, bottom right, bottom left; and how much they look like a block. */
export interface FoundCorners extends Sides {
  readonly likeness: number;
}

/** The longer side of the picture that is searched, pixels. */
const SEARCHED = 420;
const LINES = 48;
const QUADS = 700;
const MOVED = 10;
/** How many of them are turned by whole wedges too. */
const TURNED = 3;
/** The longer side of the picture in which the sides are laid on edges. */
const REFINED = 1000;

/** From inches of the shape to four corners. */
export function shapeTo(shape: BlockShape, corners: readonly Point[]): Homography {
  const [w, h] = [shape.halfWidth + shape.allowance, shape.halfHeight + shape.allowance];
  return composed(squareTo(corners), [1 / w, 0, 0, 0, 1 / h, 0, 0, 0, 1]);
}

/** Finds the corners of a block of this shape; null where nothing looks like one at all. Goes on in parts. */
export function* findCorners(pixels: Pixels, shape: BlockShape): InParts<FoundCorners | null> {
  const small = yield* shrinkingTo(pixels, SEARCHED);
  const plane = blurred(oklabPlane(small), 0.8);
  const scale = pixels.width / plane.width;
  const samples = samplesOf(shape);
  yield null;
  const moved: Candidate[] = [];
  for (const corners of yield* startsIn(plane, shape, samples)) {
    yield null;
    moved.push(settled(plane, shape, samples, corners));
  }
  const winner = moved.sort(byLikeness)[0];
  if (!winner) return null;
  const { corners, lens, clear } = yield* refined(
    pixels,
    winner.corners.map(({ x, y }) => ({ x: x * scale, y: y * scale })),
  );
  return { corners, lens, clear, likeness: winner.likeness };
}

/** Corners that look most like a block, and the best of them turned by whole wedges. */
function* startsIn(plane: Plane, shape: BlockShape, samples: Samples): InParts<(readonly Point[])[]> {
  const edges = betweenSurfaces(edgesOf(plane, 0.02), plane);
  const lines = linesOf(edges, LINES);
  yield null;
  const quads = yield* quadsOf(lines, edges, { least: 0.2, skew: 0.7, ratio: 2.2 }, QUADS);
  const scored: Candidate[] = [];
  for (const { corners } of quads) {
    yield null;
    scored.push({ corners, likeness: likenessOf(plane, shapeTo(shape, corners), samples) });
  }
  const best = distinct(scored.sort(byLikeness), MOVED, 0.02 * SEARCHED).map(({ corners }) => corners);
  return [...best, ...best.slice(0, TURNED).flatMap((corners) => turnedByWedges(shape, corners))];
}

/** A block turned by whole wedges looks much the same but for its corners: these are the squares it could be as well. */
export function turnedByWedges(shape: BlockShape, corners: readonly Point[]): Point[][] {
  const to = shapeTo(shape, corners);
  const quarter = shape.perBlock % 4 === 0 ? shape.perBlock / 4 : shape.perBlock / 2;
  return Array.from({ length: quarter - 1 }, (_, step) => {
    const turn = (2 * Math.PI * (step + 1)) / shape.perBlock;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    return ordered(
      shapeCorners(shape).map(({ x, y }) => projected(to, { x: x * cos - y * sin, y: x * sin + y * cos })),
    );
  }).filter(isConvex);
}

/** Lays the sides on the edges of the cloth, first from further off. */
function* refined(pixels: Pixels, corners: readonly Point[]): InParts<Sides> {
  const large = yield* shrinkingTo(pixels, REFINED);
  const plane = blurred(oklabPlane(large), 0.7);
  yield null;
  const scale = pixels.width / plane.width;
  const small = corners.map(({ x, y }) => ({ x: x / scale, y: y / scale }));
  const first = laidOnEdges(plane, small, 0.05);
  yield null;
  const { corners: last, lens, clear } = laidOnEdges(plane, first.corners, 0.02);
  return {
    corners: last.map(({ x, y }) => ({ x: x * scale, y: y * scale })),
    lens: lensOf(pixels, lens.bend),
    clear,
  };
}

/** Corners with how much they look like a block. */
interface Candidate {
  readonly corners: readonly Point[];
  readonly likeness: number;
}

function byLikeness(one: Candidate, other: Candidate): number {
  return other.likeness - one.likeness;
}

/** The first of each crowd of nearly equal corners. */
function distinct(found: readonly Candidate[], most: number, apart: number): Candidate[] {
  const kept: Candidate[] = [];
  for (const one of found) {
    const known = kept.some((other) =>
      one.corners.every(
        ({ x, y }, at) => Math.hypot(x - other.corners[at]!.x, y - other.corners[at]!.y) < apart,
      ),
    );
    if (!known) kept.push(one);
    if (kept.length === most) break;
  }
  return kept;
}

/** Moves corners one after another, in smaller and smaller steps, as long as the likeness grows. */
function settled(plane: Plane, shape: BlockShape, samples: Samples, start: readonly Point[]): Candidate {
  let corners = [...start];
  let likeness = likenessOf(plane, shapeTo(shape, corners), samples);
  const size = Math.hypot(start[0]!.x - start[2]!.x, start[0]!.y - start[2]!.y);
  for (let step = 0.02 * size; step > 0.3; step *= 0.6) {
    for (let round = 0; round < 3; round += 1) {
      const before = likeness;
      for (const move of moves(step)) {
        const tried = corners.map((corner, at) => ({ x: corner.x + move[at]!.x, y: corner.y + move[at]!.y }));
        if (!isConvex(tried)) continue;
        const now = likenessOf(plane, shapeTo(shape, tried), samples, likeness);
        if (now > likeness) [corners, likeness] = [tried, now];
      }
      if (likeness <= before) break;
    }
  }
  return { corners, likeness };
}

/** Single corners and whole sides, in four directions. */
function moves(step: number): Point[][] {
  const still = { x: 0, y: 0 };
  const ways = [{ x: step, y: 0 }, { x: -step, y: 0 }, { x: 0, y: step }, { x: 0, y: -step }]; // biome-ignore format: four ways
  const single = [0, 1, 2, 3].flatMap((corner) =>
    ways.map((way) => [0, 1, 2, 3].map((at) => (at === corner ? way : still))),
  );
  const sides = [0, 1, 2, 3].flatMap((side) =>
    ways.map((way) => [0, 1, 2, 3].map((at) => (at === side || at === (side + 1) % 4 ? way : still))),
  );
  const out = { x: step, y: step };
  const grow = [1, -1].map((way) => [{ x: -out.x * way, y: -out.y * way }, { x: out.x * way, y: -out.y * way }, { x: out.x * way, y: out.y * way }, { x: -out.x * way, y: out.y * way }]); // biome-ignore format: four corners
  return [...grow, ...sides, ...single];
}
