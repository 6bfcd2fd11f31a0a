// The list of clashes of a quilt without the rest of its analysis, which is most of the work; analyse.test.ts holds that it is the same.
import type { AnalysisOptions } from '../../src/balance/analyse';
import { type Clash, clashesBetween, clashesInside } from '../../src/balance/clashes/clashes';
import { wallModel } from '../../src/balance/wall/wallModel';
import { clothTable } from '../../src/cloth/cloths';
import { asPieced } from '../../src/geometry/asPieced';
import type { Project } from '../../src/model/project';

export function clashList(given: Project, { cloth, lookalikes }: AnalysisOptions = {}): Clash[] {
  const project = asPieced(given);
  const model = wallModel(project, clothTable(project.fabrics, cloth, lookalikes));
  const inside = model.blocks.flatMap((_, block) => clashesInside(project, model, block));
  return [...inside, ...clashesBetween(project, model)];
}
