// The template of the corner piece, which makes a block a square or a rectangle: a triangle for N = 6 and 8, with more sides for
// 10 and 12.
import { cutOutline } from '../../../geometry/allowance';
import { cornerOutlines, inwardCorners } from '../../../geometry/block';
import type { Outline, Point } from '../../../geometry/point';
import { findBlock } from '../../../model/find';
import type { FabricId } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { cornerFabricOf } from '../../../model/wallCells';
import { line } from '../lettering';
import { DASHED, FIRM, INK, ink, STYLES } from '../look';
import type { Mark, Template } from '../page';
import { grainArrow } from '../signs';
import { cutCounts, type Writing } from '../writing';

/** The template of the corner piece, with words on its use. */
export function cornerTemplate(writing: Writing): Template {
  const { project, say, type } = writing;
  const { wedge } = project;
  const seam = wedge.outerSeam;
  const finished = cornerOutlines(wedge)[0]!;
  const cut = cutOutline(finished, seam);
  const left = Math.min(...cut.map((point) => point.x));
  const top = Math.min(...cut.map((point) => point.y));
  const moved = (outline: Outline) => outline.map(({ x, y }) => ({ x: x - left, y: y - top }));
  const [cutLine, seamLine] = [moved(cut), moved(finished)];
  const width = Math.max(...cutLine.map((point) => point.x));
  const height = Math.max(...cutLine.map((point) => point.y));
  // The words stand where the piece is broad: near its square corner, which is the first point.
  const corner = seamLine[0]!;
  const leg = { across: Math.abs(seamLine.at(-1)!.x - corner.x), down: Math.abs(seamLine[1]!.y - corner.y) };
  const reach = { across: Math.max(leg.across, Math.abs(seamLine[1]!.x - corner.x)), down: Math.max(leg.down, Math.abs(seamLine.at(-1)!.y - corner.y)) }; // biome-ignore format: one line
  const label = { x: corner.x - reach.across * 0.27, y: corner.y + reach.down * 0.22 };
  const title = finished.length === 3 ? say('Corner triangle') : say('Corner piece');
  return {
    title,
    words: [cutCounts(cornersToCut(writing), writing), cornerNote(writing, finished.length === 3)]
      .join(' ')
      .trim(),
    figure: {
      width,
      height: height + 0.02,
      marks: [
        { kind: 'line', points: [...seamLine, seamLine[0]!], stroke: DASHED },
        ...notches(cutLine, seam),
        ...inwardCorners(finished).flatMap((at) => dotAndClip(seamLine[at]!, cutLine[at]!)),
        { kind: 'line', points: [...cutLine, cutLine[0]!], stroke: FIRM },
        ...line(title, STYLES.smallStrong, label.x, label.y, type, 'middle'),
        ...grainArrow({ x: label.x, y: label.y + 0.16 }, Math.min(0.5, reach.across * 0.16)),
      ],
    },
  };
}

/** The fabric of each corner of each block on the wall; one entry for each piece to cut. */
function cornersToCut({ project }: Writing): FabricId[] {
  return project.wall.cells.flatMap((cell, index) => {
    const block = cell && findBlock(project, cell.block);
    return block ? Array.from({ length: 4 }, () => cornerFabricOf(project, block, index)) : [];
  });
}

function cornerNote({ project, say }: Writing, triangle: boolean): string {
  const { perBlock } = project.wedge;
  const mirrored = perBlock % 4 !== 0;
  if (mirrored && triangle) return say('Four to the block: two as drawn, two with the template turned over. It just fits: the rectangles of the cutting list may be larger, to be trimmed after sewing. The arrow shows the straight grain.'); // biome-ignore format: three sentences
  if (triangle) return say('Four to the block. It just fits: the squares of the cutting list may be larger, to be trimmed after sewing. The arrow shows the straight grain.'); // biome-ignore format: two sentences
  return [
    mirrored
      ? say('Four to the block, one from each rectangle: two as drawn, two with the template turned over.')
      : say('Four to the block, one from each square.'),
    say('It just fits; the arrow shows the straight grain. Mark the dot on the wrong side: there its two seams meet. Clip along the short line when it is sewn in, not before.'),
  ].join(' ');
} // biome-ignore format: long sentences

/** How far short of the dot the allowance is clipped: a thread or two. */
const SHORT_OF_DOT: Inches = 0.04;

/** The dot where the seams of an inward corner meet, and the line its allowance is clipped on. */
export function dotAndClip(dot: Point, edge: Point): Mark[] {
  const length = Math.hypot(edge.x - dot.x, edge.y - dot.y);
  const part = Math.min(1, SHORT_OF_DOT / length);
  const end = { x: dot.x + (edge.x - dot.x) * part, y: dot.y + (edge.y - dot.y) * part };
  return [
    { kind: 'disc', centre: dot, radius: 0.035, fill: ink(INK), stroke: null },
    { kind: 'line', points: [edge, end], stroke: { ink: INK, width: 0.014 } },
  ];
}

function normal(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
}

/** Notches in the middle of the edges that are sewn to rims: all but the two edges at the square corner. */
function notches(cut: Outline, seam: Inches): Mark[] {
  return cut.slice(1, -1).map((from, index) => edgeNotch(from, cut[index + 2]!, seam));
}

/** A notch in the seam allowance at the middle of an edge; the piece lies to the right of `from` → `to`. */
export function edgeNotch(from: Point, to: Point, seam: Inches): Mark {
  const at = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const out = normal(from, to);
  const end = { x: at.x - out.x * seam * 0.6, y: at.y - out.y * seam * 0.6 };
  return { kind: 'line', points: [at, end], stroke: { ink: INK, width: 0.02 } };
}
