// Another quilt begun from the cloth of this one: its fabrics, and what no sewn set has taken.

import { stripsLeftBeside } from '../../cutting/sets/stripsUnused';
import { createProject } from '../../model/create';
import { quiltUses } from '../../model/fabricUses';
import type { Project, WedgePlan } from '../../model/project';

/**
 * A project without sets and blocks, on an empty wall, for the given number of wedges to the block. Strips of sets that are
 * only planned are on hand again. `project` is not altered; the new one needs an id and a name of its own.
 */
export function fromSameCloth(project: Project, perBlock: WedgePlan['perBlock']): Project {
  const fresh = createProject(project.id, project.name);
  const now = new Map(quiltUses(project).map((use) => [use.path, use.fabric]));
  // The few fabrics that no quilt is without.
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
