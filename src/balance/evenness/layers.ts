// The three scales at which pools are looked for: wedges, blocks, and the whole top in tiles. Each carries value (L*) and
// colour (OKLab a and b), in this order.

import {
  type BlockNodes,
  blockGraph,
  blockNodes,
  cellNodes,
  type Tiles,
  tileGraph,
  tilesOf,
  type WedgeNodes,
  wedgeGraph,
  wedgeNodes,
} from '../wall/contactGraph';
import type { WallModel } from '../wall/wallModel';
import { type Layer, measureLayer } from './clustering';

export interface Layers {
  readonly wedges: Layer;
  readonly wedgeNodes: WedgeNodes;
  readonly blocks: Layer;
  readonly blockNodes: BlockNodes;
  /** Null for walls so small that a block is a tile. */
  readonly tiles: { readonly layer: Layer; readonly tiles: Tiles } | null;
}

/** Seeds of the permutations: any will do, fixed so that the same top always gets the same p. */
const SEEDS = { wedges: 31, blocks: 47, tiles: 59 } as const;

/**
 * Measures all three. `sameHanging` says that the previous layers are of the same blocks in the same cells: then blocks and
 * tiles are as they were, and only the wedges may meet otherwise.
 */
export function measureLayers(model: WallModel, previous: Layers | null, sameHanging: boolean): Layers {
  if (previous && sameHanging) {
    const nodes = previous.wedgeNodes;
    return { ...previous, wedges: wedgeLayer(model, nodes, previous, previous.wedges.figures) };
  }
  const nodes = wedgeNodes(model);
  const blocks = blockNodes(model);
  return {
    wedgeNodes: nodes,
    wedges: wedgeLayer(model, nodes, previous, null),
    blockNodes: blocks,
    blocks: blockLayer(model, blocks, previous),
    tiles: tileLayer(model, previous),
  };
}

function wedgeLayer(
  model: WallModel,
  nodes: WedgeNodes,
  previous: Layers | null,
  same: readonly { readonly values: Float64Array }[] | null,
): Layer {
  const types = nodes.wedgeOf.map((wedge) => model.typeAt[wedge]!);
  const values = same
    ? same.map((figure) => figure.values)
    : [model.typeLightness, model.typeA, model.typeB].map((figures) => picked(figures, types));
  // Turning a block changes which wedges meet, so the whole goes by its exact moments instead of permutations.
  const input = { graph: wedgeGraph(model, nodes), fixedGraph: null, values, seed: SEEDS.wedges };
  return measureLayer(input, previous?.wedges ?? null);
}

function blockLayer(model: WallModel, nodes: BlockNodes, previous: Layers | null): Layer {
  const values = [model.lightness, model.a, model.b].map((figures) => picked(figures, nodes.blockOf));
  const graph = blockGraph(model, nodes);
  const fixedGraph = blockGraph(model, cellNodes(model));
  return measureLayer({ graph, fixedGraph, values, seed: SEEDS.blocks }, previous?.blocks ?? null);
}

function picked(figures: Float64Array, from: Int32Array): Float64Array {
  const values = new Float64Array(from.length);
  for (let node = 0; node < from.length; node++) values[node] = figures[from[node]!]!;
  return values;
}
function tileLayer(model: WallModel, previous: Layers | null): Layers['tiles'] {
  const tiles = tilesOf(model);
  if (!tiles) return null;
  const size = tiles.columns * tiles.rows;
  const areas = new Float64Array(size);
  const sums = [model.lightness, model.a, model.b].map((figures) => {
    const means = new Float64Array(size);
    areas.fill(0);
    model.blockIn.forEach((block, cell) => {
      if (block < 0) return;
      means[tiles.tileOf[cell]!]! += figures[block]! * model.area[block]!;
      areas[tiles.tileOf[cell]!]! += model.area[block]!;
    });
    return means;
  });
  const total = areas.reduce((sum, one) => sum + one, 0);
  const values = sums.map((means) => {
    const mean = means.reduce((sum, one) => sum + one, 0) / Math.max(1e-9, total);
    // An empty tile has no neighbours; the mean keeps it from counting as variation.
    return means.map((sum, tile) => (areas[tile]! > 0 ? sum / areas[tile]! : mean));
  });
  const graph = tileGraph(model, tiles, areas);
  const layer = measureLayer(
    { graph, fixedGraph: graph, values, seed: SEEDS.tiles },
    previous?.tiles?.layer ?? null,
  );
  return { layer, tiles };
}
