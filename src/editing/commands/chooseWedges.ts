// Commands that choose wedges for blocks, with words on what was proved. arrange/choose does the search.
import { composeBlocks } from '../../arrange/choose/compose';
import { repair } from '../../arrange/choose/composeRepair';
import { wedgeLedger } from '../../cutting/wedges/ledger';
import { cellOf, findBlock } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import { type Move, moved } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { BlockId, Project } from '../../model/project';
import type { Rearrangement } from '../apply';

/** The number of whole blocks that all cut wedges allow; half the wedges of a block are tip up, half tip down. */
export function blocksAllowed(project: Project): number {
  const half = project.wedge.perBlock / 2;
  let up = 0;
  let down = 0;
  for (const row of wedgeLedger(project)) {
    up += row.available.up;
    down += row.available.down;
  }
  return Math.floor(Math.min(up, down) / half);
}

/** Ids of the blocks whose wedges may be chosen: planned and not pinned. */
export function openBlocks(project: Project): BlockId[] {
  return project.blocks
    .filter((block) => whyPlacesLocked(block) === null && !cellOf(project, block.id)?.pinned)
    .map((block) => block.id);
}

export interface Choosing {
  readonly command: Rearrangement;
  /** The result and what was proved, to show once the command is done. */
  readonly words: readonly Phrase[];
}

/** Chooses all wedges of these blocks anew, except of sewn and pinned blocks. The same seed gives the same choice. */
export function chooseWedges(project: Project, blocks: readonly BlockId[], seed: number): Choosing {
  const { moves, words } = composeBlocks(project, blocks, seed);
  const only = blocks.length === 1 ? findBlock(project, blocks[0]!) : undefined;
  const label = only
    ? phrase('choose the wedges of block {block}', { block: only.number })
    : counted(blocks.length, 'choose the wedges', 'choose the wedges of {count} blocks');
  return { command: seeded(moves, label, seed), words };
}

/**
 * Fills empty places: first those of partly filled blocks, with the fewest changes, then whole empty blocks from the wedges
 * that are left.
 */
export function fillEmpty(project: Project, seed: number): Choosing {
  const mended = repair(project);
  const after = moved(project, mended.moves);
  const open = new Set(openBlocks(project));
  const bare = project.blocks.filter(
    (block) => open.has(block.id) && block.places.every((place) => place === null),
  );
  const composed = composeBlocks(
    after,
    bare.map((block) => block.id),
    seed,
  );
  const someOpen = project.blocks.some((block) => block.places.includes(null) && !bare.includes(block));
  return {
    command: seeded([...mended.moves, ...composed.moves], phrase('fill the empty places'), seed),
    words: [...(someOpen ? mended.words : []), ...(bare.length > 0 ? composed.words : [])],
  };
}

/** A command that carries out the moves and stores the seed that gave them. */
function seeded(moves: readonly Move[], label: Phrase, seed: number): Rearrangement {
  return {
    label,
    moves,
    change: (draft) => {
      draft.preferences.seed = seed;
    },
  };
}
