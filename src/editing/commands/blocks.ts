// Commands on blocks: making them, trading their wedges, their corners, how far they are sewn.
import { createBlock } from '../../model/create';
import { cellIndexOf, findBlock, findSet } from '../../model/find';
import { whyHangingLocked, whyPlacesLocked, whyRowLocked } from '../../model/freedom';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Block, BlockId, FabricId, Place, Project } from '../../model/project';
import { cornerFabricOf, isPlain } from '../../model/wallCells';
import { type Command, Refusal } from '../apply';

/** Adds blocks with empty places; they hang in the first empty cells, the rest wait on the side table. */
export function addBlocks(count: number): Command {
  return {
    label: counted(count, 'add a block', 'add {count} blocks'),
    change: (draft) => {
      for (let added = 0; added < count; added += 1) {
        const block = createBlock(draft);
        draft.blocks.push(block);
        const cell = draft.wall.cells.findIndex((held, at) => held === null && !isPlain(at, draft));
        if (cell >= 0) draft.wall.cells[cell] = { block: block.id, turn: 0, pinned: false };
      }
    },
  };
}

/** Unpicks a block: it leaves the wall and its wedges are free again. Refused when it is sewn or pinned. */
export function removeBlock(project: Project, id: BlockId): Command {
  const number = findBlock(project, id)?.number ?? 0;
  return {
    label: phrase('remove block {block}', { block: number }),
    change: (draft) => {
      const block = known(draft, id);
      const held = whyPlacesLocked(block) ?? whyHangingLocked(draft, block);
      if (held) throw new Refusal('block-held', 'blocks', held);
      const cell = cellIndexOf(draft, id);
      if (cell >= 0) draft.wall.cells[cell] = null;
      draft.blocks = draft.blocks.filter((one) => one.id !== id);
    },
  };
}

/** Puts a wedge in a place (from 0) or empties it. */
export function putWedge(project: Project, id: BlockId, place: number, wedge: Place | null): Command {
  const values = { place: place + 1, block: findBlock(project, id)?.number ?? 0 };
  return {
    label: wedge
      ? phrase('put a wedge in place {place} of block {block}', values)
      : phrase('take the wedge from place {place} of block {block}', values),
    change: (draft) => {
      const block = known(draft, id);
      const held = whyPlacesLocked(block);
      if (held) throw new Refusal('block-sewn', 'blocks', held);
      block.places[place] = wedge ? { ...wedge } : null;
    },
  };
}

/** Exchanges the wedges of two places, in one block or two. */
export function tradeWedges(
  project: Project,
  first: { block: BlockId; place: number },
  second: { block: BlockId; place: number },
): Command {
  const values = {
    first: findBlock(project, first.block)?.number ?? 0,
    second: findBlock(project, second.block)?.number ?? 0,
  };
  return {
    label:
      first.block === second.block
        ? phrase('trade two wedges in block {first}', values)
        : phrase('trade wedges between blocks {first} and {second}', values),
    change: (draft) => {
      const one = known(draft, first.block);
      const other = known(draft, second.block);
      for (const block of [one, other]) {
        const held = whyPlacesLocked(block);
        if (held) throw new Refusal('block-sewn', 'blocks', held);
      }
      const wedge = one.places[first.place] ?? null;
      one.places[first.place] = other.places[second.place] ?? null;
      other.places[second.place] = wedge;
    },
  };
}

/** Empties all places of planned blocks, so that their wedges can be chosen afresh. */
export function emptyBlocks(project: Project, ids: readonly BlockId[]): Command {
  return {
    label:
      ids.length === 1
        ? phrase('empty block {block}', { block: findBlock(project, ids[0]!)?.number ?? 0 })
        : phrase('empty the blocks'),
    change: (draft) => {
      for (const id of ids) {
        const block = known(draft, id);
        if (whyPlacesLocked(block)) continue;
        block.places = block.places.map(() => null);
      }
    },
  };
}

/**
 * Sets how far blocks are sewn, many at once. A block with an empty place cannot be sewn, one on the side table not into its
 * row. The strip sets of a sewn block are cut.
 */
export function setBlockProgress(ids: readonly BlockId[], progress: Block['progress']): Command {
  return {
    label: counted(ids.length, 'set how far a block is', 'set how far {count} blocks are'),
    change: (draft) => {
      for (const id of ids) {
        const block = known(draft, id);
        if (progress !== 'planned' && block.places.includes(null)) {
          const message = phrase('Block {block} has an empty place; it cannot be sewn yet.', {
            block: block.number,
          });
          throw new Refusal('empty-place', 'blocks', message);
        }
        const held = progress === 'joined' ? whyRowLocked(draft, block) : null;
        if (held) throw new Refusal('not-hung', 'blocks', held);
        // Corners that go on stay as they are, wherever the block hangs later.
        if (draft.setting.cornerRule && (progress === 'squared' || progress === 'joined')) {
          block.cornerFabric = cornerFabricOf(draft, block, cellIndexOf(draft, id));
        }
        block.progress = progress;
        if (progress === 'planned') continue;
        for (const place of block.places) {
          const set = place && findSet(draft, place.set);
          if (set && set.progress !== 'cut') set.progress = 'cut';
        }
      }
    },
  };
}

/** Gives a block corners of its own; null: the quilt's. */
export function setCornerFabric(project: Project, id: BlockId, fabric: FabricId | null): Command {
  return {
    label: phrase('change the corners of block {block}', { block: findBlock(project, id)?.number ?? 0 }),
    change: (draft) => {
      const block = known(draft, id);
      if (block.progress === 'squared' || block.progress === 'joined') {
        const message: Phrase = phrase('Block {block} has its corners on.', { block: block.number });
        throw new Refusal('corners-on', 'blocks', message);
      }
      block.cornerFabric = fabric;
    },
  };
}

function known(draft: Project, id: BlockId): Block {
  const block = findBlock(draft, id);
  if (!block) throw new Error(`editing blocks: no block ${id}`);
  return block;
}
