// How many pieces a top is drawn with, counted before any of them is made: a few narrow pieces round a border, or many strips in
// many blocks, could be more than a browser can draw.
import { total } from '../model/lengths';
import { phrase } from '../model/phrase';
import type { Border, Project } from '../model/project';
import type { Problem } from '../model/result';
import { cellCount } from '../model/wallCells';
import { borderedBy, borderRuns } from './borders';
import { layOut } from './setting';
import { finishedWidth } from './stripSet';

/** The most pieces that are drawn: 1,600 blocks of eight wedges of ten strips. */
export const MOST_PIECES = 150_000;

/**
 * At least as many pieces as the top is drawn with: bands and corners of the blocks, setting pieces, pieces of borders (`keys`, for each
 * border).
 */
export function pieceCount(project: Project, keys: readonly number[] = keyCounts(project)): number {
  return blockPieces(project) + settingPieces(project) + total(keys);
}

/** The problem of a top with more pieces than are drawn; none otherwise. */
export function checkPieceCount(project: Project): Problem[] {
  const keys = keyCounts(project);
  const pieces = pieceCount(project, keys);
  if (pieces <= MOST_PIECES) return [];
  const border = keys.indexOf(Math.max(...keys));
  const values = { pieces, most: MOST_PIECES, border: border + 1, keys: keys[border] ?? 0 };
  if (total(keys) * 2 > pieces) {
    const say =
      'The top would have {pieces} pieces, {keys} of them in border {border}; at most {most} are drawn. Widen the pieces of that border.';
    return [
      { code: 'too-many-pieces', path: `setting.borders[${border}].keys`, message: phrase(say, values) },
    ];
  }
  const say =
    'The top would have {pieces} pieces; at most {most} are drawn. Use fewer blocks or fewer strips per set.';
  return [{ code: 'too-many-pieces', path: 'blocks', message: phrase(say, values) }];
}

/** The most corner pieces of a block. */
const MOST_CORNERS = 4;

function blockPieces({ blocks, stripSets }: Project): number {
  const strips = new Map(stripSets.map((set) => [set.id, set.strips.length]));
  const inPlaces = blocks.map((block) =>
    block.kind === 'pictured'
      ? // Where not all is known, the middle is a piece of its own.
        total(block.wedges.map(({ bands }) => bands.length + 1))
      : total(block.places.map((place) => (place ? (strips.get(place.set) ?? 0) : 1))),
  );
  return total(inPlaces) + MOST_CORNERS * blocks.length;
}

/** A bound on squares, sashing, cornerstones and setting triangles, and on plain borders and binding. */
function settingPieces({ wall, setting }: Project): number {
  const cells = cellCount(wall.rows, wall.columns, setting.layout);
  return 8 * (cells + wall.rows + wall.columns) + 8 * setting.borders.length + 16;
}

/** For each border, how many pieces it is pieced from; 0 for a plain one. */
function keyCounts(project: Project): number[] {
  const { borders } = project.setting;
  if (!borders.some((border) => border.keys)) return borders.map(() => 0);
  const { inner } = layOut({ ...project, setting: { ...project.setting, borders: [] } });
  return borders.map((border, index) => {
    const within = borderedBy(borders.slice(0, index));
    return keyCount(
      border,
      { width: inner.width + 2 * within.side, height: inner.height + 2 * within.end },
      project.wedge.outerSeam,
    );
  });
}

function keyCount(
  border: Border,
  inner: { readonly width: number; readonly height: number },
  seam: number,
): number {
  const { keys } = border;
  if (!keys) return 0;
  const { sides, ends } = borderRuns(border, inner);
  const once = total(keys.map((key) => finishedWidth(key.width, seam)));
  // A run may begin within the row of keys and cuts its last piece short.
  return 2 * total([sides, ends].map((run) => (Math.ceil(run / once) + 1) * keys.length));
}
