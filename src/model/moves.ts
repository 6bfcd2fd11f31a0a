// Moves of blocks, wedges and strips as plain data. The arranger's finds, previews on the wall and commands are lists of these
// moves. A table has one row for each kind of move: what it touches, why it may be locked, how it is carried out.
import { blocksWith, cellIndexOf, findBlock, findSet } from './find';
import {
  whyCornersLocked,
  whyHangingLocked,
  whyOrderLocked,
  whyPlacesLocked,
  whyTurnLocked,
} from './freedom';
import type { Phrase } from './phrase';
import type { Block, BlockId, Cell, Place, Project, Strip, StripSet, StripSetId } from './project';
import { sameStrips } from './strips';

export type Move =
  /** Hang the block with this turn (quarter turns clockwise, absolute). */
  | { readonly kind: 'turn'; readonly block: BlockId; readonly turn: number }
  /** Sew the corners on other places and turn the block; only before they are sewn on. */
  | { readonly kind: 'shift'; readonly block: BlockId; readonly cornerShift: number; readonly turn: number }
  /** Exchange the blocks of two cells; either cell may be empty. */
  | { readonly kind: 'swap'; readonly cell: number; readonly other: number }
  /** Hang a block from the side table in a cell; a block that hung there goes to the side table. */
  | { readonly kind: 'hang'; readonly block: BlockId; readonly cell: number; readonly turn: number }
  /** Take a block off the wall to the side table. */
  | { readonly kind: 'take'; readonly block: BlockId }
  /** Put a wedge in a place (from 0), or empty it. A trade is two of these. */
  | { readonly kind: 'place'; readonly block: BlockId; readonly place: number; readonly wedge: Place | null }
  /** Sew the strips of a set in this order, before it is sewn: the same strips, none more and none fewer. */
  | { readonly kind: 'strips'; readonly set: StripSetId; readonly strips: readonly Strip[] };

/**
 * A new project with the moves carried out in order, without asking whether they are allowed. `project` is not changed; the
 * new project shares the parts that no move changes. Throws on an unknown block, cell or set: moves are made from the project.
 */
export function moved(project: Project, moves: readonly Move[]): Project {
  const after = withOwnLists(project);
  for (const move of moves) rowOf(move).carryOut(after, move);
  return after;
}

/** The project that `moved` gives, or why one of the moves is locked when its turn comes. */
export function movedIfFree(
  project: Project,
  moves: readonly Move[],
):
  | { readonly project: Project; readonly reason: null }
  | { readonly project: null; readonly reason: Phrase } {
  const after = withOwnLists(project);
  for (const move of moves) {
    const reason = rowOf(move).whyLocked(after, move);
    if (reason) return { project: null, reason };
    rowOf(move).carryOut(after, move);
  }
  return { project: after, reason: null };
}

/** The blocks, cells and sets that moves touch, as the project is before them. */
export interface Touched {
  readonly blocks: ReadonlySet<BlockId>;
  readonly cells: ReadonlySet<number>;
  readonly sets: ReadonlySet<StripSetId>;
}

/** Every block, cell and set that any of the moves touches. */
export function touchedBy(project: Project, moves: readonly Move[]): Touched {
  const parts = moves.map((move) => rowOf(move).touches(project, move));
  return {
    blocks: new Set(parts.flatMap((part) => part.blocks)),
    cells: new Set(parts.flatMap((part) => part.cells)),
    sets: new Set(parts.flatMap((part) => part.sets ?? [])),
  };
}

/** Whether two lists of moves touch no block, cell or set in common, so that their order makes no difference. */
export function canGoTogether(project: Project, one: readonly Move[], other: readonly Move[]): boolean {
  const [first, second] = [touchedBy(project, one), touchedBy(project, other)];
  const apart = <T>(these: ReadonlySet<T>, those: ReadonlySet<T>) =>
    ![...these].some((part) => those.has(part));
  return (
    apart(first.blocks, second.blocks) && apart(first.cells, second.cells) && apart(first.sets, second.sets)
  );
}

interface Parts {
  readonly blocks: readonly BlockId[];
  readonly cells: readonly number[];
  readonly sets?: readonly StripSetId[];
}

/** The row of one kind of move. */
interface Row<M> {
  readonly touches: (project: Project, move: M) => Parts;
  /** Why the move may not be made on this project, or null when it may. */
  readonly whyLocked: (project: Project, move: M) => Phrase | null;
  /** Replaces entries in the lists of `after`, which are its own. The entries themselves are shared and never mutated. */
  readonly carryOut: (after: Project, move: M) => void;
}

const ROWS: { readonly [K in Move['kind']]: Row<Extract<Move, { kind: K }>> } = {
  turn: {
    touches: (project, { block }) => withCell(project, block),
    whyLocked: (project, { block }) => whyTurnLocked(project, known(project, block)),
    carryOut: (after, { block, turn }) => {
      const at = cellIndexOf(after, block);
      if (at < 0) throw new Error(`moves: block ${block} does not hang`);
      turnIn(after, at, turn);
    },
  },
  shift: {
    touches: (project, { block }) => withCell(project, block),
    whyLocked: (project, { block }) => whyCornersLocked(project, known(project, block)),
    carryOut: (after, { block, cornerShift, turn }) => {
      change(after, block, { cornerShift });
      turnIn(after, cellIndexOf(after, block), turn);
    },
  },
  swap: {
    touches: (project, { cell, other }) => withBlocks(project, [cell, other]),
    whyLocked: (project, { cell, other }) =>
      cell === other ? null : (whyCellLocked(project, cell) ?? whyCellLocked(project, other)),
    carryOut: (after, { cell, other }) => {
      const there = hanging(after, cell);
      after.wall.cells[cell] = hanging(after, other);
      after.wall.cells[other] = there;
    },
  },
  hang: {
    touches: (project, { block, cell }) => {
      const there = withBlocks(project, [cell]);
      return { ...there, blocks: [block, ...there.blocks] };
    },
    whyLocked: (project, { block, cell }) =>
      whyHangingLocked(project, known(project, block)) ?? whyCellLocked(project, cell),
    carryOut: (after, { block, cell, turn }) => {
      hanging(after, cell);
      takeDown(after, known(after, block).id);
      after.wall.cells[cell] = { block, turn, pinned: false };
    },
  },
  take: {
    touches: (project, { block }) => withCell(project, block),
    whyLocked: (project, { block }) => whyHangingLocked(project, known(project, block)),
    carryOut: (after, { block }) => takeDown(after, block),
  },
  place: {
    touches: (project, { block }) => withCell(project, block),
    whyLocked: (project, { block }) => whyPlacesLocked(known(project, block)),
    carryOut: (after, { block, place, wedge }) => {
      const before = known(after, block);
      if (place >= before.places.length) throw new Error(`moves: block ${block} has no place ${place}`);
      change(after, block, { places: before.places.with(place, wedge && { ...wedge }) });
    },
  },
  strips: {
    touches: (project, { set }) => {
      const parts = blocksWith(project, set).map((block) => withCell(project, block));
      return {
        blocks: parts.flatMap(({ blocks }) => blocks),
        cells: parts.flatMap(({ cells }) => cells),
        sets: [set],
      };
    },
    whyLocked: (project, { set, strips }) => whyOrderLocked(project, knownSet(project, set), strips),
    carryOut: (after, { set, strips }) => {
      const before = knownSet(after, set);
      if (!sameStrips(before.strips, strips)) throw new Error(`moves: other strips than set ${set} has`);
      const sewn = { ...before, strips: strips.map((strip) => ({ ...strip })) };
      after.stripSets = after.stripSets.map((one) => (one === before ? sewn : one));
    },
  },
};

function rowOf(move: Move): Row<Move> {
  return ROWS[move.kind] as Row<Move>;
}

/** The same project with lists of blocks and cells of its own, their entries shared. */
function withOwnLists(project: Project): Project {
  const { wall, blocks } = project;
  return { ...project, blocks: [...blocks], wall: { ...wall, cells: [...wall.cells] } };
}

/** A block with the cell it hangs in. */
function withCell(project: Project, block: BlockId): Parts {
  const at = cellIndexOf(project, block);
  return { blocks: [block], cells: at < 0 ? [] : [at] };
}

/** Cells with the blocks that hang in them. */
function withBlocks(project: Project, cells: readonly number[]): Parts {
  return { cells, blocks: cells.flatMap((cell) => project.wall.cells[cell]?.block ?? []) };
}

function whyCellLocked(project: Project, cell: number): Phrase | null {
  const block = project.wall.cells[cell]?.block;
  return block === undefined ? null : whyHangingLocked(project, known(project, block));
}

function change(after: Project, block: BlockId, to: Partial<Pick<Block, 'places' | 'cornerShift'>>): void {
  const before = known(after, block);
  after.blocks[after.blocks.indexOf(before)] = { ...before, ...to };
}

function turnIn(after: Project, at: number, turn: number): void {
  const cell = after.wall.cells[at];
  if (cell) after.wall.cells[at] = { ...cell, turn };
}

function takeDown(after: Project, block: BlockId): void {
  const from = cellIndexOf(after, block);
  if (from >= 0) after.wall.cells[from] = null;
}

function hanging(project: Project, cell: number): Cell | null {
  const there = project.wall.cells[cell];
  if (there === undefined) throw new Error(`moves: no cell ${cell}`);
  return there;
}

function known(project: Project, block: BlockId): Block {
  const found = findBlock(project, block);
  if (!found) throw new Error(`moves: no block ${block}`);
  return found;
}

function knownSet(project: Project, set: StripSetId): StripSet {
  const found = findSet(project, set);
  if (!found) throw new Error(`moves: no set ${set}`);
  return found;
}
