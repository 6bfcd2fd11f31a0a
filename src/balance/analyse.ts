// The analysis of a whole project: clashes, value, and the few findings worth a sentence. Each part is measured in its own
// file; here they are put together and ranked.

import { meanColour } from '../colour/likeness';
import type { ColouredArea } from '../colour/mixture';
import { type ValueStatistics, valueStatistics } from '../colour/mixture';
import type { Project } from '../model/project';
import { type Clash, clashesOf } from './clashes';
import { clashFindings } from './clashFindings';
import { type ClothOf, clothTable } from './cloths';
import type { Finding } from './finding';
import { type WallModel, wallModel } from './wallModel';

export interface AnalysisOptions {
  /** Colours of a fabric; those of geometry/print unless given. */
  readonly cloth?: ClothOf;
  /** ΔE00 from which two cloths no longer read as one; colour/likeness's LOOKALIKE_THRESHOLD unless given. */
  readonly lookalikes?: number;
}

export interface Analysis {
  /** Every clash, also those too small for a sentence. */
  readonly clashes: readonly Clash[];
  /** The few things worth saying, heaviest first. */
  readonly findings: readonly Finding[];
  /** Value over the wedges that hang; null for an empty wall. */
  readonly value: ValueStatistics | null;
  readonly model: WallModel;
}

/** Analyses a sound project (readProject) whose wedge plan leaves a block (wedgeProblem is null). Linear in blocks. */
export function analyse(project: Project, options: AnalysisOptions = {}): Analysis {
  const cloths = clothTable(project.fabrics, options.cloth, options.lookalikes);
  const model = wallModel(project, cloths);
  const clashes = clashesOf(project, model);
  const findings = clashFindings(project, model, clashes).sort((one, other) => other.weight - one.weight);
  return { clashes, findings, value: hungValue(model), model };
}

function hungValue(model: WallModel): ValueStatistics | null {
  const areas = new Float64Array(model.fabricCount);
  for (const block of model.blockIn) {
    if (block < 0) continue;
    for (let f = 0; f < model.fabricCount; f++) areas[f]! += model.fabricArea[block * model.fabricCount + f]!;
  }
  const pieces = model.cloths.fabrics.map(
    (fabric, f): ColouredArea => ({ hex: meanColour(model.cloths.clothOf(fabric)), area: areas[f]! }),
  );
  return valueStatistics(pieces);
}
