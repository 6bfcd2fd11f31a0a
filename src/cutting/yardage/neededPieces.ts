// Everything a quilt is cut from, as rows: strips of the sets, corners, what lies round the blocks, binding. Cloth comes
// later (fabricYardage.ts); the backing stands alone (backing.ts).

import type { HalfPlace, SettingPiece } from '../../geometry/settingPiece';
import { wedgeProblem } from '../../geometry/wedge';
import type { Project } from '../../model/project';
import { sewingSteps } from '../sewing/sewingSteps';
import { cornerPieces } from './cornerPieces';
import { CUTTING_STEPS, type NeededPiece } from './neededPiece';
import { type CuttingScope, setStrips } from './setStrips';
import { settingPieces } from './settingPieces';

/**
 * All rows in the order of work. With a wedge no block can be made from, only the strips: nothing else has a size. Once all blocks
 * of a row are in it, what is sewn between them is cut too, so it drops out of what is left; what is sewn to whole rows does not.
 */
export function neededPieces(project: Project, scope: CuttingScope): NeededPiece[] {
  const strips = setStrips(project, scope);
  if (wedgeProblem(project.wedge)) return strips;
  const setting = settingPieces(project, scope === 'left' ? sewnIn(project) : undefined);
  const rows = [...strips, ...cornerPieces(project, scope), ...setting];
  return CUTTING_STEPS.flatMap((step) => rows.filter((row) => row.step === step));
}

/** Whether a piece is sewn into a row of blocks that is whole. */
function sewnIn(project: Project): (piece: SettingPiece) => boolean {
  const joined = new Set(project.blocks.filter(({ progress }) => progress === 'joined').map(({ id }) => id));
  const isIn = (cell: number) => joined.has(project.wall.cells[cell]?.block ?? '');
  const sewn = new Set<string>();
  if (joined.size > 0)
    for (const step of sewingSteps(project)) {
      if (step.does !== 'rows') continue;
      for (const { parts } of step.lines) {
        const cells = parts.flatMap((part) => (part.kind === 'block' ? [part.cell] : []));
        if (cells.length === 0 || !cells.every(isIn)) continue;
        for (const part of parts)
          if (part.kind !== 'block' && part.cut.piece.place) sewn.add(keyOf(part.cut.piece.place));
      }
    }
  return ({ place }) => place !== undefined && sewn.has(keyOf(place));
}

function keyOf({ down, across }: HalfPlace): string {
  return `${down} ${across}`;
}
