// What must hold of a whole quilt besides its schema and its references, whether it is opened or changed.
import { checkWedges } from '../cutting/wedges/ledger';
import { checkPictured } from '../geometry/asPieced';
import { checkPieceCount } from '../geometry/pieceCount';
import type { Project } from '../model/project';
import type { Problem } from '../model/result';

/** The problems of its wedges, of the number of its pieces and of its pictures; empty where there are none. */
export function checkQuilt(project: Project): Problem[] {
  return [...checkWedges(project), ...checkPieceCount(project), ...checkPictured(project)];
}
