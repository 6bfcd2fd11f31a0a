// Pools: wedges, blocks or tiles of one value or one colour hanging together beyond chance, with their outline on the wall.
// The test is in clustering; here the discoveries and their like neighbours are joined to pools, measured and outlined.
import { bandOutline } from '../../geometry/block';
import { boxOutline, type Outline, type Point, placed } from '../../geometry/point';
import type { BlockId } from '../../model/project';
import { unionOutlines } from '../wall/outline';
import type { WallModel } from '../wall/wallModel';
import type { Layer } from './clustering';
import type { Layers } from './layers';

export type PoolScale = 'wedge' | 'block' | 'top';
export type PoolFigure = 'value' | 'a' | 'b';

export interface Pool {
  readonly scale: PoolScale;
  /** Value L*, or OKLab a or b. */
  readonly figure: PoolFigure;
  /** High (light; red for a, yellow for b) or low (dark; green for a, blue for b). */
  readonly high: boolean;
  /** Blocks it lies in, left to right and down; for a pool of wedges the wedges too, as block × N + place. */
  readonly blocks: readonly BlockId[];
  readonly wedges: readonly number[];
  /** Mean of its nodes less the mean of all others: L* or OKLab. */
  readonly difference: number;
  /** The same of all three figures, in the order L*, a, b. */
  readonly differences: readonly [number, number, number];
  /** Nodes in it, and all nodes of its scale. */
  readonly size: number;
  readonly of: number;
  /** The least p of its nodes. */
  readonly p: number;
  readonly outlines: readonly Outline[];
  readonly centre: Point;
}

/** A like neighbour joins a pool from this many standard deviations on the same side. */
const JOINS = 0.5;
/** The figures of a layer, in its order. */
export const FIGURES: readonly PoolFigure[] = ['value', 'a', 'b'];

/** All pools at all scales; empty for walls where nothing hangs together beyond chance. */
export function poolsOf(model: WallModel, layers: Layers): Pool[] {
  const { blockNodes, wedgeNodes, tiles } = layers;
  return [
    ...poolsIn(model, layers.blocks, 'block', (node) => [model.cellOf[blockNodes.blockOf[node]!]!]),
    ...(tiles
      ? poolsIn(model, tiles.layer, 'top', (node) =>
          Array.from(tiles.tiles.tileOf, (tile, cell) => (tile === node ? cell : -1)).filter(
            (cell) => cell >= 0 && model.blockIn[cell]! >= 0,
          ),
        )
      : []),
    ...poolsIn(
      model,
      layers.wedges,
      'wedge',
      (node) => [model.cellOf[Math.floor(wedgeNodes.wedgeOf[node]! / model.perBlock)]!],
      (node) => wedgeNodes.wedgeOf[node]!,
    ),
  ];
}

function poolsIn(
  model: WallModel,
  layer: Layer,
  scale: PoolScale,
  cellsOf: (node: number) => number[],
  wedgeOf?: (node: number) => number,
): Pool[] {
  return layer.figures.flatMap((figure, index) =>
    [1, -1].flatMap((side) =>
      groups(layer, index, side).map((nodes): Pool => {
        const cells = [...new Set(nodes.flatMap(cellsOf))].toSorted((one, other) => one - other);
        const wedges = wedgeOf ? nodes.map(wedgeOf) : [];
        const pieces = wedgeOf
          ? wedges.map((wedge) => wedgeOutline(model, wedge))
          : cells.map((cell) => cellOutline(model, cell));
        const differences = layer.figures.map((one) => difference(one.values, nodes));
        return {
          scale,
          figure: FIGURES[index]!,
          high: side > 0,
          blocks: cells.map((cell) => model.blocks[model.blockIn[cell]!]!),
          wedges,
          difference: differences[index]!,
          differences: [differences[0]!, differences[1]!, differences[2]!],
          size: nodes.length,
          of: layer.graph.size,
          p: Math.min(...nodes.filter((node) => figure.pool[node] === side).map((node) => figure.p[node]!)),
          outlines: unionOutlines(pieces),
          centre: middleOf(pieces),
        };
      }),
    ),
  );
}

/** Believed nodes of one side and their neighbours on that side, joined to connected groups of at least two. */
function groups(layer: Layer, index: number, side: number): number[][] {
  const { graph } = layer;
  const { pool, z } = layer.figures[index]!;
  const member = new Uint8Array(graph.size);
  pool.forEach((one, node) => {
    if (one !== side) return;
    member[node] = 1;
    for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
      if (z[graph.to[at]!]! * side >= JOINS) member[graph.to[at]!] = 1;
    }
  });
  const found: number[][] = [];
  for (let first = 0; first < graph.size; first++) {
    if (!member[first]) continue;
    const group = [first];
    member[first] = 0;
    for (let next = 0; next < group.length; next++) {
      const node = group[next]!;
      for (let at = graph.start[node]!; at < graph.start[node + 1]!; at++) {
        if (!member[graph.to[at]!]) continue;
        member[graph.to[at]!] = 0;
        group.push(graph.to[at]!);
      }
    }
    if (group.length > 1) found.push(group.toSorted((one, other) => one - other));
  }
  return found;
}

function difference(values: Float64Array, nodes: readonly number[]): number {
  const inside = nodes.reduce((sum, node) => sum + values[node]!, 0);
  const all = values.reduce((sum, value) => sum + value, 0);
  if (nodes.length === values.length) return 0;
  return inside / nodes.length - (all - inside) / (values.length - nodes.length);
}

/** The square of a cell with half of the sashing to its neighbours, so that those of neighbours share an edge. */
function cellOutline(model: WallModel, cell: number): Outline {
  const { width, height } = model.blockSize;
  const middle = { x: model.cellX[cell]!, y: model.cellY[cell]! };
  const gap = (side: number) => {
    const other = model.neighbourCell[cell * 4 + side]!;
    if (other < 0) return 0;
    const apart = Math.hypot(model.cellX[other]! - middle.x, model.cellY[other]! - middle.y);
    return (apart - (side % 2 === 1 ? width : height)) / 2;
  };
  const box = {
    x: -width / 2 - gap(3),
    y: -height / 2 - gap(0),
    width: width + gap(3) + gap(1),
    height: height + gap(0) + gap(2),
  };
  return placed(boxOutline(box), 0, middle, model.tilt);
}

function wedgeOutline(model: WallModel, wedge: number): Outline {
  const block = Math.floor(wedge / model.perBlock);
  const cell = model.cellOf[block]!;
  const toward = (wedge % model.perBlock) + model.orientationOf[block]!;
  const outline = bandOutline(toward, model.blockSize.height / 2, 0, model.perBlock);
  return placed(outline, 0, { x: model.cellX[cell]!, y: model.cellY[cell]! }, model.tilt);
}

/** The mean of the pieces' own middles: pieces of a scale are equally large. */
function middleOf(pieces: readonly Outline[]): Point {
  let x = 0;
  let y = 0;
  for (const piece of pieces) {
    for (const point of piece) {
      x += point.x / piece.length / pieces.length;
      y += point.y / piece.length / pieces.length;
    }
  }
  return { x, y };
}
