// What is said where no single change mends a finding: never a way that cannot help. What lies inside a block is changed by trading
// wedges alone, and that of a sewn block by nothing; what lies between blocks by hanging them otherwise.
import type { Finding } from '../../balance/finding';
import { cellOf, findBlock } from '../../model/find';
import { whyCornersLocked, whyHangingLocked, whyPlacesLocked } from '../../model/freedom';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Scopes } from '../decisions';

/** What a shuffle can do about a finding, in itself: move or turn blocks, put corners on other places, trade wedges. */
export interface Ways {
  readonly move: boolean;
  readonly corners: boolean;
  readonly trade: boolean;
}

/** The ways in which a finding could be mended at all, as pins and sewn work stand. A finding of no block is of the whole top. */
export function waysToMend(project: Project, finding: Finding): Ways {
  const named = finding.blocks.flatMap((id) => findBlock(project, id) ?? []);
  const blocks = named.length > 0 ? named : project.blocks.filter((block) => cellOf(project, block.id));
  const trade = blocks.some((block) => whyPlacesLocked(block) === null && !cellOf(project, block.id)?.pinned);
  const inside = finding.kind === 'rim' || finding.kind === 'radial' || ofCorners(finding);
  const corners = ofCorners(finding) && blocks.some((block) => whyCornersLocked(project, block) === null);
  const hung = blocks.filter((block) => cellOf(project, block.id));
  const move = !inside && hung.some((block) => whyHangingLocked(project, block) === null);
  return { move, corners, trade };
}

/** Rims against the corner triangles of their own block: where the block hangs changes nothing of them. */
function ofCorners({ kind, clashes }: Finding): boolean {
  return kind === 'setting' && clashes.length > 0 && clashes.every((id) => id.startsWith('corner:'));
}

/** What to say where no single change mends a finding. `scopes` are what a shuffle may change as it is asked now. */
export function lastAdvice(project: Project, finding: Finding, scopes: Scopes): Phrase {
  const ways = waysToMend(project, finding);
  if (!ways.move && !ways.corners && !ways.trade) {
    const pinned = finding.blocks.some((id) => cellOf(project, id)?.pinned);
    return pinned
      ? phrase('The blocks concerned are pinned or sewn: unpin one, or live with it.')
      : phrase('The blocks concerned are sewn, so nothing can change: live with it.');
  }
  const may =
    (ways.move && (scopes.swap || scopes.turn)) ||
    (ways.corners && scopes.shiftCorners) ||
    (ways.trade && scopes.trade);
  if (may) return phrase('No single change mends this. A shuffle may; else live with it.');
  if (ways.move) return phrase('No single change mends this. A shuffle that may swap and turn blocks may.');
  return ways.corners
    ? phrase('No single change mends this. A shuffle that may turn corners by one wedge may.')
    : phrase('No single change mends this. A shuffle that may trade wedges may: tick it in its options.');
}
