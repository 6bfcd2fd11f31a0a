// The top drawn apart in its rows, in the order they are joined, each block and row with its number.
import { area, type Outline, type Point } from '../../../geometry/point';
import { layOut, type SettingLayout } from '../../../geometry/setting';
import type { SettingPiece } from '../../../geometry/settingPiece';
import type { HungBlock } from '../../drawing';
import { clothMarks } from '../clothMarks';
import { line } from '../lettering';
import { STYLES, type Style } from '../look';
import type { Figure, Mark } from '../page';
import { shifted } from '../page';
import { numberDisc } from '../signs';
import type { Writing } from '../writing';
import { slantedRows } from './slantedRows';

/** How far rows are drawn apart on the page, inches. */
const APART = 0.13;
/** Room at the left and above for the numbers of the rows. */
const BESIDE = 0.32;

/** The part inside the borders, its rows drawn apart in the order they are joined, with the numbers of blocks and rows. */
export function rowsFigure(width: number, height: number, writing: Writing): Figure {
  const { project, drawing } = writing;
  const layout = layOut(project);
  const slanted = layout.tilt === 45;
  const toward: Point = slanted ? { x: -Math.SQRT1_2, y: Math.SQRT1_2 } : { x: 0, y: 1 };
  const pieces = layout.pieces.filter((piece) => piece.border === null);
  const depths = [
    ...drawing.blocks.map(({ centre }) => depthOf(centre, toward)),
    ...drawing.emptyCells.map(({ box }) =>
      depthOf({ x: box.x + box.width / 2, y: box.y + box.height / 2 }, toward),
    ),
    ...pieces.filter((piece) => piece.part === 'plain').map((piece) => depthOf(middleOf(piece), toward)),
  ];
  const rows = distinct(depths);
  const ranks = pieces.map((piece) => rankOf(depthOf(middleOf(piece), toward), rows));
  const first = Math.min(0, ...ranks);
  const gaps = Math.max(rows.length - 1, ...ranks) - first;
  const spread = { x: slanted ? gaps * APART * 0.75 : 0, y: gaps * APART * (slanted ? 0.75 : 1.6) };
  const scale = Math.min(
    (width - spread.x - BESIDE) / layout.inner.width,
    (height - spread.y - BESIDE) / layout.inner.height,
    0.35,
  );
  const left = (layout.width - layout.inner.width) / 2;
  const above = (layout.height - layout.inner.height) / 2;
  const moved = (marks: readonly Mark[], depth: number): Mark[] => {
    const by = (rankOf(depth, rows) - first) * APART;
    const x = slanted ? spread.x + toward.x * by : 0;
    const y = slanted ? toward.y * by : by * 1.6;
    return shifted(marks, x - left * scale, y - above * scale);
  };
  const marks = [
    ...pieces.flatMap((piece) => moved(pieceMarks(piece, scale, writing), depthOf(middleOf(piece), toward))),
    ...drawing.blocks.flatMap((hung) =>
      moved(
        [...clothMarks(hung.pieces, scale, writing, hung), ...blockNumber(hung, scale, writing)],
        depthOf(hung.centre, toward),
      ),
    ),
    ...rowStarts(project, layout).flatMap((start, row) =>
      moved(rowNumber(row + 1, start, scale, writing), depthOf(start, toward)),
    ),
  ];
  return {
    width: layout.inner.width * scale + spread.x + BESIDE,
    height: layout.inner.height * scale + spread.y + BESIDE,
    marks: shifted(marks, BESIDE, BESIDE),
  };
}

function blockNumber(hung: HungBlock, scale: number, { drawing, type }: Writing): Mark[] {
  const cell = Math.min(drawing.block.width, drawing.block.height) * scale;
  const radius = Math.min(0.14, cell * 0.2);
  const at = { x: hung.centre.x * scale, y: hung.centre.y * scale };
  const style: Style = { ...STYLES.labelStrong, size: radius * 1.02, leading: radius };
  return numberDisc(String(hung.number), at, style, type, radius);
}

/** Where each row begins at the edge of the part inside the borders: at its left, or where its first triangle lies. */
function rowStarts(project: Writing['project'], layout: SettingLayout): Point[] {
  const step = layout.inner.width / project.wall.columns / 2;
  const slanted = slantedRows(project);
  if (slanted.length === 0) {
    return Array.from({ length: project.wall.rows }, (_, row) => {
      return { x: (layout.width - layout.inner.width) / 2, y: layout.centres[row * project.wall.columns]!.y };
    });
  }
  return slanted.map((row) => {
    const first = row.find((entry) => typeof entry === 'object')!;
    const { x, y } = layout.centres[first.cell]!;
    return { x: x - step, y: y - step };
  });
}

function rowNumber(row: number, start: Point, scale: number, { say, type, project }: Writing): Mark[] {
  const onPoint = project.setting.layout.kind === 'onPoint';
  const [x, y] = [start.x * scale, start.y * scale];
  const words = onPoint ? say('row {row}', { row }) : String(row);
  return onPoint
    ? line(words, STYLES.label, x - 0.03, y - 0.03, type, 'right')
    : line(words, STYLES.labelStrong, x - 0.07, y + 0.04, type, 'right');
}

function pieceMarks(piece: SettingPiece, scale: number, writing: Writing): Mark[] {
  return clothMarks([{ ...piece, place: null, band: null }], scale, writing);
}

function depthOf(point: Point, toward: Point): number {
  return point.x * toward.x + point.y * toward.y;
}

function middleOf({ outline }: { outline: Outline }): Point {
  const count = outline.length;
  const sum = outline.reduce((all, point) => ({ x: all.x + point.x, y: all.y + point.y }), { x: 0, y: 0 });
  return area(outline) > 0 ? { x: sum.x / count, y: sum.y / count } : outline[0]!;
}

function distinct(depths: readonly number[]): number[] {
  return depths.toSorted((one, other) => one - other).filter((depth, index, all) => index === 0 || depth - all[index - 1]! > 1e-6);
} // biome-ignore format: one chain

/** Which row a depth lies in, counted from 0; halves lie between two rows, as sashing does. */
function rankOf(depth: number, rows: readonly number[]): number {
  if (rows.length < 2) return 0;
  const after = rows.findIndex((row) => row >= depth - 1e-6);
  if (after === 0) return depth < rows[0]! - (rows[1]! - rows[0]!) * 0.45 ? -0.5 : 0;
  if (after < 0) {
    const last = rows.length - 1;
    return depth > rows[last]! + (rows[last]! - rows[last - 1]!) * 0.45 ? last + 0.5 : last;
  }
  const [from, to] = [rows[after - 1]!, rows[after]!];
  const part = (depth - from) / (to - from);
  if (part < 0.4) return after - 1;
  return part > 0.6 ? after : after - 0.5;
}
