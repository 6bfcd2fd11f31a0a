// The blocks of a quilt laid out as a whole: as many as the wedges fill, on a wall of usual proportions. Blocks that are there keep
// their wedges; pinned and sewn ones keep their places too.
import { blocksOn } from '../../cutting/top/sizeOffers';
import { topSize } from '../../cutting/top/topSize';
import { sideTable } from '../../model/find';
import { counted } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { InParts } from '../../model/work/parts';
import { apply, type Command } from '../apply';
import { addBlocks, hangInEmptyCell } from '../commands/blocks';
import { blocksAllowed, fillingEmpty } from '../commands/chooseWedges';
import { hangAll, resizeWall } from '../commands/wall';
import type { BlocksWanted } from './sewSets';

const MOST_ROWS = 40;

/** The project with its blocks filled and hung, and new ones for the wedges that are left. The same seed gives the same. In
 * parts of a few milliseconds, but for commands. */
export function* hangingBlocks(project: Project, want: BlocksWanted, seed: number): InParts<Project> {
  const there = project.blocks.length;
  const allowed = blocksAllowed(project);
  let more = Math.max(0, (want === 'most' ? allowed : Math.min(allowed, want.blocks)) - there);
  for (;;) {
    const wanted = want === 'most' ? there + more : Math.max(there, want.blocks);
    const shaped = more === 0 && there === 0 ? project : withWall(project, there, wanted, more > 0);
    const added = Math.min(more, Math.max(0, room(shaped) - there));
    yield null;
    const waiting = sideTable(shaped).map((block) => block.id);
    const placed = done(shaped, hangAll(shaped, waiting)) ?? shaped;
    yield null;
    const grown = done(placed, addBlocks(added)) ?? placed;
    const { command } = yield* fillingEmpty(grown, seed);
    const hung = done(grown, command) ?? grown;
    // Places filled by hand may take more wedges of one tip than of the other, so that fewer blocks become whole.
    const short = hung.blocks.slice(there).filter((block) => block.places.includes(null)).length;
    if (short === 0) return hung;
    more = added - short;
  }
}

/** A larger wall for the blocks on the side table. */
export interface LargerWall {
  readonly rows: number;
  readonly columns: number;
  readonly command: Command;
}

/**
 * A wall on which all blocks hang, as one command; blocks that hang keep their places where the new wall has them. Null where the wall
 * has room already, or no larger one holds all.
 */
export function wallForAll(project: Project): LargerWall | null {
  const blocks = project.blocks.length;
  if (room(project) >= blocks) return null;
  const { wall } = withWall(project, blocks, blocks, true);
  const { rows, columns } = wall;
  if (room({ ...project, wall }) < blocks) return null;
  const label = counted(
    sideTable(project).length,
    'make the wall {rows} down, {columns} across and hang 1 block',
    'make the wall {rows} down, {columns} across and hang {count} blocks',
    { rows, columns },
  );
  const change: Command['change'] = (draft) => {
    resizeWall(rows, columns).change?.(draft);
    for (const { id } of sideTable(draft)) hangInEmptyCell(draft, id);
  };
  return { rows, columns, command: { label, change } };
}

/** Cells for blocks on the wall. */
function room({ setting, wall }: Pick<Project, 'setting' | 'wall'>): number {
  return blocksOn({ setting }, wall.rows, wall.columns);
}

/**
 * The project with a wall for `wanted` blocks, or somewhat fewer, but never fewer than the `least` that are there. The wall stays
 * where it need not change, or where pinned or sewn blocks would lose their cells; then it grows downwards if it must.
 */
function withWall(project: Project, least: number, wanted: number, grows: boolean): Project {
  const { rows, columns } = project.wall;
  if (!grows && room(project) >= least) return project;
  const shapes: { rows: number; columns: number }[] = [];
  for (let blocks = wanted; blocks <= wanted + columns + MOST_ROWS; blocks += 1) {
    const size = topSize(project, blocks);
    if (!size || size.blocks < least) continue;
    shapes.push(size);
    break;
  }
  for (let more = 0; rows + more <= MOST_ROWS; more += 1) {
    if (blocksOn(project, rows + more, columns) < Math.max(least, wanted)) continue;
    shapes.push({ rows: rows + more, columns });
    break;
  }
  for (const shape of shapes) {
    const resized = done(project, resizeWall(shape.rows, shape.columns));
    if (resized && room(resized) >= least) return resized;
  }
  return project;
}

/** The project after a command; null where it is refused. */
function done(project: Project, command: Command): Project | null {
  const outcome = apply(project, command);
  return outcome.ok ? outcome.project : null;
}
