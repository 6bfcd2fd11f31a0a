// The straight setting: rows from the left, rows of sashing with cornerstones or whole strips between them, all from the top
// down.
import type { Project } from '../../model/project';
import { cellAtHalfPlace, isPlain } from '../../model/wallCells';
import type { PieceAt } from './piecesByPlace';
import type { Joined, Line, Part, SewingStep } from './step';

export function straightSteps(project: Project, pieceAt: PieceAt): SewingStep[] {
  const { rows } = project.wall;
  const lines = Array.from({ length: rows }, (_, row) => rowLine(row, project, pieceAt));
  const joined: Joined[] = [];
  for (let after = 0; after <= rows; after += 1) {
    joined.push(...sashingAfter(after, project, pieceAt));
    if (after < rows) joined.push({ kind: 'row', line: lines[after]! });
  }
  const sashing = joined.flatMap((one) => (one.kind === 'sashing' ? [one.line] : []));
  const longer = (line: Line) => line.parts.length > 1;
  return [
    ...(lines.some(longer) ? [{ does: 'rows', slanted: false, lines } as const] : []),
    ...(sashing.some(longer) ? [{ does: 'sashing', slanted: false, lines: sashing } as const] : []),
    ...(joined.length > 1 ? [{ does: 'join', slanted: false, joined } as const] : []),
  ];
}

function rowLine(row: number, project: Project, pieceAt: PieceAt): Line {
  return { number: row + 1, parts: partsAlong(2 * row, project, pieceAt) };
}

/** Whatever lies along one half-grid line from the left. */
function partsAlong(down: number, project: Project, pieceAt: PieceAt): Part[] {
  const parts: Part[] = [];
  for (let across = -1; across < 2 * project.wall.columns; across += 1) {
    const cell = cellAtHalfPlace(down, across, project);
    const cut = pieceAt({ down, across });
    if (cell >= 0 && !isPlain(cell, project)) parts.push({ kind: 'block', at: across, cell });
    else if (cut) parts.push({ kind: 'piece', at: across, cut, height: 'across' });
  }
  return parts;
}

function sashingAfter(after: number, project: Project, pieceAt: PieceAt): Joined[] {
  const parts = partsAlong(2 * after - 1, project, pieceAt);
  if (parts.length === 0) return [];
  const stones = project.setting.sashing.cornerstones !== undefined;
  return [{ kind: stones ? 'sashing' : 'strip', line: { number: after, parts } }];
}
