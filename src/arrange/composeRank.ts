// Wedges offered for one place of a block, ranked by how they fit beside their two neighbours: those left over, and those
// of other planned blocks in trade. Each offer states its figures before it is taken.
import { wantedTip } from '../cutting/nesting';
import { cellOf, findBlock } from '../model/find';
import { placesHeld } from '../model/freedom';
import type { Move } from '../model/moves';
import type { Block, BlockId, Place, Project } from '../model/project';
import type { Inches } from '../model/units';
import { type Beside, type BesideOf, besideTable, kindKey, type WedgeKind, wedgeKinds } from './wedgeKinds';

/** How a wedge lies beside the wedges on both sides of its place; empty neighbours count nothing. */
export interface Fit {
  /** Neighbours whose rim is the same fabric, 0 to 2. */
  readonly rimClashes: number;
  /** Length along both seams where a fabric meets itself, and of look-alikes times their likeness, inches. */
  readonly same: Inches;
  readonly alike: Inches;
}

export interface WedgeOffer {
  readonly wedge: Place;
  /** Letter of its set. */
  readonly label: string;
  /** Left over, or traded from this place (from 0) of another block. */
  readonly from: 'left over' | { readonly block: BlockId; readonly place: number };
  /** How many are left over; 0 for a trade. */
  readonly left: number;
  readonly fit: Fit;
  /** For a trade, how the fit in the other block changes; nothing for a wedge left over. */
  readonly elsewhere: Fit;
  /** What it costs in all; lower fits better. Offers are sorted by it. */
  readonly cost: number;
  readonly moves: readonly Move[];
}

/** A rim clash weighs as much as a fabric meeting itself along this much seam; a look-alike half of its fabric itself. */
const RIM_CLASH: Inches = 20;
const ALIKE_PART = 0.5;
/** A trade touches another block too: among equals what is left over comes first. */
const TRADE = 0.01;
const NO_FIT: Fit = { rimClashes: 0, same: 0, alike: 0 };

/** What a fit costs: rim clashes first, then inches of one fabric meeting itself, then of look-alikes. */
export function fitCost(fit: Fit): number {
  return RIM_CLASH * fit.rimClashes + fit.same + ALIKE_PART * fit.alike;
}

/**
 * All wedges that could stand on a place (from 0), best fit first: one offer for each set with wedges left over, and the
 * best trade for each other kind. Only wedges of the tip the place wants, so that seams go on nesting. Empty when the
 * block is unknown or sewn. Wedges of sewn and pinned blocks are not offered.
 */
export function rankWedges(project: Project, blockId: BlockId, place: number): WedgeOffer[] {
  const block = findBlock(project, blockId);
  if (!block || placesHeld(block) !== null || place < 0 || place >= block.places.length) return [];
  const beside = besideTable(project);
  const kinds = new Map(wedgeKinds(project).map((kind) => [kindKey(kind.wedge), kind]));
  const tip = wantedTip(block.places, place);
  const now = block.places[place] ?? null;
  const offers: WedgeOffer[] = [];
  for (const kind of kinds.values()) {
    if (kind.wedge.tip !== tip || kind.count <= 0 || kind.rim === null) continue;
    if (now && kindKey(now) === kindKey(kind.wedge)) continue;
    const fit = fitOf(kind, block, place, kinds, beside);
    offers.push({
      wedge: kind.wedge,
      label: kind.label,
      from: 'left over',
      left: kind.count,
      fit,
      elsewhere: NO_FIT,
      cost: fitCost(fit),
      moves: [{ kind: 'place', block: block.id, place, wedge: { ...kind.wedge } }],
    });
  }
  offers.push(...trades(project, block, place, kinds, beside));
  return offers.sort((one, other) => one.cost - other.cost || (one.label < other.label ? -1 : 1));
}

/** How a wedge of this kind lies on a place, beside what stands next to it now. */
export function fitOf(
  kind: WedgeKind,
  block: Pick<Block, 'places'>,
  place: number,
  kinds: ReadonlyMap<string, WedgeKind>,
  beside: BesideOf,
): Fit {
  const count = block.places.length;
  const found = [block.places[(place + 1) % count], block.places[(place + count - 1) % count]]
    .map((next) => (next ? kinds.get(kindKey(next)) : undefined))
    .map((next) => (next ? beside(kind, next) : undefined))
    .filter((one): one is Beside => one !== undefined);
  return {
    rimClashes: found.reduce((sum, one) => sum + one.rimClash, 0),
    same: found.reduce((sum, one) => sum + one.same, 0),
    alike: found.reduce((sum, one) => sum + one.alike, 0),
  };
}

/** The best trade for each kind that other planned, unpinned blocks hold. */
function trades(
  project: Project,
  block: Block,
  place: number,
  kinds: ReadonlyMap<string, WedgeKind>,
  beside: BesideOf,
): WedgeOffer[] {
  const now = block.places[place];
  const mine = now && kinds.get(kindKey(now));
  if (!mine) return [];
  const tip = wantedTip(block.places, place);
  const best = new Map<string, WedgeOffer>();
  for (const other of project.blocks) {
    if (other.id === block.id || placesHeld(other) !== null || cellOf(project, other.id)?.pinned) continue;
    other.places.forEach((held, there) => {
      const theirs = held && kinds.get(kindKey(held));
      if (!theirs || theirs === mine || theirs.wedge.tip !== tip || mine.wedge.tip !== tip) return;
      const fit = fitOf(theirs, block, place, kinds, beside);
      const elsewhere = less(
        fitOf(mine, other, there, kinds, beside),
        fitOf(theirs, other, there, kinds, beside),
      );
      const cost = fitCost(fit) + fitCost(elsewhere) + TRADE;
      const known = best.get(kindKey(held));
      if (known && known.cost <= cost) return;
      best.set(kindKey(held), {
        wedge: theirs.wedge,
        label: theirs.label,
        from: { block: other.id, place: there },
        left: 0,
        fit,
        elsewhere,
        cost,
        moves: [
          { kind: 'place', block: block.id, place, wedge: { ...theirs.wedge } },
          { kind: 'place', block: other.id, place: there, wedge: { ...mine.wedge } },
        ],
      });
    });
  }
  return [...best.values()];
}

function less(one: Fit, other: Fit): Fit {
  return {
    rimClashes: one.rimClashes - other.rimClashes,
    same: one.same - other.same,
    alike: one.alike - other.alike,
  };
}
