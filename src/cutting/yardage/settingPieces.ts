// Rows to cut for everything round the blocks: sashing, cornerstones, plain squares, setting triangles, borders, binding.
// They are read off the setting's own layout, piece by piece, so that what is drawn and what is cut cannot differ.

import { layOut, type SettingLayout } from '../../geometry/setting';
import type { SettingPiece, Side } from '../../geometry/settingPiece';
import { piecesIn } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Border, FabricId, Project, StripOnHand } from '../../model/project';
import { USUAL_MITRE_SPARE } from '../../model/setting';
import type { Inches } from '../../model/units';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { bindingWords, perimeter } from './binding';
import { type CuttingStep, type NeededPiece, onRuler, type PieceShape } from './neededPiece';
import { settingSquare, withSeams } from './triangleSquares';

/** What the rows are for, with where they are sewn and their words; {border} counts from 1 inside. */
const ROWS = {
  sideTriangles: { step: 'setting', words: 'Squares for side triangles, cut twice' },
  settingCorners: { step: 'setting', words: 'Squares for setting corners, halved' },
  plainSquares: { step: 'setting', words: 'Plain squares' },
  cornerstones: { step: 'sashing', words: 'Cornerstones of the sashing' },
  sashing: { step: 'sashing', words: 'Sashing' },
  sashingLevel: { step: 'sashing', words: 'Sashing, level' },
  sashingUpright: { step: 'sashing', words: 'Sashing, upright' },
  borderCornerstones: { step: 'borders', words: 'Cornerstones of border {border}' },
  borderEnds: { step: 'borders', words: 'Border {border}, top and bottom' },
  borderSides: { step: 'borders', words: 'Border {border}, sides' },
  piecesTop: { step: 'borders', words: 'Pieces of border {border}, top' },
  piecesRight: { step: 'borders', words: 'Pieces of border {border}, right side' },
  piecesBottom: { step: 'borders', words: 'Pieces of border {border}, bottom' },
  piecesLeft: { step: 'borders', words: 'Pieces of border {border}, left side' },
} as const satisfies Readonly<Record<string, { step: CuttingStep; words: string }>>;

type RowFor = keyof typeof ROWS;

const PIECES_OF_SIDE: Readonly<Record<Side, RowFor>> = {
  top: 'piecesTop',
  right: 'piecesRight',
  bottom: 'piecesBottom',
  left: 'piecesLeft',
};

/** What a piece is cut as: its size across and down in the quilt, and how many triangles one rectangle gives. */
interface Cut {
  readonly rowFor: RowFor;
  readonly shape: PieceShape;
  readonly width: Inches;
  readonly height: Inches;
  readonly upright: boolean;
}

interface Group {
  readonly cut: Cut;
  readonly fabric: FabricId;
  readonly pieces: SettingPiece[];
}

/** One row for each kind, size and fabric, in the order of the layout; the binding last. */
export function settingPieces(project: Project): NeededPiece[] {
  const layout = layOut(project);
  const groups = new Map<string, Group>();
  for (const piece of layout.pieces) {
    const cut = cutOf(piece, project);
    const size = `${Math.round(cut.width * 1e4)} ${Math.round(cut.height * 1e4)}`;
    const key = `${cut.rowFor} ${piece.border ?? ''} ${cut.shape} ${size} ${piece.fabric}`;
    const group = groups.get(key) ?? { cut, fabric: piece.fabric, pieces: [] };
    group.pieces.push(piece);
    groups.set(key, group);
  }
  const leftovers = stripsLeftBeside(project.stripsOnHand, project.stripSets);
  const rows = Array.from(groups.values(), (group) => neededOf(group, project, leftovers));
  return [...rows, ...bindingPiece(project, layout)];
}

function cutOf(piece: SettingPiece, project: Project): Cut {
  const { unit } = project.preferences;
  const seam = project.wedge.outerSeam;
  const onPoint = project.setting.layout.kind === 'onPoint' && piece.border === null;
  switch (piece.part) {
    case 'side': {
      const side = settingSquare(piece.part, piece.length, seam, unit);
      return { rowFor: 'sideTriangles', shape: 'quartered', width: side, height: side, upright: true };
    }
    case 'setting-corner': {
      const side = settingSquare(piece.part, piece.length, seam, unit);
      return { rowFor: 'settingCorners', shape: 'halved', width: side, height: side, upright: true };
    }
    default: {
      const cut = withSeams(piece, isKey(piece, project) ? project.wedge.seam : seam);
      const spare = 2 * (spareOf(piece, project) ?? 0);
      const [length, width] = [onRuler(cut.length + spare, unit), onRuler(cut.width, unit)];
      const level = piece.grain === 0;
      return {
        rowFor: rowForPiece(piece, project, onPoint),
        shape: 'rectangle',
        width: level ? length : width,
        height: level ? width : length,
        upright: !onPoint,
      };
    }
  }
}

function isKey(piece: SettingPiece, project: Project): boolean {
  return piece.part === 'border' && project.setting.borders[piece.border ?? -1]?.keys !== undefined;
}

/** What the strip of a mitred border is cut longer at each end; null where nothing is mitred. */
function spareOf(piece: SettingPiece, { setting }: Project): Inches | null {
  const border = piece.part === 'border' ? setting.borders[piece.border ?? -1] : undefined;
  return border ? mitreSpare(border) : null;
}

/** What the strips of a border are cut longer at each end for the mitres; null where it is not mitred. */
export function mitreSpare({ corners }: Border): Inches | null {
  return corners?.kind === 'mitred' ? (corners.spare ?? USUAL_MITRE_SPARE) : null;
}

/** Of pieces that stay rectangles. */
function rowForPiece(piece: SettingPiece, project: Project, onPoint: boolean): RowFor {
  const level = piece.grain === 0;
  switch (piece.part) {
    case 'plain':
      return 'plainSquares';
    case 'cornerstone':
      return piece.border === null ? 'cornerstones' : 'borderCornerstones';
    case 'border':
      if (isKey(piece, project)) return PIECES_OF_SIDE[piece.side ?? 'top'];
      return level ? 'borderEnds' : 'borderSides';
    default:
      if (onPoint) return 'sashing';
      return level ? 'sashingLevel' : 'sashingUpright';
  }
}

function neededOf({ cut, fabric, pieces }: Group, project: Project, leftovers: StripOnHand[]): NeededPiece {
  const count = rectangles(cut, fabric, pieces, project);
  const keys = isKey(pieces[0]!, project);
  const onHand = keys ? fromLeftovers(cut, fabric, pieces[0]!, count, leftovers) : 0;
  const why = [workings(cut, pieces, count, project)];
  if (keys) {
    why.push(
      counted(onHand, '1 can be cut from strips left over.', '{count} can be cut from strips left over.'),
    );
  }
  const spare = spareOf(pieces[0]!, project);
  if (spare !== null) why.push(spareWords(spare, cut, pieces[0]!));
  const { rowFor, ...size } = cut;
  const { border } = pieces[0]!;
  const { step, words } = ROWS[rowFor];
  const what = border === null ? phrase(words) : phrase(words, { border: border + 1 });
  return { step, what, ...size, fabric, count, onHand, why, ...(keys ? { inPiecedBorder: true } : {}) };
}

function spareWords(spare: Inches, cut: Cut, piece: SettingPiece): Phrase {
  const long = Math.max(cut.width, cut.height);
  return phrase(
    spare > 0
      ? 'The length reaches into both mitred corners: {finished} finished, at each end {point} for the seam round the point and {spare} to spare, together {long}.'
      : 'The length reaches into both mitred corners, with nothing to spare.',
    {
      finished: { inches: piece.length },
      point: { inches: (long - piece.length) / 2 - spare },
      spare: { inches: spare },
      long: { inches: long },
    },
  );
}

/** Rectangles that give all pieces. One-way triangles have to come from the right side of their square. */
function rectangles(cut: Cut, fabric: FabricId, pieces: readonly SettingPiece[], project: Project): number {
  if (cut.shape === 'halved') return Math.ceil(pieces.length / 2);
  if (cut.shape !== 'quartered') return pieces.length;
  if (!isOneWay(project, fabric)) return Math.ceil(pieces.length / 4);
  // A square cut twice gives one triangle for each side of the top; opposite sides take equally many.
  const level = pieces.filter((piece) => piece.grain === 0).length;
  return Math.ceil(Math.max(level, pieces.length - level) / 2);
}

function isOneWay(project: Project, fabric: FabricId): boolean {
  return project.fabrics.find((one) => one.id === fabric)?.oneWay === true;
}

function workings(cut: Cut, pieces: readonly SettingPiece[], count: number, project: Project): Phrase {
  const piece = pieces[0]!;
  const seam = { seam: project.wedge.outerSeam };
  const cutSize = { width: { inches: cut.width }, height: { inches: cut.height } };
  const values = { ...cutSize, seam, pieces: pieces.length, long: { inches: piece.length } };
  if (cut.shape === 'quartered') {
    return counted(
      count,
      '{pieces} triangles with a finished long side of {long}, four from the square: with seams {width}.',
      '{pieces} triangles with a finished long side of {long}, from {count} squares: with seams {width}.',
      values,
    );
  }
  if (cut.shape === 'halved') {
    return counted(
      count,
      '{pieces} triangles with finished short sides of {long}, two from the square: with seams {width}.',
      '{pieces} triangles with finished short sides of {long}, two from each of {count} squares: with seams {width}.',
      values,
    );
  }
  const level = piece.grain === 0;
  const finished = {
    across: { inches: level ? piece.length : piece.width },
    down: { inches: level ? piece.width : piece.length },
  };
  // What a mitred border has to spare has a working of its own.
  const spare = spareOf(piece, project) ?? 0;
  const say =
    spare > 0
      ? 'Finished {across} × {down}; with its seams and what is to spare {width} × {height}.'
      : 'Finished {across} × {down}; with a {seam} seam on every side {width} × {height}.';
  return phrase(say, { ...values, ...finished });
}

/** Takes strips from those left beside all sets for the pieces of a pieced border; returns how many pieces they give. */
function fromLeftovers(
  cut: Cut,
  fabric: FabricId,
  piece: SettingPiece,
  count: number,
  leftovers: StripOnHand[],
): number {
  const [strip, long] = piece.grain === 0 ? [cut.height, cut.width] : [cut.width, cut.height];
  let left = count;
  const rests: StripOnHand[] = [];
  for (const row of leftovers) {
    const each = piecesIn(row.length, long);
    if (row.fabric !== fabric || row.width < strip - 1e-6 || each === 0) continue;
    const strips = Math.min(row.count, Math.ceil(left / each));
    const cut = Math.min(left, strips * each);
    row.count -= strips;
    left -= cut;
    // The end of the last strip is there for the other sides.
    const onLast = cut - (strips - 1) * each;
    if (strips > 0 && onLast < each) rests.push({ ...row, length: row.length - onLast * long, count: 1 });
  }
  leftovers.push(...rests);
  return count - left;
}

/** The binding as one run round the finished top; nothing until its fabric is chosen. */
function bindingPiece(project: Project, layout: SettingLayout): NeededPiece[] {
  const { binding } = project.setting;
  if (!binding) return [];
  const extra = project.buying.bindingExtra;
  return [
    {
      step: 'binding',
      fabric: binding.fabric,
      what: phrase('Double binding'),
      shape: 'run',
      width: binding.cutWidth,
      height: perimeter(layout.width, layout.height) + extra,
      count: 1,
      onHand: 0,
      upright: false,
      why: bindingWords(layout.width, layout.height, extra),
    },
  ];
}
