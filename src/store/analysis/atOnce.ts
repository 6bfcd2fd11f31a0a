// Computes a balance where it is: in the worker, or in the page when it cannot wait.
import { type Analysis, analyse, reanalyse } from '../../balance/analyse';
import { wishesOf } from '../../balance/score/wishes';
import type { Preferences, Project } from '../../model/project';
import { type Balance, figuresOf, keepBalance, knownBalance } from './analysis';

/** Computes the balance of a sound project in the page, however long it takes: for a picture saved with its marks. */
export function balanceAtOnce(project: Project): Balance {
  const found = knownBalance(project);
  if (found) return found;
  const made = balanceOf(analysisAfter(null, project), project);
  keepBalance(made);
  return made;
}

function balanceOf(analysis: Analysis, project: Project): Balance {
  const { cloths, typeBands, typeRim, perBlock, fabricCount, radialMemo } = analysis.model;
  return {
    ...figuresOf(analysis),
    project,
    seams: { cloths, typeBands, typeRim, perBlock, fabricCount, radialMemo },
  };
}

/** Analyses a project, from the analysis before it if that one has the same wishes. */
export function analysisAfter(before: Analysis | null, project: Project): Analysis {
  return before && sameWishes(before.project.preferences, project.preferences)
    ? reanalyse(before, project)
    : analyse(project, wishesOf(project.preferences));
}

function sameWishes(one: Preferences, other: Preferences): boolean {
  return (
    one.lookalikes === other.lookalikes &&
    one.intent.value === other.intent.value &&
    one.intent.colour === other.intent.colour
  );
}
