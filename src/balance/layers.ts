// The three scales at which pools are looked for: wedges, blocks, and the whole top in tiles. Each carries value (L*) and
// colour (OKLab a and b), in this order.
import { type Layer, measureLayer } from './clustering';
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
} from './contactGraph';
import type { WallModel } from './wallModel';

export interface Layers {
  readonly wedges: Layer;
  readonly wedgeNodes: WedgeNodes;
  readonly blocks: Layer;
  readonly blockNodes: BlockNodes;
  /** Null for walls so small that a block is a tile. */
  readonly tiles: { readonly layer: Layer; readonly tiles: Tiles } | null;
}

/** Seeds of the deals: any will do, fixed so that the same top always gets the same p. */
const SEEDS = { wedges: 31, blocks: 47, tiles: 59 } as const;

export function measureLayers(model: WallModel, previous: Layers | null): Layers {
  const wedges = wedgeNodes(model);
  const blocks = blockNodes(model);
  const pick = (figures: Float64Array, of: (node: number) => number, size: number) =>
    Float64Array.from({ length: size }, (_, node) => figures[of(node)]!);
  const kindOf = (node: number) => model.kindAt[wedges.wedgeOf[node]!]!;
  const blockOf = (node: number) => blocks.blockOf[node]!;
  return {
    wedgeNodes: wedges,
    wedges: measureLayer(
      {
        graph: wedgeGraph(model, wedges),
        // Turning a block changes which wedges meet, so the whole goes by its exact moments instead of deals.
        fixedGraph: null,
        values: [model.kindLightness, model.kindA, model.kindB].map((figures) =>
          pick(figures, kindOf, wedges.wedgeOf.length),
        ),
        seed: SEEDS.wedges,
      },
      previous?.wedges ?? null,
    ),
    blockNodes: blocks,
    blocks: measureLayer(
      {
        graph: blockGraph(model, blocks),
        fixedGraph: blockGraph(model, cellNodes(model)),
        values: [model.lightness, model.a, model.b].map((figures) =>
          pick(figures, blockOf, blocks.blockOf.length),
        ),
        seed: SEEDS.blocks,
      },
      previous?.blocks ?? null,
    ),
    tiles: tileLayer(model, previous),
  };
}

function tileLayer(model: WallModel, previous: Layers | null): Layers['tiles'] {
  const tiles = tilesOf(model);
  if (!tiles) return null;
  const size = tiles.across * tiles.down;
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
