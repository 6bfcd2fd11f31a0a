// Trades wedges: a hand carries a wedge to another place, or one place is held and then the other chosen. It gives tradeRules.ts
// the places on screen, and carries out the outcomes.
import { useCallback, useEffect, useState } from 'react';
import { putWedge } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import { phrase } from '../../../../model/phrase';
import { useAppStore } from '../../../app';
import { useRun } from '../../../fields/Complaint';
import type { Spot } from '../../../wall/hands/hands';
import { useHands } from '../../../wall/hands/useHands';
import {
  type Carried,
  type PlaceRef,
  putDownCommand,
  type Spare,
  samePlace,
  type Trading,
  type Under,
} from './trade';
import { type TradeOutcome, tradeRules } from './tradeRules';

/** The state of trading, for TradingContext. */
export function useTrade(): Trading {
  const store = useAppStore();
  const [run, problems, clear] = useRun();
  const [held, setHeld] = useState<PlaceRef | null>(null);
  const putDown = useCallback(
    (from: PlaceRef | Spare, to: PlaceRef) => {
      setHeld(null);
      if (samePlace(from, to)) return;
      run(putDownCommand(store.getState().project, from, to));
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
  const { gesture, press } = useHands<PlaceRef | Spare, Carried, TradeOutcome>({
    rules: () => tradeRules(store.getState().project, under),
    done: (outcome) => {
      if (outcome.kind === 'putDown') putDown(outcome.from, outcome.to);
      else if (outcome.kind === 'takeOut')
        run(putWedge(store.getState().project, outcome.from.block, outcome.from.place, null));
      else store.getState().announce(outcome.why);
    },
  });
  return { held, carried: gesture, problems, hold, press, putDown };
}

function under({ x, y }: Spot): Under {
  const found = document.elementFromPoint(x, y);
  const place = found?.closest('[data-workshop-place]');
  const block = place?.getAttribute('data-workshop-block');
  if (block) return { block, place: Number(place?.getAttribute('data-workshop-place')) };
  return found?.closest('[data-wedge-tray]') ? 'tray' : null;
}
