// Finds the piece that lies at a half-grid place inside the borders.
import type { HalfPlace } from '../../geometry/settingPiece';
import type { SettingGroup } from '../yardage/settingGroups';
import type { CutPiece } from './step';

/** The piece at a place, undefined where none lies. At one place lies one piece, or a block. */
export type PieceAt = (place: HalfPlace) => CutPiece | undefined;

export function piecesByPlace(groups: readonly SettingGroup[]): PieceAt {
  const found = new Map<string, CutPiece>();
  groups.forEach(({ letter, pieces }, row) => {
    for (const piece of pieces) if (piece.place) found.set(keyOf(piece.place), { row, letter, piece });
  });
  return (place) => found.get(keyOf(place));
}

function keyOf({ down, across }: HalfPlace): string {
  return `${down} ${across}`;
}
