// Lists what the arranger may change in a project: cells that exchange blocks, orientations, wedges to trade, wedges left over,
// and sets that are not sewn yet. Pins and progress decide it, by the rules of model/freedom.ts.
import { filled, type WallModel } from '../balance/wall/wallModel';
import { wedgeLedger } from '../cutting/wedges/ledger';
import { cellOf, orientation, stepsPerTurn, turnsOf } from '../model/find';
import { whyCornersLocked, whyHangingLocked, whyOrderLocked, whyPlacesLocked } from '../model/freedom';
import type { Block, Project, StripSet, StripSetId } from '../model/project';

/** The changes that the person allows the arranger to make. */
export interface Scopes {
  /** Blocks change cells. */
  readonly swap: boolean;
  /** Blocks turn by quarters (by halves where they are not square). */
  readonly turn: boolean;
  /** Corners go on other places, where they are not sewn on yet: turning by eighths. */
  readonly shiftCorners: boolean;
  /** Wedges of planned blocks change places, or for wedges that are left over. */
  readonly trade: boolean;
  /** The strips of sets that are not sewn are put in another order. */
  readonly strips: boolean;
}

export interface Decisions {
  /** Cells whose blocks may be exchanged with one another. */
  readonly cells: Int32Array;
  /** Orientations each block may take, its present one included; indexed by block. */
  readonly orientations: readonly Int32Array[];
  /** Blocks with more than one orientation. */
  readonly turnable: Int32Array;
  /** Places (block × N + place) that hold a wedge to trade, tip-up and tip-down apart: tips alternate round the block. */
  readonly tradable: readonly [up: Int32Array, down: Int32Array];
  /** Wedges left over, by wedge type. */
  readonly spare: Int32Array;
  /** Sets whose strips may be put in another order, by index. */
  readonly sets: Int32Array;
  /** True where the arranger may change anything at all. */
  readonly free: boolean;
}

/**
 * Works out what the scopes, pins and progress leave open. Empty cells stay empty, blocks on the side table keep their place
 * and their wedges, and blocks without wedges stay where they hang.
 */
export function decisionsOf(project: Project, model: WallModel, scopes: Scopes): Decisions {
  const { blocks } = project;
  const index = new Map(blocks.map((block, at) => [block.id, at]));
  const cells = project.wall.cells.flatMap((cell, at) => {
    const block = cell && blocks[index.get(cell.block) ?? -1];
    return scopes.swap && block && filled(model, at) && whyHangingLocked(project, block) === null ? [at] : [];
  });
  const orientations = blocks.map((block) => orientationsOf(project, block, scopes));
  const tradable = tradablePlaces(project, model, scopes);
  const turnable = blocks.flatMap((_, at) => (orientations[at]!.length > 1 ? [at] : []));
  const spare = scopes.trade ? spareWedges(project) : new Int32Array(2 * project.stripSets.length);
  const trades = tradable.some(
    (places, tip) =>
      places.length > 1 || (places.length === 1 && spare.some((n, k) => n > 0 && k % 2 === tip)),
  );
  const sets = scopes.strips ? openSets(project) : new Int32Array(0);
  return {
    cells: Int32Array.from(cells.length > 1 ? cells : []),
    orientations,
    turnable: Int32Array.from(turnable),
    tradable,
    spare,
    sets,
    free: cells.length > 1 || turnable.length > 0 || trades || sets.length > 0,
  };
}

function orientationsOf(project: Project, block: Block, scopes: Scopes): Int32Array {
  const { wedge } = project;
  const cell = cellOf(project, block.id);
  const now = orientation(block, cell?.turn ?? 0, wedge);
  if (!cell || whyHangingLocked(project, block) !== null) return Int32Array.of(now);
  const steps = stepsPerTurn(wedge.perBlock);
  const shifts =
    scopes.shiftCorners && whyCornersLocked(project, block) === null
      ? Array.from({ length: steps }, (_, shift) => shift)
      : [block.cornerShift];
  const turns = scopes.turn
    ? Array.from({ length: turnsOf(wedge.perBlock) }, (_, turn) => turn)
    : [cell.turn];
  return Int32Array.from(turns.flatMap((turn) => shifts.map((shift) => shift + turn * steps)));
}

function tradablePlaces(project: Project, model: WallModel, scopes: Scopes): [Int32Array, Int32Array] {
  const found: [number[], number[]] = [[], []];
  project.blocks.forEach((block, at) => {
    const cell = cellOf(project, block.id);
    if (!scopes.trade || !cell || cell.pinned || whyPlacesLocked(block) !== null) return;
    for (let place = at * model.perBlock; place < (at + 1) * model.perBlock; place++) {
      const type = model.typeAt[place]!;
      if (type >= 0) found[type % 2 === 0 ? 0 : 1].push(place);
    }
  });
  return [Int32Array.from(found[0]), Int32Array.from(found[1])];
}

/** Finds planned, unlocked sets whose wedges hang, none of them in a pinned block, with two free strips that differ. */
function openSets(project: Project): Int32Array {
  const hung = new Set<StripSetId>();
  const pinned = new Set<StripSetId>();
  for (const block of project.blocks) {
    const cell = cellOf(project, block.id);
    for (const place of block.places) {
      if (!place || !cell) continue;
      hung.add(place.set);
      if (cell.pinned) pinned.add(place.set);
    }
  }
  const open = (set: StripSet) => {
    if (!hung.has(set.id) || pinned.has(set.id) || whyOrderLocked(project, set, set.strips) !== null)
      return false;
    const free = set.strips.filter((strip) => !strip.locked);
    return free.some((strip) => strip.fabric !== free[0]!.fabric || strip.width !== free[0]!.width);
  };
  return Int32Array.from(project.stripSets.keys()).filter((at) => open(project.stripSets[at]!));
}

/** Counts wedges that no block uses, by wedge type: 2 × set + (0 up, 1 down). Never below 0. */
function spareWedges(project: Project): Int32Array {
  return Int32Array.from(
    wedgeLedger(project).flatMap((row) => [Math.max(0, row.left.up), Math.max(0, row.left.down)]),
  );
}
