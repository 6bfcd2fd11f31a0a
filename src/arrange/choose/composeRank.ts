// Wedges offered for one place of a block, ranked by how they fit beside their two neighbours and in the whole top: those
// left over, and those of other planned blocks in trade. Each offer states its figures before it is taken.
import { wantedTip } from '../../cutting/wedges/nesting';
import { cellOf, findBlock } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import type { Move } from '../../model/moves';
import type { Block, BlockId, Place, Project, Tip } from '../../model/project';
import type { Inches } from '../../model/units';
import type { TopEffect } from '../mend/topEffect';
import {
  type Beside,
  type BesideOf,
  besideTable,
  clashInches,
  type WedgeType,
  wedgeTypeKey,
  wedgeTypes,
} from './wedgeTypes';

/** How a wedge lies beside the wedges on both sides of its place; empty neighbours count nothing. */
export interface Fit {
  /** Neighbours whose rim is the same fabric, 0 to 2. */
  readonly rimClashes: number;
  /** Neighbours whose rim reads as one with it though it is other cloth. */
  readonly rimLookAlikes: number;
  /** Inches along both seams of one fabric on both sides, and of look-alikes, each counted by its likeness. */
  readonly same: Inches;
  readonly alike: Inches;
}

export interface WedgeOffer {
  readonly wedge: Place;
  /** Letter of its set. */
  readonly label: string;
  /** Left over, or traded from this place (from 0) of another block. */
  readonly from: 'leftOver' | { readonly block: BlockId; readonly place: number };
  /** How many are left over; 0 for a trade. */
  readonly left: number;
  readonly fit: Fit;
  /** For a trade, how the fit in the other block changes; nothing for a wedge left over. */
  readonly elsewhere: Fit;
  /** It keeps tips alternating round the block. Only such wedges are traded. */
  readonly rightTip: boolean;
  /** What it adds to the score of the whole top, a trade's other end included; 0 where no block it touches weighs anything. */
  readonly added: number;
  readonly moves: readonly Move[];
}

/** A rim clash weighs as much as one fabric against itself along this much seam. */
const RIM_CLASH: Inches = 20;
const NO_FIT: Fit = { rimClashes: 0, rimLookAlikes: 0, same: 0, alike: 0 };

/** What a fit costs where plans are repaired: rim clashes first, then inches of one fabric meeting itself, then of look-alikes. */
export function fitCost(fit: Fit): number {
  return RIM_CLASH * fit.rimClashes + clashInches(fit);
}

/**
 * All wedges that could lie in a place (from 0): one offer for each set and tip with wedges left over, and the best trade
 * for each other type of the tip the place wants. Empty when the block is unknown or sewn. Wedges of sewn and pinned blocks
 * are not offered. `top` must be of the same project; without it nothing is known of the whole top.
 *
 * The rule, first things first: the tip that keeps seams nesting; fewest rims beside it of the same fabric, then fewest that
 * read as one with it (for a trade the change in the other block counts too); the least score of the whole top; the least
 * length of seam along which cloth meets itself; what is left over before a trade; the letter of the set.
 */
export function rankWedges(
  project: Project,
  blockId: BlockId,
  place: number,
  top: TopEffect | null = null,
): WedgeOffer[] {
  const block = findBlock(project, blockId);
  if (!block || whyPlacesLocked(block) !== null || place < 0 || place >= block.places.length) return [];
  const types = wedgeTypes(project);
  const byKey = new Map(types.map((type) => [wedgeTypeKey(type.wedge), type]));
  const context: OfferContext = {
    project,
    block,
    place,
    at: project.blocks.indexOf(block) * project.wedge.perBlock + place,
    tip: wantedTip(block.places, place),
    top,
    types: byKey,
    beside: besideTable(project),
  };
  return [...leftOver(context), ...trades(context)].sort(inOrder);
}

/** What all offers for one place are worked out from. */
interface OfferContext {
  readonly project: Project;
  readonly block: Block;
  readonly place: number;
  /** Block × N + place. */
  readonly at: number;
  /** The tip the place wants. */
  readonly tip: Tip;
  readonly top: TopEffect | null;
  readonly types: ReadonlyMap<string, WedgeType>;
  readonly beside: BesideOf;
}

/** The order of offers, as rankWedges has it. */
export function inOrder(one: WedgeOffer, other: WedgeOffer): number {
  const rims = (offer: WedgeOffer) => offer.fit.rimClashes + offer.elsewhere.rimClashes;
  const alike = (offer: WedgeOffer) => offer.fit.rimLookAlikes + offer.elsewhere.rimLookAlikes;
  const seams = (offer: WedgeOffer) => clashInches(offer.fit) + clashInches(offer.elsewhere);
  const isTrade = (offer: WedgeOffer) => Number(offer.from !== 'leftOver');
  return (
    Number(other.rightTip) - Number(one.rightTip) ||
    rims(one) - rims(other) ||
    alike(one) - alike(other) ||
    beyondRounding(one.added - other.added) ||
    beyondRounding(seams(one) - seams(other)) ||
    isTrade(one) - isTrade(other) ||
    (one.label < other.label ? -1 : 1)
  );
}

/** Sums of the same parts in another order are the same figure. */
function beyondRounding(difference: number): number {
  return Math.abs(difference) < 1e-9 ? 0 : difference;
}

/** How a wedge of this type lies on a place, beside what stands next to it now. */
export function fitOf(
  type: WedgeType,
  block: Pick<Block, 'places'>,
  place: number,
  types: ReadonlyMap<string, WedgeType>,
  beside: BesideOf,
): Fit {
  const count = block.places.length;
  const found = [block.places[(place + 1) % count], block.places[(place + count - 1) % count]]
    .map((next) => (next ? types.get(wedgeTypeKey(next)) : undefined))
    .map((next) => (next ? beside(type, next) : undefined))
    .filter((one): one is Beside => one !== undefined);
  return {
    rimClashes: found.reduce((sum, one) => sum + one.rimClash, 0),
    rimLookAlikes: found.reduce((sum, one) => sum + one.rimAlike, 0),
    same: found.reduce((sum, one) => sum + one.same, 0),
    alike: found.reduce((sum, one) => sum + one.alike, 0),
  };
}

function leftOver(context: OfferContext): WedgeOffer[] {
  const { block, place, types, top } = context;
  const now = block.places[place] ?? null;
  const offers: WedgeOffer[] = [];
  for (const type of types.values()) {
    if (type.count <= 0 || type.rim === null) continue;
    if (now && wedgeTypeKey(now) === wedgeTypeKey(type.wedge)) continue;
    offers.push({
      wedge: type.wedge,
      label: type.label,
      from: 'leftOver',
      left: type.count,
      fit: fitOf(type, block, place, types, context.beside),
      elsewhere: NO_FIT,
      rightTip: type.wedge.tip === context.tip,
      added: top?.ofOne({ place: context.at, type: type.type }) ?? 0,
      moves: [{ kind: 'place', block: block.id, place, wedge: { ...type.wedge } }],
    });
  }
  return offers;
}

/** The best trade for each type that other planned, unpinned blocks hold. */
function trades(context: OfferContext): WedgeOffer[] {
  const { project, block, place, types } = context;
  const now = block.places[place];
  const mine = now && types.get(wedgeTypeKey(now));
  if (mine?.wedge.tip !== context.tip) return [];
  const best = new Map<string, WedgeOffer>();
  project.blocks.forEach((other, at) => {
    if (other === block || whyPlacesLocked(other) !== null || cellOf(project, other.id)?.pinned) return;
    other.places.forEach((lying, there) => {
      const theirs = lying && types.get(wedgeTypeKey(lying));
      if (!theirs || theirs === mine || theirs.wedge.tip !== context.tip) return;
      const offer = trade(context, mine, theirs, { block: other, at, place: there });
      const known = best.get(theirs.key);
      if (!known || inOrder(offer, known) < 0) best.set(theirs.key, offer);
    });
  });
  return [...best.values()];
}

interface OtherPlace {
  readonly block: Block;
  /** Index of the block. */
  readonly at: number;
  readonly place: number;
}

function trade(context: OfferContext, mine: WedgeType, theirs: WedgeType, other: OtherPlace): WedgeOffer {
  const { block, place, types, beside } = context;
  return {
    wedge: theirs.wedge,
    label: theirs.label,
    from: { block: other.block.id, place: other.place },
    left: 0,
    fit: fitOf(theirs, block, place, types, beside),
    elsewhere: less(
      fitOf(mine, other.block, other.place, types, beside),
      fitOf(theirs, other.block, other.place, types, beside),
    ),
    rightTip: true,
    added: context.top?.ofTrade(context.at, other.at * context.project.wedge.perBlock + other.place) ?? 0,
    moves: [
      { kind: 'place', block: block.id, place, wedge: { ...theirs.wedge } },
      { kind: 'place', block: other.block.id, place: other.place, wedge: { ...mine.wedge } },
    ],
  };
}

function less(one: Fit, other: Fit): Fit {
  return {
    rimClashes: one.rimClashes - other.rimClashes,
    rimLookAlikes: one.rimLookAlikes - other.rimLookAlikes,
    same: one.same - other.same,
    alike: one.alike - other.alike,
  };
}
