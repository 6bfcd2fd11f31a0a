// The demo quilts as test fixtures, opened as the tool opens them; every call gives a copy of its own.
import { readFileSync } from 'node:fs';
import { openProject } from '../src/editing/openProject';
import type { Project } from '../src/model/project';

/** The names of the quilts of demo-data. */
export const DEMOS = [
  'harbour-reading-corner',
  'keepers-winter',
  'kiln-shed',
  'plum-orchard',
  'river-ferry',
] as const;

const demos = new Map<string, Project>();

/** A quilt of demo-data by the name of its file, without ending. Throws when it does not open. */
export function demo(name: string): Project {
  const project = demos.get(name) ?? opened(name);
  demos.set(name, project);
  return structuredClone(project);
}

function opened(name: string): Project {
  const read = openProject(readFileSync(new URL(`../demo-data/${name}.json`, import.meta.url), 'utf8'));
  if (!read.ok) throw new Error(`demo: ${name} does not open`);
  return read.value;
}

/** The same quilt with nothing sewn and nothing cut, so that everything may still change. */
export function unsewn(project: Project): Project {
  return {
    ...project,
    stripSets: project.stripSets.map((set) => ({ ...set, progress: 'planned' as const })),
    blocks: project.blocks.map((block) => ({ ...block, progress: 'planned' as const })),
  };
}
