// What lies round the blocks, put together by what is cut alike: the kind, size and fabric of its pieces, the letter they go by
// and where they lie. Cutting list, steps and drawings of the pattern all name pieces by it. Sizes are read off the layout.

import type { Side } from '../../geometry/contact';
import { layOut } from '../../geometry/setting';
import type { SettingPiece } from '../../geometry/settingPiece';
import { setLetter } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Border, FabricId, Project } from '../../model/project';
import { USUAL_MITRE_SPARE } from '../../model/setting';
import type { Inches } from '../../model/units';
import { CUTTING_STEPS, type CuttingStep, onRuler, type PieceShape } from './neededPiece';
import { type PlaceKind, placeWords } from './placeWords';
import { settingSquare, withSeams } from './triangleSquares';

/** What the rows are for, with where they are sewn and their words; {border} counts from 1 inside. */
const ROWS = {
  sideTriangles: { step: 'setting', words: 'Squares for side triangles {letter}, cut twice' },
  settingCorners: { step: 'setting', words: 'Squares for setting corners {letter}, halved' },
  plainSquares: { step: 'setting', words: 'Plain squares {letter}' },
  sashingUpright: { step: 'sashing', words: 'Vertical sashing {letter}, {place}', place: 'upright' },
  sashingLevel: { step: 'sashing', words: 'Horizontal sashing {letter}, {place}', place: 'level' },
  sashingShort: { step: 'sashing', words: 'Short sashing {letter}, {place}', place: 'short' },
  sashingLong: { step: 'sashing', words: 'Long sashing {letter}, {place}', place: 'long' },
  cornerstones: { step: 'sashing', words: 'Cornerstones {letter}, {place}', place: 'crossing' },
  borderCornerstones: { step: 'borders', words: 'Cornerstones of border {border}' },
  borderEnds: { step: 'borders', words: 'Border {border}, top and bottom' },
  borderSides: { step: 'borders', words: 'Border {border}, sides' },
  piecesTop: { step: 'borders', words: 'Pieces of border {border}, top' },
  piecesRight: { step: 'borders', words: 'Pieces of border {border}, right side' },
  piecesBottom: { step: 'borders', words: 'Pieces of border {border}, bottom' },
  piecesLeft: { step: 'borders', words: 'Pieces of border {border}, left side' },
} as const satisfies Readonly<Record<string, { step: CuttingStep; words: string; place?: PlaceKind }>>;

type RowFor = keyof typeof ROWS;

const PIECES_OF_SIDE: Readonly<Record<Side, RowFor>> = {
  top: 'piecesTop',
  right: 'piecesRight',
  bottom: 'piecesBottom',
  left: 'piecesLeft',
};

/** What a piece is cut as: its size across and down in the quilt, and how many triangles one rectangle gives. */
export interface Cut {
  readonly rowFor: RowFor;
  readonly shape: PieceShape;
  readonly width: Inches;
  readonly height: Inches;
  readonly upright: boolean;
}

export interface SettingGroup {
  readonly step: CuttingStep;
  /** What its pieces go by in lists, steps and drawings; null for those of borders, which go by border and side. */
  readonly letter: string | null;
  readonly what: Phrase;
  readonly cut: Cut;
  readonly fabric: FabricId;
  readonly pieces: readonly SettingPiece[];
}

/** Pieces of one kind, size and fabric together, in the order of work; letters run through all inside the borders. */
export function settingGroups(project: Project): SettingGroup[] {
  const groups = new Map<string, { cut: Cut; fabric: FabricId; pieces: SettingPiece[] }>();
  for (const piece of layOut(project).pieces) {
    const cut = cutOf(piece, project);
    const size = `${Math.round(cut.width * 1e4)} ${Math.round(cut.height * 1e4)}`;
    const key = `${cut.rowFor} ${piece.border ?? ''} ${cut.shape} ${size} ${piece.fabric}`;
    const group = groups.get(key) ?? { cut, fabric: piece.fabric, pieces: [] };
    group.pieces.push(piece);
    groups.set(key, group);
  }
  const stepOf = ({ cut }: { cut: Cut }) => CUTTING_STEPS.indexOf(ROWS[cut.rowFor].step);
  const inOrder = [...groups.values()].toSorted((one, other) => stepOf(one) - stepOf(other));
  return inOrder.map((group, index): SettingGroup => {
    const {
      step,
      words,
      place: kind,
    }: { step: CuttingStep; words: string; place?: PlaceKind } = ROWS[group.cut.rowFor];
    const { border } = group.pieces[0]!;
    if (border !== null) return { ...group, step, letter: null, what: phrase(words, { border: border + 1 }) };
    const letter = setLetter(index);
    const place = kind && { place: placeWords(kind, group.pieces, project) };
    return { ...group, step, letter, what: phrase(words, { letter, ...place }) };
  });
}

function cutOf(piece: SettingPiece, project: Project): Cut {
  const { unit } = project.preferences;
  const seam = project.wedge.outerSeam;
  const onPoint = project.setting.layout.kind === 'onPoint' && piece.border === null;
  const rowFor = rowForPiece(piece, project, onPoint);
  if (piece.part === 'side' || piece.part === 'setting-corner') {
    const side = settingSquare(piece.part, piece.length, seam, unit);
    return { rowFor, shape: piece.part === 'side' ? 'quartered' : 'halved', width: side, height: side, upright: true };
  } // biome-ignore format: one object
  // What the edge of the top cuts through aslant, cornerstones and whole strips, is cut with square ends, so that lines have
  // straight sides and ends; what is over goes when the top is trimmed.
  const whole = { length: piece.length + 2 * seam, width: piece.width + 2 * seam };
  const cut = piece.part === 'border' ? withSeams(piece, seam) : whole;
  const length = cutLength(piece, cut.length, project);
  // A whole piece of a pieced border is as wide as the strip it is cut from; rounded up, many side by side would come out long.
  const width = isWholeKey(piece, cut.width, project) ? cut.width : onRuler(cut.width, unit);
  const level = piece.grain === 0;
  return {
    rowFor,
    shape: 'rectangle',
    width: level ? length : width,
    height: level ? width : length,
    upright: !onPoint,
  };
}

/** Of a mitred border each part of its length is on the ruler, so that they add up as they are printed. */
function cutLength(piece: SettingPiece, withSeam: Inches, project: Project): Inches {
  const { unit } = project.preferences;
  const spare = spareOf(piece, project);
  if (spare === null) return onRuler(withSeam, unit);
  const point = onRuler((withSeam - piece.length) / 2, unit);
  return onRuler(piece.length, unit) + 2 * (point + onRuler(spare, unit));
}

function rowForPiece(piece: SettingPiece, project: Project, onPoint: boolean): RowFor {
  const level = piece.grain === 0;
  switch (piece.part) {
    case 'side':
      return 'sideTriangles';
    case 'setting-corner':
      return 'settingCorners';
    case 'plain':
      return 'plainSquares';
    case 'cornerstone':
      return piece.border === null ? 'cornerstones' : 'borderCornerstones';
    case 'border':
      if (isKey(piece, project)) return PIECES_OF_SIDE[piece.side ?? 'top'];
      return level ? 'borderEnds' : 'borderSides';
    case 'sashing':
      if (onPoint) return isWholeStrip(piece) ? 'sashingLong' : 'sashingShort';
      return level ? 'sashingLevel' : 'sashingUpright';
    default:
      return piece.part satisfies never;
  }
}

/** On point whole strips begin at crossings, short pieces lie half-way between two. */
function isWholeStrip({ place }: SettingPiece): boolean {
  return place !== undefined && Number.isInteger(place.down);
}

/** Whether it is a piece of a pieced border. */
export function isKey(piece: SettingPiece, project: Project): boolean {
  return piece.part === 'border' && project.setting.borders[piece.border ?? -1]?.keys !== undefined;
}

function isWholeKey(piece: SettingPiece, width: Inches, project: Project): boolean {
  const keys = isKey(piece, project) ? project.setting.borders[piece.border ?? -1]?.keys : undefined;
  return keys?.some((key) => Math.abs(key.width - width) < 1e-6) ?? false;
}

/** What the strip of a mitred border is cut longer at each end; null where nothing is mitred. */
export function spareOf(piece: SettingPiece, { setting }: Project): Inches | null {
  const border = piece.part === 'border' ? setting.borders[piece.border ?? -1] : undefined;
  return border ? mitreSpare(border) : null;
}

/** What the strips of a border are cut longer at each end for the mitres; null where it is not mitred. */
export function mitreSpare({ corners }: Border): Inches | null {
  return corners?.kind === 'mitred' ? (corners.spare ?? USUAL_MITRE_SPARE) : null;
}
