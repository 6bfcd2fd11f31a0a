// Everything a quilt is cut from, as rows: strips of the sets, corners, what lies round the blocks, binding. Cloth comes
// later (fabricYardage.ts); the backing stands alone (backing.ts).
import { wedgeProblem } from '../../geometry/wedge';
import type { Project } from '../../model/project';
import { cornerPieces } from './cornerPieces';
import { CUTTING_STEPS, type NeededPiece } from './neededPiece';
import { type CuttingScope, setStrips } from './setStrips';
import { settingPieces } from './settingPieces';

/**
 * All rows in the order of work. With a wedge no block can be made from, only the strips: nothing else has a size. Once the
 * rows are sewn together what lies between the blocks is cut too, so of what is left, sashing and setting then drop out.
 */
export function neededPieces(project: Project, scope: CuttingScope): NeededPiece[] {
  const strips = setStrips(project, scope);
  if (wedgeProblem(project.wedge)) return strips;
  const joined = scope === 'left' && allJoined(project);
  const setting = settingPieces(project).filter(
    ({ step }) => !joined || step === 'borders' || step === 'binding',
  );
  const rows = [...strips, ...cornerPieces(project, scope), ...setting];
  return CUTTING_STEPS.flatMap((step) => rows.filter((row) => row.step === step));
}

function allJoined(project: Project): boolean {
  const hung = new Set(project.wall.cells.map((cell) => cell?.block));
  const blocks = project.blocks.filter((block) => hung.has(block.id));
  return blocks.length > 0 && blocks.every((block) => block.progress === 'joined');
}
