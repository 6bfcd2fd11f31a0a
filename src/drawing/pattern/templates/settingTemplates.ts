// The templates of the setting triangles, one for each size: side triangles have their long side on the edge of the top, setting
// corners both short sides.
import { type SettingTriangle, settingSquare } from '../../../cutting/yardage/triangleSquares';
import { cutOutline } from '../../../geometry/allowance';
import type { Outline } from '../../../geometry/point';
import { layOut } from '../../../geometry/setting';
import type { SettingPiece } from '../../../geometry/settingPiece';
import type { Inches } from '../../../model/units';
import { line } from '../lettering';
import { DASHED, FIRM, STYLES } from '../look';
import type { Template } from '../page';
import { grainArrow } from '../signs';
import { cutCounts, type Writing } from '../writing';
import { edgeNotch } from './cornerTemplate';

/** The templates of all setting triangles; none unless the quilt is set on point. */
export function settingTemplates(writing: Writing): Template[] {
  const groups = new Map<string, SettingPiece[]>();
  for (const piece of layOut(writing.project).pieces) {
    if (piece.part !== 'side' && piece.part !== 'setting-corner') continue;
    const key = `${piece.part} ${Math.round(piece.length * 1e4)}`;
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return Array.from(groups.values(), (pieces) =>
    triangle(pieces[0]!.part as SettingTriangle, pieces, writing),
  );
}

/** The finished outline, from the upper left corner of its box; its side on the edge of the top lies level at the foot. */
function finishedTriangle(part: SettingTriangle, long: Inches): Outline {
  return part === 'side'
    ? [{ x: long / 2, y: 0 }, { x: long, y: long / 2 }, { x: 0, y: long / 2 }]
    : [{ x: 0, y: 0 }, { x: long, y: long }, { x: 0, y: long }];
} // biome-ignore format: two triangles

function triangle(part: SettingTriangle, pieces: readonly SettingPiece[], writing: Writing): Template {
  const { project, say, type } = writing;
  const long = pieces[0]!.length;
  const seam = project.wedge.outerSeam;
  const finished = finishedTriangle(part, long);
  const cut = cutOutline(finished, seam);
  const left = Math.min(...cut.map((point) => point.x));
  const top = Math.min(...cut.map((point) => point.y));
  const moved = (outline: Outline): Outline => outline.map(({ x, y }) => ({ x: x - left, y: y - top }));
  const [cutLine, seamLine] = [moved(cut), moved(finished)];
  const width = Math.max(...cutLine.map((point) => point.x));
  const height = Math.max(...cutLine.map((point) => point.y));
  // The words stand where the triangle is broad.
  const label = { x: part === 'side' ? width / 2 : width * 0.28, y: height - seam - long * 0.14 };
  const title = part === 'side' ? say('Side triangle') : say('Setting corner');
  const counts = cutCounts(pieces.map((piece) => piece.fabric), writing); // biome-ignore format: one line
  // Sides that are sewn to blocks: the short sides of a side triangle, the long side of a corner.
  const sewn = part === 'side' ? [0, 2] : [0];
  return {
    title,
    words: `${counts} ${say(part === 'side' ? SIDE_WORDS : CORNER_WORDS, { square: { inches: settingSquare(part, long, seam, project.preferences.unit) } })}`,
    figure: {
      width,
      height: height + 0.02,
      marks: [
        { kind: 'line', points: [...seamLine, seamLine[0]!], stroke: DASHED },
        ...sewn.map((at) => edgeNotch(cutLine[at]!, cutLine[(at + 1) % 3]!, seam)),
        { kind: 'line', points: [...cutLine, cutLine[0]!], stroke: FIRM },
        ...line(title, STYLES.card, label.x, label.y, type, 'middle'),
        ...line(counts, STYLES.small, label.x, label.y + 0.18, type, 'middle'),
        ...grainArrow({ x: label.x, y: label.y + 0.36 }, Math.min(1, long * 0.1)),
        ...line(say('straight grain'), STYLES.label, label.x, label.y + 0.5, type, 'middle'),
        ...line(say('edge of the top'), STYLES.label, label.x, height - seam * 0.36, type, 'middle'),
      ],
    },
  };
}

const SIDE_WORDS =
  'The long side lies on the edge of the top, on the straight grain. Squares of {square} cut twice from corner to corner give four each. The dashed line is the seam.';
const CORNER_WORDS =
  'Both short sides lie on the edge of the top, on the straight grain. Squares of {square} halved give two each. The dashed line is the seam.';
