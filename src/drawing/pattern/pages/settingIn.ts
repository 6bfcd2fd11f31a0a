// Corner pieces with an inward corner (N = 10 and 12): how they are set in, in steps and drawings of one corner of the block.
import { cutOutline } from '../../../geometry/allowance';
import { cornerOutlines, inwardCorners } from '../../../geometry/block';
import type { Outline, Point } from '../../../geometry/point';
import { finishedBlock } from '../../../geometry/wedge';
import type { Block } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { drawBlock } from '../../drawProject';
import { clothMarks } from '../clothMarks';
import type { Composer } from '../composer';
import { textFigure } from '../lettering';
import { DASHED, EDGE, INK, ink, STYLES, WHITE } from '../look';
import { type Figure, type Mark, shifted, sideBySide, stacked } from '../page';
import { arrow } from '../signs';
import { dotAndClip } from '../templates/cornerTemplate';
import { clothOf, type Writing } from '../writing';

const COLUMNS = 3;
const GAP: Inches = 0.25;
const TALLEST: Inches = 1.15;

/** Nothing where every corner piece is a triangle. */
export function settingIn(composer: Composer, block: Block, writing: Writing): void {
  const { say } = writing;
  const outline = cornerOutlines(writing.project.wedge)[0]!;
  const [inward] = inwardCorners(outline);
  if (inward === undefined) return;
  const step = composer.width / COLUMNS;
  const width = step - GAP;
  const stage = (words: string, marks: readonly Mark[], height: Inches): Figure =>
    stacked([{ width, height, marks }, textFigure(words, STYLES.small, width, writing.type)], 0.06);
  const scale = scaleOf(width, writing);
  const { height } = finishedBlock(writing.project.wedge);
  const tall = (height / 2) * scale;
  const sewn = (from: number, to: number) => [
    ...quarter(block, scale, writing),
    ...seam(outline[from]!, outline[to]!, inward, scale, writing),
  ];
  const figures = [
    stage(
      say('Mark the dot on the wrong side of the corner piece, where its two seam lines meet in the inward corner.'),
      cornerAlone(outline, inward, width, tall, writing),
      tall,
    ),
    stage(
      say('Pin one inner edge to its rim, right sides together, the dot on the end of the seam between the two wedges. Sew from the outside to the dot, not a stitch further, and fasten off.'),
      sewn(inward - 1, inward),
      tall,
    ),
    stage(
      say('Clip the allowance of the corner piece to a thread before the dot. Turn the piece so that its other edge lies on the next rim, pin, and sew from the dot outwards. Press towards the corner.'),
      sewn(inward, inward + 1),
      tall,
    ),
  ];
  const row = sideBySide(figures, step);
  composer.heading(say('Setting in a corner piece'), row.height + 0.1);
  composer.add(row, 0.04);
} // biome-ignore format: three stages

/** The upper right quarter of the block fills the width, but is no higher than leaves room for it under the other drawings. */
function scaleOf(width: Inches, { project }: Writing): number {
  const { width: across, height } = finishedBlock(project.wedge);
  return Math.min((2 * width) / across, (2 * TALLEST) / height);
}

/** From the middle of the block to the page: the quarter's lower left corner is the middle. */
function onPage(scale: number, { project }: Writing): (point: Point) => Point {
  const { height } = finishedBlock(project.wedge);
  return ({ x, y }) => ({ x: x * scale, y: (y + height / 2) * scale });
}

/** The wedges the corner piece touches, and the piece in its place. */
function quarter(block: Block, scale: number, writing: Writing): Mark[] {
  const { project } = writing;
  const outline = cornerOutlines(project.wedge)[0]!;
  const rims = outline.slice(1);
  const pieces = drawBlock(project, block);
  const touching = pieces.filter(
    (piece) => piece.place !== null && piece.outline.filter((point) => rims.some((rim) => near(rim, point))).length > 1,
  );
  const places = new Set(touching.map((piece) => piece.place));
  const corner = pieces.find((piece) => piece.part === 'corner');
  const shown = pieces.filter((piece) => piece.place !== null && places.has(piece.place));
  const { height } = finishedBlock(project.wedge);
  return shifted(clothMarks(corner ? [...shown, corner] : shown, scale, writing), 0, (height / 2) * scale);
} // biome-ignore format: a long line

function near(one: Point, other: Point): boolean {
  return Math.hypot(one.x - other.x, one.y - other.y) < 1e-6;
}

/** A seam of the corner piece, the way it is sewn, and the dot. */
function seam(from: Point, to: Point, inward: number, scale: number, writing: Writing): Mark[] {
  const put = onPage(scale, writing);
  const dot = cornerOutlines(writing.project.wedge)[0]![inward]!;
  return [
    ...arrow(put(from), put(to), 0.1),
    { kind: 'disc', centre: put(dot), radius: 0.05, fill: ink(WHITE), stroke: null },
    { kind: 'disc', centre: put(dot), radius: 0.035, fill: ink(INK), stroke: null },
  ];
}

/** The piece as cut, its seam line, the dot and the clip. */
function cornerAlone(outline: Outline, inward: number, width: Inches, tall: Inches, writing: Writing): Mark[] {
  const { project } = writing;
  const cut = cutOutline(outline, project.wedge.outerSeam);
  const [xs, ys] = [cut.map(({ x }) => x), cut.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const size = { x: Math.max(...xs) - left, y: Math.max(...ys) - top };
  const scale = Math.min((width * 0.8) / size.x, (tall * 0.9) / size.y);
  const put = ({ x, y }: Point) => ({ x: (x - left) * scale, y: (y - top) * scale });
  const [cutLine, seamLine] = [cut.map(put), outline.map(put)];
  return [
    { kind: 'shape', outlines: [cutLine], fill: clothOf(writing, project.setting.cornerFabric, scale, 0), stroke: null },
    { kind: 'line', points: [...seamLine, seamLine[0]!], stroke: DASHED },
    { kind: 'line', points: [...cutLine, cutLine[0]!], stroke: EDGE },
    ...dotAndClip(seamLine[inward]!, cutLine[inward]!),
  ];
} // biome-ignore format: long lines
