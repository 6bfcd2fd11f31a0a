// The setting on point: slanted rows from their upper left ends, sashing before, between and after them, all from the upper right
// corner to the lower left; the setting corners last, and the edges trimmed.
import type { HalfPlace } from '../../geometry/settingPiece';
import type { Project } from '../../model/project';
import { isPlain } from '../../model/wallCells';
import type { PieceAt } from './piecesByPlace';
import { type RowEntry, slantedRows } from './slantedRows';
import type { Corner, Joined, Line, Part, SewingStep } from './step';

export function slantedSteps(project: Project, pieceAt: PieceAt): SewingStep[] {
  const { setting, wall } = project;
  const rows = slantedRows(project);
  const lines = rows.map((row, index) => rowLine(row, index, project, pieceAt));
  const joined: Joined[] = [];
  for (let after = 0; after <= rows.length; after += 1) {
    const between = sashingAfter(after, project, pieceAt);
    if (between) joined.push(between);
    if (after < rows.length) joined.push({ kind: 'row', line: lines[after]! });
  }
  const sashing = joined.flatMap((one) => (one.kind === 'sashing' ? [one.line] : []));
  const outside = setting.sashing.where === 'none' ? 0 : setting.sashing.width / Math.SQRT2;
  return [
    ...(lines.some(({ parts }) => parts.length > 1) ? [{ does: 'rows', slanted: true, lines } as const] : []),
    ...(sashing.length > 0 ? [{ does: 'sashing', slanted: true, lines: sashing } as const] : []),
    ...(joined.length > 1 ? [{ does: 'join', slanted: true, joined } as const] : []),
    { does: 'corners', corners: corners(rows, wall, pieceAt) },
    {
      does: 'trim',
      // The edge of the top runs through the middle of the crossings that lie on it.
      beyond: outside + project.wedge.outerSeam,
      points: isPlain(0, project) ? 'plain' : 'blocks',
    },
  ];
}

/** Half-grid places along a row, of its ends too. Down less across stays the same. */
function placesOf(row: readonly RowEntry[], index: number, columns: number): HalfPlace[] {
  const apart = 2 - 2 * columns + 2 * index;
  const first = Math.max(-1, -1 - apart);
  return row.map((_, at) => ({ down: first + at + apart, across: first + at }));
}

function rowLine(row: readonly RowEntry[], index: number, project: Project, pieceAt: PieceAt): Line {
  const { wall } = project;
  const parts: Part[] = [];
  placesOf(row, index, wall.columns).forEach((place, number) => {
    const entry = row[number]!;
    const { down, across } = place;
    const at = down + across;
    const cut = pieceAt(place);
    if (typeof entry === 'object' && !isPlain(entry.cell, project)) {
      parts.push({ kind: 'block', at, cell: entry.cell });
    } else if (entry === 'side' && cut) {
      // Of triangles along the top and the right edge the square corner points down and to the left, to the row after.
      const square = down < 0 || across > 2 * wall.columns - 2 ? 'after' : 'before';
      parts.push({ kind: 'triangle', at, cut, square });
    } else if (entry !== 'corner' && cut) {
      parts.push({ kind: 'piece', at, cut, height: 'across' });
    }
    const sash = pieceAt({ down: down + 0.5, across: across + 0.5 });
    if (number < row.length - 1 && sash) parts.push({ kind: 'piece', at: at + 1, cut: sash, height: 'across' });
  });
  return { number: index + 1, parts };
} // biome-ignore format: one loop

/** A whole strip, or cornerstones with short pieces between them; nothing without sashing. */
function sashingAfter(after: number, { wall, setting }: Project, pieceAt: PieceAt): Joined | null {
  const apart = 1 - 2 * wall.columns + 2 * after;
  const parts: Part[] = [];
  const whole = setting.sashing.cornerstones === undefined;
  for (let across = -1; across <= 2 * wall.columns - 1; across += 0.5) {
    const cut = pieceAt({ down: across + apart, across });
    if (cut) parts.push({ kind: 'piece', at: 2 * across + apart, cut, height: 'along' });
  }
  return parts.length === 0 ? null : { kind: whole ? 'strip' : 'sashing', line: { number: after, parts } };
}

function corners(rows: readonly RowEntry[][], { rows: high, columns }: Project['wall'], pieceAt: PieceAt): Corner[] {
  const at = (down: number, across: number, on: Corner['on']): Corner[] => {
    const cut = pieceAt({ down, across });
    return cut ? [{ cut, on }] : [];
  };
  const ends = rows.flatMap((row, index) => {
    const places = placesOf(row, index, columns);
    const [first, last] = [places[0]!, places.at(-1)!];
    return [
      ...(row[0] === 'corner' ? at(first.down, first.across, { row: index + 1, end: 'start' }) : []),
      ...(row.at(-1) === 'corner' ? at(last.down, last.across, { row: index + 1, end: 'end' }) : []),
    ];
  });
  return [...at(-1, 2 * columns - 1, 'first'), ...ends, ...at(2 * high - 1, -1, 'last')];
} // biome-ignore format: one signature
