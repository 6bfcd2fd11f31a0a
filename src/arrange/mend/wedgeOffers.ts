// What a place of a block could hold: every wedge that is there, with its clashes beside its neighbours and beyond the
// block, and what it would do to the whole top. Rules of clash and likeness are balance's; which offers come first is arrange's.

import type { Analysis } from '../../balance/analyse';
import {
  type OutsideClash,
  outsideClash,
  type WedgeClash,
  wedgeClashes,
} from '../../balance/clashes/wedgeClashes';
import { wedgeTypeOf } from '../../balance/clashes/wedgeSeams';
import { SCATTERED } from '../../balance/score/intent';
import { inPoints } from '../../balance/score/weights';
import { weightsOf } from '../../balance/score/wishes';
import { seamLie, seamLies } from '../../cutting/wedges/nesting';
import { findSet } from '../../model/find';
import type { Move } from '../../model/moves';
import type { Block, BlockId, Place, Project } from '../../model/project';
import { inOrder, rankWedges, type WedgeOffer } from '../choose/composeRank';
import { scoreThen } from '../score';
import { TopEffect } from './topEffect';

/** The score of the whole top by the person's weights as it is and as it would be, in points; lower is better. */
export interface TopScores {
  readonly now: number;
  readonly after: number;
}

interface Offered {
  readonly wedge: Place;
  /** Its clashes beside its neighbours in the block. */
  readonly inside: readonly WedgeClash[];
  /** The clash of its rim beyond the block; null where that lies against other cloth, or the block does not hang. */
  readonly outside: OutsideClash | null;
  /** Null where nothing it touches hangs with a wedge in it, and beyond the best of each list. */
  readonly top: TopScores | null;
}

/** A wedge no block uses. */
export interface LeftOver extends Offered {
  /** Wedges of this set and tip that no block uses. */
  readonly left: number;
  /** It keeps tips alternating round the block. */
  readonly rightTip: boolean;
  /** Its seams lie against those of both neighbours. */
  readonly nests: boolean;
}

/** A wedge of another block, had in trade for the one that is here. */
export interface InTrade extends Offered {
  readonly from: { readonly block: BlockId; readonly place: number };
  /** Rim clashes in the other block: how many more (or fewer, below 0) after the trade. */
  readonly rimsElsewhere: number;
}

export interface WedgeOffers {
  readonly leftOver: readonly LeftOver[];
  readonly inTrade: readonly InTrade[];
}

/** So many of the best of each list say what the wall is told once they lie there, which takes milliseconds each. */
const CLOSELY = 40;

const effects = new WeakMap<Analysis, TopEffect>();

/**
 * Every wedge for a place (from 0) of a planned block other than what is in it: those left over, the right tip and the
 * best fit first; and the best trades with other blocks. Ranked by rankWedges' rule. Nothing is offered that is not there.
 * The analysis must be of the very project.
 */
export function wedgeOffers(analysis: Analysis, block: Block, at: number): WedgeOffers {
  const { project } = analysis;
  const effect = effects.get(analysis) ?? new TopEffect(analysis, weightsOf(project.preferences));
  effects.set(analysis, effect);
  const leftOver: LeftOver[] = [];
  const inTrade: InTrade[] = [];
  const lies = seamLies(project, block);
  const beside = [lies.at(at - 1), lies[(at + 1) % lies.length]];
  for (const offer of told(analysis, effect, rankWedges(project, block.id, at, effect))) {
    const { wedge, from, top } = offer;
    const offered = {
      wedge,
      inside: wedgeClashes(project, analysis.model, block, at, wedge),
      outside: outsideClash(analysis, block, at, wedgeTypeOf(project, wedge)),
      top,
    };
    if (from !== 'leftOver') {
      inTrade.push({ ...offered, from, rimsElsewhere: offer.elsewhere.rimClashes });
    } else {
      const nests = !beside.includes(seamLie(findSet(project, wedge.set)!, wedge.tip));
      leftOver.push({ ...offered, left: offer.left, rightTip: offer.rightTip, nests });
    }
  }
  return { leftOver, inTrade };
}

/** The offers, the best of each list with the scores that the wall is told, and in the order of those. */
function told(
  analysis: Analysis,
  effect: TopEffect,
  offers: readonly WedgeOffer[],
): (WedgeOffer & { readonly top: TopScores | null })[] {
  const { options, project } = analysis;
  const weights = weightsOf(project.preferences);
  const weighs = ({ moves }: WedgeOffer) =>
    moves.some((move) => move.kind === 'place' && effect.weighs(placeOf(project, move)));
  const exactly = (offer: WedgeOffer) => {
    if (!weighs(offer)) return { ...offer, top: null };
    const { total } = scoreThen(analysis, offer.moves, options.intent ?? SCATTERED, weights);
    const top = { now: inPoints(effect.now, weights), after: inPoints(total, weights) };
    return { ...offer, added: total - effect.now, top };
  };
  const lists = [true, false].map((over) => offers.filter(({ from }) => (from === 'leftOver') === over));
  return lists.flatMap((list) => [
    ...list.slice(0, CLOSELY).map(exactly).sort(inOrder),
    ...list.slice(CLOSELY).map((offer) => ({ ...offer, top: null })),
  ]);
}

/** Block × N + place. */
function placeOf({ blocks, wedge }: Project, { block, place }: Extract<Move, { kind: 'place' }>): number {
  return blocks.findIndex(({ id }) => id === block) * wedge.perBlock + place;
}
