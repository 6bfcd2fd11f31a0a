// Analyses a whole project: clashes, pools, spread, lean, score, and the few findings worth a sentence. Other files measure each
// part; this one puts them together, ranks the findings, and takes over what a change did not touch.

import { type ClothOf, clothTable } from '../cloth/cloths';
import { LOOKALIKE_THRESHOLD, meanColour } from '../cloth/likeness';
import { type ColouredArea, type ValueStatistics, valueStatistics } from '../cloth/mixture';
import { asPieced } from '../geometry/asPieced';
import { layOut } from '../geometry/setting';
import type { FabricId, Project } from '../model/project';
import { type Clash, clashesBetween, clashesInside } from './clashes/clashes';
import { clashFindings } from './clashes/clashFindings';
import { type EvennessRow, evennessRows } from './evenness/evenness';
import { type FabricSpread, fabricSpreads } from './evenness/fabricSpread';
import { type Layers, measureLayers } from './evenness/layers';
import { NearestTable } from './evenness/nearest';
import { poolFindings } from './evenness/poolFindings';
import { type Pool, poolsOf } from './evenness/pools';
import { dominantFabric, fabricFindings, leanFindings } from './evenness/spreadFindings';
import { type ValueOrder, valueOrder } from './evenness/valueOrder';
import { type WholeTop, wholeTop } from './evenness/wholeTop';
import type { Finding } from './finding';
import { type Intent, SCATTERED } from './score/intent';
import { type TermScales, termScales } from './score/termScales';
import { clashTerms, spreadTerms } from './score/terms';
import type { Terms } from './score/weights';
import { filled, sameBlock, type WallModel, wallModel } from './wall/wallModel';

export interface AnalysisOptions {
  /** Colours of a fabric; those of cloth/print unless given. */
  readonly cloth?: ClothOf;
  /** ΔE00 from which two cloths no longer read as one; cloth/likeness's LOOKALIKE_THRESHOLD unless given. */
  readonly lookalikes?: number;
  /** What the person wants of value and colour; scattered unless given. */
  readonly intent?: Intent;
}

export interface Analysis {
  /** The project that was analysed, its pictured blocks written out as pieced ones (geometry/asPieced). */
  readonly project: Project;
  readonly options: AnalysisOptions;
  /** Every clash, also those too small for a sentence. */
  readonly clashes: readonly Clash[];
  /** The few things worth saying, heaviest first. */
  readonly findings: readonly Finding[];
  /** Value over the wedges that hang; null for an empty wall. */
  readonly value: ValueStatistics | null;
  /** Moran's I, p and pools of value, OKLab a and b for wedges, blocks and tiles. */
  readonly layers: Layers;
  readonly pools: readonly Pool[];
  readonly fabrics: readonly FabricSpread[];
  /** The fabric that stands out most; null for an empty wall. */
  readonly dominant: FabricId | null;
  readonly wholeTop: WholeTop;
  /** Whether the order of values that is wanted can be seen; null where none is wanted. */
  readonly valueOrder: ValueOrder | null;
  /** How even value and colour are at each scale. */
  readonly evenness: readonly EvennessRow[];
  /** The score, term by term, each about 1 by chance, and what it is measured against. */
  readonly terms: Terms;
  readonly scales: TermScales;
  readonly model: WallModel;
  /** Clashes inside each block, in the order of blocks. */
  readonly inside: readonly (readonly Clash[])[];
  /** Steps between the places of the wall. */
  readonly distances: NearestTable;
}

/** Analyses a sound project (readProject) whose wedge plan leaves a block (wedgeProblem is null). Linear in blocks. */
export function analyse(project: Project, options: AnalysisOptions = {}): Analysis {
  return analysed(project, options, null);
}

/**
 * The same for a later state of the project, with the options of the earlier analysis: equal to `analyse(project, options)`
 * in every figure, but what the change did not touch is taken over. Best after turns (nothing is dealt anew) and swaps.
 */
export function reanalyse(previous: Analysis, project: Project): Analysis {
  return analysed(project, previous.options, previous);
}

function analysed(given: Project, options: AnalysisOptions, previous: Analysis | null): Analysis {
  const project = asPieced(given);
  const cloths =
    previous?.project.fabrics === project.fabrics
      ? previous.model.cloths
      : clothTable(project.fabrics, options.cloth, options.lookalikes ?? LOOKALIKE_THRESHOLD);
  const model = wallModel(project, cloths, previous ?? undefined);
  const keeps = previous === null ? NOTHING : kept(previous, project, model);
  const inside = insideClashes(project, model, keeps, previous);
  const clashes = [...inside.flat(), ...clashesBetween(project, model)];
  const layers = measureLayers(model, previous?.layers ?? null, keeps.hanging);
  const pools = poolsOf(model, layers);
  const hanging = keeps.hanging ? previous : null;
  const distances =
    keeps.filled && previous?.distances.holdsFor(model) ? previous.distances : new NearestTable(model);
  const fabrics = fabricSpreads(model, layers, distances, hanging?.fabrics ?? null);
  const top = hanging?.wholeTop ?? wholeTop(model);
  const intent = options.intent ?? SCATTERED;
  const scales = (keeps.filled ? previous?.scales : null) ?? termScales(model, intent);
  return {
    project,
    options,
    clashes,
    findings: ranked(project, model, { clashes, pools, fabrics, top, intent }),
    value: (keeps.filled ? previous?.value : null) ?? hungValue(model),
    layers,
    pools,
    fabrics,
    dominant: dominantFabric(project, fabrics)?.fabric ?? null,
    wholeTop: top,
    valueOrder: valueOrder(model, intent),
    evenness: evennessRows(layers),
    terms: { ...(hanging?.terms ?? spreadTerms(scales, model)), ...clashTerms(scales, model) },
    scales,
    model,
    inside,
    distances,
  };
}

/** What of an earlier analysis still holds. */
interface Kept {
  /** Blocks that are the same and hang in the same cell with the same turn. */
  readonly untouched: readonly boolean[];
  /** The same blocks hang, in whatever cells of the same filled ones; the model's cloth and sizes are the same. */
  readonly filled: boolean;
  /** And each in the same cell: at most turns have changed. */
  readonly hanging: boolean;
}

const NOTHING: Kept = { untouched: [], filled: false, hanging: false };

/** What of an analysis still holds for a later state of its project. */
export function kept(previous: Analysis, project: Project, model: WallModel): Kept {
  const before = previous.project;
  const old = previous.model;
  if (old.typeBands !== model.typeBands || before.setting !== project.setting) return NOTHING;
  if (old.rows !== model.rows || old.columns !== model.columns) return NOTHING;
  const same = project.blocks.map((block, at) => {
    const there = before.blocks[at];
    return there !== undefined && sameBlock(there, block) && old.corner[at] === model.corner[at];
  });
  const all = before.blocks.length === project.blocks.length && same.every(Boolean);
  const inCell = (at: number) => old.cellOf[at] === model.cellOf[at];
  const hung = (cellOf: Int32Array, at: number) => cellOf[at]! >= 0;
  return {
    untouched: same.map((one, at) => one && inCell(at) && old.orientationOf[at] === model.orientationOf[at]),
    filled:
      all &&
      same.every((_, at) => hung(old.cellOf, at) === hung(model.cellOf, at)) &&
      model.blockIn.every((_, cell) => filled(model, cell) === filled(old, cell)),
    hanging: all && same.every((_, at) => inCell(at)),
  };
}

/** The clashes inside each block, taken over where the block is untouched. */
export function insideClashes(
  project: Project,
  model: WallModel,
  keeps: Kept,
  previous: Analysis | null,
): (readonly Clash[])[] {
  return model.blocks.map((_, block) =>
    keeps.untouched[block] ? previous!.inside[block]! : clashesInside(project, model, block),
  );
}

interface Found {
  readonly clashes: readonly Clash[];
  readonly pools: readonly Pool[];
  readonly fabrics: readonly FabricSpread[];
  readonly top: WholeTop;
  readonly intent: Intent;
}

function ranked(project: Project, model: WallModel, found: Found): Finding[] {
  const { intent } = found;
  const unwanted = found.pools.filter((pool) =>
    pool.figure === 'value' ? intent.value === 'scattered' : intent.colour === 'scattered',
  );
  return [
    ...clashFindings(project, found.clashes),
    ...poolFindings(project, model, unwanted, layOut(project)),
    ...fabricFindings(project, found.fabrics),
    ...leanFindings(found.top, intent),
  ].sort((one, other) => other.weight - one.weight);
}

function hungValue(model: WallModel): ValueStatistics | null {
  const areas = new Float64Array(model.fabricCount);
  model.cellOf.forEach((cell, block) => {
    if (cell < 0) return;
    for (let f = 0; f < model.fabricCount; f++) areas[f]! += model.fabricArea[block * model.fabricCount + f]!;
  });
  const pieces = model.cloths.fabrics.map(
    (fabric, f): ColouredArea => ({ hex: meanColour(model.cloths.clothOf(fabric)), area: areas[f]! }),
  );
  return valueStatistics(pieces);
}
