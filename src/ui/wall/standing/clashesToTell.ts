// Which clashes a block is told to have while the wall is analysed anew: those of the state before, where nothing that they come of has
// changed. So an edit of one of 400 blocks names that block and those beside it again, and no others.
import type { Clash } from '../../../balance/clashes/clashes';
import type { BlockId, Project } from '../../../model/project';
import { halfPlace, hangsAlike } from '../../../model/wallCells';
import type { Balance } from '../../../store/analysis/analysis';

/** The clashes of a block; null where they are not known. */
export type ClashesToTell = (block: BlockId) => readonly Clash[] | null;

/** Parts of a quilt on which the clashes of every block depend. */
const FOR_ALL = ['fabrics', 'setting', 'wedge', 'stripSets', 'preferences'] as const;

const NONE: readonly Clash[] = [];
const kept = new WeakMap<readonly Clash[], ReadonlyMap<BlockId, readonly Clash[]>>();

/** What is to be told of the blocks of a quilt, from its balance or that of an earlier state. */
export function clashesToTell(
  balance: Pick<Balance, 'project' | 'clashes'> | null,
  now: Project,
): ClashesToTell {
  const before = balance?.project;
  if (!before || FOR_ALL.some((part) => before[part] !== now[part]) || !sameSize(before, now))
    return () => null;
  const found = kept.get(balance.clashes) ?? byBlock(balance.clashes);
  kept.set(balance.clashes, found);
  const stale = staleBlocks(before, now);
  return (block) => (stale.has(block) ? null : (found.get(block) ?? NONE));
}

function sameSize({ wall: one }: Project, { wall: other }: Project): boolean {
  return one.rows === other.rows && one.columns === other.columns;
}

/** The blocks that hang otherwise than before, or are others, and those on their sides. */
function staleBlocks(before: Project, now: Project): ReadonlySet<BlockId> {
  const old = new Map(before.blocks.map((block) => [block.id, block]));
  const stale = new Set(now.blocks.filter((block) => old.get(block.id) !== block).map(({ id }) => id));
  const { cells } = now.wall;
  const places = cells.map((_, at) => halfPlace(at, now.wall));
  const touched = cells.flatMap((cell, at) => {
    const same = hangsAlike(cell, before.wall.cells[at]) && !(cell && stale.has(cell.block));
    return same ? [] : [places[at]!];
  });
  cells.forEach((cell, at) => {
    const { down, across } = places[at]!;
    // What lies on a side is two half places away that way, on point one each way.
    const near = touched.some((one) => Math.hypot(one.down - down, one.across - across) <= 2);
    if (cell && near) stale.add(cell.block);
  });
  return stale;
}

/** The clashes of each block, within it and with what lies beside it. */
function byBlock(clashes: readonly Clash[]): ReadonlyMap<BlockId, readonly Clash[]> {
  const found = new Map<BlockId, Clash[]>();
  for (const clash of clashes)
    for (const id of new Set(clash.blocks)) {
      const own = found.get(id);
      if (own) own.push(clash);
      else found.set(id, [clash]);
    }
  return found;
}
