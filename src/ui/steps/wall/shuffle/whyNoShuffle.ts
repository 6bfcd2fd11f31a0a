// Why a shuffle would find nothing as things stand; the foot and the shuffle's own part ask here.
import { askedOf } from '../../../../arrange/search/effort';
import { TERM_NAMES } from '../../../../balance/score/weights';
import { weightsOf } from '../../../../balance/score/wishes';
import { hasWedges } from '../../../../model/find';
import type { Project } from '../../../../model/project';

/** `empty`: nothing hangs; `bare`: no wedges; `unmoving`: it may move nothing; `unminding`: nothing counts. Null: it can begin. */
export type NoShuffle = 'empty' | 'bare' | 'unmoving' | 'unminding';

export function whyNoShuffle(project: Project): NoShuffle | null {
  const { wall, preferences } = project;
  if (wall.cells.every((cell) => cell === null)) return 'empty';
  if (!hasWedges(project)) return 'bare';
  if (Object.values(askedOf(preferences).scopes).every((free) => !free)) return 'unmoving';
  const weights = weightsOf(preferences);
  return TERM_NAMES.every((name) => weights[name] === 0) ? 'unminding' : null;
}
