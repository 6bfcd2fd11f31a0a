// The rules of hands on the places of blocks: a hand carries a wedge to another place. Pure; wall/hands/hands.ts runs them. A finger
// must rest on a wedge before it carries it, so that the panel still scrolls. A press that carries nothing is a click.
import { findBlock } from '../../../../model/find';
import { whyPlacesLocked } from '../../../../model/freedom';
import type { Phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import type { Hand, Rules, Spot } from '../../../wall/hands/hands';
import type { Carried, PlaceRef } from './trade';

export type TradeOutcome =
  /** The wedge was put down on a place, perhaps its own. */
  | { readonly kind: 'trade'; readonly from: PlaceRef; readonly to: PlaceRef }
  | { readonly kind: 'refuse'; readonly why: Phrase };

/** The rules for the present project. */
export function tradeRules(
  project: Project,
  placeUnder: (spot: Spot) => PlaceRef | null,
): Rules<PlaceRef, Carried, TradeOutcome> {
  const carried = (from: PlaceRef, { at }: Hand) => ({ from, over: placeUnder(at), hand: at });
  return {
    restsFirst: true,
    begin: (from, hand) => {
      const block = findBlock(project, from.block);
      const why = block ? whyPlacesLocked(block) : null;
      if (why) return { refused: { kind: 'refuse', why } };
      return block?.places[from.place] ? { gesture: carried(from, hand) } : { refused: null };
    },
    join: null,
    follow: (gesture, from, [hand]) => (from && hand ? carried(from, hand) : gesture),
    tap: () => null,
    end: ({ from, over }) => (over ? { kind: 'trade', from, to: over } : null),
  };
}
