// Where pieces of sashing cut alike lie, in words: between the blocks of a row, before row 1, after rows 2 and 3. Read off their
// half-grid places.
import type { HalfPlace, SettingPiece } from '../../geometry/settingPiece';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';

/** Upright and level: straight. Short and long: on point, where long strips run between slanted rows. */
export type PlaceKind = 'upright' | 'level' | 'short' | 'long' | 'crossing';

export function placeWords(kind: PlaceKind, pieces: readonly SettingPiece[], project: Project): Phrase {
  const places = pieces.flatMap(({ place }) => (place ? [place] : []));
  const { rows, columns } = project.wall;
  const stones = project.setting.sashing.cornerstones !== undefined;
  switch (kind) {
    case 'upright':
      return uprightWords(gapsOf(places, ({ across }) => across), columns, project);
    case 'level':
      return levelWords(gapsOf(places, ({ down }) => down), rows, project);
    case 'short':
      return stones
        ? phrase('between the squares of the diagonal rows, and between cornerstones')
        : phrase('between the squares of the diagonal rows');
    case 'long':
      return afterRows(slantedGaps(places, columns));
    case 'crossing':
      return stoneWords(places, project);
    default:
      return kind satisfies never;
  }
} // biome-ignore format: short calls

/** Gaps by the column or row they come after, from 0 at the edge. */
function gapsOf(places: readonly HalfPlace[], along: (place: HalfPlace) => number): number[] {
  return distinct(places.map((place) => (along(place) + 1) / 2));
}

/** Strips between slanted rows by the row they come after, from 0 in the upper right corner. */
function slantedGaps(places: readonly HalfPlace[], columns: number): number[] {
  return distinct(places.map(({ down, across }) => (down - across + 2 * columns - 1) / 2));
}

function distinct(gaps: readonly number[]): number[] {
  return [...new Set(gaps)].toSorted((one, other) => one - other);
}

function uprightWords(gaps: readonly number[], columns: number, { setting }: Project): Phrase {
  const inside = gaps.filter((gap) => gap > 0 && gap < columns);
  const edge = inside.length < gaps.length;
  if (inside.length === 0) return phrase('at both ends of a row');
  const all = inside.length === columns - 1;
  const between = all ? phrase('between the blocks of a row') : afterColumns(inside);
  if (setting.sashing.where !== 'around' || !edge) return between;
  return all
    ? phrase('{between} and at both its ends', { between })
    : phrase('{between} and at both ends of a row', { between });
}

function afterColumns(gaps: readonly number[]): Phrase {
  return phrase(gaps.length === 1 ? 'after column {columns}' : 'after columns {columns}', {
    columns: { list: gaps },
  });
}

function levelWords(gaps: readonly number[], rows: number, project: Project): Phrase {
  const inside = gaps.filter((gap) => gap > 0 && gap < rows);
  const edge = project.setting.sashing.where === 'around' && inside.length < gaps.length;
  if (inside.length === 0) return phrase('at the top and bottom');
  const between = inside.length === rows - 1 ? phrase('between the rows') : afterRows(inside);
  return edge ? phrase('{between} and at the top and bottom', { between }) : between;
}

/** Gaps by the row they come after; 0 is the one before the first row. */
export function afterRows(gaps: readonly number[]): Phrase {
  const after = gaps.filter((gap) => gap > 0);
  const rows = { rows: { list: after } };
  if (after.length === 0) return phrase('before row 1');
  if (after.length < gaps.length) {
    return phrase(after.length === 1 ? 'before row 1 and after row {rows}' : 'before row 1 and after rows {rows}', rows);
  }
  return phrase(after.length === 1 ? 'after row {rows}' : 'after rows {rows}', rows);
} // biome-ignore format: short branches

function stoneWords(places: readonly HalfPlace[], project: Project): Phrase {
  const { setting, wall } = project;
  const { columnGaps = [], rowGaps = [] } = setting.sashing;
  if (setting.layout.kind === 'onPoint' || columnGaps.length + rowGaps.length === 0) {
    return phrase('where the sashing crosses');
  }
  const columns = uprightWords(gapsOf(places, ({ across }) => across), wall.columns, project);
  const rows = levelWords(gapsOf(places, ({ down }) => down), wall.rows, project);
  return phrase('{rows}; {columns}', { rows, columns });
} // biome-ignore format: short calls
