// The top drawn apart in its lines, in the order they are joined (cutting/sewing), each block and row with its number and each
// piece with its letter.
import type { CutPiece, Line, Part, SewingStep } from '../../../cutting/sewing/step';
import { area, extentAlong, type Outline, type Point, placed } from '../../../geometry/point';
import { layOut } from '../../../geometry/setting';
import type { Inches } from '../../../model/units';
import type { HungBlock } from '../../drawing';
import { clothMarks } from '../clothMarks';
import { line } from '../lettering';
import { DASHED, ink, STYLES, type Style, WHITE } from '../look';
import type { Figure, Mark } from '../page';
import { shifted } from '../page';
import { numberDisc } from '../signs';
import type { Writing } from '../writing';

/** How far lines are drawn apart on the page: rows, and where sashing is one of the two. */
const APART: Inches = 0.19;
const APART_SASHING: Inches = 0.11;
/** How far setting corners lie from their row. */
const CORNER_APART: Inches = 0.14;
/** Room round the drawing for the numbers of the rows. */
const BESIDE: Inches = 0.42;
/** On pieces narrower than this on the page, or small ones, a letter stands once in a line. */
const NARROW: Inches = 0.075;

/** A line and how far it is moved: inches on the page along the way lines follow each other. */
interface Apart {
  readonly line: Line;
  readonly isRow: boolean;
  readonly by: Inches;
}

/** The part inside the borders, its lines drawn apart in the order they are joined. */
export function rowsFigure(
  width: Inches,
  height: Inches,
  steps: readonly SewingStep[],
  writing: Writing,
): Figure {
  const layout = layOut(writing.project);
  const { inner } = layout;
  const slanted = layout.tilt === 45;
  const lines = linesApart(steps, writing);
  const corners = cornersApart(steps, lines, layout);
  const reach = lines.at(-1)?.by ?? 0;
  const toward: Point = slanted ? { x: -Math.SQRT1_2, y: Math.SQRT1_2 } : { x: 0, y: 1 };
  const around = slanted ? CORNER_APART : 0;
  const spread = { x: Math.abs(toward.x) * reach + 2 * around, y: toward.y * reach + 2 * around };
  const scale = Math.min(
    (width - spread.x - BESIDE) / inner.width,
    (height - spread.y - BESIDE) / inner.height,
    0.35,
  );
  // From the upper left corner of what is inside the borders; lines on point go to the left as they go down.
  const from = {
    x: around + Math.abs(toward.x) * reach - ((layout.width - inner.width) / 2) * scale,
    y: around - ((layout.height - inner.height) / 2) * scale,
  };
  const moved = (marks: readonly Mark[], by: Inches, out: Point = { x: 0, y: 0 }) =>
    shifted(marks, from.x + toward.x * by + out.x, from.y + toward.y * by + out.y);
  const marks = [
    ...lines.flatMap(({ line: one, by }) => moved(lineMarks(one, scale, writing), by)),
    ...corners.flatMap(({ cut, by, out }) => moved(pieceMarks(cut, scale, true, writing), by, out)),
    ...lines.flatMap(({ line: one, isRow, by }) => {
      const corner = corners.find(({ row }) => isRow && row === one.number);
      return isRow ? moved(rowNumber(one, corner, scale, writing), by, corner?.out) : [];
    }),
  ];
  return {
    width: inner.width * scale + spread.x + BESIDE,
    height: inner.height * scale + spread.y + BESIDE,
    marks: shifted(marks, BESIDE, BESIDE * 0.7),
  };
}

/** A setting corner, the row it begins, and how far it is moved with its row and away from it. */
interface CornerApart {
  readonly cut: CutPiece;
  readonly row: number | null;
  readonly by: Inches;
  readonly out: Point;
}

function cornersApart(
  steps: readonly SewingStep[],
  lines: readonly Apart[],
  top: { readonly width: Inches; readonly height: Inches },
): CornerApart[] {
  const rowBy = (row: number) => lines.find((one) => one.isRow && one.line.number === row)?.by ?? 0;
  return steps.flatMap((step) =>
    step.does !== 'corners'
      ? []
      : step.corners.map(({ cut, on }): CornerApart => {
          const out = outwards(cut.piece.outline, top);
          if (on === 'first') return { cut, out, row: null, by: 0 };
          if (on === 'last') return { cut, out, row: null, by: lines.at(-1)?.by ?? 0 };
          return { cut, out, row: on.end === 'start' ? on.row : null, by: rowBy(on.row) };
        }),
  );
}

/** Lines in the order they are joined; a single row where nothing is joined. */
function linesApart(steps: readonly SewingStep[], { project }: Writing): Apart[] {
  const join = steps.find((step) => step.does === 'join');
  const rows = steps.find((step) => step.does === 'rows');
  const single: Line = { number: 1, parts: [{ kind: 'block', at: 0, cell: 0 }] };
  const joined = join?.joined ?? (rows?.lines ?? [single]).map((one) => ({ kind: 'row' as const, line: one }));
  let by = 0;
  return joined.map((one, index) => {
    const sashed = project.setting.sashing.where !== 'none';
    if (index > 0) by += sashed ? APART_SASHING : APART;
    return { line: one.line, isRow: one.kind === 'row', by };
  });
} // biome-ignore format: one line

function lineMarks({ parts }: Line, scale: number, writing: Writing): Mark[] {
  // Where a letter stands once in the line, it stands on the middle one of its pieces.
  const places = new Map<string | null, number[]>();
  parts.forEach((part, index) => {
    if (part.kind === 'block') return;
    const { letter } = part.cut;
    places.set(letter, [...(places.get(letter) ?? []), index]);
  });
  const middles = new Set([...places.values()].map((own) => own[Math.floor(own.length / 2)]!));
  return parts.flatMap((part, index): Mark[] => {
    if (part.kind !== 'block') return pieceMarks(part.cut, scale, middles.has(index), writing);
    const hung = writing.drawing.blocks.find(({ cell }) => cell === part.cell);
    return hung
      ? [...clothMarks(hung.pieces, scale, writing, hung), ...blockNumber(hung, scale, writing)]
      : [emptyMark(outlineOf(part, writing.project), scale)];
  });
}

/** Where a block is wanted and none hangs. */
function emptyMark(outline: Outline, scale: number): Mark {
  const points = [...outline, outline[0]!].map(({ x, y }) => ({ x: x * scale, y: y * scale }));
  return { kind: 'line', points, stroke: DASHED };
}

function pieceMarks({ piece, letter }: CutPiece, scale: number, isMiddle: boolean, writing: Writing): Mark[] {
  const cloth = clothMarks([{ ...piece, place: null, band: null }], scale, writing);
  const { length, width } = extentAlong(piece.outline, piece.grain);
  const narrow = Math.min(length, width) * scale;
  const size = Math.min(0.1, Math.max(0.066, narrow * 0.75));
  // A letter that would hide its piece stands on one of them only.
  const hides = narrow < NARROW || area(piece.outline) * scale * scale < 3 * size * size;
  if (letter === null || (hides && !isMiddle)) return cloth;
  const style: Style = { ...STYLES.labelStrong, size, leading: size };
  const { x, y } = middleOf(piece.outline);
  const at = { x: x * scale, y: y * scale };
  return [
    ...cloth,
    { kind: 'disc', centre: at, radius: size * 0.62, fill: ink(WHITE), stroke: null },
    ...line(letter, style, at.x, at.y + size * 0.345, writing.type, 'middle'),
  ];
}

function blockNumber(hung: HungBlock, scale: number, { drawing, type }: Writing): Mark[] {
  const cell = Math.min(drawing.block.width, drawing.block.height) * scale;
  const radius = Math.min(0.14, cell * 0.2);
  const at = { x: hung.centre.x * scale, y: hung.centre.y * scale };
  const style: Style = { ...STYLES.labelStrong, size: radius * 1.02, leading: radius };
  return numberDisc(String(hung.number), at, style, type, radius);
}

/** At the left end of a row; on point at its upper left end, or at the setting corner there. */
function rowNumber(row: Line, corner: CornerApart | undefined, scale: number, writing: Writing): Mark[] {
  const { say, type, project } = writing;
  const { tilt } = layOut(project);
  const [first] = row.parts;
  if (!first) return [];
  const outline = corner ? corner.cut.piece.outline : outlineOf(first, project);
  if (tilt === 0) {
    const x = Math.min(...outline.map((point) => point.x)) * scale;
    const y = middleOf(outline).y * scale + 0.04;
    return line(String(row.number), STYLES.labelStrong, x - 0.07, y, type, 'right');
  }
  const start = outline.reduce((best, point) => (point.x + point.y < best.x + best.y - 1e-9 ? point : best));
  const words = say('row {row}', { row: row.number });
  return line(words, STYLES.label, start.x * scale - 0.03, start.y * scale - 0.03, type, 'right');
}

function outlineOf(part: Part, project: Writing['project']): Outline {
  if (part.kind !== 'block') return part.cut.piece.outline;
  const { block, centres, tilt } = layOut(project);
  return placed(squareOf(block), 0, centres[part.cell]!, tilt);
}

function squareOf({ width, height }: { readonly width: Inches; readonly height: Inches }): Outline {
  const [x, y] = [width / 2, height / 2];
  return [{ x: -x, y: -y }, { x, y: -y }, { x, y }, { x: -x, y }];
} // biome-ignore format: a box

/** A setting corner moves away from the middle of the top. */
function outwards(
  outline: Outline,
  { width, height }: { readonly width: Inches; readonly height: Inches },
): Point {
  const { x, y } = middleOf(outline);
  const by = CORNER_APART * Math.SQRT1_2;
  return { x: x < width / 2 ? -by : by, y: y < height / 2 ? -by : by };
}

function middleOf(outline: Outline): Point {
  const sum = outline.reduce((all, point) => ({ x: all.x + point.x, y: all.y + point.y }), { x: 0, y: 0 });
  return { x: sum.x / outline.length, y: sum.y / outline.length };
}
