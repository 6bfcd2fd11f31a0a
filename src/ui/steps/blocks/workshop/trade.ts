// The state of a trade of two wedges: one place is held until the other is chosen. It is no part of the project.
import { createContext, useContext } from 'react';
import type { BlockId } from '../../../../model/project';
import type { Spot } from '../../../wall/hands/hands';

export interface PlaceRef {
  readonly block: BlockId;
  /** Index of the place, from 0. */
  readonly place: number;
}

/** A wedge that a hand carries: the place it comes from, the place under the hand, and the position of the hand. */
export interface Carried {
  readonly from: PlaceRef;
  readonly over: PlaceRef | null;
  readonly hand: Spot;
}

/** Trading: hold a place, carry its wedge, trade it with another place. */
export interface Trading {
  /** The first place of a trade, until the second is chosen; null for none. */
  readonly held: PlaceRef | null;
  readonly carried: Carried | null;
  readonly hold: (place: PlaceRef | null) => void;
  readonly press: (event: React.PointerEvent, from: PlaceRef) => void;
  /** Trades the wedges of two places; announces why where it is refused. */
  readonly trade: (from: PlaceRef, to: PlaceRef) => void;
}

export const TradingContext = createContext<Trading | null>(null);

/** The trading state round a component. Throws outside TradingContext. */
export function useTrading(): Trading {
  const trading = useContext(TradingContext);
  if (!trading) throw new Error('useTrading: outside TradingContext');
  return trading;
}

/** Whether two places are the same. */
export function samePlace(one: PlaceRef | null | undefined, other: PlaceRef): boolean {
  return one?.block === other.block && one.place === other.place;
}
