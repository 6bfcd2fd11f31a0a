// Begins another quilt from the fabrics, cloth and strips of this one.

import { stripsLeftBeside } from '../../cutting/sets/stripsUnused';
import { createProject } from '../../model/create';
import { quiltUses } from '../../model/fabricUses';
import type { Project, WedgePlan } from '../../model/project';

/**
 * A project without sets and blocks, with an empty wall and this number of wedges to the block. Strips of planned sets are on
 * hand again. `project` is not changed; the caller gives the new project an id and a name of its own.
 */
export function fromSameCloth(project: Project, perBlock: WedgePlan['perBlock']): Project {
  const fresh = createProject(project.id, project.name, project.preferences.unit);
  const now = new Map(quiltUses(project).map((use) => [use.path, use.fabric]));
  // The uses that every project has (corners, sashing) keep the fabrics of this quilt.
  for (const use of quiltUses(fresh)) use.put(now.get(use.path) ?? use.fabric);
  const sewn = project.stripSets.filter((set) => set.progress !== 'planned');
  return {
    ...fresh,
    fabrics: project.fabrics,
    stripsOnHand: stripsLeftBeside(project.stripsOnHand, sewn),
    clothOnHand: project.clothOnHand,
    wedge: { ...project.wedge, perBlock },
    preferences: project.preferences,
    buying: project.buying,
  };
}
