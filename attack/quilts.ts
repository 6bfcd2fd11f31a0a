// The sound quilts that the attack begins with: the examples, and quilts made by chance: with a photographed fabric, half sewn, on point.
import { speak } from '../src/model/phrase';
import type { Pictures } from '../src/model/picture/picture';
import type { Project } from '../src/model/project';
import { writeProject } from '../src/model/reading/read';
import type { Problem } from '../src/model/result';
import { DEMOS, demo } from '../tests/demo';
import { randomProject } from '../tests/drawing/samples';
import { partlySewn } from '../tests/editing/randomMoves';
import { keptPicture, photographed } from '../tests/model/picture/images';
import { type Chance, one } from './mutate';

const [id, picture] = await keptPicture({ kind: 'png', width: 24, height: 24, at: () => [90, 40, 140] });
/** The picture that photographed quilts name. */
export const PICTURES: Pictures = new Map([[id, picture]]);

/** A sound quilt by chance. */
export function anyQuilt(chance: Chance): Project {
  const kind = chance.below(8);
  if (kind < 4) return demo(one(DEMOS, chance));
  if (kind < 6) return lettered(partlySewn(chance.below(200)));
  const made = randomProject(chance.below(200), one([6, 8, 10, 12] as const, chance));
  return kind === 6 ? made : wearing(made);
}

/** The quilt with letters for its sets that fit a file. */
function lettered(project: Project): Project {
  return {
    ...project,
    stripSets: project.stripSets.map((set) => ({ ...set, label: set.label.slice(0, 4) })),
  };
}

/** The quilt with its first fabric photographed. */
function wearing(project: Project): Project {
  const fabrics = project.fabrics.map((fabric, at) =>
    at === 0 ? { ...photographed(id), id: fabric.id, name: fabric.name } : fabric,
  );
  return { ...project, fabrics };
}

/** The text of its file. */
export function fileOf(project: Project): string {
  return writeProject(project, PICTURES);
}

/** What the maker reads of problems. */
export function sentencesOf(problems: readonly Problem[]): string[] {
  return problems.map(({ message }) => speak(message));
}
