// Gives the quilt in a colourway. It stays the same object until something changes that is shown or computed, so that a new name
// or another colourway does not make its balance be computed again.
import { useState } from 'react';
import { inColourway } from '../../../../model/colourway';
import type { Colourway, Project } from '../../../../model/project';

/** Parts of a project that make no difference to the look and the figures of a quilt in a colourway. */
const APART: ReadonlySet<string> = new Set(['name', 'notes', 'colourways'] satisfies (keyof Project)[]);

/** The quilt in a colourway. */
export function useWorn(project: Project, colourway: Colourway): Project {
  const [kept, keep] = useState(() => wornNow(project, colourway));
  const same =
    kept.colourway.swaps === colourway.swaps &&
    kept.colourway.cloth === colourway.cloth &&
    sameQuilt(kept.project, project);
  if (same) return kept.worn;
  const now = wornNow(project, colourway);
  keep(now);
  return now.worn;
}

function wornNow(project: Project, colourway: Colourway) {
  return { project, colourway, worn: inColourway(project, colourway) };
}

function sameQuilt(one: Project, other: Project): boolean {
  const keys = Object.keys(other) as (keyof Project)[];
  return keys.every((key) => APART.has(key) || one[key] === other[key]);
}
