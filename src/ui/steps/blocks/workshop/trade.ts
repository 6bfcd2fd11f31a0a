// The state of a trade of two wedges: one place is held until the other is chosen, or a hand carries a wedge from a place or from those left
// over. It is no part of the project.
import { createContext, useContext } from 'react';
import { putWedge, tradeWedges } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import type { Move } from '../../../../model/moves';
import type { BlockId, Place, Project } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import type { Spot } from '../../../wall/hands/hands';

export interface PlaceRef {
  readonly block: BlockId;
  /** Index of the place, from 0. */
  readonly place: number;
}

/** A wedge that no block uses. */
export interface Spare {
  readonly spare: Place;
}

/** What lies under a hand: a place, or the tray of wedges left over. */
export type Under = PlaceRef | 'tray' | null;

/** A wedge that a hand carries: where it comes from, what is under the hand, and the position of the hand. */
export interface Carried {
  readonly from: PlaceRef | Spare;
  readonly over: Under;
  readonly hand: Spot;
}

/** Trading: hold a place, carry its wedge or one left over, put it down. */
export interface Trading {
  /** The first place of a trade, until the second is chosen; null for none. */
  readonly held: PlaceRef | null;
  readonly carried: Carried | null;
  readonly problems: readonly Problem[];
  readonly hold: (place: PlaceRef | null) => void;
  readonly press: (event: React.PointerEvent, from: PlaceRef | Spare) => void;
  /** Puts a wedge down on a place: a trade, or a wedge that was left over. Announces why where it is refused. */
  readonly putDown: (from: PlaceRef | Spare, to: PlaceRef) => void;
}

export const TradingContext = createContext<Trading | null>(null);

/** The trading state round a component. Throws outside TradingContext. */
export function useTrading(): Trading {
  const trading = useContext(TradingContext);
  if (!trading) throw new Error('useTrading: outside TradingContext');
  return trading;
}

/** Whether it is this place; false for a wedge left over and for none. */
export function samePlace(one: PlaceRef | Spare | 'tray' | null | undefined, other: PlaceRef): boolean {
  return (
    one !== null &&
    typeof one === 'object' &&
    'block' in one &&
    one.block === other.block &&
    one.place === other.place
  );
}

/** The wedge that is carried; null where its place is empty by now. */
export function carriedWedge(project: Project, from: PlaceRef | Spare): Place | null {
  return 'spare' in from ? from.spare : (findBlock(project, from.block)?.places[from.place] ?? null);
}

/** What putting a wedge down on a place does. */
export function putDownCommand(project: Project, from: PlaceRef | Spare, to: PlaceRef) {
  return 'spare' in from ? putWedge(project, to.block, to.place, from.spare) : tradeWedges(project, from, to);
}

/** The moves of it, and the blocks they change. */
export function putDownMoves(
  project: Project,
  from: PlaceRef | Spare,
  to: PlaceRef,
): { readonly blocks: readonly BlockId[]; readonly moves: readonly Move[] } {
  const { moves } = putDownCommand(project, from, to);
  return { blocks: 'spare' in from ? [to.block] : [from.block, to.block], moves };
}
