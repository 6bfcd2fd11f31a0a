// How a top stands, in two figures: how many clashes, and the terms of its score. After moves they are the figures of a full
// analysis, without the search for pools and the dealing by chance, so that they can follow a hand from cell to cell.
import type { Project } from '../model/project';
import { type Analysis, insideClashes, kept } from './analyse';
import { clashesBetween } from './clashes/clashes';
import { termScales } from './score/termScales';
import { evaluateTerms } from './score/terms';
import type { Terms } from './score/weights';
import { wallModel } from './wall/wallModel';

export interface Standing {
  readonly clashes: number;
  readonly terms: Terms;
}

/**
 * How a later state of the analysed project stands: what `analyse` says of it. Linear in blocks; slower where other cells are
 * filled, because then a top by chance is another one too.
 */
export function standingAfter(analysis: Analysis, project: Project): Standing {
  const model = wallModel(project, analysis.model.cloths, analysis);
  const keeps = kept(analysis, project, model);
  const inside = insideClashes(project, model, keeps, analysis);
  const scales = keeps.filled ? analysis.scales : termScales(model, analysis.scales.intent);
  return {
    clashes: inside.reduce((sum, list) => sum + list.length, clashesBetween(project, model).length),
    terms: evaluateTerms(scales, model),
  };
}
