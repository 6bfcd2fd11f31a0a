// Borders from the inside out: the sides, then top and bottom across them; with cornerstones at the ends of top and bottom;
// mitred, all four together.

import type { Side } from '../../geometry/contact';
import { layOut } from '../../geometry/setting';
import type { Project } from '../../model/project';
import type { SettingGroup } from '../yardage/settingGroups';
import type { BorderRun, CutPiece, SewingStep } from './step';

/** The order they are sewn on. */
const ORDER: readonly Side[] = ['left', 'right', 'top', 'bottom'];

export function borderSteps(project: Project, groups: readonly SettingGroup[]): SewingStep[] {
  const rows = new Map(groups.flatMap(({ pieces: own }, row) => own.map((piece) => [piece, row])));
  // In the order of the layout, in which the pieces of a pieced border follow each other.
  const pieces = layOut(project).pieces.flatMap((piece): CutPiece[] => {
    const row = rows.get(piece);
    return row === undefined ? [] : [{ row, letter: null, piece }];
  });
  return project.setting.borders.map(({ corners }, border): SewingStep => {
    const own = pieces.filter(({ piece }) => piece.border === border);
    const runs = ORDER.map((side): BorderRun => {
      return { side, parts: own.filter(({ piece }) => piece.side === side) };
    });
    if (corners?.kind !== 'cornerstones') {
      return { does: 'border', border, corners: corners?.kind ?? 'butted', runs };
    }
    const [topLeft, bottomLeft, topRight, bottomRight] = own.filter(
      ({ piece }) => piece.part === 'cornerstone',
    );
    const between = ({ side, parts }: BorderRun, first: CutPiece, last: CutPiece): BorderRun => {
      return { side, parts: [first, ...parts, last] };
    };
    const [left, right, top, bottom] = runs as [BorderRun, BorderRun, BorderRun, BorderRun];
    return {
      does: 'border',
      border,
      corners: 'cornerstones',
      // Clockwise, as the pieces of pieced borders run: the bottom from the right.
      runs: [left, right, between(top, topLeft!, topRight!), between(bottom, bottomRight!, bottomLeft!)],
    };
  });
}
