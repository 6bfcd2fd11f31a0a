// A plan made whole again after wedges were lost: as few places as possible change, no wedge is used twice, and no new
// rim clash is made while one move more can avoid it. Sewn blocks stay; pinned ones change only when nothing else helps.
import { wantedTip } from '../../cutting/wedges/nesting';
import { cellOf, findBlock } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import { type Move, moved } from '../../model/moves';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Block, Place, Project, Tip } from '../../model/project';
import { atOnce, type InParts } from '../../model/work/parts';
import { fitCost, fitOf } from './composeRank';
import { type BesideOf, besideTable, type WedgeType, wedgeTypeKey, wedgeTypes } from './wedgeTypes';

export interface Repair {
  readonly moves: readonly Move[];
  /** Places that stand empty after it because no wedge of their tip is left; with `fill` false those it empties. */
  readonly empty: number;
  /** Wedges used beyond what was cut that lie in sewn blocks, so that no move can help. */
  readonly stuck: number;
  /** True where no repair changes fewer places: one move for each wedge too many or place to fill. */
  readonly smallest: boolean;
  readonly words: readonly Phrase[];
}

interface Hole {
  readonly block: Block;
  readonly place: number;
}

interface Step {
  readonly moves: readonly Move[];
  readonly cost: number;
}

/** One move more is worth as much as a quarter of a rim clash: a chain is taken only to avoid a clash. */
const EXTRA_MOVE = 5;
/** Opening a pinned block is worth more than any clash. */
const PINNED = 1_000;

/** Repairs in one go. */
export function repair(project: Project, fill?: boolean): Repair {
  return atOnce(repairing(project, fill));
}

/**
 * Wedges used beyond what was cut leave their places; then every empty place of a block that has wedges is filled, from
 * what is left over or by passing a wedge on from another block that a left-over one suits better. The project itself
 * may break the ledger (that is what is mended); it is not changed. With `fill` false, places that stood empty before stay
 * empty: they may be meant to. In parts of a few milliseconds.
 */
export function* repairing(project: Project, fill = true): InParts<Repair> {
  const moves: Move[] = [];
  let current = project;
  let stuck = 0;
  const beside = besideTable(project);
  const carry = (step: readonly Move[]) => {
    moves.push(...step);
    current = moved(current, step);
  };
  for (const type of wedgeTypes(project).filter((one) => one.count < 0)) {
    for (let excess = -type.count; excess > 0; excess -= 1) {
      const step = yield* replacingOne(current, type, beside);
      if (step) carry(step.moves);
      else stuck += 1;
    }
  }
  const over = overuse(project) - stuck;
  const toFill = fill ? holes(project).length : 0;
  for (const hole of fill ? holes(current) : []) {
    const step = yield* findingFilling(current, hole, wantedTip(hole.block.places, hole.place), beside);
    if (step) carry(step.moves);
  }
  const whole = lastWord(moves);
  const empty = holes(current).length - (fill ? 0 : holes(project).length);
  // Every wedge too many and every empty place that is filled takes a move of its own.
  const least = over + Math.max(0, toFill - empty);
  return {
    moves: whole,
    empty,
    stuck,
    smallest: whole.length <= least,
    words: wordsOf(current, whole, empty, stuck),
  };
}

function overuse(project: Project): number {
  return wedgeTypes(project).reduce((sum, type) => sum + Math.max(0, -type.count), 0);
}

/** Empty places of planned blocks that hold at least one wedge. */
function holes(project: Project): Hole[] {
  return project.blocks
    .filter((block) => whyPlacesLocked(block) === null && block.places.some((place) => place !== null))
    .flatMap((block) => block.places.flatMap((wedge, place) => (wedge === null ? [{ block, place }] : [])));
}

/** Takes one wedge of a type out of the block where that costs least, with what goes there instead; null: all are sewn. */
function* replacingOne(project: Project, type: WedgeType, beside: BesideOf): InParts<Step | null> {
  const choices: Step[] = [];
  for (const block of project.blocks) {
    if (whyPlacesLocked(block) !== null) continue;
    for (const [place, wedge] of block.places.entries()) {
      if (!wedge || wedgeTypeKey(wedge) !== wedgeTypeKey(type.wedge)) continue;
      const emptied: Move = { kind: 'place', block: block.id, place, wedge: null };
      const without = moved(project, [emptied]);
      const filling = yield* findingFilling(
        without,
        { block: findBlock(without, block.id)!, place },
        wedge.tip,
        beside,
      );
      const pin = cellOf(project, block.id)?.pinned ? PINNED : 0;
      if (filling) {
        choices.push({ moves: filling.moves, cost: filling.cost + pin });
        continue;
      }
      // Nothing to put there: an empty place hurts least in a block that waits on the side table or has gaps already.
      const gaps = block.places.filter((one) => one === null).length;
      const hung = cellOf(project, block.id) ? 100 : 0;
      choices.push({ moves: [emptied], cost: 10 * PINNED + pin - gaps + hung });
    }
  }
  return cheapest(choices);
}

/** The best way to fill a hole: a left-over wedge, or another block's wedge with a left-over one in its stead. */
function* findingFilling(project: Project, hole: Hole, tip: Tip, beside: BesideOf): InParts<Step | null> {
  yield null;
  const types = new Map(wedgeTypes(project).map((type) => [wedgeTypeKey(type.wedge), type]));
  const spare = [...types.values()].filter(
    (type) => type.wedge.tip === tip && type.count > 0 && type.rim !== null,
  );
  const direct = spare.map((type): Step => {
    const fit = fitOf(type, hole.block, hole.place, types, beside);
    return { moves: [put(hole.block, hole.place, type.wedge)], cost: fitCost(fit) };
  });
  const best = cheapest(direct);
  if (!best || best.cost < fitCost({ rimClashes: 1, rimLookAlikes: 0, same: 0, alike: 0 })) return best;
  return cheapest([best, ...(yield* findingChains(project, hole, spare, types, beside))]);
}

/** Fillings that pass on a wedge of another planned, unpinned block and put a left-over one in its place. */
function* findingChains(
  project: Project,
  hole: Hole,
  spare: readonly WedgeType[],
  types: ReadonlyMap<string, WedgeType>,
  beside: BesideOf,
): InParts<Step[]> {
  const chains: Step[] = [];
  for (const other of project.blocks) {
    if (other.id === hole.block.id || whyPlacesLocked(other) !== null) continue;
    if (cellOf(project, other.id)?.pinned) continue;
    yield null;
    for (const [there, wedge] of other.places.entries()) {
      const passed = wedge && types.get(wedgeTypeKey(wedge));
      if (!passed || passed.wedge.tip !== spare[0]?.wedge.tip) continue;
      const here = fitCost(fitOf(passed, hole.block, hole.place, types, beside));
      const before = fitCost(fitOf(passed, other, there, types, beside));
      for (const type of spare) {
        chains.push({
          moves: [put(hole.block, hole.place, passed.wedge), put(other, there, type.wedge)],
          cost: here + fitCost(fitOf(type, other, there, types, beside)) - before + EXTRA_MOVE,
        });
      }
    }
  }
  return chains;
}

function put(block: Block, place: number, wedge: Place): Move {
  return { kind: 'place', block: block.id, place, wedge: { ...wedge } };
}

function cheapest(steps: readonly Step[]): Step | null {
  return steps.reduce<Step | null>((best, step) => (best && best.cost <= step.cost ? best : step), null);
}

/** Only the last move to each place counts. */
function lastWord(moves: readonly Move[]): Move[] {
  const last = new Map<string, Move>();
  for (const move of moves) {
    if (move.kind !== 'place') continue;
    const key = `${move.block} ${move.place}`;
    last.delete(key);
    last.set(key, move);
  }
  return [...last.values()];
}

function wordsOf(project: Project, moves: readonly Move[], empty: number, stuck: number): Phrase[] {
  const words: Phrase[] = [];
  if (moves.length > 0) {
    const numbers = new Set(
      moves.map((move) => (move.kind === 'place' ? findBlock(project, move.block)!.number : 0)),
    );
    const blocks = { list: [...numbers].sort((one, other) => one - other) };
    const one = '1 place changes, in block {blocks}.';
    const many =
      numbers.size === 1
        ? '{count} places change, in block {blocks}.'
        : '{count} places change, in blocks {blocks}.';
    words.push(counted(moves.length, one, many, { blocks }));
  }
  if (empty > 0) {
    const one = '1 place stays empty: no wedge of its tip is left. Cut one more to fill it.';
    const many =
      '{count} places stay empty: no wedges of their tips are left. Cut that many more to fill them.';
    words.push(counted(empty, one, many));
  }
  if (stuck > 0) {
    const one = '1 wedge more than its set gives lies in a sewn block. Check the count of its set.';
    const many =
      '{count} wedges more than their sets give lie in sewn blocks. Check the counts of their sets.';
    words.push(counted(stuck, one, many));
  }
  return words.length > 0 ? words : [phrase('The plan works as it is; nothing changes.')];
}
