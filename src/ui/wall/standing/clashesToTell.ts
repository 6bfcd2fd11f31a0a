// Which clashes a block is told to have while the wall is analysed anew: those of the state before, where nothing that they come of has
// changed. So an edit of one of 400 blocks names that block and those beside it again, and no others.
import type { Clash } from '../../../balance/clashes/clashes';
import { latticeOf } from '../../../geometry/lattice';
import type { BlockId, Project } from '../../../model/project';
import type { Balance } from '../../../store/analysis/analysis';

/** The clashes of a block; null where they are not known. */
export type ClashesToTell = (block: BlockId) => readonly Clash[] | null;

const NONE: readonly Clash[] = [];
const NOT_KNOWN: ClashesToTell = () => null;

/** Parts of a quilt on which the clashes of every block depend. */
const FOR_ALL = ['id', 'fabrics', 'setting', 'wedge', 'stripSets', 'preferences'] as const;

/** What is to be told of the blocks of a quilt, from its balance or that of an earlier state. */
export function clashesToTell(
  balance: Pick<Balance, 'project' | 'clashes'> | null,
  now: Project,
): ClashesToTell {
  if (!balance || !isComparable(balance.project, now)) return NOT_KNOWN;
  const found = byBlock(balance.clashes);
  const stale = balance.project === now ? new Set<BlockId>() : staleBlocks(balance.project, now);
  return (block) => (stale.has(block) ? null : (found.get(block) ?? NONE));
}

function isComparable(before: Project, now: Project): boolean {
  return (
    FOR_ALL.every((part) => before[part] === now[part]) &&
    before.wall.rows === now.wall.rows &&
    before.wall.columns === now.wall.columns
  );
}

/** The blocks that hang otherwise than before, or are others, and those on their sides. */
function staleBlocks(before: Project, now: Project): ReadonlySet<BlockId> {
  const old = new Map(before.blocks.map((block) => [block.id, block]));
  const others = new Set(now.blocks.filter((block) => old.get(block.id) !== block).map(({ id }) => id));
  const { sides } = latticeOf(now);
  const stale = new Set(others);
  now.wall.cells.forEach((cell, at) => {
    const was = before.wall.cells[at];
    const same = cell?.block === was?.block && cell?.turn === was?.turn;
    if (same && !(cell && others.has(cell.block))) return;
    for (const near of [at, ...sides.slice(4 * at, 4 * at + 4).map((side) => side.cell)]) {
      const there = now.wall.cells[near]?.block;
      if (there) stale.add(there);
    }
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
