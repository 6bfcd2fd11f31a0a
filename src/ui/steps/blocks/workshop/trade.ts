// A trade of two wedges under way: one place is held until another is chosen. No part of the project until it is done.
import { createContext, useContext } from 'react';
import type { BlockId } from '../../../../model/project';
import type { Spot } from '../../../wall/hands/hands';

export interface PlaceRef {
  readonly block: BlockId;
  /** From 0. */
  readonly place: number;
}

/** A wedge in the hand: where from, the place under it, and where the hand is. */
export interface Carried {
  readonly from: PlaceRef;
  readonly over: PlaceRef | null;
  readonly hand: Spot;
}

/** What a hand does with places: hold one, carry it, put it on another. */
export interface Trading {
  /** Held until another place is chosen. */
  readonly held: PlaceRef | null;
  readonly carried: Carried | null;
  readonly hold: (place: PlaceRef | null) => void;
  readonly press: (event: React.PointerEvent, from: PlaceRef) => void;
  /** Trades two places and says why not where it cannot. */
  readonly trade: (from: PlaceRef, to: PlaceRef) => void;
}

export const TradingContext = createContext<Trading | null>(null);

export function useTrading(): Trading {
  const trading = useContext(TradingContext);
  if (!trading) throw new Error('useTrading: outside TradingContext');
  return trading;
}

export function samePlace(one: PlaceRef | null | undefined, other: PlaceRef): boolean {
  return one?.block === other.block && one.place === other.place;
}
