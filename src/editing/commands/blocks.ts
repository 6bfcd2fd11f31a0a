// Commands on blocks: add and remove them, put and trade wedges, choose corners, and set progress.
import { createBlock } from '../../model/create';
import { cellIndexOf, findBlock, findSet } from '../../model/find';
import { cornersOn, whyHangingLocked, whyPlacesLocked, whyRowLocked } from '../../model/freedom';
import type { Move } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Block, BlockId, FabricId, Place, Project } from '../../model/project';
import { cornerFabricOf, isPlain } from '../../model/wallCells';
import { type Command, type Rearrangement, Refusal } from '../apply';
import { rearrange } from './wall';

/** Adds blocks with empty places and hangs them in the first empty cells; the rest are on the side table. */
export function addBlocks(count: number): Command {
  return {
    label: counted(count, 'add a block', 'add {count} blocks'),
    change: (draft) => {
      for (let added = 0; added < count; added += 1) {
        const block = createBlock(draft);
        draft.blocks.push(block);
        hangInEmptyCell(draft, block.id);
      }
    },
  };
}

/** Hangs a block in the first empty cell of the draft; without one it stays on the side table. */
export function hangInEmptyCell(draft: Project, block: BlockId): void {
  const cell = draft.wall.cells.findIndex((there, at) => there === null && !isPlain(at, draft));
  if (cell >= 0) draft.wall.cells[cell] = { block, turn: 0, pinned: false };
}

/**
 * Removes a block, so that its wedges are free again. Refused when it is sewn or pinned; a picture of a sewn block may go, because its
 * wedges came from no set of the quilt.
 */
export function removeBlock(project: Project, id: BlockId): Command {
  const number = findBlock(project, id)?.number ?? 0;
  return {
    label: phrase('remove block {block}', { block: number }),
    change: (draft) => {
      const block = known(draft, id);
      const sewn = block.kind === 'pictured' ? null : whyPlacesLocked(block);
      const reason = sewn ?? whyHangingLocked(draft, block);
      if (reason) throw new Refusal('block-held', 'blocks', reason);
      const cell = cellIndexOf(draft, id);
      if (cell >= 0) draft.wall.cells[cell] = null;
      draft.blocks = draft.blocks.filter((one) => one.id !== id);
    },
  };
}

/** Puts a wedge in a place (from 0) or empties it. */
export function putWedge(project: Project, id: BlockId, place: number, wedge: Place | null): Rearrangement {
  const values = { place: place + 1, block: findBlock(project, id)?.number ?? 0 };
  return rearrange(
    [{ kind: 'place', block: id, place, wedge }],
    wedge
      ? phrase('put a wedge in place {place} of block {block}', values)
      : phrase('take the wedge from place {place} of block {block}', values),
  );
}

/** Exchanges the wedges of two places (from 0), in one block or two. */
export function tradeWedges(
  project: Project,
  first: { readonly block: BlockId; readonly place: number },
  second: { readonly block: BlockId; readonly place: number },
): Rearrangement {
  const one = known(project, first.block);
  const other = known(project, second.block);
  const values = { first: one.number, second: other.number };
  return rearrange(
    [
      { kind: 'place', ...first, wedge: other.places[second.place] ?? null },
      { kind: 'place', ...second, wedge: one.places[first.place] ?? null },
    ],
    one === other
      ? phrase('trade two wedges in block {first}', values)
      : phrase('trade wedges between blocks {first} and {second}', values),
  );
}

/** Empties all places of planned blocks, so that their wedges can be chosen afresh. */
export function emptyBlocks(project: Project, ids: readonly BlockId[]): Rearrangement {
  const open = ids.map((id) => known(project, id)).filter((block) => whyPlacesLocked(block) === null);
  return rearrange(
    open.flatMap(({ id, places }) =>
      places.map((_, place): Move => ({ kind: 'place', block: id, place, wedge: null })),
    ),
    ids.length === 1
      ? phrase('empty block {block}', { block: known(project, ids[0]!).number })
      : phrase('empty the blocks'),
  );
}

/**
 * Sets the progress of blocks, many at once. Refused where a block with an empty place would be sewn, or a block on the side
 * table would be sewn into a row. The strip sets of sewn blocks are marked as cut.
 */
export function setBlockProgress(ids: readonly BlockId[], progress: Block['progress']): Command {
  return {
    label: counted(ids.length, 'update the progress of a block', 'update the progress of {count} blocks'),
    change: (draft) => {
      for (const id of ids) {
        const block = known(draft, id);
        if (progress !== 'planned' && block.places.includes(null)) {
          const message = phrase('Block {block} has an empty place; it cannot be sewn yet.', {
            block: block.number,
          });
          throw new Refusal('empty-place', 'blocks', message);
        }
        if (block.kind === 'pictured' && !cornersOn({ progress })) {
          const message = phrase('Block {block} is a picture of a sewn block; its corners are on.', {
            block: block.number,
          });
          throw new Refusal('picture-sewn', 'blocks', message);
        }
        const reason = progress === 'joined' ? whyRowLocked(draft, block) : null;
        if (reason) throw new Refusal('not-hung', 'blocks', reason);
        // Corners that are sewn on keep their fabric wherever the block hangs later.
        if (draft.setting.cornerRule && cornersOn({ progress })) {
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

/** Gives a block a corner fabric of its own; null: the quilt's. Refused where corners are on, but told of a block in a picture. */
export function setCornerFabric(project: Project, id: BlockId, fabric: FabricId | null): Command {
  return {
    label: phrase('change the corners of block {block}', { block: findBlock(project, id)?.number ?? 0 }),
    change: (draft) => {
      const block = known(draft, id);
      if (cornersOn(block) && block.kind === 'pieced') {
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
