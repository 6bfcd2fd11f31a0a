// Adds blocks that are sewn already and shown by their pictures, one or a whole wall of them, as one change.
import { freshId, freshNumber } from '../../model/find';
import { whyHangingLocked } from '../../model/freedom';
import { counted, phrase } from '../../model/phrase';
import type { PictureId } from '../../model/picture/picture';
import {
  type FabricId,
  MOST_BLOCKS,
  type PicturedBlock,
  type PicturedWedge,
  type Project,
} from '../../model/project';
import { isPlain, keepCorners } from '../../model/wallCells';
import { type Command, Refusal } from '../apply';
import { hangInEmptyCell } from '../commands/blocks';

/** A block as it was read from a picture. */
export interface ReadBlock {
  readonly picture: PictureId;
  /** N wedges clockwise from place 1; nothing is known of a wedge without bands. */
  readonly wedges: readonly PicturedWedge[];
  readonly cornerShift: number;
  /** Null: the fabric that the quilt's corners have where it hangs. */
  readonly cornerFabric: FabricId | null;
}

export interface NewPictured extends ReadBlock {
  /** Null: the lowest number that is free. */
  readonly number: number | null;
  /** Where it hangs: a cell with its turn, the first empty cell, or nowhere yet. */
  readonly hang: { readonly cell: number; readonly turn: number } | 'firstEmpty' | 'sideTable';
}

/**
 * Adds the blocks in order. A block that hangs where one is to go waits on the side table. Refused where such a block is pinned or sewn
 * into its row, where a cell is a plain square or not there, and where the quilt would hold too many blocks.
 */
export function addPictured(blocks: readonly NewPictured[]): Command {
  return {
    label: counted(blocks.length, 'add a block from its picture', 'add {count} blocks from their pictures'),
    change: (draft) => addAll(draft, blocks),
  };
}

/** Adds the blocks to a draft; refused as `addPictured` says. */
export function addAll(draft: Project, blocks: readonly NewPictured[]): void {
  if (draft.blocks.length + blocks.length > MOST_BLOCKS) {
    const message = phrase('A quilt holds {most} blocks at most.', { most: MOST_BLOCKS });
    throw new Refusal('too-many-blocks', 'blocks', message);
  }
  for (const one of blocks) addOne(draft, one);
}

function addOne(draft: Project, { number, hang, ...read }: NewPictured): void {
  const id = freshId('b', draft.blocks);
  const block: PicturedBlock = {
    ...ownCopy(read),
    id,
    kind: 'pictured',
    number: number ?? freshNumber(draft),
    progress: 'squared',
    places: [],
  };
  draft.blocks.push(block);
  if (hang === 'firstEmpty') hangInEmptyCell(draft, id);
  else if (hang !== 'sideTable') hangIn(draft, block, hang);
  if (draft.setting.cornerRule) keepCorners(draft, draft.blocks.at(-1)!);
}

/** What was read, as data of the draft's own. */
export function ownCopy({ picture, wedges, cornerShift, cornerFabric }: ReadBlock) {
  return {
    picture,
    wedges: wedges.map(({ bands }) => ({ bands: bands.map((band) => ({ ...band })) })),
    cornerShift,
    cornerFabric,
  };
}

function hangIn(
  draft: Project,
  block: PicturedBlock,
  { cell, turn }: { readonly cell: number; readonly turn: number },
): void {
  const there = draft.wall.cells[cell];
  if (there === undefined || isPlain(cell, draft)) {
    const say = 'Block {block} cannot hang there: no block has its place in that cell.';
    throw new Refusal('no-cell', 'wall.cells', phrase(say, { block: block.number }));
  }
  const hung = there && draft.blocks.find(({ id }) => id === there.block);
  const reason = hung ? whyHangingLocked(draft, hung) : null;
  if (reason) throw new Refusal('held', 'wall', reason);
  draft.wall.cells[cell] = { block: block.id, turn, pinned: false };
}
