// The rules of hands on the places of blocks and on the wedges left over: a hand carries a wedge to a place, or from a place to those left.
// Pure; wall/hands/hands.ts runs them. A finger must rest on a wedge before it carries it, so that the page still scrolls. A press that
// carries nothing is a click.
import { findBlock } from '../../../../model/find';
import { whyPlacesLocked } from '../../../../model/freedom';
import type { Phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import type { Hand, Rules, Spot } from '../../../wall/hands/hands';
import type { Carried, PlaceRef, Spare, Under } from './trade';

export type TradeOutcome =
  /** The wedge was put down on a place, perhaps its own. */
  | { readonly kind: 'putDown'; readonly from: PlaceRef | Spare; readonly to: PlaceRef }
  /** The wedge of a place was put with those left over. */
  | { readonly kind: 'takeOut'; readonly from: PlaceRef }
  | { readonly kind: 'refuse'; readonly why: Phrase };

/** The rules for the present project. */
export function tradeRules(
  project: Project,
  under: (spot: Spot) => Under,
): Rules<PlaceRef | Spare, Carried, TradeOutcome> {
  const carried = (from: PlaceRef | Spare, { at }: Hand) => ({ from, over: under(at), hand: at });
  return {
    restsFirst: true,
    begin: (from, hand) => {
      if ('spare' in from) return { gesture: carried(from, hand) };
      const block = findBlock(project, from.block);
      const why = block ? whyPlacesLocked(block) : null;
      if (why) return { refused: { kind: 'refuse', why } };
      return block?.places[from.place] ? { gesture: carried(from, hand) } : { refused: null };
    },
    join: null,
    follow: (gesture, from, [hand]) => (from && hand ? carried(from, hand) : gesture),
    tap: () => null,
    end: ({ from, over }) => {
      if (over === null) return null;
      if (over !== 'tray') return { kind: 'putDown', from, to: over };
      return 'spare' in from ? null : { kind: 'takeOut', from };
    },
  };
}
