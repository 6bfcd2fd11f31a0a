// The steps from finished blocks and cut pieces to the whole top.
import type { Project } from '../../model/project';
import { settingGroups } from '../yardage/settingGroups';
import { borderSteps } from './borderSteps';
import { piecesByPlace } from './piecesByPlace';
import { slantedSteps } from './slantedSteps';
import type { SewingStep } from './step';
import { straightSteps } from './straightSteps';

/** Steps in the order of work: what is inside the borders, then the borders from the inside out. */
export function sewingSteps(project: Project): SewingStep[] {
  const groups = settingGroups(project);
  const inside =
    project.setting.layout.kind === 'onPoint'
      ? slantedSteps(project, piecesByPlace(groups))
      : straightSteps(project, piecesByPlace(groups));
  return [...inside, ...borderSteps(project, groups)];
}
