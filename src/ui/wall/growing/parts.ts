// Which blocks of a large wall are drawn by now: those of a new quilt come in parts, and so do those of a whole new order into their new
// places, so that no frame draws and paints all of them. Pure.
import type { HungBlock } from '../../../drawing/drawing';
import { FEW } from '../../../drawing/wholeNewWall';

/** A new quilt of no more blocks is drawn at once, as it is drawn before the page (early/). */
export const FIRST = 100;
/** Blocks that come in each part of a larger one. */
export const PART = 50;

export interface Drawn {
  readonly quilt: string;
  readonly blocks: readonly HungBlock[];
  /** So many of them are drawn as they are; the others as they were before, if they hung. */
  readonly count: number;
  readonly before: readonly HungBlock[];
}

/** A wall whose first blocks are drawn. */
export function begun(quilt: string, blocks: readonly HungBlock[], first: number): Drawn {
  return { quilt, blocks, count: first, before: [] };
}

/** The wall with other blocks; `first` of them at once where the quilt or the whole order is new. */
export function withBlocks(drawn: Drawn, quilt: string, blocks: readonly HungBlock[], first: number): Drawn {
  if (drawn.quilt !== quilt) return begun(quilt, blocks, first);
  if (drawn.blocks === blocks) return drawn;
  const before = shownOf(drawn);
  const old = byId(before);
  const moved = blocks.filter(({ block, cell, quarters }) => {
    const was = old.get(block);
    return was && (was.cell !== cell || was.quarters !== quarters);
  });
  return moved.length > FEW ? { quilt, blocks, count: PART, before } : { ...drawn, blocks };
}

/** The wall with one part more; itself when all are drawn. */
export function withNextPart(drawn: Drawn): Drawn {
  return isWhole(drawn) ? drawn : { ...drawn, count: drawn.count + PART };
}

/** Whether all blocks are drawn as they are. */
export function isWhole({ count, blocks }: Drawn): boolean {
  return count >= blocks.length;
}

/** What is on show. */
export function shownOf(drawn: Drawn): readonly HungBlock[] {
  if (isWhole(drawn)) return drawn.blocks;
  const old = byId(drawn.before);
  return drawn.blocks.flatMap((hung, at) => (at < drawn.count ? hung : (old.get(hung.block) ?? [])));
}

function byId(blocks: readonly HungBlock[]) {
  return new Map(blocks.map((hung) => [hung.block, hung]));
}
