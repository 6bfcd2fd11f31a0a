// From the wall as it hangs to a wished arrangement by hand: which blocks are taken down, and in what order they go up again. As few
// blocks as can be are touched, and they are touched in as small groups as can be found: turns, swaps of two, rounds of more.
import type { Move } from '../../model/moves';
import type { Block, BlockId, Project } from '../../model/project';
import { hangsAlike } from '../../model/wallCells';
import { Looks, NOTHING } from './looks';

/** Where a block hangs or goes: a cell of the wall, or the side table. */
export type Spot = number | 'side table';

/** One block that is taken down and put up. */
export interface Carry {
  readonly block: BlockId;
  readonly from: Spot;
  readonly to: Spot;
  /** Its turn before and after (model/project: quarter turns, half turns where it is not square); 0 on the side table. */
  readonly turn: number;
  readonly turned: number;
}

/**
 * What is done in one go. `turn`: one block, in its cell. `swap`: two blocks change places. `round`: three or more; the first is laid
 * aside, each of the others goes into the place that became free, and the first into the last one. `row`: the same with an empty cell
 * to begin with, or the side table, so that nothing is laid aside. Blocks are in the order in which they are put up.
 */
export interface HandStep {
  readonly kind: 'turn' | 'swap' | 'round' | 'row';
  readonly carries: readonly Carry[];
}

type Blocks = ReadonlyMap<BlockId, Block>;

/** What a slot shows now and is to show, and the block that is there; slots are cells, and places on the side table. */
interface Slot {
  readonly spot: Spot;
  readonly block: BlockId | null;
  readonly turn: number;
  /** Sorts now and wished. */
  readonly sort: string;
  readonly wants: string;
  /** The look wished. */
  readonly look: string;
}

/**
 * The steps from the project to the wished state of it, which has the same blocks with the same wedges: turns first, then swaps, then
 * rounds and rows, the shortest first. Carried out they give a wall that looks as wished; of blocks that look alike any may hang where
 * one of them is wished. No list touches fewer blocks: every block that is touched is in a cell that is to look otherwise, or comes from
 * the side table or goes there. Throws where the two have other blocks.
 */
export function handSteps(project: Project, wished: Project): HandStep[] {
  const looks = new Looks(project);
  const blocks = new Map(project.blocks.map((block) => [block.id, block]));
  const slots = slotsOf(project, wished, blocks, looks);
  const turns = slots.filter((slot) => slot.sort === slot.wants);
  const rounds = shortRounds(slots.filter((slot) => slot.sort !== slot.wants));
  return [
    ...turns.map((slot): HandStep => ({ kind: 'turn', carries: carries(blocks, looks, [slot]) })),
    ...rounds.map((round): HandStep => ({ kind: kindOf(round), carries: carries(blocks, looks, round) })),
  ];
}

/** The steps as moves of the project, step by step: to tick one off is to carry out its moves. */
export function movesOfStep({ carries }: HandStep): Move[] {
  const taken = carries.flatMap(({ block, from, to }): Move[] =>
    from !== 'side table' && to === 'side table' ? [{ kind: 'take', block }] : [],
  );
  const cells = carries.flatMap(({ from, to }) =>
    from !== 'side table' && to !== 'side table' && from !== to ? [{ from, to }] : [],
  );
  // A round of n blocks is n − 1 exchanges: each puts one block where it goes.
  const closes = cells.length > 1 && cells.at(-1)!.from === cells[0]!.to;
  const swaps = (closes ? cells.slice(0, -1) : cells).map(
    ({ from, to }): Move => ({ kind: 'swap', cell: to, other: from }),
  );
  const hung = carries.flatMap(({ block, from, to, turned }): Move[] =>
    from === 'side table' && to !== 'side table' ? [{ kind: 'hang', block, cell: to, turn: turned }] : [],
  );
  const turns = carries.flatMap(({ block, from, to, turn, turned }): Move[] =>
    to !== 'side table' && from !== 'side table' && turn !== turned
      ? [{ kind: 'turn', block, turn: turned }]
      : [],
  );
  return [...taken, ...swaps, ...hung, ...turns];
}

/** How many blocks the steps touch: each is taken down once and put up once. */
export function blocksTouched(steps: readonly HandStep[]): number {
  return steps.reduce((sum, step) => sum + step.carries.length, 0);
}

/** Every slot that is to show something else, with the side table's beside the cells. */
function slotsOf(project: Project, wished: Project, blocks: Blocks, looks: Looks): Slot[] {
  const cells = project.wall.cells.flatMap((cell, at): Slot[] => {
    const then = wished.wall.cells[at] ?? null;
    // Looks are worked out only where something else hangs: a large wall is compared at every turn.
    if (hangsAlike(cell, then)) return [];
    const block = cell && known(blocks, cell.block);
    const other = then && known(blocks, then.block);
    const look = other ? looks.of(other, then!.turn) : NOTHING;
    if ((block ? looks.of(block, cell!.turn) : NOTHING) === look) return [];
    return [
      {
        spot: at,
        block: block?.id ?? null,
        turn: cell?.turn ?? 0,
        sort: block ? looks.sortOf(block) : NOTHING,
        wants: other ? looks.sortOf(other) : NOTHING,
        look,
      },
    ];
  });
  return [...cells, ...tableSlots(project, cells, looks)];
}

/** Places on the side table whose block is wanted on the wall, and empty ones for blocks that are wanted there no more. */
function tableSlots(project: Project, cells: readonly Slot[], looks: Looks): Slot[] {
  const short = new Map<string, number>();
  for (const { sort, wants } of cells) {
    if (wants !== NOTHING) short.set(wants, (short.get(wants) ?? 0) + 1);
    if (sort !== NOTHING) short.set(sort, (short.get(sort) ?? 0) - 1);
  }
  const hung = new Set(project.wall.cells.map((cell) => cell?.block));
  const slots: Slot[] = [];
  const slot = { spot: 'side table' as const, turn: 0, look: NOTHING };
  for (const block of project.blocks) {
    if (hung.has(block.id)) continue;
    const sort = looks.sortOf(block);
    const wanted = short.get(sort) ?? 0;
    if (wanted <= 0) continue;
    short.set(sort, wanted - 1);
    slots.push({ ...slot, block: block.id, sort, wants: NOTHING });
  }
  for (const [sort, count] of short) {
    if (count > 0) throw new Error('handSteps: the wished wall has other blocks');
    for (let at = count; at < 0; at++) slots.push({ ...slot, block: null, sort: NOTHING, wants: sort });
  }
  return slots;
}

/**
 * Takes the slots apart into rounds in which each slot gets what the next one shows. Slots are edges from the sort that is there to the
 * sort that is wanted, so rounds are cycles of that graph. Two slots that want each other's sort always go together, which costs no
 * other round; longer ones are taken shortest first (the most cycles of such a graph are hard to find where many blocks look alike).
 */
function shortRounds(slots: readonly Slot[]): Slot[][] {
  const left = new Set(slots);
  const rounds: Slot[][] = [];
  while (left.size > 0) {
    const round = shortestRound(left);
    for (const slot of round) left.delete(slot);
    rounds.push(round);
  }
  return rounds;
}

function shortestRound(left: ReadonlySet<Slot>): Slot[] {
  const by = new Map<string, Slot[]>();
  for (const slot of left) {
    const alike = by.get(slot.sort);
    if (alike) alike.push(slot);
    else by.set(slot.sort, [slot]);
  }
  let best: Slot[] | null = null;
  for (const first of left) {
    const round = roundFrom(first, by, best ? best.length - 1 : left.size);
    if (round) best = round;
    if (best?.length === 2) break;
  }
  if (!best) throw new Error('handSteps: the wished wall has other blocks');
  return best;
}

/** The shortest round that begins with a slot and has at most so many, by breadth-first search over the sorts; null where none has. */
function roundFrom(first: Slot, by: ReadonlyMap<string, readonly Slot[]>, most: number): Slot[] | null {
  /** The slot through which a sort was reached first. */
  const through = new Map<string, Slot>([[first.wants, first]]);
  let front = [first.wants];
  for (let length = 2; length <= most && front.length > 0; length++) {
    const next: string[] = [];
    for (const sort of front) {
      for (const slot of by.get(sort) ?? []) {
        if (slot.wants === first.sort) return wayTo(slot, first, through);
        if (through.has(slot.wants)) continue;
        through.set(slot.wants, slot);
        next.push(slot.wants);
      }
    }
    front = next;
  }
  return null;
}

function wayTo(last: Slot, first: Slot, through: ReadonlyMap<string, Slot>): Slot[] {
  const way = [last];
  while (way[0] !== first) way.unshift(through.get(way[0]!.sort)!);
  return way;
}

/** A round in the order of work: each slot is followed by the one whose block it gets. A row begins where nothing hangs. */
function inOrder(round: readonly Slot[]): readonly Slot[] {
  const start = Math.max(
    0,
    round.findIndex(({ block }) => block === null),
  );
  return [...round.slice(start), ...round.slice(0, start)];
}

function carries(blocks: Blocks, looks: Looks, round: readonly Slot[]): Carry[] {
  const ordered = inOrder(round);
  return ordered.flatMap((to, at): Carry[] => {
    const from = ordered[(at + 1) % ordered.length]!;
    if (from.block === null) return [];
    const { block, turn } = from;
    if (to.spot === 'side table') return [{ block, from: from.spot, to: to.spot, turn, turned: 0 }];
    const turned = looks.turnFor(known(blocks, block), to.look, turn);
    if (turned === null) throw new Error(`handSteps: block ${block} does not look as wished`);
    return [{ block, from: from.spot, to: to.spot, turn, turned }];
  });
}

function kindOf(round: readonly Slot[]): HandStep['kind'] {
  if (round.some(({ block, spot }) => block === null || spot === 'side table')) return 'row';
  return round.length === 2 ? 'swap' : 'round';
}

function known(blocks: Blocks, id: BlockId): Block {
  const block = blocks.get(id);
  if (!block) throw new Error(`handSteps: no block ${id}`);
  return block;
}
