// Builds the graphs of which pieces touch, weighted by the length of contact in inches (times the sashing factor): wedges, blocks, and
// tiles of several cells for the whole top.
import { placeOnSide, SIDES, sideOfPlace } from '../../geometry/contact';
import { seamLength } from '../../geometry/wedge';
import type { WallModel } from './wallModel';

/** A graph with weights that are the same both ways. Neighbours of node n: `to` and `weight` from start[n] to start[n + 1]. */
export interface ContactGraph {
  readonly size: number;
  readonly start: Int32Array;
  readonly to: Int32Array;
  readonly weight: Float64Array;
  /** Class of each node's weights, and the weights of each class in the order of the node's neighbours. */
  readonly profile: Int32Array;
  readonly profiles: readonly (readonly number[])[];
}

/** A graph from neighbour lists; neighbours of zero weight are left out. */
export function contactGraph(neighbours: readonly (readonly (readonly [number, number])[])[]): ContactGraph {
  const builder = new GraphBuilder(neighbours.length);
  for (const list of neighbours) {
    for (const [to, weight] of list) builder.add(to, weight);
    builder.close();
  }
  return builder.done();
}

/** The same contacts, each counting 1. */
export function evenWeights(graph: ContactGraph): ContactGraph {
  const profiles = graph.profiles.map((weights) => weights.map(() => 1));
  return { ...graph, weight: new Float64Array(graph.weight.length).fill(1), profiles };
}

/** Fills a graph node by node, neighbours of a node one after the other. */
class GraphBuilder {
  private readonly start: Int32Array;
  private readonly profile: Int32Array;
  private readonly to: number[] = [];
  private readonly weight: number[] = [];
  private readonly profiles: number[][] = [];
  private node = 0;
  private readonly size: number;

  constructor(size: number) {
    this.size = size;
    this.start = new Int32Array(size + 1);
    this.profile = new Int32Array(size);
  }

  add(to: number, weight: number): void {
    if (weight === 0) return;
    this.to.push(to);
    this.weight.push(weight);
  }

  close(): void {
    const from = this.start[this.node]!;
    const count = this.to.length - from;
    let found = this.profiles.findIndex(
      (one) => one.length === count && one.every((weight, at) => weight === this.weight[from + at]),
    );
    if (found < 0) found = this.profiles.push(this.weight.slice(from)) - 1;
    this.profile[this.node] = found;
    this.node += 1;
    this.start[this.node] = this.to.length;
  }

  done(): ContactGraph {
    return {
      size: this.size,
      start: this.start,
      to: Int32Array.from(this.to),
      weight: Float64Array.from(this.weight),
      profile: this.profile,
      profiles: this.profiles,
    };
  }
}

/** Nodes of a graph laid over the wall: node of each cell (−1: nothing hangs there), and the block of each node. */
export interface BlockNodes {
  readonly nodeIn: Int32Array;
  readonly blockOf: Int32Array;
}

/** Hung blocks as nodes, in the order of the document, so that exchanging two blocks renumbers nothing. */
export function blockNodes(model: WallModel): BlockNodes {
  const nodeIn = new Int32Array(model.blockIn.length).fill(-1);
  const blockOf: number[] = [];
  model.cellOf.forEach((cell, block) => {
    if (cell < 0 || model.area[block] === 0) return;
    nodeIn[cell] = blockOf.length;
    blockOf.push(block);
  });
  return { nodeIn, blockOf: Int32Array.from(blockOf) };
}

/** Hung blocks as nodes in the order of the cells, whatever hangs in them: for deals that must not know the arrangement. */
export function cellNodes(model: WallModel): BlockNodes {
  const nodeIn = new Int32Array(model.blockIn.length).fill(-1);
  const blockOf: number[] = [];
  model.blockIn.forEach((block, cell) => {
    if (block < 0 || model.area[block] === 0) return;
    nodeIn[cell] = blockOf.length;
    blockOf.push(block);
  });
  return { nodeIn, blockOf: Int32Array.from(blockOf) };
}

/** Upright neighbours (left, right) before level ones, so that equal neighbourhoods share a profile. */
const SIDE_ORDER = [1, 3, 0, 2] as const;

/** Blocks that meet along a side; the weight is the side's length times the sashing factor. */
export function blockGraph(model: WallModel, nodes: BlockNodes): ContactGraph {
  const builder = new GraphBuilder(nodes.blockOf.length);
  for (const block of nodes.blockOf) {
    const cell = model.cellOf[block]!;
    for (const side of SIDE_ORDER) {
      const other = model.neighbourCell[cell * 4 + side]!;
      const node = other < 0 ? -1 : nodes.nodeIn[other]!;
      const length = side % 2 === 1 ? model.blockSize.height : model.blockSize.width;
      if (node >= 0) builder.add(node, length * model.sashingFactorAt[cell * 4 + side]!);
    }
    builder.close();
  }
  return builder.done();
}

/** Wedge nodes: the node of block × N + place (−1: empty or not hung) and back. */
export interface WedgeNodes {
  readonly nodeAt: Int32Array;
  readonly wedgeOf: Int32Array;
}

/** Wedges of hung blocks as nodes, in the order of the document. */
export function wedgeNodes(model: WallModel): WedgeNodes {
  const nodeAt = new Int32Array(model.typeAt.length).fill(-1);
  const wedgeOf: number[] = [];
  model.typeAt.forEach((type, wedge) => {
    const block = Math.floor(wedge / model.perBlock);
    if (type < 0 || model.cellOf[block]! < 0 || model.typeArea[type] === 0) return;
    nodeAt[wedge] = wedgeOf.length;
    wedgeOf.push(wedge);
  });
  return { nodeAt, wedgeOf: Int32Array.from(wedgeOf) };
}

/** Neighbouring wedges of a block along their seam, and wedges that face each other across block edges along their rims. */
export function wedgeGraph(model: WallModel, nodes: WedgeNodes): ContactGraph {
  const { perBlock } = model;
  const builder = new GraphBuilder(nodes.wedgeOf.length);
  const seam = seamLength(model.wedge);
  const placeAt = SIDES.map((side) =>
    Array.from({ length: perBlock }, (_, stands) => placeOnSide(side, stands, perBlock)),
  );
  for (const wedge of nodes.wedgeOf) {
    const block = Math.floor(wedge / perBlock);
    const place = wedge % perBlock;
    for (const step of [1, perBlock - 1]) {
      const node = nodes.nodeAt[block * perBlock + ((place + step) % perBlock)]!;
      if (node >= 0) builder.add(node, seam);
    }
    const side = sideOfPlace(place, model.orientationOf[block]!, perBlock);
    const at = model.cellOf[block]! * 4 + side;
    const cell = side < 0 ? -1 : model.neighbourCell[at]!;
    const other = cell < 0 ? -1 : model.blockIn[cell]!;
    if (other >= 0) {
      const facingPlace = placeAt[(side + 2) % 4]![model.orientationOf[other]!]!;
      const node = facingPlace === null ? -1 : nodes.nodeAt[other * perBlock + facingPlace]!;
      if (node >= 0) builder.add(node, model.rim * model.sashingFactorAt[at]!);
    }
    builder.close();
  }
  return builder.done();
}

/** Tiles of the whole top: how many cells a side, tiles across and down, and the tile of each cell. */
export interface Tiles {
  readonly cells: number;
  readonly columns: number;
  readonly rows: number;
  readonly tileOf: Int32Array;
}

/**
 * Cuts the wall into tiles about a fifth of its longer side, the scale at which a top looks lopsided. Null for walls of
 * fewer than 8 cells a side, whose blocks are tiles enough.
 */
export function tilesOf(model: WallModel): Tiles | null {
  const cells = Math.round(Math.max(model.rows, model.columns) / 5);
  if (cells < 2) return null;
  const columns = Math.ceil(model.columns / cells);
  const rows = Math.ceil(model.rows / cells);
  const tileOf = Int32Array.from(
    model.blockIn,
    (_, cell) => Math.floor(model.rowOf[cell]! / cells) * columns + Math.floor(model.columnOf[cell]! / cells),
  );
  return { cells, columns, rows, tileOf };
}

/** Tiles that meet along a side, tile by tile. Weights are sides of a whole tile; empty tiles keep no neighbours. */
export function tileGraph(model: WallModel, tiles: Tiles, filled: ArrayLike<number>): ContactGraph {
  const builder = new GraphBuilder(tiles.columns * tiles.rows);
  for (let tile = 0; tile < tiles.columns * tiles.rows; tile++) {
    const column = tile % tiles.columns;
    const row = Math.floor(tile / tiles.columns);
    const beside = (inside: boolean, other: number, length: number) => {
      if (inside && filled[tile]! > 0 && filled[other]! > 0)
        builder.add(other, length * tiles.cells * model.sashingFactor);
    };
    beside(column < tiles.columns - 1, tile + 1, model.blockSize.height);
    beside(column > 0, tile - 1, model.blockSize.height);
    beside(row > 0, tile - tiles.columns, model.blockSize.width);
    beside(row < tiles.rows - 1, tile + tiles.columns, model.blockSize.width);
    builder.close();
  }
  return builder.done();
}
