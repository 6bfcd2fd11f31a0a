// Moves of blocks, wedges and strips as plain data, so that proposals, the arranger and commands speak of the same thing.
import { cellIndexOf, findBlock, findSet } from './find';
import type { BlockId, Place, Project, Strip, StripSetId } from './project';

export type Move =
  /** Hang the block with this turn (quarter turns clockwise, absolute). */
  | { readonly kind: 'turn'; readonly block: BlockId; readonly turn: number }
  /** Put the corners on other places and turn, before they are sewn on. */
  | { readonly kind: 'shift'; readonly block: BlockId; readonly cornerShift: number; readonly turn: number }
  /** Exchange what hangs in two cells; either may be empty. */
  | { readonly kind: 'swap'; readonly cell: number; readonly other: number }
  /** Hang a block from the side table in a cell; what hung there goes to the side table. */
  | { readonly kind: 'hang'; readonly block: BlockId; readonly cell: number; readonly turn: number }
  /** Take a block off the wall to the side table. */
  | { readonly kind: 'take'; readonly block: BlockId }
  /** Put a wedge in a place (from 0), or empty it. A trade is two of these. */
  | { readonly kind: 'place'; readonly block: BlockId; readonly place: number; readonly wedge: Place | null }
  /** Sew the strips of a set in this order, before it is sewn: the same strips, none more and none fewer. */
  | { readonly kind: 'strips'; readonly set: StripSetId; readonly strips: readonly Strip[] };

/** Carries moves out on a draft, in order, in place. Unknown blocks and cells throw: moves are made from the project. */
export function carryOut(draft: Project, moves: readonly Move[]): void {
  for (const move of moves) carryOutOne(draft, move);
}

/** A new project with the moves carried out; the one passed in is unchanged. */
export function moved(project: Project, moves: readonly Move[]): Project {
  const draft: Project = {
    ...project,
    // Sets that stay are the very same: what is known of their wedges still holds.
    stripSets: moves.some((move) => move.kind === 'strips')
      ? project.stripSets.map((set) => ({ ...set }))
      : project.stripSets,
    blocks: project.blocks.map((block) => ({ ...block, places: [...block.places] })),
    wall: { ...project.wall, cells: project.wall.cells.map((cell) => (cell ? { ...cell } : null)) },
  };
  carryOut(draft, moves);
  return draft;
}

function carryOutOne(draft: Project, move: Move): void {
  const { cells } = draft.wall;
  switch (move.kind) {
    case 'turn':
      hungCell(draft, move.block).turn = move.turn;
      return;
    case 'shift': {
      known(draft, move.block).cornerShift = move.cornerShift;
      const at = cellIndexOf(draft, move.block);
      if (at >= 0) cells[at]!.turn = move.turn;
      return;
    }
    case 'swap': {
      const held = cells[move.cell];
      const other = cells[move.other];
      if (held === undefined || other === undefined) throw new Error('carryOut: no such cell');
      cells[move.cell] = other;
      cells[move.other] = held;
      return;
    }
    case 'hang': {
      if (cells[move.cell] === undefined) throw new Error('carryOut: no such cell');
      const from = cellIndexOf(draft, known(draft, move.block).id);
      if (from >= 0) cells[from] = null;
      cells[move.cell] = { block: move.block, turn: move.turn, pinned: false };
      return;
    }
    case 'take': {
      const from = cellIndexOf(draft, move.block);
      if (from >= 0) cells[from] = null;
      return;
    }
    case 'place':
      known(draft, move.block).places[move.place] = move.wedge ? { ...move.wedge } : null;
      return;
    case 'strips': {
      const set = findSet(draft, move.set);
      if (!set) throw new Error(`carryOut: no set ${move.set}`);
      if (!sameStrips(set.strips, move.strips))
        throw new Error(`carryOut: other strips than set ${move.set} has`);
      set.strips = move.strips.map((strip) => ({ ...strip }));
      return;
    }
    default:
      move satisfies never;
  }
}

/** Whether two lists hold the same strips in whatever order. */
function sameStrips(one: readonly Strip[], other: readonly Strip[]): boolean {
  const sorted = (strips: readonly Strip[]) =>
    strips.map(({ fabric, width, locked }) => JSON.stringify([fabric, width, locked ?? false])).toSorted();
  return sorted(one).join() === sorted(other).join();
}

function known(draft: Project, block: BlockId) {
  const found = findBlock(draft, block);
  if (!found) throw new Error(`carryOut: no block ${block}`);
  return found;
}

function hungCell(draft: Project, block: BlockId) {
  const cell = draft.wall.cells[cellIndexOf(draft, block)];
  if (!cell) throw new Error(`carryOut: block ${block} does not hang`);
  return cell;
}
