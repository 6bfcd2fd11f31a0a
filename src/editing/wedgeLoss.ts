// A wedge lost (miscut, torn) or found: the count of a set changes by one, and the blocks with the smallest change there is.
import { type LedgerRow, wedgeLedger } from '../cutting/ledger';
import { cellIndexOf, findBlock, findSet } from '../model/find';
import { phrase } from '../model/phrase';
import type { Block, BlockId, Place, Project, StripSetId, Tip } from '../model/project';
import { type Command, Refusal } from './apply';

/** What losing one wedge does to the blocks. */
export type LossPlan =
  /** A wedge no block uses is lost. */
  | { readonly kind: 'spare' }
  /** One place takes another wedge, or stands empty when none of that tip is left. Place from 0. */
  | { readonly kind: 'block'; readonly block: BlockId; readonly place: number; readonly by: Place | null }
  /** There is none, or all there are lie in sewn blocks. */
  | { readonly kind: 'none' };

/**
 * The smallest change: none at all while a wedge is left over; else one place of a planned block takes the left-over wedge
 * that meets fewest of its own rim fabric there; else one place stands empty, on the side table if it can be.
 */
export function lossPlan(project: Project, set: StripSetId, tip: Tip): LossPlan {
  const ledger = wedgeLedger(project);
  const row = ledger.find((one) => one.set.id === set);
  if (!row || row.available[tip] === 0) return { kind: 'none' };
  if (row.left[tip] > 0) return { kind: 'spare' };
  const choices = heldPlaces(project, set, tip).flatMap(({ block, place }) =>
    substitutes(ledger, set, tip).map((by) => ({
      block: block.id,
      place,
      by,
      cost: cost(project, block, place, by),
    })),
  );
  const best = choices.toSorted((one, other) => one.cost - other.cost)[0];
  return best ? { kind: 'block', block: best.block, place: best.place, by: best.by } : { kind: 'none' };
}

function heldPlaces(project: Project, set: StripSetId, tip: Tip): { block: Block; place: number }[] {
  return project.blocks
    .filter((block) => block.progress === 'planned')
    .flatMap((block) =>
      block.places.flatMap((held, place) =>
        held?.set === set && held.tip === tip ? [{ block, place }] : [],
      ),
    );
}

function substitutes(ledger: readonly LedgerRow[], set: StripSetId, tip: Tip): (Place | null)[] {
  const others = ledger.filter((row) => row.set.id !== set && row.left[tip] > 0);
  return others.length > 0 ? others.map((row) => ({ set: row.set.id, tip })) : [null];
}

/** A rim that would meet itself weighs most; then a block on the wall; then a pinned one. Ties go to the first block. */
function cost(project: Project, block: Block, place: number, by: Place | null): number {
  const count = block.places.length;
  const beside = [block.places[(place + 1) % count], block.places[(place + count - 1) % count]];
  const own = by && rimFabric(project, by);
  const meets = beside.filter((other) => other && own !== null && rimFabric(project, other) === own).length;
  const cell = project.wall.cells[cellIndexOf(project, block.id)];
  return meets * 100 + (cell ? 10 : 0) + (cell?.pinned ? 5 : 0) - (by ? 0 : emptyPlaces(block));
}

function emptyPlaces(block: Block): number {
  return block.places.filter((place) => place === null).length;
}

function rimFabric(project: Project, wedge: Place): string | null {
  const strips = findSet(project, wedge.set)?.strips ?? [];
  return (wedge.tip === 'up' ? strips[0] : strips.at(-1))?.fabric ?? null;
}

/** One wedge of a set fewer. The blocks change as lossPlan says; refused when every such wedge is sewn in or there is none. */
export function loseWedge(project: Project, set: StripSetId, tip: Tip): Command {
  const label = findSet(project, set)?.label ?? '';
  return {
    label: phrase('one wedge of set {set} fewer', { set: label }),
    change: (draft) => {
      const plan = lossPlan(draft, set, tip);
      if (plan.kind === 'none') {
        const say =
          tip === 'up'
            ? 'Set {set} has no wedge tip up that is not sewn into a block.'
            : 'Set {set} has no wedge tip down that is not sewn into a block.';
        throw new Refusal('no-wedge-to-lose', 'stripSets', phrase(say, { set: label }));
      }
      if (plan.kind === 'block') findBlock(draft, plan.block)!.places[plan.place] = plan.by;
      count(draft, set, tip, -1);
    },
  };
}

/** One wedge of a set more than was counted. */
export function gainWedge(project: Project, set: StripSetId, tip: Tip): Command {
  return {
    label: phrase('one wedge of set {set} more', { set: findSet(project, set)?.label ?? '' }),
    change: (draft) => count(draft, set, tip, 1),
  };
}

/** Writes the new count; once it is what the geometry gives again, nothing needs to be written down. */
function count(draft: Project, id: StripSetId, tip: Tip, by: 1 | -1): void {
  const set = findSet(draft, id);
  if (!set) throw new Error(`wedgeLoss: no set ${id}`);
  const row = wedgeLedger(draft).find((one) => one.set.id === id)!;
  const there = { ...row.available, [tip]: row.available[tip] + by };
  set.cut = null;
  const planned = wedgeLedger(draft).find((one) => one.set.id === id)!.available;
  if (planned.up !== there.up || planned.down !== there.down) set.cut = there;
}
