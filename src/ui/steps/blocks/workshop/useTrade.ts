// Trades wedges: a hand carries a wedge to another place, or one place is held and then the other chosen. It gives tradeRules.ts
// the places on screen, and carries out the outcomes.
import { useCallback, useEffect, useState } from 'react';
import { tradeWedges } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { useAppStore } from '../../../app';
import { useRun } from '../../../fields/Complaint';
import type { Spot } from '../../../wall/hands/hands';
import { useHands } from '../../../wall/hands/useHands';
import { type Carried, type PlaceRef, samePlace, type Trading } from './trade';
import { type TradeOutcome, tradeRules } from './tradeRules';

export interface TradeState extends Trading {
  readonly problems: readonly Problem[];
}

/** The state of trading, for TradingContext. */
export function useTrade(): TradeState {
  const store = useAppStore();
  const [run, problems, clear] = useRun();
  const [held, setHeld] = useState<PlaceRef | null>(null);
  const trade = useCallback(
    (from: PlaceRef, to: PlaceRef) => {
      setHeld(null);
      if (samePlace(from, to)) return;
      run(tradeWedges(store.getState().project, from, to));
    },
    [run, store],
  );
  const hold = useCallback(
    (place: PlaceRef | null) => {
      clear();
      setHeld(place);
      const { project, announce } = store.getState();
      const block = place && findBlock(project, place.block);
      if (place && block) {
        const values = { place: place.place + 1, block: block.number };
        announce(phrase('Place {place} of block {block} is held. Choose the place to trade with.', values));
      }
    },
    [clear, store],
  );
  useEffect(() => {
    if (held === null) return;
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.stopPropagation();
      setHeld(null);
    };
    globalThis.addEventListener('keydown', key, true);
    return () => globalThis.removeEventListener('keydown', key, true);
  }, [held]);
  const { gesture, press } = useHands<PlaceRef, Carried, TradeOutcome>({
    rules: () => tradeRules(store.getState().project, placeUnder),
    done: (outcome) => {
      if (outcome.kind === 'trade') trade(outcome.from, outcome.to);
      else store.getState().announce(outcome.why);
    },
  });
  return { held, carried: gesture, problems, hold, press, trade };
}

function placeUnder({ x, y }: Spot): PlaceRef | null {
  const found = document.elementFromPoint(x, y)?.closest('[data-workshop-place]');
  const block = found?.getAttribute('data-workshop-block');
  return block ? { block, place: Number(found?.getAttribute('data-workshop-place')) } : null;
}
