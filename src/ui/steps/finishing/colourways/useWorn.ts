// The quilt in a colourway, the same project for as long as nothing of it that shows or is reckoned changes: a new name or
// another colourway has no balance worked out again.
import { useState } from 'react';
import { inColourway } from '../../../../model/colourway';
import type { Colourway, Project } from '../../../../model/project';

/** What a quilt in a colourway looks and measures the same without. */
const APART: ReadonlySet<string> = new Set(['name', 'notes', 'colourways'] satisfies (keyof Project)[]);

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
